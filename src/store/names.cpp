#include "store/names.h"

#include <array>
#include <cstddef>

namespace larderloop::store {
namespace {

constexpr std::array<std::string_view, 2> kDeclaredWords{"may_contain", "contains"};
constexpr std::array<std::string_view, 3> kRotateWords{"auto", "yes", "no"};
constexpr std::array<std::string_view, 7> kWeekdayWords{
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};

template <class Enum, std::size_t kSize>
std::optional<Enum> parse(const std::array<std::string_view, kSize>& words, std::string_view word) {
  for (std::size_t i = 0; i < kSize; ++i) {
    if (words[i] == word) return static_cast<Enum>(i);
  }
  return std::nullopt;
}

template <class Enum, std::size_t kSize>
std::string_view word_of(const std::array<std::string_view, kSize>& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}

}  // namespace

std::string_view declared_word(Declared declared) {
  return word_of(kDeclaredWords, declared);
}
std::optional<Declared> parse_declared(std::string_view word) {
  return parse<Declared>(kDeclaredWords, word);
}
std::string_view rotate_word(Rotate rotate) {
  return word_of(kRotateWords, rotate);
}
std::optional<Rotate> parse_rotate(std::string_view word) {
  return parse<Rotate>(kRotateWords, word);
}
std::string_view weekday_word(Weekday weekday) {
  return word_of(kWeekdayWords, weekday);
}
std::optional<Weekday> parse_weekday_word(std::string_view word) {
  return parse<Weekday>(kWeekdayWords, word);
}

}  // namespace larderloop::store
