#include "larderloop/calendar/rule.h"
#include "larderloop/core/validate.h"

#include <date/tz.h>

#include <stdexcept>
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
std::string meant(std::string_view zone) {
  std::vector<std::string> names;
  for (const date::time_zone& each : date::get_tzdb().zones) {
    if (small(each.name()) == small(zone)) return each.name();
    names.push_back(each.name());
  }
  for (const std::string& each : names) {
    if (city(each) == city(zone)) return each;
  }
  return nearest(zone, names);
}

tl::unexpected<Error> unknown(std::string_view zone) {
  std::string name;
  try {
    name = meant(zone);
  } catch (const std::exception&) {
    return fail(ErrorKind::kConfig, "the system's time-zone files cannot be read",
                "install the package tzdata");
  }
  return fail(ErrorKind::kConfig, "the time zone '" + std::string(zone) + "' is not known",
              name.empty() ? "name it by continent and city, like 'Pacific/Auckland'"
                           : "did you mean '" + name + "'?");
}

}  // namespace

Result<Day> local_day(Instant at, std::string_view zone) {
  try {
    const date::time_zone* where =
        zone.empty() ? date::current_zone() : date::locate_zone(std::string(zone));
    return date::floor<date::days>(where->to_local(at));
  } catch (const std::exception&) {
    if (!zone.empty()) return unknown(zone);
    return fail(ErrorKind::kConfig, "the system's time zone cannot be read",
                "set TZ, for example TZ=Pacific/Auckland");
  }
}

}  // namespace larderloop
