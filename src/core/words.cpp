#include "larderloop/core/words.h"

namespace larderloop {
namespace {

bool ends_with(std::string_view word, std::string_view end) {
  return word.size() >= end.size() && word.substr(word.size() - end.size()) == end;
}

std::string servings_words(std::int64_t halves) {
  if (halves == 1) return "half a serving";
  std::string number = std::to_string(halves / 2) + (halves % 2 == 0 ? "" : ".5");
  return number + (halves == 2 ? " serving" : " servings");
}

// A decimal fraction of thousandths without trailing zeros: 1200 -> "1.2".
std::string thousandths(std::int64_t value) {
  std::string text = std::to_string(value / 1000);
  std::string rest = std::to_string(1000 + value % 1000).substr(1);
  while (!rest.empty() && rest.back() == '0') rest.pop_back();
  return rest.empty() ? text : text + "." + rest;
}

}  // namespace

std::string plural(std::string_view word, std::int64_t count) {
  std::string text(word);
  if (count == 1 || count == -1 || text.empty()) return text;
  if (ends_with(word, "loaf")) return text.substr(0, text.size() - 1) + "ves";
  for (const std::string_view end : {"s", "x", "z", "ch", "sh"}) {
    if (ends_with(word, end)) return text + "es";
  }
  if (ends_with(word, "y") && text.size() > 1 && std::string_view("aeiou").find(text[text.size() - 2]) == std::string_view::npos) {
    return text.substr(0, text.size() - 1) + "ies";
  }
  return text + "s";
}

std::string units_words(const Food& food, HalfServings amount) {
  if (amount.halves() < 0) return "minus " + units_words(food, HalfServings(-amount.halves()));
  const std::int64_t units = amount.whole_units(food.servings);
  const std::int64_t rest = amount.halves() - HalfServings::units(units, food.servings).halves();
  if (units == 0 && rest == 0) return "no " + plural(food.unit, 0);
  std::string text;
  if (units > 0) text = std::to_string(units) + " " + plural(food.unit, units);
  if (rest == 0) return text;
  return text.empty() ? servings_words(rest) : text + " and " + servings_words(rest);
}

std::string money_words(std::int64_t cents, std::string_view currency) {
  const std::int64_t size = cents < 0 ? -cents : cents;
  return std::string(cents < 0 ? "-" : "") + std::to_string(size / 100) + "." +
         std::to_string(100 + size % 100).substr(1) + " " + std::string(currency);
}

std::string mass_words(std::int64_t grams) {
  return grams < 1000 ? std::to_string(grams) + " g" : thousandths(grams) + " kg";
}

std::string list_words(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t index = 0; index < names.size(); ++index) {
    if (index > 0) text += index + 1 == names.size() ? " and " : ", ";
    text += names[index];
  }
  return text;
}

}  // namespace larderloop
