// household_gen_parts.h - what the two halves of the generator share: chance, days, and who and
// what the household has.
#pragma once

#include "larderloop/core/household.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::made {

inline Day made_day(int year, unsigned month, unsigned day) {
  return resolve_day(year, month, day).value();
}

inline const Day kToday = made_day(2026, 11, 25);
inline const Day kFirst = made_day(2026, 4, 1);  // of the record
inline const Day kLast = made_day(2026, 11, 20);

// Chance from whole numbers only; the slight bias of the remainder does not matter here.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  int between(int low, int high) {  // both included
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool percent(int chance) { return between(0, 99) < chance; }
  template <class T>
  const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(between(0, static_cast<int>(list.size()) - 1))];
  }
  template <class T>
  void shuffle(std::vector<T>& list) {
    for (std::size_t left = list.size(); left > 1; --left) {
      std::swap(list[left - 1],
                list[static_cast<std::size_t>(between(0, static_cast<int>(left) - 1))]);
    }
  }
  Day day(Day from, Day through) {
    return from + Days(between(0, std::max(0, days_between(from, through))));
  }

 private:
  std::mt19937_64 engine_;
};

// Keys of a household under construction, by what the generator does with them.
struct Cast {
  std::string pet_species;  // empty = no pet
  std::vector<PersonKey> humans;
  std::vector<std::pair<PlaceKey, PersonKey>> bags;
  std::vector<PlaceKey> shared;   // bags for everyone
  std::vector<PlaceKey> shelves;  // and the pantry
  std::vector<PlaceKey> kits;
};

// Nobody claims a diet that the declared things rule out.
void settle(Statement& statement);
// Adds `size` lots, what happened to them, what was read later, and perhaps a plan that was shown.
// Pre: sorted lists.
void make_record(Household& home, const Cast& cast, Chance& chance, int size);

}  // namespace larderloop::made
