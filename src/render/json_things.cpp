#include "larderloop/render/json_things.h"

#include "render/json_common.h"

#include <utility>

namespace larderloop {
namespace {

using json::Json;

template <class List, class Make>
Json array_of(const List& list, Make make) {
  Json all = Json::array();
  for (const auto& each : list) all.push_back(make(each));
  return all;
}

Json refusals_of(const Household& household, const std::vector<PersonRefusal>& list) {
  return array_of(list, [&](const PersonRefusal& each) { return json::refusal(household, each); });
}

Json person_of(const Person& person) {
  Json ratings = Json::object();
  for (const auto& [food, rating] : person.ratings) ratings[food.str()] = rating;
  Json all;
  all["person"] = person.key.str();
  all["name"] = person.name;
  all["species"] = person.species;
  all["born"] = json::day(person.born);
  all["appetite"] = json::servings(person.appetite);
  all["tolerance"] = person.tolerance ? json::servings(*person.tolerance) : Json(nullptr);
  all["energy"] = json::quantity(person.energy_kcal, "kcal");
  all["sex"] = person.sex ? Json(sex_name(*person.sex)) : Json(nullptr);
  all["height"] = json::quantity(person.height_cm, "cm");
  all["mass"] = json::quantity(person.mass_g, "g");
  all["activity"] = person.activity ? Json(activity_name(*person.activity)) : Json(nullptr);
  all["avoid"] = array_of(person.avoid, [](const Avoid& each) {
    return Json{{"key", each.key}, {"accept_may_contain", each.accept_may_contain}};
  });
  all["diets"] = array_of(person.diets, [](Diet each) { return diet_name(each); });
  all["ratings"] = std::move(ratings);
  all["note"] = json::text_or_null(person.note);
  all["retired"] = json::day(person.retired);
  return all;
}

std::string_view rotate_name(Rotate rotate) {
  switch (rotate) {
    case Rotate::kAuto:
      return "auto";
    case Rotate::kYes:
      return "yes";
    case Rotate::kNo:
      return "no";
  }
  return "auto";
}

Json months(const std::optional<int>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json food_of(const Food& food) {
  Json all;
  all["food"] = food.key.str();
  all["name"] = food.name;
  all["kind"] = food_kind_name(food.kind);
  all["species"] = json::text_or_null(food.species);
  all["gtin"] = json::text_or_null(food.gtin);
  all["unit"] = food.unit;
  all["servings"] = food.servings;
  all["mass"] = json::quantity(food.mass_g, "g");
  all["volume"] = json::quantity(food.volume_ml, "ml");
  all["energy"] = json::quantity(food.energy_kcal, "kcal");
  all["sodium"] = json::quantity(food.sodium_mg, "mg");
  all["label"] = json::statement(food.label);
  all["no_cook"] = food.no_cook;
  all["needs_hot_water"] = food.needs_hot_water;
  all["needs_water"] = json::quantity(food.needs_water_ml, "ml");
  all["needs_opener"] = food.needs_opener;
  all["needs_spoon"] = food.needs_spoon;
  all["refrigerate"] = food.refrigerate;
  all["choking_risk"] = food.choking_risk;
  all["honey"] = food.honey;
  all["is_opener"] = food.is_opener;
  all["is_cutlery"] = food.is_cutlery;
  all["infant_formula"] = food.infant_formula;
  all["home_canned"] = food.home_canned;
  all["self_filled"] = food.self_filled;
  all["staple"] = food.staple;
  all["meals"] = array_of(food.meals, [](Meal each) { return meal_name(each); });
  all["roles"] = array_of(food.roles, [](Role each) { return role_name(each); });
  all["packs"] = array_of(food.packs, [](const Pack& each) {
    return Json{{"shop", each.shop}, {"units", each.units}, {"price_cents", each.price_cents}};
  });
  all["months_short"] = months(food.storage.months_short);
  all["months_long"] = months(food.storage.months_long);
  all["opened_days"] = food.storage.opened_days;
  all["storage_source"] = json::text_or_null(food.storage.source);
  all["rotate"] = rotate_name(food.rotate);
  all["par_level"] = json::number(food.par_level);
  all["note"] = json::text_or_null(food.note);
  all["retired"] = json::day(food.retired);
  return all;
}

Json place_of(const Household& household, const Place& place) {
  Json all;
  all["place"] = place.key.str();
  all["name"] = place.name;
  all["kind"] = place_kind_name(place.kind);
  all["parent"] = json::text_or_null(place.parent.str());
  all["path"] = place_path(household, place.key);
  all["mass_limit"] = json::quantity(place.mass_limit_g, "g");
  all["volume_limit"] = json::quantity(place.volume_limit_ml, "ml");
  all["hot"] = place.hot;
  all["note"] = json::text_or_null(place.note);
  all["retired"] = json::day(place.retired);
  return all;
}

std::string_view basis_name(DayBasis basis) {
  switch (basis) {
    case DayBasis::kPrinted:
      return "printed";
    case DayBasis::kEstimated:
      return "estimated";
    case DayBasis::kFilled:
      return "filled";
    case DayBasis::kNone:
      return "none";
  }
  return "none";
}

Json facts_of(const LotFacts& facts) {
  Json all;
  all["lot"] = facts.id.value();
  all["food"] = facts.food.str();
  all["mark"] = json::mark(facts.mark);
  all["good_through"] = json::day(facts.good_through);
  all["basis"] = basis_name(facts.basis);
  all["safety"] = facts.safety;
  all["state"] = lot_state_name(facts.state);
  all["received"] = iso_day(facts.received);
  all["label"] = json::statement(facts.label);
  return all;
}

Json lying_of(const Household& household, const Lying& each) {
  Json all = json::stock_key(each.at);
  all["food"] = each.food.str();
  all["amount"] = json::servings(each.amount);
  all["good_through"] = json::day(each.good_through);
  all["must_not"] = refusals_of(household, each.must_not);
  return all;
}

Json lyings_of(const Household& household, const std::vector<Lying>& list) {
  return array_of(list, [&](const Lying& each) { return lying_of(household, each); });
}

Json row_of(const Household& household, const LotRow& row) {
  Json all = facts_of(row.facts);
  const Food* food = find_food(household, row.facts.food);
  all["name"] = food == nullptr ? Json(nullptr) : Json(food->name);
  all["on_hand"] = json::servings(row.on_hand);
  all["soonest"] = json::day(row.good_through);
  all["lies"] = lyings_of(household, row.lies);
  return all;
}

Json entry_of(const Entry& entry) {
  const bool correction = entry.kind == EntryKind::kCorrected;
  Json all;
  all["entry"] = entry.id.value();
  all["kind"] = entry_kind_name(entry.kind);
  all["on"] = iso_day(entry.on);
  all["written_at"] = iso_instant(entry.written_at);
  all["lot"] = correction ? Json(nullptr) : Json(entry.at.lot.value());
  all["place"] = json::text_or_null(entry.at.place.str());
  all["opened_on"] = json::day(entry.at.opened_on);
  all["to"] = json::text_or_null(entry.to.str());
  all["amount"] = correction ? Json(nullptr) : json::servings(entry.amount);
  all["change"] = entry.kind == EntryKind::kCounted ? json::servings(HalfServings(entry.change))
                                                    : Json(nullptr);
  all["corrects"] = correction ? Json(entry.corrects.value()) : Json(nullptr);
  all["who"] = entry.who ? Json(entry.who->str()) : Json(nullptr);
  all["meal"] = entry.meal ? Json(meal_name(*entry.meal)) : Json(nullptr);
  all["paid_cents"] = json::number(entry.paid_cents);
  all["note"] = json::text_or_null(entry.note);
  return all;
}

Json entry_row(const EntryRow& row) {
  Json all = entry_of(row.entry);
  all["lot"] = row.lot.value();
  all["food"] = json::text_or_null(row.food.str());
  all["corrected"] = row.corrected;
  return all;
}

Json news_of(const Household& household, const std::optional<LabelNews>& news) {
  if (!news) return nullptr;
  return Json{{"label", json::statement(news->label)},
              {"differs", news->differs},
              {"must_not", refusals_of(household, news->must_not)}};
}

Json reading_of(const Reading& reading) {
  return Json{{"reading", reading.id.value()},
              {"lot", reading.lot.value()},
              {"on", iso_day(reading.on)},
              {"by", json::text_or_null(reading.by)},
              {"mark", reading.mark ? json::mark(*reading.mark) : Json(nullptr)},
              {"label", json::statement(reading.label)},
              {"state", reading.state ? Json(lot_state_name(*reading.state)) : Json(nullptr)},
              {"note", json::text_or_null(reading.note)}};
}

Json added_of(const Household& household, const LotAdded& report) {
  Json all = facts_of(report.facts);
  all["lot_code"] = json::text_or_null(report.lot.lot_code);
  all["entry"] = entry_of(report.received);
  all["also"] = array_of(report.also, entry_of);
  all["label_news"] = news_of(household, report.label);
  return all;
}

}  // namespace

std::string render_findings_json(const std::vector<Problem>& findings, Day as_of) {
  return json::document("findings", as_of, array_of(findings, [](const Problem& each) {
                          return Json{{"where", json::text_or_null(each.where)},
                                      {"value", json::text_or_null(each.value)},
                                      {"message", each.what},
                                      {"hint", json::text_or_null(each.remedy)}};
                        }));
}

std::string render_people_json(const Household& household, Day as_of) {
  return json::document("people", as_of, array_of(household.people, person_of));
}

std::string render_foods_json(const std::vector<Food>& foods, Day as_of) {
  return json::document("foods", as_of, array_of(foods, food_of));
}

std::string render_places_json(const Household& household, const std::vector<Place>& places,
                               Day as_of) {
  return json::document("places", as_of, array_of(places, [&](const Place& each) {
                          return place_of(household, each);
                        }));
}

std::string render_lots_json(const Household& household, const std::vector<LotRow>& rows,
                             Day as_of) {
  return json::document(
      "lots", as_of, array_of(rows, [&](const LotRow& each) { return row_of(household, each); }));
}

std::string render_entries_json(const std::vector<EntryRow>& rows, Day as_of) {
  return json::document("entries", as_of, array_of(rows, entry_row));
}

std::string render_person_json(const Household& household, const PersonShow& show, Day as_of) {
  Json all = person_of(show.person);
  all["eats_from"] = json::keys(show.eats_from);
  all["must_not"] = array_of(show.must_not, [&](const auto& each) {
    Json one = json::refusal(household, {show.person.key, each.second});
    one["food"] = each.first.str();
    return one;
  });
  all["wrong"] = lyings_of(household, show.wrong);
  return json::document("person", as_of, std::move(all));
}

std::string render_food_json(const Household& household, const FoodShow& show, Day as_of) {
  Json all = food_of(show.food);
  all["must_not"] = refusals_of(household, show.must_not);
  all["lots"] = array_of(show.lots, [&](const LotRow& each) { return row_of(household, each); });
  return json::document("food", as_of, std::move(all));
}

std::string render_place_json(const Household& household, const PlaceShow& show, Day as_of) {
  Json all = place_of(household, show.place);
  all["inside"] = json::keys(show.inside);
  all["eaters"] = json::keys(show.eaters);
  all["mass_inside"] = json::quantity(show.mass_g, "g");
  all["unweighed_units"] = show.unweighed;
  all["lies"] = lyings_of(household, show.lies);
  return json::document("place", as_of, std::move(all));
}

std::string render_lot_json(const Household& household, const LotShow& show, Day as_of) {
  Json all = row_of(household, show.row);
  all["lot_code"] = json::text_or_null(show.lot.lot_code);
  all["note"] = json::text_or_null(show.lot.note);
  all["must_not"] = refusals_of(household, show.must_not);
  all["readings"] = array_of(show.readings, reading_of);
  all["entries"] = array_of(show.entries, entry_row);
  return json::document("lot", as_of, std::move(all));
}

std::string render_recorded_json(const Household& household, const Recorded& report, Day as_of) {
  Json all;
  all["lot"] = report.lot.value();
  all["food"] = report.food.str();
  all["place"] = report.place.str();
  all["entries"] = array_of(report.entries, entry_of);
  all["opened_units"] = report.opened_units;
  all["left_there"] = json::servings(report.left_there);
  all["left"] = json::servings(report.left);
  all["must_not"] = refusals_of(household, report.must_not);
  return json::document("recorded", as_of, std::move(all));
}

std::string render_corrected_json(const Corrected& report, Day as_of) {
  return json::document("corrected", as_of,
                        Json{{"entries", array_of(report.entries, entry_of)},
                             {"reversed", array_of(report.reversed, entry_of)}});
}

std::string render_person_saved_json(const PersonSaved& report, Day as_of) {
  Json all = person_of(report.person);
  all["own_allergens"] = report.own_allergens;
  all["now_wrong"] = array_of(report.now_wrong, [](LotId each) { return each.value(); });
  return json::document("person_saved", as_of, std::move(all));
}

std::string render_food_saved_json(const Household& household, const FoodSaved& report, Day as_of) {
  Json all = food_of(report.food);
  all["must_not"] = refusals_of(household, report.must_not);
  return json::document("food_saved", as_of, std::move(all));
}

std::string render_place_saved_json(const Household& household, const PlaceSaved& report,
                                    Day as_of) {
  return json::document("place_saved", as_of, place_of(household, report.place));
}

std::string render_lot_added_json(const Household& household, const LotAdded& report, Day as_of) {
  return json::document("lot_added", as_of, added_of(household, report));
}

std::string render_lots_entered_json(const Household& household, const std::vector<LotAdded>& lots, Day as_of) {
  Json all;
  all["lots"] = array_of(lots, [&](const LotAdded& each) { return added_of(household, each); });
  return json::document("lots_entered", as_of, std::move(all));
}

std::string render_lot_read_json(const Household& household, const LotRead& report, Day as_of) {
  Json all = facts_of(report.after);
  all["reading"] = reading_of(report.reading);
  all["label_news"] = news_of(household, report.label);
  all["now_wrong"] = array_of(report.now_wrong, [&](const auto& each) {
    return Json{{"place", each.first.str()}, {"must_not", refusals_of(household, each.second)}};
  });
  return json::document("lot_read", as_of, std::move(all));
}

}  // namespace larderloop
