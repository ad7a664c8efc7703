#include "intake/write_sections.h"

namespace larderloop::intake {

JsonNode mark_node(const DateMark& mark) {
  ObjectWriter out;
  out.text("text", mark.text)
      .add("kind", std::string_view(name_of(mark.kind, mark_kind_names())))
      .one_of("precision", mark.precision, precision_names(), Precision::kDay)
      .maybe("day", mark.day);
  return out.done();
}

namespace {

// `contains` and `may_contain` are always there: an empty list says that the label was read and
// names nothing.
JsonNode declared_node(const Statement& label, Declared declared) {
  JsonNode node;
  node.type = JsonType::kList;
  for (const auto& [key, how] : label.declared) {
    if (how == declared) node.items.push_back(text_node(key));
  }
  return node;
}

}  // namespace

std::optional<JsonNode> statement_node(const std::optional<Statement>& label) {
  if (!label) return std::nullopt;
  ObjectWriter out;
  out.add("contains", declared_node(*label, Declared::kContains))
      .add("may_contain", declared_node(*label, Declared::kMayContain))
      .set_of("suits", label->suits, diet_names())
      .add("read_by", std::string_view(label->read_by))
      .add("read_on", label->read_on);
  return out.done();
}

void write_stock_key(ObjectWriter& out, const StockKey& at) {
  out.add("lot", at.lot).add("place", at.place).maybe("opened_on", at.opened_on);
}

void write_amount(ObjectWriter& out, const UnitSizes& sizes, LotId lot, HalfServings amount) {
  const auto size = sizes.find(lot);
  const std::int64_t unit = 2 * (size == sizes.end() ? 1 : size->second);
  if (amount.halves() % unit == 0 && amount.halves() / unit <= kMaxUnits) {
    out.add("units", amount.halves() / unit);
  } else {
    out.add("half_servings", amount.halves());
  }
}

}  // namespace larderloop::intake
