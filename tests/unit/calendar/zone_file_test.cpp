#include "calendar/zone_file.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

Instant at(std::string_view text) {
  return parse_iso_instant(text).value();
}

struct RuleCase {
  std::string rule;
  std::string instant;
  int minutes_east;
};

// RFC 8536, section 3.3.1, has the rules of Greenland, of half a day's summer time before the clock
// is changed, and of summer time all year. The others are those at the end of the files of the
// named zones (IANA time zone database).
TEST(OffsetByRule, ChangesWhereTheRuleSays) {
  const std::vector<RuleCase> cases{
      {"UTC0", "2050-06-01T00:00:00Z", 0},
      {"<+0545>-5:45", "2050-06-01T00:00:00Z", 345},  // Asia/Kathmandu
      // Europe/Berlin: from 01:00 UTC on the last Sunday of March to the same of October.
      {"CET-1CEST,M3.5.0,M10.5.0/3", "2027-03-28T00:59:59Z", 60},
      {"CET-1CEST,M3.5.0,M10.5.0/3", "2027-03-28T01:00:00Z", 120},
      {"CET-1CEST,M3.5.0,M10.5.0/3", "2027-10-31T00:59:59Z", 120},
      {"CET-1CEST,M3.5.0,M10.5.0/3", "2027-10-31T01:00:00Z", 60},
      // Pacific/Auckland: summer over the turn of the year.
      {"NZST-12NZDT,M9.5.0,M4.1.0/3", "2027-01-01T00:00:00Z", 780},
      {"NZST-12NZDT,M9.5.0,M4.1.0/3", "2027-04-03T13:59:59Z", 780},
      {"NZST-12NZDT,M9.5.0,M4.1.0/3", "2027-04-03T14:00:00Z", 720},
      {"NZST-12NZDT,M9.5.0,M4.1.0/3", "2027-12-31T23:00:00Z", 780},
      // Australia/Lord_Howe: half an hour.
      {"<+1030>-10:30<+11>-11,M10.1.0,M4.1.0", "2027-07-01T00:00:00Z", 630},
      {"<+1030>-10:30<+11>-11,M10.1.0,M4.1.0", "2027-01-01T00:00:00Z", 660},
      // America/Nuuk in RFC 8536: on the Saturday before the last Sunday, at 22:00 local.
      {"<-03>3<-02>,M3.5.0/-2,M10.5.0/-1", "2027-03-28T00:59:59Z", -180},
      {"<-03>3<-02>,M3.5.0/-2,M10.5.0/-1", "2027-03-28T01:00:00Z", -120},
      {"EST5EDT,0/0,J365/25", "2027-01-01T05:00:00Z", -240},  // summer time all year
      {"EST5EDT,0/0,J365/25", "2027-12-31T23:30:00Z", -240},
      // Day 60 without leap days is the first of March, day 59 from zero is 29 February in a leap
      // year.
      {"AAA0BBB,J60/0,J300/0", "2028-02-29T23:59:59Z", 0},
      {"AAA0BBB,J60/0,J300/0", "2028-03-01T00:00:00Z", 60},
      {"AAA0BBB,59/0,J300/0", "2028-02-28T23:59:59Z", 0},
      {"AAA0BBB,59/0,J300/0", "2028-02-29T00:00:00Z", 60},
  };
  for (const RuleCase& each : cases) {
    const auto offset = offset_by_rule(each.rule, at(each.instant));
    ASSERT_TRUE(offset) << each.rule;
    EXPECT_EQ(*offset, minutes(each.minutes_east)) << each.rule << " at " << each.instant;
  }
}

TEST(OffsetByRule, NeedsAWholeRule) {
  for (const char* rule :
       {"", "AB0", "CET", "<+03-3", "CET-1CEST", "CET-1CEST,M3.5.0", "CET-1CEST,M3.5.0,M13.1.0",
        "CET-1CEST,M3.6.0,M10.5.0", "CET-1CEST,M3.5.7,M10.5.0", "CET-1CEST,J0,J300",
        "CET-1CEST,0,366", "CET-168", "CET-1:60", "CET-1CEST,M3.5.0,M10.5.0/3x"}) {
    EXPECT_FALSE(offset_by_rule(rule, at("2027-06-01T00:00:00Z"))) << rule;
  }
}

TEST(OffsetInFile, OfADamagedFileIsAbsent) {
  const auto whole = zone_file("Europe/Berlin");
  ASSERT_TRUE(whole);
  const Instant now = at("2027-07-01T00:00:00Z");
  ASSERT_EQ(offset_in_file(*whole, now), hours(2));
  // The rule at the end is used after the last change that the file lists, so a cut there is a cut
  // for late instants.
  const Instant late = at("2090-07-01T00:00:00Z");
  ASSERT_EQ(offset_in_file(*whole, late), hours(2));
  for (std::size_t size = 0; size < whole->size(); ++size) {
    EXPECT_FALSE(offset_in_file(std::string_view(*whole).substr(0, size), late)) << size;
  }
  std::string changed = *whole;
  changed[0] = 'X';
  EXPECT_FALSE(offset_in_file(changed, now));
  changed = *whole;
  changed[24] = '\x7f';  // a count beyond the end of the file
  EXPECT_FALSE(offset_in_file(changed, now));
}

TEST(ZoneFile, IsOneOfAZoneOnly) {
  EXPECT_TRUE(zone_file(""));
  for (const char* name :
       {"Europe", "zone.tab", "/etc/localtime", "../zoneinfo/Europe/Berlin", "right/Europe/Berlin",
        "posix/Europe/Berlin", "leapseconds", "Europe/berlin", "Europe/Berlin/"}) {
    EXPECT_FALSE(zone_file(name)) << name;
  }
  const std::vector<std::string> names = zone_names();
  EXPECT_TRUE(std::binary_search(names.begin(), names.end(), "Pacific/Auckland"));
  EXPECT_FALSE(std::binary_search(names.begin(), names.end(), "right/Pacific/Auckland"));
}

}  // namespace
}  // namespace larderloop
