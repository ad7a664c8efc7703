#include "calendar/zone_file.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>

namespace larderloop {
namespace {

constexpr const char* kFolder = "/usr/share/zoneinfo/";
constexpr const char* kSystemZone = "/etc/localtime";
constexpr std::string_view kMagic = "TZif";
constexpr std::size_t kHeaderSize = 44;
// Copies of all zones beside the zones; those of "right" count leap seconds, which the clock does
// not.
constexpr std::string_view kNoZones[] = {"posix", "right", "posixrules", "localtime", "Factory"};

// A number of the file: most significant byte first, two's complement.
std::int64_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
  std::uint64_t value =
      (static_cast<unsigned char>(bytes[at]) & 0x80U) != 0 ? ~std::uint64_t{0} : 0;
  for (std::size_t index = 0; index < size; ++index)
    value = value << 8U | static_cast<unsigned char>(bytes[at + index]);
  return static_cast<std::int64_t>(value);
}

// One of the two parts of a file: the first has times of 4 bytes for old readers, the second the
// same with 8.
struct Part {
  std::size_t utc_marks = 0, standard_marks = 0, leaps = 0, times = 0, types = 0, letters = 0;
  std::size_t time_size = 0;

  [[nodiscard]] std::size_t indexes_at() const { return kHeaderSize + times * time_size; }
  [[nodiscard]] std::size_t types_at() const { return indexes_at() + times; }
  [[nodiscard]] std::size_t size() const {
    return types_at() + types * 6 + letters + leaps * (time_size + 4) + standard_marks + utc_marks;
  }
};

std::optional<Part> read_part(std::string_view bytes, std::size_t time_size) {
  if (bytes.size() < kHeaderSize || bytes.substr(0, kMagic.size()) != kMagic ||
      bytes[kMagic.size()] < '2')
    return std::nullopt;
  Part part;
  part.time_size = time_size;
  std::size_t at = 20;
  for (std::size_t* count : {&part.utc_marks, &part.standard_marks, &part.leaps, &part.times,
                             &part.types, &part.letters}) {
    const std::int64_t value = number_at(bytes, at, 4);
    if (value < 0 || value > static_cast<std::int64_t>(bytes.size())) return std::nullopt;
    *count = static_cast<std::size_t>(value);
    at += 4;
  }
  if (part.types == 0 || part.size() > bytes.size()) return std::nullopt;
  return part;
}

bool is_no_zone(std::string_view name) {
  const std::string_view first = name.substr(0, name.find('/'));
  return std::find(std::begin(kNoZones), std::end(kNoZones), first) != std::end(kNoZones);
}

std::optional<std::string> zone_at(const std::string& path) {
  std::error_code failed;
  if (!std::filesystem::is_regular_file(path, failed)) return std::nullopt;
  std::ifstream file(path, std::ios::binary);
  std::string bytes{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  if (!file || bytes.compare(0, kMagic.size(), kMagic) != 0) return std::nullopt;
  return bytes;
}

}  // namespace

std::optional<UtcOffset> offset_in_file(std::string_view bytes, Instant at) {
  const auto old_part = read_part(bytes, 4);
  if (!old_part) return std::nullopt;
  bytes.remove_prefix(old_part->size());
  const auto part = read_part(bytes, 8);
  if (!part) return std::nullopt;

  const std::int64_t moment = at.time_since_epoch().count();
  std::size_t passed = 0;  // changes up to the moment
  while (passed < part->times && number_at(bytes, kHeaderSize + passed * 8, 8) <= moment) ++passed;
  if (passed == part->times) {
    std::string_view rule = bytes.substr(part->size());
    if (rule.size() < 2 || rule.front() != '\n' || rule.back() != '\n') return std::nullopt;
    rule = rule.substr(1, rule.size() - 2);
    if (!rule.empty()) return offset_by_rule(rule, at);
  }
  const std::size_t type =
      passed == 0 ? 0 : static_cast<unsigned char>(bytes[part->indexes_at() + passed - 1]);
  if (type >= part->types) return std::nullopt;
  return UtcOffset(number_at(bytes, part->types_at() + type * 6, 4));
}

std::optional<std::string> zone_file(std::string_view zone) {
  if (zone.empty()) return zone_at(kSystemZone);
  if (zone.front() == '/' || zone.find('.') != std::string_view::npos ||
      zone.find('\0') != std::string_view::npos || is_no_zone(zone)) {
    return std::nullopt;
  }
  return zone_at(kFolder + std::string(zone));
}

std::vector<std::string> zone_names() {
  std::vector<std::string> names;
  std::error_code failed;
  const std::filesystem::path folder(kFolder);
  std::filesystem::recursive_directory_iterator each(folder, failed);
  for (const std::filesystem::recursive_directory_iterator end; !failed && each != end;
       each.increment(failed)) {
    std::string name = each->path().lexically_relative(folder).string();
    if (is_no_zone(name)) {
      each.disable_recursion_pending();
    } else if (zone_file(name)) {
      names.push_back(std::move(name));
    }
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace larderloop
