// A number for each id, in the order of the ids, whatever the order in which they come.
#include "larderloop/plan/numbers_by_id.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

namespace larderloop::plan {
namespace {

TEST(NumbersById, TellsWhatItWasToldAndNothingElse) {
  NumbersById numbers;
  EXPECT_TRUE(numbers.empty());
  EXPECT_EQ(numbers.of("ana", 1), 1);
  numbers["cas"] = 3;
  numbers["ana"] = 0;
  numbers.add("ben", 2) += 5;
  EXPECT_EQ(numbers.add("ben", 9), 7);  // there already
  EXPECT_EQ(numbers, (NumbersById{{"cas", 3}, {"ben", 7}, {"ana", 0}, {"ben", 1}}));
  EXPECT_EQ(numbers.size(), 3U);
  EXPECT_EQ(numbers.of("ana", 1), 0);
  EXPECT_EQ(numbers.at("cas"), 3);
  for (const char* absent : {"", "a", "anaa", "bez", "d"}) {
    EXPECT_EQ(numbers.count(absent), 0U) << absent;
    EXPECT_EQ(numbers.of(absent, -4), -4) << absent;
    EXPECT_THROW((void)numbers.at(absent), std::out_of_range) << absent;
  }
  numbers.clear();
  EXPECT_EQ(numbers.count("ana"), 0U);
}

// Against the standard library's map.
TEST(NumbersById, HoldsWhatAMapHolds) {
  std::mt19937 dice(7);
  for (int round = 0; round < 200; ++round) {
    NumbersById numbers;
    std::map<std::string, std::int64_t> map;
    for (int step = 0; step < 30; ++step) {
      const std::string id = "eater-" + std::to_string(dice() % 20);
      const auto value = static_cast<std::int64_t>(dice() % 100);
      if (dice() % 2 == 0) {
        numbers[id] = value;
        map[id] = value;
      } else {
        EXPECT_EQ(numbers.add(id, value), map.emplace(id, value).first->second);
      }
    }
    const std::map<std::string, std::int64_t> same(numbers.begin(), numbers.end());
    EXPECT_EQ(same, map);
    EXPECT_TRUE(std::is_sorted(numbers.begin(), numbers.end()));
  }
}

}  // namespace
}  // namespace larderloop::plan
