#include "larderloop/calendar/ics.h"

#include <uuid/uuid.h>

#include <array>

namespace larderloop {
namespace {

constexpr std::size_t kTextSize = 36;

bool parse(std::string_view text, uuid_t& id) {
  return text.size() == kTextSize &&
         uuid_parse_range(text.data(), text.data() + text.size(), id) == 0;
}

std::string words(const uuid_t& id) {
  std::array<char, kTextSize + 1> text{};
  uuid_unparse_lower(id, text.data());
  return std::string(text.data(), kTextSize);
}

}  // namespace

std::string uuid_v5(std::string_view space, std::string_view name) {
  uuid_t outer;
  if (!parse(space, outer)) return {};
  uuid_t id;
  uuid_generate_sha1(id, outer, name.data(), name.size());
  return words(id);
}

std::string random_uuid() {
  uuid_t id;
  uuid_generate_random(id);
  return words(id);
}

bool is_uuid(std::string_view text) {
  uuid_t id;
  return parse(text, id);
}

}  // namespace larderloop
