#include "cli/entry_parts.h"

#include "larderloop/app/find.h"
#include "larderloop/app/placing.h"
#include "larderloop/core/words.h"
#include "larderloop/intake/gs1.h"
#include "larderloop/render/text_things.h"

namespace larderloop::cli {

DateOrder household_order(const Household& household) {
  return household.settings.date_order;
}

Result<PrintedMark> read_printed(const Household& household, const Food* food,
                                 const std::string& text, MarkKind kind, Day today, Day received,
                                 std::vector<std::string>* warnings) {
  if (!looks_like_scan(text))
    return parse_printed_mark(text, kind, today, {household_order(household), received});
  auto scan = read_scan(text, today, {false, known_gtins(household), false});
  if (!scan) return fail(scan.error().error());
  if (food != nullptr && !food->gtin.empty() && food->gtin != scan->item.gtin) {
    return fail(ErrorKind::kBadData,
                "the scan is of " + scan->item.gtin + ", and " + food->name + " has the number " +
                    food->gtin,
                "scan the package of this food, or name the food that it is");
  }
  if (warnings != nullptr)
    warnings->insert(warnings->end(), scan->warnings.begin(), scan->warnings.end());
  if (!scan->mark().day)
    return fail(ErrorKind::kBadData, "the scan tells no date",
                "type the date as it is printed, or none");
  return PrintedMark{scan->mark(), scan->lot_code};
}

std::string new_lot_words(const Household& household, const NewLot& lot) {
  const Food& food = *find_food(household, lot.food);
  std::string line =
      units_words(food, HalfServings::units(lot.units, food.servings)) + " of " + food.name + ", ";
  line += lot.mark.day
              ? std::string(mark_kind_words(lot.mark.kind)) + " " + plain_day(*lot.mark.day)
              : std::string("no date");
  if (lot.mark.day && lot.mark.precision != Precision::kDay)
    line += " (the end of the " + std::string(precision_name(lot.mark.precision)) + ")";
  if (!lot.lot_code.empty()) line += ", lot code " + lot.lot_code;
  std::int64_t here = lot.units;
  for (const auto& each : lot.elsewhere) here -= each.second;
  const auto part = [&](const PlaceKey& place, std::int64_t units) {
    return find_place(household, place)->name +
           (lot.elsewhere.empty() ? "" : " (" + std::to_string(units) + ")");
  };
  std::vector<std::string> places = {part(lot.at, here)};
  for (const auto& [place, units] : lot.elsewhere) places.push_back(part(place, units));
  line += ", into " + list_words(places);
  if (!lot.label)
    line += "; label not read";
  else
    line += lot.label->same_as_food ? "; label read, the same as last time"
                                    : "; label read, it says something else";
  if (lot.paid_cents) line += "; " + money_words(*lot.paid_cents, household.settings.currency);
  return line;
}

void tell_added(Runtime& runtime, const LotAdded& added) {
  const Household& household = runtime.household();
  const Food& food = *find_food(household, added.lot.food);
  HalfServings all = added.received.amount;
  std::vector<std::string> places;
  const auto put = [&](const Entry& entry) {
    places.push_back(find_place(household, entry.at.place)->name +
                     (added.also.empty() ? "" : " (" + units_words(food, entry.amount) + ")"));
  };
  put(added.received);
  for (const Entry& each : added.also) {
    put(each);
    all += each.amount;
  }
  runtime.note("added lot " + std::to_string(added.lot.id.value()) + ": " +
               units_words(food, all) + " of " + food.name + " in " + list_words(places) + "; " +
               date_words(added.facts));
  if (added.facts.good_through && *added.facts.good_through < runtime.asked().today) {
    runtime.warn("the date of lot " + std::to_string(added.lot.id.value()) + " is past already");
  }
  if (added.label && !added.label->must_not.empty()) {
    for (const std::string& line : concerned_words(household, *added.label)) runtime.warn(line);
  }
}

}  // namespace larderloop::cli
