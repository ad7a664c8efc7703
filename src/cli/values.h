// values.h - the words that people type for dates, amounts and lists, read strictly and without
// regard to the locale. Errors:   kBadData with the accepted spellings as hint; `what` names the
// value ("--born", "AMOUNT").
#pragma once

#include "larderloop/core/amount.h"
#include "larderloop/core/date.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::cli {

// "2027-03-15", "today", "yesterday", "tomorrow", "+3d", "-2w".
[[nodiscard]] Result<Day> read_day(const std::string& what, const std::string& text, Day today);
// A whole number in [least, most], digits only.
[[nodiscard]] Result<std::int64_t> read_count(const std::string& what, const std::string& text,
                                              std::int64_t least, std::int64_t most);
// "4.50", "4", at most 1'000'000: to cents.
[[nodiscard]] Result<std::int64_t> read_money(const std::string& what, const std::string& text);
// "2", "0.5", "1.5", "half": servings.
[[nodiscard]] Result<HalfServings> read_servings(const std::string& what, const std::string& text);
// The same, or 0.
[[nodiscard]] Result<HalfServings> read_share(const std::string& what, const std::string& text);
// "500g", "1.5kg" to grams; "330ml", "1.5l" to millilitres; "250kcal" or "250" to kilocalories. A
// bare number of grams or millilitres is refused.
[[nodiscard]] Result<std::int64_t> read_mass(const std::string& what, const std::string& text);
[[nodiscard]] Result<std::int64_t> read_volume(const std::string& what, const std::string& text);
[[nodiscard]] Result<std::int64_t> read_energy(const std::string& what, const std::string& text);
// "SHOP:UNITS:PRICE", as "Corner shop:6:8.40".
[[nodiscard]] Result<Pack> read_pack(const std::string& what, const std::string& text);

// One of a fixed list of words; '-' and '_' are the same. Says what is accepted and what was nearly
// meant.
template <class Value, class Parse>
[[nodiscard]] Result<Value> read_word(const std::string& what, const std::string& text, Parse parse,
                                      const std::vector<std::string>& accepted);

[[nodiscard]] std::string underscored(std::string_view text);  // "use-by" -> "use_by"
[[nodiscard]] std::string dashed(std::string_view text);       // "use_by" -> "use-by"
[[nodiscard]] Error unknown_word(const std::string& what, const std::string& text,
                                 const std::vector<std::string>& accepted);
// The words with single spaces between them.
[[nodiscard]] std::string joined_words(const std::vector<std::string>& words);

template <class Value, class Parse>
Result<Value> read_word(const std::string& what, const std::string& text, Parse parse,
                        const std::vector<std::string>& accepted) {
  if (const auto value = parse(underscored(text))) return *value;
  return fail(unknown_word(what, text, accepted));
}

// The dashed names of all values of an enumeration.
template <class Values, class Name>
[[nodiscard]] std::vector<std::string> names_of(const Values& values, Name name) {
  std::vector<std::string> all;
  for (const auto& value : values) all.push_back(dashed(name(value)));
  return all;
}

}  // namespace larderloop::cli
