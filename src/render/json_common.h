// json_common.h - the envelope and the small values of every JSON output. Keys are snake_case,
// absent values are null.
#pragma once

#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::json {

using Json = nlohmann::ordered_json;

// {"schema":"larderloop.<name>/1","as_of":"2027-03-01","data":..}, two spaces deep, with a line
// end.
[[nodiscard]] std::string document(std::string_view name, Day as_of, Json data);
// The same form without the envelope; bytes that are no UTF-8 are replaced.
[[nodiscard]] std::string text_of(const Json& value);

[[nodiscard]] Json day(const std::optional<Day>& value);
[[nodiscard]] Json number(const std::optional<std::int64_t>& value);
// "" is null.
[[nodiscard]] Json text_or_null(std::string_view value);
// {"value":"2.5","unit":"serving"}: exact, as text.
[[nodiscard]] Json servings(HalfServings amount);
// {"value":"500","unit":"g"}; null when absent.
[[nodiscard]] Json quantity(const std::optional<std::int64_t>& value, std::string_view unit);
// {"value":"4.50","unit":"EUR"}
[[nodiscard]] Json money(std::int64_t cents, std::string_view currency);
// {"lot":17,"place":"bag-mira","opened_on":null}
[[nodiscard]] Json stock_key(const StockKey& at);
[[nodiscard]] Json mark(const DateMark& value);
[[nodiscard]] Json statement(const std::optional<Statement>& value);
// {"person":"jon","name":"Jon","reason":"contains","detail":"sesame","words":"the label says it
// contains sesame"}
[[nodiscard]] Json refusal(const Household& household, const PersonRefusal& value);

template <class List>
[[nodiscard]] Json keys(const List& list) {
  Json all = Json::array();
  for (const auto& each : list) all.push_back(each.str());
  return all;
}

}  // namespace larderloop::json
