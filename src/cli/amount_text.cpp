#include "cli/amount_text.h"

#include "cli/values.h"
#include "larderloop/core/amount.h"

namespace larderloop::cli {
namespace {

constexpr std::string_view kSpellings =
    "write units as 2, servings as '1.5 servings' or 'half serving', or all";

bool ends_with(const std::string& text, std::string_view end) {
  return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

std::string without_end(const std::string& text, std::string_view end) {
  std::string rest = text.substr(0, text.size() - end.size());
  while (!rest.empty() && rest.back() == ' ') rest.pop_back();
  return rest;
}

}  // namespace

Result<AmountAsked> read_amount(const std::vector<std::string>& words, std::int64_t least) {
  std::string text = joined_words(words);
  const auto unreadable = [&] {
    return fail(ErrorKind::kBadData, "cannot read the amount '" + joined_words(words) + "'",
                std::string(kSpellings));
  };
  if (text == "all") return AmountAsked{AmountUnit::kAll, 0};
  for (const std::string_view end : {std::string_view("servings"), std::string_view("serving")}) {
    if (!ends_with(text, end)) continue;
    std::string number = without_end(text, end);
    if (ends_with(number, "half a")) number = "half";
    if (number == "a" || number == "one") number = "1";
    if (number == "0" && least == 0) return AmountAsked{AmountUnit::kHalfServings, 0};
    auto servings = read_servings("the amount", number);
    if (!servings) return unreadable();
    return AmountAsked{AmountUnit::kHalfServings, servings->halves()};
  }
  for (const std::string_view end : {std::string_view("units"), std::string_view("unit")}) {
    if (ends_with(text, end)) {
      text = without_end(text, end);
      break;
    }
  }
  if (text.empty() || text.find_first_not_of("0123456789") != std::string::npos)
    return unreadable();
  auto units = read_count("the amount", text, least, kMaxUnits);
  if (!units) return fail(units.error());
  return AmountAsked{AmountUnit::kUnits, *units};
}

}  // namespace larderloop::cli
