// Sums of energy and salt of a kit's days against open data: USDA ARS, National Nutrient Database
// for Standard Reference, Release 28 (usda_sr_rows.csv). Grams of each food a day were chosen, the
// expected sums worked out from the table by hand.
#include "larderloop/app/kit_check.h"
#include "larderloop/core/validate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

namespace larderloop {
namespace {

Day at(const char* text) {
  return parse_iso_day(text).value();
}

struct Row {
  double kcal, protein, sodium;
};

std::map<std::string, Row> rows() {
  std::map<std::string, Row> all;
  std::ifstream file(std::string(LARDERLOOP_SRC) + "/tests/reference/usda_sr_rows.csv");
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream cells(line);
    std::string number, kcal, protein, sodium;
    std::getline(cells, number, ',');
    std::getline(cells, kcal, ',');
    std::getline(cells, protein, ',');
    std::getline(cells, sodium, ',');
    all[number] = {std::stod(kcal), std::stod(protein), std::stod(sodium)};
  }
  return all;
}

struct Portion {
  const char* number;
  double grams;
};
const std::vector<std::vector<Portion>> kDays = {{{"18228", 60},
                                                  {"16398", 64},
                                                  {"15121", 113},
                                                  {"09298", 60},
                                                  {"19015", 42},
                                                  {"16358", 253},
                                                  {"09238", 250},
                                                  {"19821", 60},
                                                  {"19816", 27}},
                                                 {{"18970", 98},
                                                  {"12040", 48},
                                                  {"05277", 142},
                                                  {"09421", 72},
                                                  {"19015", 42},
                                                  {"16006", 254},
                                                  {"09268", 249},
                                                  {"12085", 40},
                                                  {"19904", 28.35}},
                                                 {{"18216", 56.8},
                                                  {"16098", 64},
                                                  {"15088", 92},
                                                  {"09032", 65},
                                                  {"19020", 56},
                                                  {"16059", 256},
                                                  {"09097", 237},
                                                  {"19059", 75}}};
struct Sum {
  double grams, kcal, sodium;
};
const Sum kSums[] = {
    {929, 1951.28, 1630.07}, {973.35, 2006.07, 2452.84}, {901.8, 1905.90, 2214.25}};

// One person whose bag holds exactly these portions, each a unit of a food of its own.
Household home_with_these_days() {
  Household home;
  home.book_id = "00000000-0000-4000-8000-000000000001";
  Person ada;
  ada.key = PersonKey("ada");
  ada.name = "Ada";
  home.people = {ada};
  Place kit, bag;
  kit.key = PlaceKey("kit");
  kit.name = "Kit";
  kit.kind = PlaceKind::kKit;
  bag.key = PlaceKey("bag");
  bag.name = "Bag";
  bag.kind = PlaceKind::kBag;
  bag.parent = kit.key;
  home.places = {bag, kit};
  const auto table = rows();
  std::int64_t id = 0;
  for (std::size_t day = 0; day < kDays.size(); ++day) {
    for (const Portion& portion : kDays[day]) {
      ++id;
      const Row& row = table.at(portion.number);
      Food food;
      food.key = FoodKey("food-" + std::to_string(100 + id));
      food.name = food.key.str();
      food.energy_kcal = std::llround(row.kcal * portion.grams / 100);
      food.sodium_mg = std::llround(row.sodium * portion.grams / 100);
      food.mass_g = std::llround(portion.grams);
      home.foods.push_back(food);
      MenuLine line;
      line.id = MenuLineId(id);
      line.place = bag.key;
      line.people = {ada.key};
      line.day = static_cast<int>(day) + 1;
      line.meal = Meal::kLunch;
      line.food = food.key;
      home.menu.push_back(line);
      Lot lot;
      lot.id = LotId(id);
      lot.food = food.key;
      lot.received = at("2027-03-01");
      lot.mark = {"31.12.2029", MarkKind::kBestBefore, Precision::kDay, at("2029-12-31")};
      home.lots.push_back(lot);
      Entry entry;
      entry.id = EntryId(id);
      entry.kind = EntryKind::kReceived;
      entry.on = lot.received;
      entry.at = {lot.id, bag.key, std::nullopt};
      entry.amount = HalfServings::units(1, 1);
      home.entries.push_back(entry);
    }
  }
  sort_lists(home);
  return home;
}

TEST(KitEnergyReference, SumsOfTheDaysAreThoseOfTheTable) {
  const Household home = home_with_these_days();
  for (const Problem& problem : validate(home))
    ADD_FAILURE() << problem.where << ": " << problem.what;
  const auto check = check_kit(home, PlaceKey("kit"), at("2027-04-01"));
  ASSERT_TRUE(check) << check.error().what;
  ASSERT_EQ(check->eaten.size(), 3U);
  double total = 0;
  for (std::size_t day = 0; day < 3; ++day) {
    const double rounding =
        static_cast<double>(kDays[day].size()) * 0.5;  // each package states whole kcal and mg
    EXPECT_NEAR(static_cast<double>(check->eaten[day].kcal), kSums[day].kcal, rounding) << day;
    EXPECT_NEAR(static_cast<double>(check->eaten[day].sodium_mg), kSums[day].sodium, rounding)
        << day;
    total += static_cast<double>(check->eaten[day].kcal);
  }
  EXPECT_NEAR(total, 5863.25, 13);
  EXPECT_NEAR(total / 6300, 0.9307,
              0.003);  // of three days at Sphere's planning figure (from memory)
  double grams = 0;
  for (const Sum& sum : kSums) grams += sum.grams;
  for (const Carried& each : check->carried)
    EXPECT_NEAR(static_cast<double>(each.mass_g), grams, 13);
}

// A food without energy is never counted as nothing.
TEST(KitEnergyReference, UnknownIsNotNothing) {
  Household home = home_with_these_days();
  home.foods[0].energy_kcal.reset();
  const auto check = check_kit(home, PlaceKey("kit"), at("2027-04-01"));
  ASSERT_TRUE(check);
  EXPECT_EQ(check->eaten[0].unknown_energy, 1);
}

}  // namespace
}  // namespace larderloop
