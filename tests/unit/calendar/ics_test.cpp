#include "larderloop/calendar/ics.h"

#include <gtest/gtest.h>

#include <clocale>

namespace larderloop {
namespace {

CalendarEvent event(std::string uid, std::string_view begin, std::string summary) {
  CalendarEvent made;
  made.uid = std::move(uid);
  made.changed_at = parse_iso_instant("2026-02-03T04:05:06Z").value();
  made.sequence = 2;
  made.begin = parse_iso_day(begin).value();
  made.end = made.begin + Days(1);
  made.summary = std::move(summary);
  made.description = "Walk through it bag by bag.";
  made.category = "Review";
  return made;
}

std::string written(std::vector<CalendarEvent> events) {
  const auto text = render_calendar("Kit and pantry", std::move(events));
  return text ? *text : "error: " + text.error().what;
}

// RFC 5545 sections 3.4 and 3.6.1, RFC 7986 sections 5.1, 5.7 and 5.9: the whole calendar, byte by
// byte.
TEST(Ics, WritesTheWholeCalendar) {
  EXPECT_EQ(
      written({event("2ed6657d-e927-568b-95e1-2665a8aea6a2", "2026-03-07", "Review the home kit")}),
      "BEGIN:VCALENDAR\r\n"
      "VERSION:2.0\r\n"
      "PRODID:-//larderloop//household feed//EN\r\n"
      "CALSCALE:GREGORIAN\r\n"
      "NAME:Kit and pantry\r\n"
      "X-WR-CALNAME:Kit and pantry\r\n"
      "REFRESH-INTERVAL;VALUE=DURATION:PT12H\r\n"
      "X-PUBLISHED-TTL:PT12H\r\n"
      "COLOR:teal\r\n"
      "BEGIN:VEVENT\r\n"
      "UID:2ed6657d-e927-568b-95e1-2665a8aea6a2\r\n"
      "DTSTAMP:20260203T040506Z\r\n"
      "LAST-MODIFIED:20260203T040506Z\r\n"
      "SEQUENCE:2\r\n"
      "DTSTART;VALUE=DATE:20260307\r\n"
      "DTEND;VALUE=DATE:20260308\r\n"
      "SUMMARY:Review the home kit\r\n"
      "DESCRIPTION:Walk through it bag by bag.\r\n"
      "CATEGORIES:Review\r\n"
      "TRANSP:TRANSPARENT\r\n"
      "STATUS:CONFIRMED\r\n"
      "END:VEVENT\r\n"
      "END:VCALENDAR\r\n");
}

// RFC 5545 sections 3.6.6, 3.8.4.5 and 3.8.6.3, RFC 9074 section 4: one alarm with an identity,
// nine in the morning of days before.
TEST(Ics, WritesRelationAndAlarm) {
  CalendarEvent shop = event("a1", "2026-03-07", "Shop");
  shop.related_uid = "b2";
  shop.alarm_uid = "c3";
  shop.alarm_days = 1;
  EXPECT_NE(written({shop}).find("STATUS:CONFIRMED\r\n"
                                 "RELATED-TO:b2\r\n"
                                 "BEGIN:VALARM\r\n"
                                 "UID:c3\r\n"
                                 "ACTION:DISPLAY\r\n"
                                 "TRIGGER:-PT15H\r\n"
                                 "DESCRIPTION:Shop\r\n"
                                 "END:VALARM\r\n"
                                 "END:VEVENT\r\n"),
            std::string::npos)
      << written({shop});
  shop.alarm_days = 8;
  EXPECT_NE(written({shop}).find("TRIGGER:-P7DT15H\r\n"), std::string::npos) << written({shop});
  for (const int days : {0, 31}) {
    shop.alarm_days = days;
    EXPECT_EQ(written({shop}), "error: the event 'a1' has an alarm without uid or days");
  }
  shop.alarm_uid.clear();
  shop.related_uid = "review|kit";
  EXPECT_EQ(written({shop}), "error: the event 'a1' is related to no uid");
}

// RFC 5545 sections 3.8.4.4, 3.8.5.1 and 3.8.5.3: one event that repeats, a day left out, a moved
// one under the same identity with the day it was on.
TEST(Ics, WritesASeriesWithWhatIsMovedAndLeftOut) {
  CalendarEvent series = event("a1", "2026-03-07", "Review");
  series.rule = "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA";
  series.without = {parse_iso_day("2027-03-06").value()};
  series.moved = {{parse_iso_day("2026-09-05").value(), parse_iso_day("2026-09-12").value(), "d4"}};
  series.alarm_uid = "c3";
  series.alarm_days = 1;
  const std::string text = written({series, event("b2", "2026-05-01", "between")});
  const auto has = [&](const std::string& part) { return text.find(part) != std::string::npos; };
  EXPECT_TRUE(
      has("UID:a1\r\nDTSTAMP:20260203T040506Z\r\nLAST-MODIFIED:20260203T040506Z\r\n"
          "SEQUENCE:2\r\nDTSTART;VALUE=DATE:20260307\r\nDTEND;VALUE=DATE:20260308\r\n"
          "RRULE:FREQ=YEARLY;BYDAY=1SA;BYMONTH=3,9\r\nEXDATE;VALUE=DATE:20270306\r\n"
          "SUMMARY:Review\r\n"))
      << text;
  EXPECT_TRUE(
      has("UID:a1\r\nDTSTAMP:20260203T040506Z\r\nLAST-MODIFIED:20260203T040506Z\r\n"
          "SEQUENCE:2\r\nRECURRENCE-ID;VALUE=DATE:20260905\r\n"
          "DTSTART;VALUE=DATE:20260912\r\nDTEND;VALUE=DATE:20260913\r\nSUMMARY:Review\r\n"))
      << text;
  EXPECT_TRUE(has("BEGIN:VALARM\r\nUID:c3\r\n"));
  EXPECT_TRUE(has("BEGIN:VALARM\r\nUID:d4\r\n"));
  EXPECT_LT(text.find("RECURRENCE-ID"), text.find("UID:b2")) << "behind its series";
  EXPECT_EQ(text.find("UNTIL"), std::string::npos);
  series.rule = "FREQ=WEEKLY";
  EXPECT_EQ(written({series}), "error: the rule 'FREQ=WEEKLY' is not for a repeating event");
  series.rule.clear();
  EXPECT_EQ(written({series}), "error: the event 'a1' does not repeat, so nothing is moved");
}

TEST(Ics, SortsByBeginThenUidWhateverTheOrderGiven) {
  const CalendarEvent late = event("a1", "2026-10-03", "late");
  const CalendarEvent early = event("c3", "2026-04-04", "early");
  const CalendarEvent twin = event("b2", "2026-04-04", "twin");
  const std::string text = written({late, early, twin});
  EXPECT_EQ(text, written({twin, late, early}));
  EXPECT_LT(text.find("UID:b2"), text.find("UID:c3"));
  EXPECT_LT(text.find("UID:c3"), text.find("UID:a1"));
}

TEST(Ics, SaysCancelledAndLeavesOutEmptyTexts) {
  CalendarEvent gone = event("a1", "2026-10-03", "\x01\x02");
  gone.cancelled = true;
  gone.description.clear();
  gone.category.clear();
  const std::string text = written({gone});
  EXPECT_NE(text.find("STATUS:CANCELLED\r\n"), std::string::npos);
  EXPECT_EQ(text.find("SUMMARY"), std::string::npos);
  EXPECT_EQ(text.find("DESCRIPTION"), std::string::npos);
  EXPECT_EQ(text.find("CATEGORIES"), std::string::npos);
}

// What must not be there: scheduling, an identity of the calendar, zones, alarms, and libical's
// error marks.
TEST(Ics, HasNoMethodZoneAlarmOrErrorMark) {
  const std::string text = written({event("a1", "2026-10-03", "Review")});
  for (const std::string_view name :
       {"METHOD", "VTIMEZONE", "VALARM", "X-LIC", "TZID", "ORGANIZER", "RRULE"}) {
    EXPECT_EQ(text.find(name), std::string::npos) << name;
  }
  EXPECT_GT(text.find("UID:"), text.find("BEGIN:VEVENT"));
}

TEST(Ics, TheNameOfTheCalendarLosesWhatLibicalDoesNotEscape) {
  const auto text =
      render_calendar("Kit, pantry; \\ cellar\r\nX-EVIL:1", {event("a1", "2026-10-03", "Review")});
  ASSERT_TRUE(text);
  EXPECT_NE(text->find("\r\nNAME:Kit pantry cellar X-EVIL:1\r\n"), std::string::npos);
  EXPECT_NE(text->find("\r\nX-WR-CALNAME:Kit pantry cellar X-EVIL:1\r\n"), std::string::npos);
}

TEST(Ics, ALongDescriptionEndsInAnEllipsis) {
  CalendarEvent made = event("a1", "2026-10-03", "Review");
  made.description = std::string(2048, 'a');
  EXPECT_EQ(written({made}).find("\xE2\x80\xA6"), std::string::npos);
  made.description += 'a';
  const std::string text = written({made});
  EXPECT_NE(text.find("a\xE2\x80\xA6\r\nCATEGORIES"), std::string::npos);
  EXPECT_LT(text.size(), 2700U);
}

TEST(Ics, IsTheSameUnderAnotherLocale) {
  const std::string before = written({event("a1", "2026-10-03", "Review")});
  const std::string old = std::setlocale(LC_ALL, nullptr);
  std::setlocale(LC_ALL, "");
  const std::string after = written({event("a1", "2026-10-03", "Review")});
  std::setlocale(LC_ALL, old.c_str());
  EXPECT_EQ(before, after);
}

TEST(Ics, BrokenPromisesAreDefects) {
  std::vector<std::vector<CalendarEvent>> broken{{}};
  broken.push_back({event("a1", "2026-10-03", "x"), event("a1", "2026-10-04", "y")});
  broken.push_back({event("", "2026-10-03", "x")});
  broken.push_back({event("shop@house", "2026-10-03", "x")});
  broken.push_back({event("a1", "2026-10-03", "x")});
  broken.back().front().end = broken.back().front().begin;
  broken.push_back({event("a1", "2026-10-03", "x")});
  broken.back().front().category = "Rice, dry";
  broken.push_back({event("a1", "2026-10-03", "x")});
  broken.back().front().sequence = -1;
  for (const auto& events : broken) {
    const auto text = render_calendar("Kit", events);
    ASSERT_FALSE(text);
    EXPECT_EQ(text.error().kind, ErrorKind::kDefect);
  }
}

}  // namespace
}  // namespace larderloop
