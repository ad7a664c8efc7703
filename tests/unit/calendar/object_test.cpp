// Single calendar objects and to-dos (RFC 5545 section 3.6.2, RFC 4791 section 4.1).
#include "larderloop/calendar/object.h"

#include "larderloop/calendar/ics.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

CalendarTodo todo(const std::string& uid, const char* day) {
  CalendarTodo one;
  one.uid = uid;
  one.changed_at = *parse_iso_instant("2027-03-01T08:00:00Z");
  one.due = *parse_iso_day(day);
  one.summary = "Eat soon: dinner";
  one.description = "- 1 pouch of Lentil stew";
  one.category = "Eat soon";
  one.related_to = "aa-1";
  one.mark = "0c-3";
  return one;
}

std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

TEST(Todos, EveryLineThatAToDoNeeds) {
  const auto text =
      render_todos("Our household", {todo("bb-2", "2027-04-04"), todo("bb-1", "2027-04-03")});
  ASSERT_TRUE(text.has_value());
  for (const char* line : {"BEGIN:VTODO", "UID:bb-1", "DUE;VALUE=DATE:20270403",
                           "STATUS:NEEDS-ACTION", "RELATED-TO:aa-1", "DTSTAMP:20270301T080000Z",
                           "LAST-MODIFIED:20270301T080000Z", "SEQUENCE:0", "CATEGORIES:Eat soon"}) {
    EXPECT_NE(text->find(std::string(line) + "\r\n"), std::string::npos) << line;
  }
  EXPECT_LT(text->find("UID:bb-1"), text->find("UID:bb-2"));
  EXPECT_EQ(text->find("DTSTART"), std::string::npos);
  EXPECT_EQ(text->find("METHOD"), std::string::npos);
}

TEST(Todos, WhatIsNoCalendarIsADefect) {
  EXPECT_EQ(render_todos("x", {}).error().kind, ErrorKind::kDefect);
  EXPECT_EQ(render_todos("x", {todo("a", "2027-04-03"), todo("a", "2027-04-03")}).error().kind,
            ErrorKind::kDefect);
  EXPECT_EQ(render_todos("x", {todo("no uid", "2027-04-03")}).error().kind, ErrorKind::kDefect);
}

TEST(Objects, OneForEachUid) {
  const auto whole = render_todos("x", {todo("bb-2", "2027-04-04"), todo("bb-1", "2027-04-03")});
  const auto objects = split_calendar(*whole);
  ASSERT_TRUE(objects.has_value());
  ASSERT_EQ(objects->size(), 2U);
  EXPECT_EQ(objects->front().uid, "bb-1");
  EXPECT_EQ(objects->front().bytes.find("X-WR-CALNAME"), std::string::npos);
  const auto back = read_object(objects->front().bytes);
  ASSERT_TRUE(back.has_value());
  EXPECT_TRUE(back->todo);
  EXPECT_EQ(back->uid, "bb-1");
  EXPECT_EQ(back->state, TickState::kOpen);
  EXPECT_EQ(back->mark, "0c-3");
}

TEST(Objects, OrderFoldingAndStampsAreNoContent) {
  const std::string sent =
      split_calendar(*render_todos("x", {todo("bb-1", "2027-04-03")}))->front().bytes;
  const std::string content = read_object(sent)->content;
  std::string other = with(sent, "UID:bb-1\r\n", "");
  other =
      with(other, "END:VTODO",
           "UID:bb-1\r\nX-CLIENT-SORT:7\r\nPRIORITY:0\r\nCREATED:20270302T000000Z\r\nEND:VTODO");
  other = with(other, "SEQUENCE:0", "SEQUENCE:4");
  other = with(other, "SUMMARY:Eat soon: dinner", "SUMMARY:Eat\r\n  soon: dinner");
  EXPECT_EQ(read_object(other)->content, content);
  EXPECT_NE(read_object(with(sent, "dinner", "supper"))->content, content);
  EXPECT_NE(read_object(with(sent, "20270403", "20270404"))->content, content);
  EXPECT_NE(read_object(with(sent, "END:VTODO",
                             "BEGIN:VALARM\r\nACTION:DISPLAY\r\nDESCRIPTION:x\r\nTRIGGER:-"
                             "PT15H\r\nEND:VALARM\r\nEND:VTODO"))
                ->content,
            content);
}

TEST(Objects, ATickIsAStateAndNoContent) {
  const std::string sent =
      split_calendar(*render_todos("x", {todo("bb-1", "2027-04-03")}))->front().bytes;
  const auto ticked =
      read_object(with(sent, "STATUS:NEEDS-ACTION",
                       "STATUS:COMPLETED\r\nCOMPLETED:20270403T181500Z\r\nPERCENT-COMPLETE:100"));
  EXPECT_EQ(ticked->state, TickState::kDone);
  EXPECT_EQ(ticked->content, read_object(sent)->content);
  ASSERT_TRUE(ticked->done_at.has_value());
  EXPECT_EQ(iso_instant(*ticked->done_at), "2027-04-03T18:15:00Z");
  EXPECT_EQ(read_object(with(sent, "STATUS:NEEDS-ACTION", "PERCENT-COMPLETE:100"))->state,
            TickState::kDone);
  EXPECT_EQ(read_object(with(sent, "STATUS:NEEDS-ACTION", "STATUS:IN-PROCESS"))->state,
            TickState::kStarted);
  EXPECT_EQ(read_object(with(sent, "STATUS:NEEDS-ACTION", "STATUS:CANCELLED"))->state,
            TickState::kDropped);
}

TEST(Objects, WhatIsNoObject) {
  for (const char* text :
       {"", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n", "<html/>",
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nSUMMARY:x\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"}) {
    EXPECT_FALSE(read_object(text).has_value()) << text;
  }
}

}  // namespace
}  // namespace larderloop
