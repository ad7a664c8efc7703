#include "intake/names.h"
#include "intake/read_sections.h"

#include <fmt/format.h>

namespace larderloop::intake {
namespace {

constexpr std::int64_t kMaxHalves = 2'000'000'000;  // amount.h

void read_declared(Reader& in, std::string_view name, Declared declared, Statement& out) {
  in.each(name, Need::kRequired, [&](const JsonNode& node, const Path& path) {
    auto key = read_text(node, path, in.findings());
    if (!key) return;
    const auto [at, added] = out.declared.emplace(std::move(*key), declared);
    if (!added) {
      in.findings().add(path, &node,
                        at->second == declared
                            ? fmt::format("'{}' stands there twice", at->first)
                            : fmt::format("'{}' is both in contains and in may_contain", at->first),
                        at->second == declared ? "keep one of the two"
                                               : "what the food contains stands in contains only");
    }
  });
}

}  // namespace

UnitSizes unit_sizes(const Household& household) {
  std::map<FoodKey, std::int64_t> servings;
  for (const Food& food : household.foods) servings.emplace(food.key, food.servings);
  UnitSizes out;
  for (const Lot& lot : household.lots) {
    const auto found = servings.find(lot.food);
    const bool usable =
        found != servings.end() && found->second >= 1 && found->second <= kMaxServingsPerUnit;
    out.emplace(lot.id, usable ? found->second : 1);
  }
  return out;
}

std::optional<Statement> read_statement(Reader& in, std::string_view name) {
  const JsonNode* node = in.member(name, Need::kOptional);
  if (node == nullptr) return std::nullopt;
  const Path path(in.path(), name);
  Reader label(*node, path, in.findings(), "a label");
  Statement out;
  read_declared(label, "contains", Declared::kContains, out);
  read_declared(label, "may_contain", Declared::kMayContain, out);
  label.set_of("suits", out.suits, diet_names());
  label.text("read_by", out.read_by, Need::kRequired);
  label.day("read_on", out.read_on);
  label.finish();
  return out;
}

std::optional<DateMark> read_mark(Reader& in, std::string_view name, Need need) {
  const JsonNode* node = in.member(name, need);
  if (node == nullptr) return std::nullopt;
  const Path path(in.path(), name);
  Reader mark(*node, path, in.findings(), "a date mark");
  DateMark out;
  mark.text("text", out.text);
  mark.one_of("kind", out.kind, mark_kind_names(), Need::kRequired);
  mark.one_of("precision", out.precision, precision_names());
  mark.day("day", out.day);
  if (mark.is_object() && mark.has("kind")) {
    if (out.kind != MarkKind::kNone && !mark.has("day")) {
      mark.fault(fmt::format("a date mark of the kind '{}' needs the member 'day'",
                             name_of(out.kind, mark_kind_names())),
                 "add \"day\", the last day that the printed date stands for");
    }
  }
  mark.finish();
  return out;
}

void read_stock_key(Reader& in, StockKey& at) {
  in.id("lot", at.lot);
  in.key("place", at.place);
  in.day("opened_on", at.opened_on);
}

void read_amount(Reader& in, const UnitSizes& sizes, LotId lot, Need need, HalfServings& out) {
  const JsonNode* units = in.member("units", Need::kOptional);
  const JsonNode* halves = in.member("half_servings", Need::kOptional);
  if (!in.is_object()) return;
  if (units != nullptr && halves != nullptr) {
    in.fault("the amount is there twice, in 'units' and in 'half_servings'",
             "keep units for whole packages, half_servings for anything else");
    return;
  }
  if (units == nullptr && halves == nullptr) {
    if (need == Need::kRequired) {
      in.fault("the amount is missing",
               "add \"units\" for whole packages or \"half_servings\" for anything else");
    }
    return;
  }
  if (units != nullptr) {
    const Path path(in.path(), "units");
    if (const auto count = read_whole(*units, path, in.findings(), 0, kMaxUnits)) {
      const auto size = sizes.find(lot);
      out = HalfServings::units(*count, size == sizes.end() ? 1 : size->second);
    }
    return;
  }
  const Path path(in.path(), "half_servings");
  if (const auto count = read_whole(*halves, path, in.findings(), 0, kMaxHalves)) {
    out = HalfServings(*count);
  }
}

}  // namespace larderloop::intake
