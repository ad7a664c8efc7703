#include "calendar/zone_file.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/validate.h"

#include <string>
#include <vector>

namespace larderloop {
namespace {

std::string small(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ' ') c = '_';
  }
  return result;
}

// The last word of "America/New_York".
std::string city(std::string_view zone) {
  return small(zone.substr(zone.rfind('/') + 1));
}

// The zone that was meant: the same but for capitals, the same city, or one slip away. Empty when
// none is near.
std::string meant(std::string_view zone, const std::vector<std::string>& names) {
  for (const std::string& each : names) {
    if (small(each) == small(zone)) return each;
  }
  for (const std::string& each : names) {
    if (city(each) == city(zone)) return each;
  }
  return nearest(zone, names);
}

tl::unexpected<Error> unknown(std::string_view zone) {
  const std::vector<std::string> names = zone_names();
  if (names.empty()) {
    return fail(ErrorKind::kConfig, "the system's time-zone files cannot be read",
                "install the package tzdata");
  }
  const std::string name = meant(zone, names);
  return fail(ErrorKind::kConfig, "the time zone '" + std::string(zone) + "' is not known",
              name.empty() ? "name it by continent and city, like 'Pacific/Auckland'"
                           : "did you mean '" + name + "'?");
}

}  // namespace

Result<Day> local_day(Instant at, std::string_view zone) {
  const auto file = zone_file(zone);
  if (!file && !zone.empty()) return unknown(zone);
  const auto offset = file ? offset_in_file(*file, at) : std::nullopt;
  if (offset) return day_of(at + *offset);
  if (!zone.empty()) {
    return fail(ErrorKind::kConfig,
                "the system's file of the time zone '" + std::string(zone) + "' cannot be read",
                "install the package tzdata anew");
  }
  return fail(ErrorKind::kConfig, "the system's time zone cannot be read",
              "set TZ, for example TZ=Pacific/Auckland");
}

}  // namespace larderloop
