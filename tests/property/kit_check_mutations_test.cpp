// The check of a kit against an oracle of its own: one thing at a time is changed over every lot of
// a right kit - removed, moved, swapped, redated, relabelled, recalled - and the check must call a
// change harmful exactly when the oracle does. The oracle shares no code with the check: who must
// not have what is raw_predicate's answer, and a menu can be filled by Hall's theorem (for every
// set of lines of a place, what can stand for one of them is at least what they ask for).
#include "larderloop/app/kit_check.h"
#include "larderloop/core/changes.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"
#include "support/raw_predicate.h"
#include "support/right_kit.h"

#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <functional>
#include <map>
#include <set>
#include <stdexcept>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2027-04-04");
const Day kHold = *parse_iso_day("2027-10-16");  // the review of 2 October 2027 and 14 days

struct Lies {
  StockKey at;
  std::int64_t units = 0;
  const Food* food = nullptr;
  std::optional<Day> through;
  LotState state = LotState::kOk;
};

class Oracle {
 public:
  explicit Oracle(const Household& home) : home_(home), liked_(home) {
    for (Person& person : liked_.people) person.ratings.clear();
    const auto ledger = replay(home);
    if (!ledger) throw std::runtime_error(ledger.error().problems.front().what);
    for (const auto& [at, amount] : ledger->stock()) {
      if (kit_of(home, at.place) != made::kDemoKit) continue;
      const Lot& lot = *find_lot(home, at.lot);
      Lies lies{at, amount.halves() / 2, find_food(home, lot.food), lot.mark.day, lot.state};
      lies.units /= lies.food->servings;
      for (const Reading& reading : home.readings) {
        if (reading.lot != lot.id) continue;
        if (reading.mark) lies.through = reading.mark->day;
        if (reading.state) lies.state = *reading.state;
      }
      all_.push_back(lies);
    }
  }
  // Why the kit is not right; empty = right.
  [[nodiscard]] std::string wrong() const {
    for (const Lies& each : all_) {
      if (const std::string why = wrong_with(each); !why.empty())
        return each.food->key.str() + ": " + why;
    }
    std::map<PlaceKey, std::vector<MenuLine>> by_place;
    std::int64_t water = 0;
    for (const MenuLine& line : home_.menu) {
      if (kit_of(home_, line.place) != made::kDemoKit) continue;
      if (line.role == Role::kWater) {
        water += line.ml;
        continue;
      }
      // Lines that ask the same for the same people count as one.
      auto& lines = by_place[line.place];
      const auto same = std::find_if(lines.begin(), lines.end(), [&](const MenuLine& each) {
        return each.role == line.role && each.food == line.food && each.people == line.people &&
               each.everyone == line.everyone;
      });
      if (same == lines.end())
        lines.push_back(line);
      else
        same->units += line.units;
    }
    for (const auto& [place, lines] : by_place) {
      for (unsigned set = 1; set < (1U << lines.size()); ++set) {
        std::int64_t asked = 0, there = 0;
        for (std::size_t at = 0; at < lines.size(); ++at)
          asked += (set >> at & 1U) ? lines[at].units : 0;
        for (const Lies& each : all_) {
          bool can = false;
          for (std::size_t at = 0; at < lines.size(); ++at)
            can = can || ((set >> at & 1U) && stands_for(each, lines[at]));
          there += can ? each.units : 0;
        }
        if (there < asked) return place.str() + ": the menu cannot be filled";
      }
    }
    for (const Lies& each : all_) {
      if (each.food->kind == FoodKind::kWater && each.state == LotState::kOk)
        water -= each.units * *each.food->volume_ml;
    }
    if (water > 0) return "too little water";
    return too_heavy();
  }

 private:
  [[nodiscard]] std::set<PersonKey> eaters(const PlaceKey& place) const {
    std::set<PersonKey> all;
    for (const MenuLine& line : home_.menu) {
      if (line.place != place) continue;
      all.insert(line.people.begin(), line.people.end());
      for (const Person& person : home_.people) {
        if (line.everyone && person.species == "human") all.insert(person.key);
      }
    }
    return all;
  }
  // May the person be given it, as far as label, allergies and diet go?
  [[nodiscard]] bool label_forbids(const PersonKey& who, const Lies& each) const {
    return !raw::forbidden_lot(liked_, who, each.at.lot, kToday).empty();
  }
  [[nodiscard]] std::string wrong_with(const Lies& each) const {
    const Food& food = *each.food;
    if (each.state != LotState::kOk) return "must not stay: its state";
    if (food.kind == FoodKind::kWater) return "";
    if (each.through ? *each.through < kHold : food.kind != FoodKind::kThing)
      return "will not last";
    if (food.kind == FoodKind::kThing) return "";
    if (food.refrigerate || !food.no_cook) return "of no use in a kit";
    bool opener = !food.needs_opener, spoon = !food.needs_spoon;
    for (const Lies& other : all_) {
      if (other.at.place != each.at.place) continue;
      opener = opener || other.food->is_opener;
      spoon = spoon || other.food->is_cutlery;
    }
    if (!opener || !spoon) return "cannot be opened or eaten";
    for (const PersonKey& who : eaters(each.at.place)) {
      const Person& person = *find_person(home_, who);
      const bool human = person.species == "human";
      if (human != (food.kind != FoodKind::kPetFood)) continue;
      if (!food.infant_formula && label_forbids(who, each)) return "not for " + who.str();
    }
    return "";
  }
  [[nodiscard]] bool stands_for(const Lies& each, const MenuLine& line) const {
    const Food& food = *each.food;
    if (each.at.place != line.place ||
        (line.role ? food.roles.count(*line.role) == 0 : food.key != line.food))
      return false;
    if (food.needs_hot_water || (!food.no_cook && food.kind != FoodKind::kThing)) return false;
    if (food.kind == FoodKind::kThing) return true;
    std::set<PersonKey> people(line.people.begin(), line.people.end());
    for (const Person& person : home_.people) {
      if (line.everyone && person.species == "human") people.insert(person.key);
    }
    for (const PersonKey& who : people) {
      if (!raw::forbidden_lot(home_, who, each.at.lot, kToday).empty()) return false;
    }
    return true;
  }
  [[nodiscard]] std::string too_heavy() const {
    for (const Place& place : home_.places) {
      std::int64_t mass = 0, volume = 0;
      for (const Lies& each : all_) {
        const Place* at = find_place(home_, each.at.place);
        bool inside = false;
        while (at != nullptr) {
          inside = inside || at->key == place.key;
          at = find_place(home_, at->parent);
        }
        if (!inside || each.food->kind == FoodKind::kWater) continue;
        mass += each.units * each.food->mass_g.value_or(0);
        volume += each.units * each.food->volume_ml.value_or(0);
      }
      if (place.mass_limit_g && mass > *place.mass_limit_g)
        return place.key.str() + " is too heavy";
      if (place.volume_limit_ml && volume > *place.volume_limit_ml)
        return place.key.str() + " is too full";
    }
    return "";
  }

  const Household& home_;
  Household liked_;  // the same, where nobody refuses anything
  std::vector<Lies> all_;
};

Household& right() {
  static Household home =
      made::right_kit(made::demo_household(), made::kDemoKit, *parse_iso_day("2027-04-03"));
  return home;
}

std::string first_must(const KitCheck& check) {
  for (const KitFinding& each : check.findings) {
    if (each.gravity == Gravity::kMust)
      return std::string(topic_name(each.topic)) + " at " + each.place.str() + ": " + each.what;
  }
  return "";
}

TEST(KitCheckMutations, TheRightKitIsReady) {
  const Household& home = right();
  for (const Problem& problem : validate(home))
    ADD_FAILURE() << problem.where << " " << problem.what;
  const auto check = check_kit(home, made::kDemoKit, kToday);
  ASSERT_TRUE(check) << check.error().what;
  ASSERT_EQ(check->schedule.hold_until, kHold);
  for (const KitFinding& each : check->findings) {
    if (each.gravity == Gravity::kMust)
      ADD_FAILURE() << topic_name(each.topic) << " at " << each.place.str() << ": " << each.what;
  }
  EXPECT_EQ(Oracle(home).wrong(), "");
}

// ---- changes, one thing at a time ----

Entry entry_for(const Household& home, EntryKind kind, const StockKey& at, const Food& food,
                std::int64_t units) {
  Entry entry;
  entry.id = next_ids(home).entry;
  entry.kind = kind;
  entry.on = kToday;
  entry.at = at;
  entry.amount = HalfServings::units(units, food.servings);
  return entry;
}
void move_unit(Household& home, const StockKey& at, const Food& food, const PlaceKey& to) {
  Entry entry = entry_for(home, EntryKind::kMoved, at, food, 1);
  entry.to = to;
  home.entries.push_back(entry);
}
Reading reading_of(const Household& home, LotId lot) {
  Reading reading;
  reading.id = next_ids(home).reading;
  reading.lot = lot;
  reading.on = kToday;
  reading.by = "Ansa";
  return reading;
}
void redate(Household& home, LotId lot, Day day) {
  Reading reading = reading_of(home, lot);
  reading.mark = DateMark{iso_day(day), MarkKind::kBestBefore, Precision::kDay, day};
  home.readings.push_back(reading);
}
void set_state(Household& home, LotId lot, LotState state) {
  Reading reading = reading_of(home, lot);
  reading.state = state;
  home.readings.push_back(reading);
}
void relabel(Household& home, LotId lot, const std::function<void(Statement&)>& change) {
  Reading reading = reading_of(home, lot);
  reading.label = lot_facts(home, *find_lot(home, lot)).label;
  if (!reading.label) reading.label = Statement{{}, {}, "Ansa", kToday};
  reading.label->read_on = kToday;
  change(*reading.label);
  for (const auto& [diet, key] : contradictions(*reading.label)) reading.label->suits.erase(diet);
  home.readings.push_back(reading);
}

TEST(KitCheckMutations, EveryHarmfulChangeIsFoundAndNoHarmlessOne) {
  const Household& home = right();
  const auto ledger = replay(home);
  ASSERT_TRUE(ledger);
  struct Count {
    int harmful = 0, harmless = 0;
  };
  std::map<std::string, Count> counts;
  const auto judge = [&](const std::string& kind, const std::function<void(Household&)>& change) {
    Household changed = home;
    change(changed);
    const std::string wrong = Oracle(changed).wrong();
    const auto check = check_kit(changed, made::kDemoKit, kToday);
    ASSERT_TRUE(check) << check.error().what;
    Count& count = counts[kind];
    ++(wrong.empty() ? count.harmless : count.harmful);
    EXPECT_EQ(check->ready(), wrong.empty())
        << kind << "; the oracle: " << (wrong.empty() ? "harmless" : wrong)
        << "; the check: " << first_must(*check);
  };
  std::vector<PlaceKey> bags;
  for (const Place& place : home.places) {
    if (place.kind == PlaceKind::kBag && kit_of(home, place.key) == made::kDemoKit)
      bags.push_back(place.key);
  }
  std::vector<std::pair<StockKey, const Food*>> there;
  for (const auto& [at, amount] : ledger->stock()) {
    if (kit_of(home, at.place) == made::kDemoKit)
      there.emplace_back(at, find_food(home, find_lot(home, at.lot)->food));
  }
  ASSERT_GT(there.size(), 80U);
  // Every lot in the nightly run, every third one else.
  const std::size_t step = test::test_scale() > 1 ? 1 : 3;
  for (std::size_t index = 0; index < there.size(); index += step) {
    const StockKey& at = there[index].first;
    const Food& food = *there[index].second;
    SCOPED_TRACE(at.place.str() + ", lot " + std::to_string(at.lot.value()) + ", " +
                 food.key.str());
    judge("one removed",
          [&](Household& h) { h.entries.push_back(entry_for(h, EntryKind::kLost, at, food, 1)); });
    judge("one more",
          [&](Household& h) { h.entries.push_back(entry_for(h, EntryKind::kFound, at, food, 1)); });
    judge("moved to the pantry", [&](Household& h) { move_unit(h, at, food, PlaceKey("tins")); });
    for (const std::size_t ahead : {0U, 4U}) {
      const PlaceKey& to = bags[(index + ahead) % bags.size()];
      if (to != at.place)
        judge("moved to another bag", [&](Household& h) { move_unit(h, at, food, to); });
    }
    const auto& other = there[(index * 7 + 11) % there.size()];
    if (other.first.place != at.place && other.first.lot != at.lot) {
      judge("swapped", [&](Household& h) {
        move_unit(h, at, food, other.first.place);
        move_unit(h, other.first, *other.second, at.place);
      });
    }
    for (const LotState state : {LotState::kDoubtful, LotState::kRecalled})
      judge("doubtful or recalled", [&](Household& h) { set_state(h, at.lot, state); });
    if (food.kind == FoodKind::kWater) continue;
    judge("redated: a day short", [&](Household& h) { redate(h, at.lot, kHold - Days(1)); });
    judge("redated: just lasts", [&](Household& h) { redate(h, at.lot, kHold); });
    judge("redated: past", [&](Household& h) { redate(h, at.lot, kToday - Days(1)); });
    if (food.kind == FoodKind::kThing) continue;
    const char* const avoided[] = {"kiwi",   "peanut",  "milk",
                                   "sesame", "mollusc", "tree_nut:cashew"};
    for (const char* key : {avoided[index % 6], avoided[(index + 3) % 6], "lupin"}) {
      judge("relabelled: contains", [&](Household& h) {
        relabel(h, at.lot, [&](Statement& s) { s.declared[key] = Declared::kContains; });
      });
      judge("relabelled: may contain", [&](Household& h) {
        relabel(h, at.lot, [&](Statement& s) { s.declared.emplace(key, Declared::kMayContain); });
      });
    }
    judge("relabelled: suits no diet",
          [&](Household& h) { relabel(h, at.lot, [](Statement& s) { s.suits.clear(); }); });
    judge("relabelled: as it was", [&](Household& h) { relabel(h, at.lot, [](Statement&) {}); });
    judge("another recipe: choking", [&](Household& h) {
      for (Food& each : h.foods) each.choking_risk = each.choking_risk || each.key == food.key;
    });
    judge("another recipe: to be refrigerated", [&](Household& h) {
      for (Food& each : h.foods) each.refrigerate = each.refrigerate || each.key == food.key;
    });
  }
  int harmful = 0, harmless = 0;
  for (const auto& [kind, count] : counts) {
    std::printf("  %-36s %4d harmful, all found; %4d harmless, none called harmful\n", kind.c_str(),
                count.harmful, count.harmless);
    harmful += count.harmful;
    harmless += count.harmless;
  }
  std::printf("  %-36s %4d harmful; %4d harmless\n", "all", harmful, harmless);
  EXPECT_GT(harmful, step == 1 ? 500 : 150);
  EXPECT_GT(harmless, step == 1 ? 200 : 60);
}

}  // namespace
}  // namespace larderloop
