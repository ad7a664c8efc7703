// Lifting, rounding of labels, water and heat against published values; the source stands beside
// each check.
#include "larderloop/core/keeping.h"
#include "larderloop/core/label_figures.h"
#include "larderloop/core/lifting.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Day at(const char* text) {
  return parse_iso_day(text).value();
}

// NIOSH 94-110, metric form; single multipliers as tabulated in insurers' and CCOHS fact sheets of
// it.
TEST(LiftingReference, RecommendedLimit) {
  EXPECT_NEAR(recommended_limit_kg({25, 75, 25, 0, 1, 1}), 23.00, 0.005);
  EXPECT_NEAR(recommended_limit_kg({40, 20, 80, 0, 1, 0.95}), 9.99, 0.005);
  EXPECT_NEAR(recommended_limit_kg({30, 150, 120, 30, 1, 1}), 11.51, 0.005);
  EXPECT_EQ(recommended_limit_kg({25, 176, 25, 0, 1, 1}), 0);
  EXPECT_EQ(recommended_limit_kg({64, 75, 25, 0, 1, 1}), 0);
  EXPECT_EQ(recommended_limit_kg({25, 75, 25, 136, 1, 1}), 0);
  struct Row {
    Lift lift;
    double multiplier;
  };
  const Row rows[] = {{{30, 75, 25, 0, 1, 1}, 0.83},  {{40, 75, 25, 0, 1, 1}, 0.63},
                      {{50, 75, 25, 0, 1, 1}, 0.50},  {{60, 75, 25, 0, 1, 1}, 0.42},
                      {{25, 0, 25, 0, 1, 1}, 0.78},   {{25, 30, 25, 0, 1, 1}, 0.87},
                      {{25, 150, 25, 0, 1, 1}, 0.78}, {{25, 175, 25, 0, 1, 1}, 0.70},
                      {{25, 75, 40, 0, 1, 1}, 0.93},  {{25, 75, 55, 0, 1, 1}, 0.90},
                      {{25, 75, 100, 0, 1, 1}, 0.87}, {{25, 75, 175, 0, 1, 1}, 0.85},
                      {{25, 75, 25, 90, 1, 1}, 0.71}, {{25, 75, 25, 60, 1, 1}, 0.81},
                      {{25, 75, 25, 45, 1, 1}, 0.86}, {{25, 75, 25, 30, 1, 1}, 0.90}};
  for (const Row& row : rows)
    EXPECT_NEAR(recommended_limit_kg(row.lift) / 23, row.multiplier, 0.0075) << row.multiplier;
}

// OSHA letter of 29 March 2004: 160 lb under ideal conditions (51 lb) is an index of 3.1. NIOSH
// 94-110, example 1, from memory: 44 lb at 16.3 lb is 2.7.
TEST(LiftingReference, Index) {
  EXPECT_NEAR(lifting_index(160, 51), 3.14, 0.01);
  EXPECT_NEAR(lifting_index(44, 16.3), 2.7, 0.05);
}

// 21 CFR 101.9(c)(1), (2), (4) and FDA, NLEA inspection guide, attachment 7.
TEST(LabelReference, Rounding) {
  EXPECT_EQ(label_kcal(4.9), 0);
  EXPECT_EQ(label_kcal(47), 45);
  EXPECT_EQ(label_kcal(52.5), 50);
  EXPECT_EQ(label_kcal(191.36), 190);
  EXPECT_EQ(label_sodium_mg(4.9), 0);
  EXPECT_EQ(label_sodium_mg(136.32), 135);
  EXPECT_EQ(label_sodium_mg(140.21), 140);
  EXPECT_EQ(label_sodium_mg(622.38), 620);
  EXPECT_EQ(label_fat_g(0.4), 0);
  EXPECT_EQ(label_fat_g(2.208), 2);
  EXPECT_EQ(label_fat_g(16.435), 16);
}

// General Atwater factors, 21 CFR 101.9(c)(1)(i), from memory; 4.184 kJ a kcal (NIST SP 811).
// Sphere's planning figure of 2,100 kcal is from memory.
TEST(LabelReference, Energy) {
  EXPECT_NEAR(kilojoules(2000), 8368, 1e-9);
  EXPECT_NEAR(kilojoules(3 * 2100), 26359.2, 1e-6);
  EXPECT_NEAR(energy_of_grams(10, 20, 5, 0), 165, 1e-9);
  EXPECT_NEAR(energy_of_grams(3.07, 79.18, 0.46, 0), 333.14,
              0.01);  // raisins; the USDA says 299, by factors of their own
}

Household home_of(int people, int dogs) {
  Household home;
  for (int each = 0; each < people + dogs; ++each) {
    Person person;
    person.key = PersonKey("p" + std::to_string(each));
    if (each >= people) person.species = "dog";
    home.people.push_back(person);
  }
  return home;
}

// CDC, Creating and Storing an Emergency Water Supply, 2017: a gallon for each person and each pet,
// and day; FEMA and Red Cross: two quarts to drink.
TEST(WaterReference, Gallons) {
  EXPECT_NEAR(static_cast<double>(water_need(home_of(4, 0), 3).all), 45424.9, 1);
  EXPECT_NEAR(static_cast<double>(water_need(home_of(4, 1), 3).all), 56781.2, 1);
  EXPECT_NEAR(static_cast<double>(water_need(home_of(1, 0), 14).all), 52995.8, 1);
  EXPECT_NEAR(static_cast<double>(water_need(home_of(1, 0), 3).people_drink), 5678.1, 1);
}
// CRC Handbook, from memory: 0.9982 kg/l at 20 degrees C, so three gallons weigh 24.99 lb.
TEST(WaterReference, Mass) {
  EXPECT_NEAR(water_kg(11356), 11.34, 0.005);
  EXPECT_NEAR(water_kg(11356) / 0.45359237, 24.99, 0.01);
}
// A county's advice (Carroll County): about a fluid ounce a pound of body and day.
TEST(WaterReference, Pets) {
  Person cat;
  cat.species = "cat";
  cat.mass_g = 4536;  // ten pounds
  EXPECT_NEAR(static_cast<double>(pet_drinks_ml(cat)), 295.7, 1);
  cat.mass_g.reset();
  EXPECT_NEAR(static_cast<double>(pet_drinks_ml(cat)), 1892.7, 1) << "unknown: as much as a person";
}

// The Q10 model, worked out by hand; 20 weeks at 20 degrees and 10 at 30 give Q10 = 2 (a published
// example).
TEST(HeatReference, Q10) {
  EXPECT_NEAR(life_at(20, 20, 30, 2), 10, 1e-9);
  EXPECT_NEAR(life_at(24, 20, 35, 2), 8.49, 0.005);
  EXPECT_NEAR(life_at(24, 20, 40, 2), 6.00, 0.005);
  EXPECT_NEAR(life_at(24, 20, 10, 2), 48.00, 0.005);
  EXPECT_NEAR(life_at(24, 20, 30, 3), 8.00, 0.005);
  EXPECT_NEAR(life_at(36, 21, 32, 2.5), 13.14, 0.005);
}
TEST(HeatReference, HeatOnlyShortens) {
  EXPECT_EQ(good_through_in_heat(at("2027-01-01"), at("2027-12-31")), at("2027-07-02"));
  EXPECT_EQ(good_through_in_heat(at("2027-12-31"), at("2027-12-31")), at("2027-12-31"));
  EXPECT_EQ(good_through_in_heat(at("2028-06-01"), at("2027-12-31")), at("2027-12-31"));
  for (int days = 0; days < 900; ++days) {
    const Day through = at("2027-01-01") + Days(days);
    EXPECT_LE(good_through_in_heat(at("2027-01-01"), through), through);
  }
}

}  // namespace
}  // namespace larderloop
