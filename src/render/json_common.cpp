#include "render/json_common.h"

#include "larderloop/render/json_error.h"

#include <fmt/core.h>

#include <utility>

namespace larderloop::json {
namespace {

std::string_view refusal_name(Refusal refusal) {
  switch (refusal) {
    case Refusal::kContains:
      return "contains";
    case Refusal::kMayContain:
      return "may_contain";
    case Refusal::kLabelUnknown:
      return "label_unknown";
    case Refusal::kDiet:
      return "diet";
    case Refusal::kRefuses:
      return "refuses";
    case Refusal::kWrongSpecies:
      return "wrong_species";
    case Refusal::kNotFood:
      return "not_food";
    case Refusal::kInfantFormula:
      return "infant_formula";
    case Refusal::kChoking:
      return "choking";
    case Refusal::kHoney:
      return "honey";
  }
  return "not_food";
}

}  // namespace

std::string text_of(const Json& value) {
  return value.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string document(std::string_view name, Day as_of, Json data) {
  Json all;
  all["schema"] = fmt::format("larderloop.{}/1", name);
  all["as_of"] = iso_day(as_of);
  all["data"] = std::move(data);
  return text_of(all);
}

Json day(const std::optional<Day>& value) {
  return value ? Json(iso_day(*value)) : Json(nullptr);
}

Json number(const std::optional<std::int64_t>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json text_or_null(std::string_view value) {
  return value.empty() ? Json(nullptr) : Json(value);
}

Json servings(HalfServings amount) {
  const std::int64_t halves = amount.halves();
  const std::string sign = halves < 0 ? "-" : "";
  const std::int64_t size = halves < 0 ? -halves : halves;
  return {{"value", fmt::format("{}{}{}", sign, size / 2, size % 2 == 0 ? "" : ".5")},
          {"unit", "serving"}};
}

Json quantity(const std::optional<std::int64_t>& value, std::string_view unit) {
  if (!value) return nullptr;
  return {{"value", fmt::format("{}", *value)}, {"unit", unit}};
}

Json money(std::int64_t cents, std::string_view currency) {
  return {{"value", fmt::format("{}.{:02}", cents / 100, cents % 100)}, {"unit", currency}};
}

Json stock_key(const StockKey& at) {
  return {{"lot", at.lot.value()}, {"place", at.place.str()}, {"opened_on", day(at.opened_on)}};
}

Json mark(const DateMark& value) {
  return {{"text", value.text},
          {"kind", mark_kind_name(value.kind)},
          {"precision", precision_name(value.precision)},
          {"day", day(value.day)}};
}

Json statement(const std::optional<Statement>& value) {
  if (!value) return nullptr;
  Json contains = Json::array();
  Json may_contain = Json::array();
  for (const auto& [key, declared] : value->declared) {
    (declared == Declared::kContains ? contains : may_contain).push_back(key);
  }
  Json suits = Json::array();
  for (const Diet diet : value->suits) suits.push_back(diet_name(diet));
  return {{"contains", std::move(contains)},
          {"may_contain", std::move(may_contain)},
          {"suits", std::move(suits)},
          {"read_by", value->read_by},
          {"read_on", iso_day(value->read_on)}};
}

Json refusal(const Household& household, const PersonRefusal& value) {
  const Person* person = find_person(household, value.person);
  return {{"person", value.person.str()},
          {"name", person == nullptr ? Json(nullptr) : Json(person->name)},
          {"reason", refusal_name(value.reason.refusal)},
          {"detail", text_or_null(value.reason.detail)},
          {"words", refusal_words(value.reason)}};
}

}  // namespace larderloop::json

namespace larderloop {

std::string render_error_json(const Error& error, std::string_view kind, int exit_code) {
  json::Json problems = json::Json::array();
  for (const Problem& each : error.problems) {
    problems.push_back({{"where", json::text_or_null(each.where)},
                        {"value", json::text_or_null(each.value)},
                        {"message", each.what},
                        {"hint", json::text_or_null(each.remedy)}});
  }
  json::Json all;
  all["schema"] = "larderloop.error/1";
  all["kind"] = kind;
  all["exit_code"] = exit_code;
  all["message"] = error.what;
  all["hint"] = json::text_or_null(error.next_step);
  all["problems"] = std::move(problems);
  return json::text_of(all);
}

}  // namespace larderloop
