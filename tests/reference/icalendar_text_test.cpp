// Bytes and texts of the calendar against RFC 5545 (sections named at each test), read by a small
// reader of our own that knows folding and escapes and shares no code with libical.
#include "calendar/ical_handles.h"
#include "larderloop/calendar/ics.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace larderloop {
namespace {

std::vector<std::string> physical_lines(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find("\r\n", at);
    if (end == std::string::npos) {
      ADD_FAILURE() << "the last line does not end in CRLF";
      return lines;
    }
    lines.push_back(text.substr(at, end - at));
    at = end + 2;
  }
  return lines;
}

// Section 3.1: CRLF and one space or tab are taken away.
std::vector<std::string> unfolded(const std::string& text) {
  std::vector<std::string> lines;
  for (const std::string& line : physical_lines(text)) {
    const bool goes_on = !line.empty() && (line[0] == ' ' || line[0] == '\t');
    if (goes_on && !lines.empty()) {
      lines.back() += line.substr(1);
    } else {
      lines.push_back(line);
    }
  }
  return lines;
}

// Section 3.3.11.
std::string unescaped(const std::string& value) {
  std::string text;
  for (std::size_t i = 0; i < value.size(); ++i) {
    if (value[i] != '\\' || i + 1 == value.size()) {
      text += value[i];
      continue;
    }
    ++i;
    text += value[i] == 'n' || value[i] == 'N' ? '\n' : value[i];
  }
  return text;
}

std::string raw_value(const std::string& text, const std::string& name) {
  for (const std::string& line : unfolded(text)) {
    if (line.rfind(name + ":", 0) == 0 || line.rfind(name + ";", 0) == 0)
      return line.substr(line.find(':') + 1);
  }
  return "(no " + name + ")";
}

bool is_utf8(const std::string& text) {
  for (std::size_t i = 0; i < text.size();) {
    const unsigned first = static_cast<unsigned char>(text[i]);
    const std::size_t size = first < 0x80   ? 1
                             : first < 0xC2 ? 0
                             : first < 0xE0 ? 2
                             : first < 0xF0 ? 3
                             : first < 0xF5 ? 4
                                            : 0;
    if (size == 0 || i + size > text.size()) return false;
    for (std::size_t k = 1; k < size; ++k) {
      if ((static_cast<unsigned char>(text[i + k]) & 0xC0U) != 0x80U) return false;
    }
    i += size;
  }
  return true;
}

CalendarEvent event() {
  CalendarEvent made;
  made.uid = "2ed6657d-e927-568b-95e1-2665a8aea6a2";
  made.begin = parse_iso_day("2026-03-07").value();
  made.end = made.begin + Days(1);
  made.summary = "Review the home kit";
  made.category = "Review";
  return made;
}

std::string written(const CalendarEvent& one) {
  const auto text = render_calendar("Kit", {one});
  EXPECT_TRUE(text);
  return text ? *text : std::string();
}

std::string with_description(const std::string& description) {
  CalendarEvent made = event();
  made.description = description;
  return written(made);
}

std::string repeated(const std::string& piece, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += piece;
  return text;
}

// CT-01, section 3.1: the RFC's own folded line, for the reader of these tests and for the one that
// checks what we write.
TEST(IcalendarText, FoldedLinesAreJoined) {
  const std::string folded =
      "DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n";
  EXPECT_EQ(unfolded(folded).at(0),
            "DESCRIPTION:This is a long description that exists on a long line.");
  const std::string whole = "BEGIN:VEVENT\r\n" + folded + "END:VEVENT\r\n";
  const ical::Component parsed(icalparser_parse_string(whole.c_str()));
  ASSERT_TRUE(parsed);
  EXPECT_STREQ(icalcomponent_get_description(parsed.get()),
               "This is a long description that exists on a long line.");
}

// CT-02, section 3.3.11: the RFC's own example of line breaks in a text.
TEST(IcalendarText, LineBreaksAreEscaped) {
  const std::string text =
      with_description("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.");
  EXPECT_EQ(raw_value(text, "DESCRIPTION"),
            "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
}

// CT-03, section 3.3.11: backslash, semicolon, comma and line break; never colon nor quote.
TEST(IcalendarText, EscapesWhatTheStandardNamesAndNothingElse) {
  const std::string text = with_description("a,b;c\\d:e\"f\nx");
  EXPECT_EQ(raw_value(text, "DESCRIPTION"), "a\\,b\\;c\\\\d:e\"f\\nx");
}

// CT-04, section 3.1: lines of at most 75 octets, folded between characters only.
TEST(IcalendarText, FoldsBetweenCharactersOfEverySize) {
  const std::string family =
      "\xF0\x9F\x91\xA8\xE2\x80\x8D\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7";
  for (const std::string& input : {repeated("\xC3\xA9", 60), repeated("\xE2\x82\xAC", 40),
                                   repeated("\xF0\x9F\xA5\xAB", 40), repeated(family, 20)}) {
    for (int shift = 0; shift < 12; ++shift) {
      const std::string description = std::string(static_cast<std::size_t>(shift), 'a') + input;
      const std::string text = with_description(description);
      for (const std::string& line : physical_lines(text)) {
        EXPECT_LE(line.size(), 75U);
        EXPECT_TRUE(is_utf8(line)) << line;
      }
      EXPECT_EQ(unescaped(raw_value(text, "DESCRIPTION")), description);
    }
  }
}

// CT-05, section 3.1, note: a fold inside a character must be survived on reading.
TEST(IcalendarText, AFoldInsideACharacterIsReadBack) {
  const std::string whole = "BEGIN:VEVENT\r\nSUMMARY:cr\xC3\r\n \xA8me\r\nEND:VEVENT\r\n";
  EXPECT_EQ(unfolded(whole).at(1), "SUMMARY:cr\xC3\xA8me");
  const ical::Component parsed(icalparser_parse_string(whole.c_str()));
  ASSERT_TRUE(parsed);
  EXPECT_STREQ(icalcomponent_get_summary(parsed.get()), "cr\xC3\xA8me");
}

// CT-06, sections 3.1 and 3.3.11: an escape at the fold comes back whole.
TEST(IcalendarText, EscapesAtTheFoldComeBack) {
  for (std::size_t padding = 50; padding <= 75; ++padding) {
    const std::string description = std::string(padding, 'a') + "\n\xE2\x80\xA2 b, c; d \\ e";
    const std::string text = with_description(description);
    for (const std::string& line : physical_lines(text)) {
      EXPECT_LE(line.size(), 75U);
      EXPECT_TRUE(is_utf8(line));
    }
    EXPECT_EQ(unescaped(raw_value(text, "DESCRIPTION")), description);
  }
}

// CT-07, section 3.3.11: a name cannot end the calendar or open an event.
TEST(IcalendarText, ANameCannotBreakOut) {
  CalendarEvent made = event();
  made.summary = "Rice, dry; \"XL\" \\ BEGIN:VEVENT\r\nEND:VCALENDAR";
  made.description = made.summary;
  const std::string text = written(made);
  int begins = 0;
  int ends = 0;
  for (const std::string& line : physical_lines(text)) {
    begins += line == "BEGIN:VEVENT" ? 1 : 0;
    ends += line == "END:VCALENDAR" ? 1 : 0;
  }
  EXPECT_EQ(begins, 1);
  EXPECT_EQ(ends, 1);
  EXPECT_EQ(unescaped(raw_value(text, "SUMMARY")),
            "Rice, dry; \"XL\" \\ BEGIN:VEVENT END:VCALENDAR");
  EXPECT_EQ(unescaped(raw_value(text, "DESCRIPTION")),
            "Rice, dry; \"XL\" \\ BEGIN:VEVENT\nEND:VCALENDAR");
  const ical::Component parsed(icalparser_parse_string(text.c_str()));
  ASSERT_TRUE(parsed);
  EXPECT_EQ(icalcomponent_count_components(parsed.get(), ICAL_VEVENT_COMPONENT), 1);
  EXPECT_EQ(icalcomponent_count_errors(parsed.get()), 0);
}

struct Unfit {
  std::string input;
  std::string output;
};

// CT-08, section 3.3.11 (TSAFE-CHAR) and RFC 3629 section 4: control characters and what is no
// UTF-8 go.
TEST(IcalendarText, UnfitCharactersAreRemoved) {
  const std::vector<Unfit> cases{
      {std::string("a\0b", 3), "ab"},
      {"a\x01\x08\x0C\x1B[31mb\x7F", "a[31mb"},
      {"a\xFF\xFE"
       "b",
       "ab"},
      {"a\xED\xA0\xBD"
       "b",
       "ab"},  // a lone surrogate
      {"a\xC0\xAF"
       "b",
       "ab"},  // "/" in too many octets
      {"a\xF4\x90\x80\x80"
       "b",
       "ab"},  // above U+10FFFF
      {"a\xC3", "a"},
      {"\xEF\xBB\xBF"
       "a",
       "a"},  // byte order mark
      {"a\xC2\x9B"
       "b",
       "ab"},  // a C1 control
      {"a\xE2\x80\xA8"
       "b\xC2\x85"
       "c\r\nd\re",
       "a\nb\nc\nd\ne"},
      {"a\tb", "a\tb"},
      {"\xC3\xA9\xE2\x82\xAC\xF0\x9F\xA5\xAB", "\xC3\xA9\xE2\x82\xAC\xF0\x9F\xA5\xAB"},
  };
  for (const Unfit& each : cases) {
    EXPECT_EQ(unescaped(raw_value(with_description(each.input), "DESCRIPTION")), each.output);
  }
}

// Section 5, item 4: a reader may cut SUMMARY at 255 octets; ours ends before, at a character.
TEST(IcalendarText, SummariesStayBelowTheReadersCut) {
  for (int shift = 0; shift < 4; ++shift) {
    CalendarEvent made = event();
    made.summary =
        std::string(static_cast<std::size_t>(shift), 'a') + repeated("\xF0\x9F\xA5\xAB", 100);
    const std::string summary = unescaped(raw_value(written(made), "SUMMARY"));
    EXPECT_LE(summary.size(), 255U);
    EXPECT_GE(summary.size(), 250U);
    EXPECT_TRUE(is_utf8(summary));
  }
  CalendarEvent made = event();
  made.summary = std::string(255, 'a');
  EXPECT_EQ(raw_value(written(made), "SUMMARY"), made.summary);
}

// CC-01, section 3.6.1: the RFC's own festival, 28 June to 8 July 2007 inclusive.
TEST(IcalendarText, TheEndIsTheDayAfterTheLast) {
  CalendarEvent made = event();
  made.begin = parse_iso_day("2007-06-28").value();
  made.end = parse_iso_day("2007-07-08").value() + Days(1);
  const std::string text = written(made);
  EXPECT_NE(text.find("DTSTART;VALUE=DATE:20070628\r\n"), std::string::npos);
  EXPECT_NE(text.find("DTEND;VALUE=DATE:20070709\r\n"), std::string::npos);
}

// CC-02, section 3.6.1: a day without an end lasts one day; we write the same day with its end.
TEST(IcalendarText, OneDayIsAsLongWithItsEndAsWithout) {
  const std::string bare = "BEGIN:VEVENT\r\nDTSTART;VALUE=DATE:20260307\r\nEND:VEVENT\r\n";
  const ical::Component without(icalparser_parse_string(bare.c_str()));
  const ical::Component with(icalparser_parse_string(written(event()).c_str()));
  ASSERT_TRUE(without);
  ASSERT_TRUE(with);
  icalcomponent* inner = icalcomponent_get_first_component(with.get(), ICAL_VEVENT_COMPONENT);
  EXPECT_EQ(icaldurationtype_as_int(icalcomponent_get_duration(without.get())), 86'400);
  EXPECT_EQ(icaldurationtype_as_int(icalcomponent_get_duration(inner)), 86'400);
}

}  // namespace
}  // namespace larderloop
