// sample_feeds.h - the calendar of the household of sample.h, and its words for days.
#pragma once

#include "larderloop/core/household.h"

#include <string>

namespace larderloop::testing {

inline Day day(const char* text) {
  return *parse_iso_day(text);
}
inline Instant instant(const char* text) {
  return *parse_iso_instant(text);
}

inline void add_feeds(Household& household) {
  household.feed_addresses = {
      {FeedAddressId(1), "Mira's phone", std::string(64, 'a'), PersonKey("mira"), FeedDetail::kFull,
       instant("2026-11-01T08:00:00Z"), instant("2026-11-20T08:00:00Z")},
      {FeedAddressId(3), "the \"hall\"", std::string(60, '0') + "cafe", std::nullopt,
       FeedDetail::kPrivate, instant("2026-11-20T08:00:01Z"), std::nullopt}};
  household.pushed = {
      {"https://cal.example/kit/", "0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e44", "/kit/a.ics",
       "\"1-2\"", "BEGIN:VCALENDAR\r\n"},
      {"https://cal.example/kit/", "0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e45", "/kit/b.ics", "", ""}};
  household.tasks_done = {{"0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e46", day("2026-11-21"), "Bought \u20ac"},
                          {"0b5c6a52-7d1e-5c36-9a57-3f1f2d1c8e47", day("2026-11-20"), ""}};
}

}  // namespace larderloop::testing
