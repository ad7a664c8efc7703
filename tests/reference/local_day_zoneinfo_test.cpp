// The local day in every zone of the system against Python's zoneinfo (PEP 615), a reader of the
// same files that shares no code with ours. The instants are every 97 hours of a few years, among
// them years behind the tables of the files, where their rules hold.
#include "calendar/zone_file.h"
#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <memory>
#include <string>

namespace larderloop {
namespace {

constexpr const char* kCommand = R"(/usr/bin/python3 -c '
import datetime, sys, zoneinfo
for name in sys.stdin.read().split():
    zone = zoneinfo.ZoneInfo(name)
    for year in (1975, 2026, 2027, 2028, 2037, 2038, 2099):
        at = datetime.datetime(year, 1, 1, tzinfo=datetime.timezone.utc)
        while at.year == year:
            print(name, at.strftime("%Y-%m-%dT%H:%M:%SZ"), at.astimezone(zone).date().isoformat())
            at += datetime.timedelta(hours=97)
' <)";

struct PipeClose {
  void operator()(std::FILE* pipe) const noexcept { pclose(pipe); }
};
struct FileClose {
  void operator()(std::FILE* file) const noexcept { std::fclose(file); }
};

TEST(LocalDayZoneinfo, IsTheSameInEveryZone) {
  const std::string list = ::testing::TempDir() + "larderloop_zones.txt";
  const std::vector<std::string> zones = zone_names();
  ASSERT_GT(zones.size(), 300U);
  {
    const std::unique_ptr<std::FILE, FileClose> file(std::fopen(list.c_str(), "w"));
    ASSERT_TRUE(file);
    for (const std::string& zone : zones) std::fprintf(file.get(), "%s\n", zone.c_str());
  }
  const std::unique_ptr<std::FILE, PipeClose> pipe(
      popen((kCommand + ("'" + list + "'")).c_str(), "r"));
  ASSERT_TRUE(pipe);
  std::size_t seen = 0;
  std::array<char, 64> zone{};
  std::array<char, 32> instant{};
  std::array<char, 16> day{};
  while (std::fscanf(pipe.get(), "%63s %31s %15s", zone.data(), instant.data(), day.data()) == 3) {
    const auto ours = local_day(parse_iso_instant(instant.data()).value(), zone.data());
    ASSERT_TRUE(ours) << zone.data() << ": " << ours.error().what;
    ASSERT_EQ(iso_day(*ours), day.data()) << zone.data() << " at " << instant.data();
    ++seen;
  }
  std::remove(list.c_str());
  EXPECT_GT(seen, zones.size() * 500);
}

}  // namespace
}  // namespace larderloop
