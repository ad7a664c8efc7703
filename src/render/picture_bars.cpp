// Stock by bag, and years of eating, giving away and throwing out.
#include "larderloop/core/words.h"
#include "larderloop/render/picture.h"
#include "render/json_common.h"
#include "render/plain.h"
#include "render/svg.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

using svg::Anchor;
using svg::Fill;
using svg::Picture;

constexpr double kBar = 12, kLine = 15, kBagRow = 14, kLeft = svg::kEdge,
                 kRight = svg::kWidth - svg::kEdge;

std::string servings(std::int64_t halves) {
  return fmt::format("{}{}", halves / 2, halves % 2 == 0 ? "" : ".5");
}
std::string servings_words(std::int64_t halves) {
  return servings(halves) + (halves == 2 ? " serving" : " servings");
}

double length(std::int64_t part, std::int64_t most) {
  return most == 0 ? 0 : (kRight - kLeft) * static_cast<double>(part) / static_cast<double>(most);
}

// What lies in one place. Amounts of food in half servings.
struct Bag {
  PlaceKey place;
  std::int64_t lasts = 0, will_not_last = 0, not_good = 0;
  std::int64_t water_ml = 0, water_due_ml = 0;  // due: by the hold-until date, or past it
  std::int64_t things = 0;
  [[nodiscard]] std::int64_t all() const { return lasts + will_not_last + not_good; }
};

Bag bag_of(const Household& household, const SheetPlace& place, Day hold_until) {
  Bag bag;
  bag.place = place.place;
  for (const SheetLine& line : place.lines) {
    const Food& food = *find_food(household, line.food);
    const std::int64_t halves = line.amount.halves();
    if (food.kind == FoodKind::kWater) {
      const std::int64_t ml = halves * food.volume_ml.value_or(0) / (2 * food.servings);
      bag.water_ml += ml;
      if (line.good_through && *line.good_through < hold_until) bag.water_due_ml += ml;
    } else if (food.kind == FoodKind::kThing) {
      bag.things += line.amount.whole_units(food.servings);
    } else if (!line.leaves) {
      bag.lasts += halves;
    } else if (line.reason == LeaveReason::kTooOld) {
      bag.will_not_last += halves;
    } else {
      bag.not_good += halves;
    }
  }
  return bag;
}

// A row each: "12 servings: 9 last and 3 will not last", "9 l water and 2 things".
std::vector<std::string> bag_rows(const Bag& bag) {
  std::vector<std::string> parts;
  if (bag.all() > 0) {
    std::string text = servings_words(bag.all());
    if (bag.lasts == bag.all()) {
      text += bag.all() == 2 ? ", lasts" : ", all of them last";
    } else {
      std::vector<std::string> states;
      if (bag.lasts > 0) states.push_back(servings(bag.lasts) + " last");
      if (bag.will_not_last > 0) states.push_back(servings(bag.will_not_last) + " will not last");
      if (bag.not_good > 0)
        states.push_back(servings(bag.not_good) + " past, recalled or doubtful");
      text += ": " + list_words(states);
    }
    parts.push_back(text);
  }
  std::vector<std::string> rest;
  if (bag.water_ml > 0) {
    rest.push_back(plain::litres(bag.water_ml) + " water");
    if (bag.water_due_ml > 0)
      rest.back() += " (" + plain::litres(bag.water_due_ml) + " due by then, or past)";
  }
  if (bag.things > 0) rest.push_back(fmt::format("{} {}", bag.things, plural("thing", bag.things)));
  if (!rest.empty()) parts.push_back(list_words(rest));
  return parts;
}

// Gives the height it takes.
double draw_bag(Picture& picture, const Household& household, const Bag& bag, std::int64_t most,
                double top) {
  double y = top;
  picture.open("bag", {{"place", bag.place.str()},
                       {"lasts", std::to_string(bag.lasts)},
                       {"will-not-last", std::to_string(bag.will_not_last)},
                       {"not-good", std::to_string(bag.not_good)},
                       {"water-ml", std::to_string(bag.water_ml)},
                       {"water-due-ml", std::to_string(bag.water_due_ml)},
                       {"things", std::to_string(bag.things)}});
  picture.text(kLeft, y + 11, svg::name(plain::place(household, bag.place), 60), Anchor::kStart,
               true);
  for (const std::string& row : bag_rows(bag)) picture.text(kLeft, (y += kBagRow) + 11, row);
  double x = kLeft;
  const std::pair<std::int64_t, Fill> parts[] = {{bag.lasts, Fill::kPlain},
                                                 {bag.will_not_last, Fill::kHatched},
                                                 {bag.not_good, Fill::kCrossed}};
  for (const auto& [halves, fill] : parts) {
    if (halves == 0) continue;
    picture.box(x, y + kBagRow + 2, length(halves, most), kBar, fill);
    x += length(halves, most);
  }
  picture.close();
  return y - top + kBagRow + (bag.all() > 0 ? 24 : 8);
}

void draw_year_part(Picture& picture, int year, const char* kind, std::int64_t halves,
                    const std::string& words, Fill fill, std::int64_t most, double y) {
  picture.open(kind, {{"year", std::to_string(year)}, {"half-servings", std::to_string(halves)}});
  picture.text(kLeft, y + 11, words);
  if (halves > 0) picture.box(kLeft, y + 15, std::max(1.0, length(halves, most)), kBar, fill);
  picture.close();
}

std::string thrown_words(const Worth& worth, const std::string& currency) {
  if (worth.amount == 0) return "";
  if (worth.without_price == worth.amount) return ", price not known";
  std::string text = ", " + svg::name(money_words(worth.cents, currency), 30);
  if (worth.without_price > 0)
    text += fmt::format(" (price of {} not known)", servings_words(worth.without_price));
  return text;
}

}  // namespace

std::string render_stock_svg(const Household& household, const std::vector<ReviewSheet>& sheets,
                             Day today) {
  std::int64_t most = 0, all = 0;
  std::size_t places = 0;
  for (const ReviewSheet& sheet : sheets) {
    for (const SheetPlace& place : sheet.places) {
      const Bag bag = bag_of(household, place, sheet.schedule.hold_until);
      most = std::max(most, bag.all());
      all += bag.all();
      ++places;
    }
  }
  Picture picture(
      fmt::format("What lies in each bag and box, {}", plain_day(today)),
      fmt::format("{} in {} {}; each bar is divided into what lasts to the hold-until "
                  "date of its kit, what will not, and what is past its date, recalled "
                  "or doubtful.",
                  servings_words(all), places, plural("place", static_cast<int>(places))));
  picture.text(kLeft, 20, "Stock by bag, " + plain_day(today), Anchor::kStart, true);
  double y = 34;
  for (const ReviewSheet& sheet : sheets) {
    picture.text(kLeft, y + 12,
                 svg::name(plain::place(household, sheet.schedule.kit), 34) + ", to hold until " +
                     plain_day(sheet.schedule.hold_until));
    picture.line(kLeft, y + 17, kRight, y + 17);
    y += 24;
    if (sheet.places.empty()) {
      picture.text(kLeft, y + 12, "Nothing lies in it.");
      y += 24;
    }
    for (const SheetPlace& place : sheet.places) {
      const Bag bag = bag_of(household, place, sheet.schedule.hold_until);
      y += draw_bag(picture, household, bag, most, y);
    }
    y += 8;
  }
  const std::pair<Fill, const char*> keys[] = {
      {Fill::kPlain, "lasts to the hold-until date"},
      {Fill::kHatched, "will not last"},
      {Fill::kCrossed, "past its date, recalled or doubtful"}};
  for (const auto& [fill, words] : keys) {
    picture.box(kLeft, y, 24, 9, fill);
    picture.text(kLeft + 30, y + 9, words);
    y += kLine;
  }
  return picture.finish(y + 6);
}

std::string render_history_svg(const Household& household, const HistoryReport& history,
                               const WasteReport& waste, Day today) {
  std::int64_t most = 0, thrown = 0;
  for (const HistoryRow& row : history.years) {
    most = std::max({most, row.totals.eaten, row.totals.given_away, row.totals.thrown_out});
    thrown += row.totals.thrown_out;
  }
  Picture picture(fmt::format("Eaten, given away and thrown out by year, {}", plain_day(today)),
                  fmt::format("Three bars a year, in servings. Thrown out in all: {}.",
                              servings_words(thrown)));
  picture.text(kLeft, 20, "Eaten, given away, thrown out", Anchor::kStart, true);
  double y = 32;
  if (history.years.empty()) {
    picture.text(kLeft, y + 12, "Nothing is recorded.");
    y += 24;
  }
  for (const HistoryRow& row : history.years) {
    Worth worth;
    for (const WasteRow& each : waste.years) {
      if (each.year == row.year) worth = each.thrown_out;
    }
    picture.text(kLeft, y + 12, std::to_string(row.year), Anchor::kStart, true);
    picture.line(kLeft, y + 17, kRight, y + 17);
    y += 20;
    const LotTotals& totals = row.totals;
    draw_year_part(picture, row.year, "eaten", totals.eaten,
                   "eaten: " + servings_words(totals.eaten), Fill::kPlain, most, y);
    draw_year_part(picture, row.year, "given-away", totals.given_away,
                   "given away: " + servings_words(totals.given_away), Fill::kDotted, most, y + 32);
    draw_year_part(picture, row.year, "thrown-out", totals.thrown_out,
                   "thrown out: " + servings_words(totals.thrown_out) +
                       thrown_words(worth, household.settings.currency),
                   Fill::kHatched, most, y + 64);
    y += 104;
  }
  return picture.finish(y);
}

std::string render_drawn_json(const Drawn& drawn, Day as_of) {
  return json::document("picture", as_of,
                        json::Json{{"what", drawn.what},
                                   {"kits", json::keys(drawn.kits)},
                                   {"file", drawn.file},
                                   {"bars", drawn.bars}});
}

}  // namespace larderloop
