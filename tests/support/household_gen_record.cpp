// The half of the generator that makes lots and what happened to them.
#include "household_gen_parts.h"
#include "larderloop/core/stock.h"

#include <set>

namespace larderloop::made {
namespace {

class RecordMaker {
 public:
  RecordMaker(Household& home, const Cast& cast, Chance& chance, int size)
      : home_(home), cast_(cast), chance_(chance), size_(size) {}
  void make() {
    lots();
    record();
    readings();
    shown();
  }

 private:
  DateMark mark_for(const Food& food, Day received) {
    DateMark mark;
    if (food.kind == FoodKind::kThing || food.self_filled || chance_.percent(8)) return mark;
    mark.kind = MarkKind::kBestBefore;
    if (food.infant_formula || chance_.percent(20))
      mark.kind = MarkKind::kUseBy;
    else if (chance_.percent(10))
      mark.kind = MarkKind::kSellBy;
    Day day = kToday + Days(chance_.between(-100, 900));
    if (!food.infant_formula && chance_.percent(10)) {
      mark.kind = chance_.percent(50) ? MarkKind::kPackedOn : MarkKind::kProducedOn;
      day = received - Days(chance_.between(0, 60));
    }
    const date::year_month_day ymd{day};
    const int year = year_of(day);
    const int precision = chance_.between(0, 9);
    if (precision >= 9) {
      mark.precision = Precision::kYear;
      day = *resolve_year(year);
      mark.text = std::to_string(year);
    } else if (precision >= 6) {
      mark.precision = Precision::kMonth;
      const auto month = static_cast<unsigned>(ymd.month());
      day = *resolve_month(year, month);
      mark.text = (month < 10 ? "0" : "") + std::to_string(month) + "/" + std::to_string(year);
    } else {
      mark.text = iso_day(day);
    }
    mark.day = day;
    return mark;
  }

  // Of this very package: as the food's, or with something more or less declared.
  std::optional<Statement> label_for(const Food& food, Day received) {
    const bool eaten = food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
    if (!eaten || chance_.percent(25)) return std::nullopt;
    Statement label = food.label.value_or(Statement{});
    label.read_by = cast_.humans.front().str();
    label.read_on = chance_.day(received, kLast);
    if (chance_.percent(25)) {
      static const std::vector<std::string> kNew{"milk",    "peanut", "tree_nut", "tree_nut:walnut",
                                                 "soy",     "wheat",  "sesame",   "egg",
                                                 "fish:cod"};
      if (chance_.percent(70))
        label.declared[chance_.one_of(kNew)] =
            chance_.percent(60) ? Declared::kContains : Declared::kMayContain;
      else if (!label.declared.empty())
        label.declared.erase(label.declared.begin());
    }
    settle(label);
    return label;
  }

  LotState state() {
    return chance_.percent(90)   ? LotState::kOk
           : chance_.percent(50) ? LotState::kDoubtful
                                 : LotState::kRecalled;
  }

  void lots() {
    for (int number = 1; number <= size_; ++number) {
      const Food& food = chance_.one_of(home_.foods);
      Lot lot;
      lot.id = LotId(number);
      lot.food = food.key;
      lot.received = chance_.day(kFirst, kLast);
      lot.mark = mark_for(food, lot.received);
      lot.label = label_for(food, lot.received);
      lot.state = state();
      if (chance_.percent(50)) lot.lot_code = "L" + std::to_string(chance_.between(1000, 9999));
      home_.lots.push_back(std::move(lot));
    }
  }

  Entry& note(std::vector<Entry>& plan, EntryKind kind, Day on, const StockKey& at,
              HalfServings amount) {
    Entry entry;
    entry.kind = kind;
    entry.on = on;
    entry.written_at = midnight(on) + std::chrono::hours(chance_.between(6, 20));
    entry.at = at;
    entry.amount = amount;
    plan.push_back(std::move(entry));
    return plan.back();
  }

  PlaceKey kit_place() {
    const int which =
        chance_.between(0, static_cast<int>(cast_.bags.size() + cast_.shared.size()) - 1);
    const auto at = static_cast<std::size_t>(which);
    return at < cast_.bags.size() ? cast_.bags[at].first : cast_.shared[at - cast_.bags.size()];
  }

  // What happened to one lot, day after day, never more than there is.
  void life_of(const Lot& lot, std::vector<Entry>& plan) {
    const Food& food = *find_food(home_, lot.food);
    const std::int64_t unit = HalfServings::units(1, food.servings).halves();
    std::int64_t units = chance_.between(1, 6);
    StockKey at{lot.id, chance_.percent(70) ? chance_.one_of(cast_.shelves) : kit_place(),
                std::nullopt};
    Day on = lot.received;
    Entry& first = note(plan, chance_.percent(90) ? EntryKind::kReceived : EntryKind::kFound, on,
                        at, HalfServings(units * unit));
    if (first.kind == EntryKind::kReceived && chance_.percent(50))
      first.paid_cents = chance_.between(50, 2000);
    if (chance_.percent(50)) {
      on = chance_.day(on, kLast);
      const PlaceKey to = kit_place();
      const std::int64_t moved = chance_.between(1, static_cast<int>(units));
      if (to != at.place) {
        note(plan, EntryKind::kMoved, on, at, HalfServings(moved * unit)).to = to;
        units = chance_.percent(50) ? moved : units - moved;
        if (units == moved) at.place = to;
        if (units == 0) return;
      }
    }
    if (food.kind != FoodKind::kThing && chance_.percent(25)) {
      on = chance_.day(on, kLast);
      note(plan, EntryKind::kOpened, on, at, HalfServings(unit));
      units -= 1;
      const StockKey opened{lot.id, at.place, on};
      if (chance_.percent(70)) {
        const Day eaten_on =
            chance_.day(on, kLast);  // one call of chance a statement: arguments have no order
        const HalfServings helping(chance_.between(1, static_cast<int>(unit)));
        Entry& eaten = note(plan, EntryKind::kEaten, eaten_on, opened, helping);
        if (food.kind != FoodKind::kPetFood && food.kind != FoodKind::kWater)
          eaten.who = chance_.one_of(cast_.humans);
        if (eaten.who) eaten.meal = kAllMeals[chance_.between(0, 3)];
      }
    }
    if (units > 0 && chance_.percent(25)) {
      static const std::vector<EntryKind> kGone{EntryKind::kEaten, EntryKind::kGivenAway,
                                                EntryKind::kThrownOut, EntryKind::kLost};
      const EntryKind how = chance_.one_of(kGone);
      const Day gone_on = chance_.day(on, kLast);
      note(plan, how, gone_on, at,
           HalfServings(chance_.between(1, static_cast<int>(units)) * unit));
    }
  }

  void record() {
    std::vector<Entry> plan;
    for (const Lot& lot : home_.lots) life_of(lot, plan);
    std::stable_sort(plan.begin(), plan.end(),
                     [](const Entry& a, const Entry& b) { return a.on < b.on; });
    Ledger ledger(home_);
    const auto keep = [&](Entry entry) {
      entry.id = EntryId(static_cast<std::int64_t>(home_.entries.size()) + 1);
      if (ledger.apply(entry)) home_.entries.push_back(std::move(entry));
    };
    for (Entry& entry : plan) keep(std::move(entry));
    const std::vector<Entry> kept = home_.entries;
    for (const Entry& entry : kept) {
      if (entry.kind != EntryKind::kEaten || !chance_.percent(5)) continue;
      Entry undo;
      undo.kind = EntryKind::kCorrected;
      undo.on = kLast;
      undo.written_at = midnight(kLast) + std::chrono::hours(21);
      undo.corrects = entry.id;
      keep(std::move(undo));
    }
    if (ledger.stock().empty() || !chance_.percent(50)) return;
    Entry count;  // somebody counted one place and found one unit more
    count.kind = EntryKind::kCounted;
    count.on = kLast;
    count.written_at = midnight(kLast) + std::chrono::hours(22);
    const auto& [at, there] = *ledger.stock().begin();
    count.at = at;
    count.amount =
        there + HalfServings::units(1, find_food(home_, find_lot(home_, at.lot)->food)->servings);
    count.change = ledger.counted_change(count.at, count.amount);
    keep(std::move(count));
  }

  void readings() {
    for (const Lot& lot : home_.lots) {
      if (!chance_.percent(15)) continue;
      Reading reading;
      reading.id = ReadingId(static_cast<std::int64_t>(home_.readings.size()) + 1);
      reading.lot = lot.id;
      reading.on = chance_.day(lot.received, kLast);
      reading.by = cast_.humans.front().str();
      const Food& food = *find_food(home_, lot.food);
      const int what = chance_.between(0, 2);
      if (what == 0) reading.mark = mark_for(food, lot.received);
      if (what == 1) reading.label = label_for(food, lot.received);
      if (what == 2 || (!reading.mark && !reading.label)) reading.state = state();
      home_.readings.push_back(std::move(reading));
    }
  }

  // A plan that was shown when nobody had looked closely: it may well name what somebody must not
  // have.
  void shown() {
    if (home_.lots.empty() || !chance_.percent(40)) return;
    for (int day = 0; day < 4; ++day) {
      ShownMeal meal;
      meal.day = kToday + Days(2 * day);
      meal.meal = Meal::kDinner;
      std::set<ShownServing> servings;
      for (int each = 0; each < 2; ++each) {
        servings.insert(
            {{chance_.one_of(home_.lots).id, chance_.one_of(cast_.shelves), std::nullopt},
             chance_.one_of(cast_.humans),
             HalfServings(2)});
      }
      meal.servings.assign(servings.begin(), servings.end());
      home_.shown_meals.push_back(std::move(meal));
    }
  }

  Household& home_;
  const Cast& cast_;
  Chance& chance_;
  int size_;
};

}  // namespace

void settle(Statement& statement) {
  for (const auto& [diet, key] : contradictions(statement)) statement.suits.erase(diet);
}

void make_record(Household& home, const Cast& cast, Chance& chance, int size) {
  RecordMaker(home, cast, chance, size).make();
}

}  // namespace larderloop::made
