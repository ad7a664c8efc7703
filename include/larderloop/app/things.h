// things.h - people, foods, places and lots: adding them, changing what people describe, and
// reading more off a package. Safety:   a label counts only when somebody read it; what a new label
// says is held against everyone at once.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace larderloop {

// A new thing, or an old one with new properties. An empty key is made from the name. kBadData: the
// key or the name is taken (add), or a property is wrong; `what` says which.
struct PersonSaved {
  Person person;
  std::vector<std::string>
      own_allergens;  // keys that no list knows and that are the household's own from now on
  std::vector<LotId>
      now_wrong;  // lots on hand in places the person eats from that they must not have
};
// `own`: avoid keys of the person that need not be on a list.
[[nodiscard]] Result<Outcome<PersonSaved>> add_person(const Household& household, Person person,
                                                      const std::vector<std::string>& own,
                                                      Asked asked);
[[nodiscard]] Result<Outcome<PersonSaved>> change_person(const Household& household, Person person,
                                                         const std::vector<std::string>& own,
                                                         Asked asked);

struct FoodSaved {
  Food food;
  std::vector<PersonRefusal> must_not;  // by the label, when it was read
};
[[nodiscard]] Result<Outcome<FoodSaved>> add_food(const Household& household, Food food,
                                                  Asked asked);
[[nodiscard]] Result<Outcome<FoodSaved>> change_food(const Household& household, Food food,
                                                     Asked asked);

struct PlaceSaved {
  Place place;
};
[[nodiscard]] Result<Outcome<PlaceSaved>> add_place(const Household& household, Place place,
                                                    Asked asked);
[[nodiscard]] Result<Outcome<PlaceSaved>> change_place(const Household& household, Place place,
                                                       Asked asked);

// What was read off a package: all of it, or "the same as last time". `read_by` is never empty.
struct LabelRead {
  std::string read_by;
  bool same_as_food = false;  // as the food's last read label; then the three lists are empty
  std::set<std::string> contains;
  std::set<std::string> may_contain;
  std::set<Diet> suits;
};

// `differs`: from the food's last read label, or there was none. `must_not`: whom the label
// concerns: contains, may contain, diet.
struct LabelNews {
  Statement label;
  bool differs = false;
  std::vector<PersonRefusal> must_not;
};

// `elsewhere`: how many of the units go to other places instead of `at`, each place once, at least one unit each and one left for `at`.
struct NewLot {
  FoodKey food;
  std::int64_t units = 0;
  PlaceKey at;
  std::vector<std::pair<PlaceKey, std::int64_t>> elsewhere;
  DateMark mark;
  std::string lot_code;
  std::optional<Day> received;  // absent = today
  std::optional<LabelRead> label;
  std::optional<std::int64_t> paid_cents;
  std::string note;
};
// `received`: at `at`; `also`: in the other places. What was paid is shared out by units.
struct LotAdded {
  Lot lot;
  Entry received;
  std::vector<Entry> also;
  LotFacts facts;
  std::optional<LabelNews> label;
};
// A lot and its received entries. kBadData: absurd amounts, a day to come, a place whose eaters must
// not have it.
[[nodiscard]] Result<Outcome<LotAdded>> add_lot(const Household& household, const NewLot& request,
                                                Asked asked);

// A reading: what was learnt of a lot later on. At least one of label, state and mark is given.
struct LotLearnt {
  LotId lot;
  std::string by;
  std::optional<LabelRead> label;
  std::optional<LotState> state;
  std::optional<DateMark> mark;
  std::string note;
};
struct LotRead {
  Reading reading;
  LotFacts before;
  LotFacts after;
  std::optional<LabelNews> label;
  // Where it lies although somebody who eats there must not have it.
  std::vector<std::pair<PlaceKey, std::vector<PersonRefusal>>> now_wrong;
};
[[nodiscard]] Result<Outcome<LotRead>> read_lot(const Household& household,
                                                const LotLearnt& request, Asked asked);

}  // namespace larderloop
