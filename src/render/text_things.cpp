// Tables and pages. The lines that say what was done are in text_done.cpp.
#include "larderloop/render/text_things.h"

#include "larderloop/app/placing.h"
#include "larderloop/core/words.h"
#include "larderloop/render/table.h"
#include "larderloop/render/terminal_text.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

std::string shown(std::string_view text) {
  return visible_text(text, LineEnds::kEscape);
}

std::string spaced(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

// One "name: value" line of a page; nothing without a value.
std::string field(std::string_view name, const std::string& value) {
  return value.empty() ? std::string() : fmt::format("  {}: {}\n", name, shown(value));
}

template <class Items, class Words>
std::string listed(const Items& items, Words words) {
  std::string all;
  for (const auto& item : items) all += (all.empty() ? "" : ", ") + std::string(words(item));
  return all;
}

std::string servings_words(HalfServings amount) {
  return fmt::format("{}{} {}", amount.halves() / 2, amount.halves() % 2 == 0 ? "" : ".5",
                     amount.halves() == 2 ? "serving" : "servings");
}

std::string avoid_words(const Person& person) {
  return listed(person.avoid, [](const Avoid& each) {
    return allergen_words(each.key) + (each.accept_may_contain ? " (accepts 'may contain')" : "");
  });
}

std::string statement_words(const std::optional<Statement>& label) {
  if (!label) return "not read";
  std::string contains, may;
  for (const auto& [key, declared] : label->declared) {
    std::string& list = declared == Declared::kContains ? contains : may;
    list += (list.empty() ? "" : ", ") + allergen_words(key);
  }
  std::string words = contains.empty() ? "declares no listed allergen" : "contains " + contains;
  if (!may.empty()) words += "; may contain " + may;
  if (!label->suits.empty())
    words += "; suits " + listed(label->suits, [](Diet diet) { return spaced(diet_name(diet)); });
  return words + fmt::format(" (read by {} on {})", label->read_by, plain_day(label->read_on));
}

// Behind a name: " (retired since Sun 1 Nov 2026)".
std::string retired_words(const std::optional<Day>& retired) {
  return retired ? " (retired since " + plain_day(*retired) + ")" : "";
}

std::string lot_note(const Food& food, const LotRow& row, Day today) {
  std::vector<std::string> notes;
  if (row.facts.state != LotState::kOk)
    notes.push_back(std::string(lot_state_name(row.facts.state)) + ": do not eat");
  if (row.good_through && *row.good_through < today)
    notes.emplace_back(row.facts.safety ? "past its safety date: throw out" : "past its date");
  if (row.facts.basis == DayBasis::kEstimated) notes.emplace_back("date estimated");
  const bool served = food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
  if (served && !row.facts.label) notes.emplace_back("label not read");
  return listed(notes, [](const std::string& each) { return each; });
}

std::string where_words(const Household& household, const LotRow& row) {
  return listed(row.lies, [&](const Lying& each) {
    return plain::place(household, each.at.place) +
           (each.at.opened_on ? " (opened " + iso_day(*each.at.opened_on) + ")" : "");
  });
}

std::string refusal_lines(const Household& household, const std::vector<PersonRefusal>& refusals) {
  std::string all;
  for (const PersonRefusal& each : refusals)
    all += "    " + shown(must_not_words(household, {each})) + "\n";
  return all.empty() ? std::string() : "  Not for everyone:\n" + all;
}

std::string lying_line(const Household& household, const Lying& each) {
  std::string line = fmt::format("{}, {}, {}", plain::amount_of(household, each.food, each.amount),
                                 plain::lot(each.at), plain::good_through(each.good_through));
  if (!each.must_not.empty()) line += "; WRONG HERE: " + must_not_words(household, each.must_not);
  return shown(line);
}

std::string food_lot_line(const Household& household, const LotRow& row, Day today) {
  const Food& food = *find_food(household, row.facts.food);
  const std::string note = lot_note(food, row, today);
  return shown(fmt::format("lot {}: {} in {}, {}{}", row.facts.id.value(),
                           units_words(food, row.on_hand), where_words(household, row),
                           plain::good_through(row.good_through), note.empty() ? "" : "; " + note));
}

std::string cents_words(std::int64_t cents, const std::string& currency) {
  return fmt::format("{}.{:02} {}", cents / 100, cents % 100, currency);
}

std::string grams(const std::optional<std::int64_t>& value, std::string_view unit) {
  return value ? fmt::format("{} {}", *value, unit) : std::string();
}

// What a food is like, beyond its numbers.
std::string traits(const Food& food) {
  std::vector<std::string> all;
  if (!food.no_cook) all.emplace_back("has to be cooked");
  if (food.needs_hot_water) all.emplace_back("needs hot water");
  if (food.needs_water_ml > 0)
    all.push_back(fmt::format("uses up {} ml of drinking water a unit", food.needs_water_ml));
  if (food.needs_opener) all.emplace_back("needs an opener");
  if (food.needs_spoon) all.emplace_back("needs a spoon");
  if (food.refrigerate) all.emplace_back("has to be kept refrigerated");
  if (food.choking_risk) all.emplace_back("not under four years: choking");
  if (food.is_opener) all.emplace_back("opens cans");
  if (food.is_cutlery) all.emplace_back("to eat with");
  if (food.honey) all.emplace_back("has honey: not under one year");
  if (food.infant_formula) all.emplace_back("infant formula");
  if (food.home_canned) all.emplace_back("home-canned");
  if (food.self_filled) all.emplace_back("filled at home");
  if (food.staple) all.emplace_back("staple");
  return listed(all, [](const std::string& each) { return each; });
}

std::string storage_words(const Storage& storage) {
  std::string words;
  if (storage.months_short) words += fmt::format("{} months", *storage.months_short);
  if (storage.months_long)
    words += fmt::format("{}{} months", words.empty() ? "" : " to ", *storage.months_long);
  if (storage.opened_days > 0)
    words += fmt::format("{}opened {} days", words.empty() ? "" : ", ", storage.opened_days);
  if (!words.empty() && !storage.source.empty()) words += " (" + storage.source + ")";
  return words;
}

std::string amount_words(const Food& food, const Entry& entry) {
  std::string words = entry.amount == HalfServings() ? "nothing" : units_words(food, entry.amount);
  if (entry.kind != EntryKind::kCounted || entry.change == 0) return words;
  const bool fewer = entry.change < 0;
  return words + " (" + units_words(food, HalfServings(fewer ? -entry.change : entry.change)) +
         (fewer ? " fewer)" : " more)");
}

}  // namespace

std::string render_findings(const std::vector<Problem>& findings, std::size_t limit) {
  std::string all;
  for (std::size_t index = 0; index < findings.size() && index < limit; ++index) {
    const Problem& each = findings[index];
    all += shown(each.where.empty() ? each.what : each.where + ": " + each.what);
    if (!each.value.empty() && each.what.find(each.value) == std::string::npos)
      all += " ('" + shown(each.value) + "')";
    all += "\n";
    if (!each.remedy.empty()) all += "  hint: " + shown(each.remedy) + "\n";
  }
  if (findings.size() > limit)
    all += fmt::format("and {} more (all with --json)\n", findings.size() - limit);
  return all;
}

std::string render_people(const Household& household, std::size_t width) {
  Table table({{"PERSON"}, {"NAME"}, {"SPECIES"}, {"BORN"}, {"AVOIDS"}, {"DIETS"}});
  for (const Person& each : household.people) {
    table.add({each.key.str(), each.name + retired_words(each.retired), each.species, each.born ? iso_day(*each.born) : "",
               avoid_words(each),
               listed(each.diets, [](Diet diet) { return spaced(diet_name(diet)); })});
  }
  return table.text(width);
}

std::string render_foods(const Household& household, const std::vector<Food>& foods,
                         std::size_t width) {
  (void)household;
  Table table({{"FOOD"}, {"NAME"}, {"KIND"}, {"UNIT"}, {"SERVINGS", Align::kRight}, {"LABEL"}});
  for (const Food& each : foods) {
    table.add({each.key.str(), each.name + retired_words(each.retired), spaced(food_kind_name(each.kind)), each.unit,
               fmt::format("{}", each.servings), statement_words(each.label)});
  }
  return table.text(width);
}

std::string render_places(const Household& household, const std::vector<Place>& places,
                          std::size_t width) {
  Table table({{"PLACE"}, {"KIND"}, {"WHERE"}, {"WHO EATS FROM IT"}});
  for (const Place& each : places) {
    table.add({each.key.str(), std::string(place_kind_name(each.kind)),
               place_path(household, each.key) + retired_words(each.retired),
               plain::people(household, eaters_at(household, each.key))});
  }
  return table.text(width);
}

std::string render_lots(const Household& household, const std::vector<LotRow>& rows, Day today,
                        std::size_t width) {
  Table table(
      {{"LOT", Align::kRight}, {"FOOD"}, {"ON HAND"}, {"GOOD THROUGH"}, {"WHERE"}, {"NOTE"}});
  for (const LotRow& row : rows) {
    const Food& food = *find_food(household, row.facts.food);
    table.add({fmt::format("{}", row.facts.id.value()), food.name,
               row.lies.empty() ? "nothing" : units_words(food, row.on_hand),
               row.good_through ? plain_day(*row.good_through) : "no date known",
               where_words(household, row), lot_note(food, row, today)});
  }
  return table.text(width);
}

std::string render_entries(const Household& household, const std::vector<EntryRow>& rows,
                           std::size_t width) {
  Table table({{"ENTRY", Align::kRight},
               {"DAY"},
               {"WHAT"},
               {"LOT", Align::kRight},
               {"FOOD"},
               {"AMOUNT"},
               {"WHERE"},
               {"NOTE"}});
  for (const EntryRow& row : rows) {
    const Entry& entry = row.entry;
    const Food* food = find_food(household, row.food);
    const bool correction = entry.kind == EntryKind::kCorrected;
    std::string where = correction ? "" : plain::place(household, entry.at.place);
    if (entry.kind == EntryKind::kMoved) where += " to " + plain::place(household, entry.to);
    std::vector<std::string> notes;
    if (row.corrected) notes.emplace_back("corrected");
    if (correction) notes.push_back(fmt::format("reverses {}", entry.corrects.value()));
    if (entry.who) notes.push_back(plain::people(household, {*entry.who}));
    if (entry.meal) notes.emplace_back(meal_name(*entry.meal));
    if (!entry.note.empty()) notes.push_back(entry.note);
    table.add({fmt::format("{}", entry.id.value()), iso_day(entry.on),
               spaced(entry_kind_name(entry.kind)), fmt::format("{}", row.lot.value()),
               food == nullptr ? row.food.str() : food->name,
               correction || food == nullptr ? "" : amount_words(*food, entry), where,
               listed(notes, [](const std::string& each) { return each; })});
  }
  return table.text(width);
}

std::string render_person(const Household& household, const PersonShow& show, Day today) {
  const Person& person = show.person;
  std::string text = shown(person.name) + " (" + person.key.str() + ")" + retired_words(person.retired) + "\n";
  if (!person.is_human()) text += field("species", person.species);
  if (person.born)
    text += field("born", fmt::format("{}, {} years old", plain_day(*person.born),
                                      age_years(*person.born, today)));
  text += field("appetite", servings_words(person.appetite) + " at a meal");
  if (person.tolerance)
    text += field("kit food a week", "at most " + servings_words(*person.tolerance));
  if (person.energy_kcal)
    text += field("energy wanted a day", fmt::format("{} kcal", *person.energy_kcal));
  if (person.sex) text += field("sex", std::string(sex_name(*person.sex)));
  text += field("height", grams(person.height_cm, "cm"));
  if (person.mass_g)
    text += field("mass", fmt::format("{:.1f} kg", static_cast<double>(*person.mass_g) / 1000.0));
  if (person.activity) text += field("on an ordinary day", spaced(activity_name(*person.activity)));
  text += field("avoids", avoid_words(person));
  text += field("diets", listed(person.diets, [](Diet diet) { return spaced(diet_name(diet)); }));
  text += field("ratings", listed(person.ratings, [&](const auto& each) {
                  return fmt::format("{} {:+}", plain::food(household, each.first), each.second);
                }));
  text += field("eats from", listed(show.eats_from, [&](const PlaceKey& each) {
                  return place_path(household, each);
                }));
  text += field("note", person.note);
  if (!show.must_not.empty()) text += "  Must not have (by the last label read of each food):\n";
  for (const auto& [food, reason] : show.must_not) {
    text += "    " + shown(plain::food(household, food) + ": " + refusal_words(reason)) + "\n";
  }
  if (!show.wrong.empty())
    text += "  Lies where " + shown(person.name) + " eats and must leave there:\n";
  for (const Lying& each : show.wrong) {
    text += "    " + shown(plain::place(household, each.at.place)) + ": " +
            lying_line(household, each) + "\n";
  }
  return text;
}

std::string render_food(const Household& household, const FoodShow& show, Day today) {
  const Food& food = show.food;
  std::string text = shown(food.name) + " (" + food.key.str() + ")" + retired_words(food.retired) + "\n";
  text += field("kind", spaced(food_kind_name(food.kind)) +
                            (food.species.empty() ? "" : " for " + food.species));
  text += field("GTIN", food.gtin);
  text += field("one " + shown(food.unit), servings_words(HalfServings::servings(food.servings)));
  text += field("mass", grams(food.mass_g, "g"));
  text += field("volume", grams(food.volume_ml, "ml"));
  text += field("energy", grams(food.energy_kcal, "kcal"));
  text += field("sodium", grams(food.sodium_mg, "mg"));
  text += field("last label", statement_words(food.label));
  text += field("properties", traits(food));
  text += field("meals", listed(food.meals, [](Meal meal) { return meal_name(meal); }));
  text += field("roles in a kit",
                listed(food.roles, [](Role role) { return spaced(role_name(role)); }));
  text += field("packs", listed(food.packs, [&](const Pack& pack) {
                  return fmt::format("{} of {} for {}", pack.shop, pack.units,
                                     cents_words(pack.price_cents, household.settings.currency));
                }));
  text += field("keeps", storage_words(food.storage));
  if (food.par_level) text += field("par level", fmt::format("{}", *food.par_level));
  text += field("note", food.note);
  text += refusal_lines(household, show.must_not);
  text += show.lots.empty() ? "  Nothing on hand.\n" : "  On hand, soonest date first:\n";
  for (const LotRow& row : show.lots) text += "    " + food_lot_line(household, row, today) + "\n";
  return text;
}

std::string render_place(const Household& household, const PlaceShow& show) {
  const Place& place = show.place;
  std::string text = shown(place.name) + " (" + place.key.str() + ")" + retired_words(place.retired) + "\n";
  text += field("kind", std::string(place_kind_name(place.kind)));
  text += field("where", place_path(household, place.key));
  if (place.hot) text += field("heat", "30 C or more at times");
  if (place.mass_limit_g) text += field("mass limit", fmt::format("{} g", *place.mass_limit_g));
  if (place.volume_limit_ml)
    text += field("volume limit", fmt::format("{} ml", *place.volume_limit_ml));
  std::string mass = fmt::format("{} g", show.mass_g);
  if (show.unweighed > 0) mass += fmt::format(" and {} units of unknown mass", show.unweighed);
  if (place.mass_limit_g && show.mass_g > *place.mass_limit_g) mass += ": TOO HEAVY";
  if (!show.lies.empty()) text += field("mass of what is in it", mass);
  text += field("inside it", listed(show.inside, [&](const PlaceKey& each) {
                  return plain::place(household, each);
                }));
  text += field("who eats from it", plain::people(household, show.eaters));
  text += field("note", place.note);
  if (show.lies.empty()) return text + "  Nothing lies there.\n";
  PlaceKey last;
  for (const Lying& each : show.lies) {
    if (each.at.place != last) text += "  " + shown(place_path(household, each.at.place)) + ":\n";
    last = each.at.place;
    text += "    " + lying_line(household, each) + "\n";
  }
  return text;
}

std::string render_lot(const Household& household, const LotShow& show, Day today) {
  const Food& food = *find_food(household, show.lot.food);
  const LotFacts& facts = show.row.facts;
  std::string text = fmt::format("Lot {}: {}\n", show.lot.id.value(), shown(food.name));
  text += field("date", date_words(facts));
  text += field("note", lot_note(food, show.row, today));
  text += field("lot code", show.lot.lot_code);
  text += field("received", plain_day(show.lot.received));
  text += field("label", statement_words(facts.label));
  text += field("remark", show.lot.note);
  text += refusal_lines(household, show.must_not);
  text += show.row.lies.empty() ? "  Nothing of it is left.\n" : "  Lies in:\n";
  for (const Lying& each : show.row.lies) {
    text += "    " + shown(place_path(household, each.at.place)) + ": " +
            lying_line(household, each) + "\n";
  }
  if (!show.readings.empty()) text += "  Learnt later:\n";
  for (const Reading& each : show.readings) {
    std::string line = iso_day(each.on);
    if (each.mark) line += ", date " + each.mark->text;
    if (each.label) line += ", label " + statement_words(each.label);
    if (each.state) line += ", state " + std::string(lot_state_name(*each.state));
    if (!each.by.empty() && !each.label) line += ", by " + each.by;
    if (!each.note.empty()) line += ", " + each.note;
    text += "    " + shown(line) + "\n";
  }
  text += "  Entries:\n";
  const std::string entries = render_entries(household, show.entries, 0);
  for (std::size_t begin = 0; begin < entries.size();) {
    const std::size_t end = entries.find('\n', begin);
    text += "    " + entries.substr(begin, end - begin) + "\n";
    begin = end + 1;
  }
  return text;
}

}  // namespace larderloop
