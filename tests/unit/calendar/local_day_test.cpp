#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Instant at(std::string_view text) {
  return parse_iso_instant(text).value();
}

std::string day(std::string_view instant, std::string_view zone) {
  const auto found = local_day(at(instant), zone);
  return found ? iso_day(*found) : found.error().what;
}

// Offsets as the IANA time zone database has them: Kiritimati +14, Los Angeles -8 in winter and -7
// in summer.
TEST(LocalDay, IsTheDayOnTheWallOfTheZone) {
  EXPECT_EQ(day("2026-03-07T09:59:59Z", "Pacific/Kiritimati"), "2026-03-07");
  EXPECT_EQ(day("2026-03-07T10:00:00Z", "Pacific/Kiritimati"), "2026-03-08");
  EXPECT_EQ(day("2026-01-10T07:59:59Z", "America/Los_Angeles"), "2026-01-09");
  EXPECT_EQ(day("2026-01-10T08:00:00Z", "America/Los_Angeles"), "2026-01-10");
  EXPECT_EQ(day("2026-07-10T06:59:59Z", "America/Los_Angeles"), "2026-07-09");
  EXPECT_EQ(day("2026-07-10T07:00:00Z", "America/Los_Angeles"), "2026-07-10");
  EXPECT_EQ(day("2026-03-07T23:59:59Z", "UTC"), "2026-03-07");
}

TEST(LocalDay, WithoutAZoneTakesTheSystems) {
  const Instant noon = at("2026-03-07T12:00:00Z");
  const auto found = local_day(noon, "");
  ASSERT_TRUE(found) << found.error().what;
  EXPECT_LE(days_between(parse_iso_day("2026-03-07").value(), *found), 1);
  EXPECT_GE(days_between(parse_iso_day("2026-03-07").value(), *found), 0);
}

struct Unknown {
  std::string zone;
  std::string hint;
};

TEST(LocalDay, NamesTheZoneThatWasMeant) {
  const std::vector<Unknown> cases{
      {"europe/paris", "did you mean 'Europe/Paris'?"},
      {"Paris", "did you mean 'Europe/Paris'?"},
      {"New York", "did you mean 'America/New_York'?"},
      {"Pacific/Aukland", "did you mean 'Pacific/Auckland'?"},
      {"on the moon over there", "name it by continent and city, like 'Pacific/Auckland'"},
      {"../../etc/passwd-of-nobody", "name it by continent and city, like 'Pacific/Auckland'"},
  };
  for (const Unknown& each : cases) {
    const auto found = local_day(at("2026-03-07T12:00:00Z"), each.zone);
    ASSERT_FALSE(found) << each.zone;
    EXPECT_EQ(found.error().kind, ErrorKind::kConfig);
    EXPECT_NE(found.error().what.find("'" + each.zone + "'"), std::string::npos);
    EXPECT_EQ(found.error().next_step, each.hint) << each.zone;
  }
}

}  // namespace
}  // namespace larderloop
