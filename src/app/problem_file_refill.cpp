// The refill problem in JSON.
#include "app/problem_file_parts.h"

#include <algorithm>

namespace larderloop::problem_file {
namespace {

struct Known {
  Ids eaters, products, containers, lines, lots, offers;
};

void read_params(Reader& in, plan::RefillProblem& out) {
  const JsonNode* node = in.member("params", Need::kOptional);
  if (node == nullptr) return;
  const Path path(in.path(), "params");
  Reader params(*node, path, in.findings(), "the params of a refill problem");
  number(params, "variety_cap", out.variety_cap, kAmount, Need::kOptional);
  number(params, "surplus_credit_percent", out.surplus_credit_percent, {0, 100}, Need::kOptional);
  number(params, "date_cap_days", out.date_cap_days, kAmount, Need::kOptional);
  params.finish();
}

plan::RefillProduct read_product(Reader& in, Known& known) {
  plan::RefillProduct out;
  own_id(in, out.id, known.products);
  words(in, "roles", out.roles);
  words(in, "contains", out.contains);
  number(in, "kcal", out.kcal, kAmount);
  number(in, "mass", out.mass, kAmount);
  number(in, "volume", out.volume, kAmount);
  flag(in, "no_cook", out.no_cook);
  flag(in, "staple", out.staple);
  return out;
}

plan::Eater read_eater(Reader& in, Known& known) {
  plan::Eater out;
  own_id(in, out.id, known.eaters);
  tastes(in, out, known.products);
  number(in, "energy_target", out.energy_target, kAmount, Need::kOptional);
  return out;
}

plan::Container read_container(Reader& in, Known& known) {
  plan::Container out;
  own_id(in, out.id, known.containers);
  in.text("kit", out.kit);
  number(in, "mass_limit", out.mass_limit, kAmount);
  number(in, "volume_limit", out.volume_limit, kAmount);
  return out;
}

plan::RefillLine read_line(Reader& in, Known& known) {
  plan::RefillLine out;
  own_id(in, out.id, known.lines);
  reference(in, "container", out.container, known.containers, "a container");
  references(in, "eaters", out.eaters, known.eaters, "an eater");
  std::int64_t day = 0;
  number(in, "day", day, {0, 1'000'000});
  out.day = static_cast<int>(day);
  in.text("kind", out.kind);
  in.text("role", out.role, Need::kRequired);
  number(in, "units", out.units, kAmount);
  number(in, "priority", out.priority, kPositive);
  return out;
}

plan::RefillLot read_lot(Reader& in, Known& known) {
  static const intake::Names<bool> places = {{"kit", true}, {"pantry", false}};
  plan::RefillLot out;
  own_id(in, out.id, known.lots);
  reference(in, "product", out.product, known.products, "a product");
  number(in, "units", out.units, kAmount);
  number(in, "last_good_day", out.last_good_day, kDay);
  in.one_of("place", out.in_kit, places, Need::kRequired);
  if (out.in_kit) {
    reference(in, "container", out.container, known.containers, "a container");
  } else {
    reference(in, "container", out.container, known.containers, "a container", Need::kOptional);
    out.container.clear();  // where something lies in the pantry does not count
  }
  return out;
}

plan::Offer read_offer(Reader& in, Known& known) {
  plan::Offer out;
  own_id(in, out.id, known.offers);
  reference(in, "product", out.product, known.products, "a product");
  number(in, "pack_units", out.pack_units, kPositive);
  number(in, "price", out.price, kAmount);
  number(in, "last_good_day", out.last_good_day, kDay);
  number(in, "max_packs", out.max_packs, kAmount);
  return out;
}

}  // namespace

plan::RefillProblem read_refill(Reader& in) {
  plan::RefillProblem out;
  Known known;
  number(in, "today", out.today, kDay);
  number(in, "hold_until", out.hold_until, kDay);
  number(in, "budget", out.budget, kAmount);
  read_params(in, out);
  flag(in, "keep_in_place", out.keep_in_place);
  // Each list after those that it refers to.
  const auto list = [&](std::string_view name, std::string_view thing, auto& into, auto read) {
    each_object(in, name, Need::kRequired, thing,
                [&](Reader& one) { into.push_back(read(one, known)); });
    sort_by_id(into);
  };
  list("products", "a product", out.products, read_product);
  list("eaters", "an eater", out.eaters, read_eater);
  list("containers", "a container", out.containers, read_container);
  list("lines", "a line", out.lines, read_line);
  list("lots", "a lot", out.lots, read_lot);
  list("offers", "an offer", out.offers, read_offer);
  return out;
}

}  // namespace larderloop::problem_file
