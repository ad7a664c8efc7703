// Estimates of energy need against published tables and equations; the source stands beside each
// row.
#include "larderloop/core/energy_need.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

constexpr auto kF = Sex::kFemale;
constexpr auto kM = Sex::kMale;

Day at(const char* text) {
  return parse_iso_day(text).value();
}

struct Case {
  Sex sex;
  double years, cm, kg;
  double expected[4];  // inactive, low active, active, very active; 0 = not published
  double tolerance;
};

// IOM, Dietary Reference Intakes for Energy, 2002/2005, chapter 5: the printed tables for
// 30-year-olds (1.65 m, BMI 18.5; 1.80 m, BMI 24.99) and for 19-year-old men; the last rows are the
// equations of Health Canada's reprint worked out by hand.
const Case kOf2005[] = {
    {kM, 30, 165, 50.37, {2068, 2254, 2490, 2880}, 1.5},
    {kF, 30, 165, 50.37, {1816, 2016, 2267, 2567}, 1.5},
    {kM, 30, 180, 80.97, {0, 0, 0, 3720}, 1.5},
    {kM, 19, 177, 70, {0, 0, 3067, 0}, 1.5},
    {kF, 70, 160, 62, {1612.22, 0, 0, 0}, 0.5},
    {kM, 8, 128, 26, {0, 1703.85, 0, 0}, 0.5},
    {kF, 11, 144, 37, {0, 0, 2068.10, 0}, 0.5},
};
// NASEM, Dietary Reference Intakes for Energy, 2023: the equations with the coefficients of a
// published implementation, worked out by hand.
const Case kOf2023[] = {
    {kM, 30, 175, 75, {2623.17, 2829.57, 3014.17, 3322.22}, 0.5},
    {kF, 30, 165, 60, {2021.00, 2182.87, 2319.45, 2551.68}, 0.5},
    {kF, 70, 160, 62, {1735.42, 0, 0, 0}, 0.5},
    {kM, 8, 128, 26, {0, 1694.20, 0, 0}, 0.5},
    {kF, 11, 144, 37, {0, 0, 1964.84, 0}, 0.5},
    {kF, 16, 163, 54, {2015.46, 0, 0, 0}, 0.5},
};

TEST(EnergyNeedReference, Equations) {
  const auto each = [](const auto& cases, auto function) {
    for (const Case& one : cases) {
      for (const Activity activity : kAllActivities) {
        const double expected = one.expected[static_cast<std::size_t>(activity)];
        if (expected == 0) continue;
        EXPECT_NEAR(function(Body{one.sex, one.years, one.cm, one.kg}, activity), expected,
                    one.tolerance)
            << sex_name(one.sex) << " " << one.years << " " << activity_name(activity);
      }
    }
  };
  each(kOf2005, energy_2005);
  each(kOf2023, energy_2023);
}

// The same report, infants: 89 w - 100 and what growing takes.
TEST(EnergyNeedReference, Infants) {
  EXPECT_NEAR(energy_2005_infant(6, 7.6), 632.4, 0.05);
  EXPECT_NEAR(energy_2005_infant(9, 8.9), 714.1, 0.05);
}

// Dietary Guidelines for Americans 2020-2025, table A2-2; the rows of people over 70 are from
// memory of it.
TEST(EnergyNeedReference, TableOfTheGuidelines) {
  EXPECT_EQ(energy_of_guidelines(kM, 8, Activity::kActive), 2000);
  EXPECT_EQ(energy_of_guidelines(kF, 8, Activity::kInactive), 1400);
  EXPECT_EQ(energy_of_guidelines(kM, 15, Activity::kLowActive), 2600);
  EXPECT_EQ(energy_of_guidelines(kF, 10, Activity::kLowActive), 1800);
  EXPECT_EQ(energy_of_guidelines(kM, 71, Activity::kActive), 2600);
  EXPECT_EQ(energy_of_guidelines(kM, 75, Activity::kVeryActive), 2600);
  EXPECT_EQ(energy_of_guidelines(kM, 76, Activity::kActive), 2400);
  EXPECT_EQ(energy_of_guidelines(kF, 30, Activity::kInactive), 1800);
  EXPECT_EQ(energy_of_guidelines(kF, 31, Activity::kActive), 2200);
  EXPECT_FALSE(energy_of_guidelines(kM, 1, Activity::kActive)) << "the table begins at two";
}

// Mifflin et al., Am J Clin Nutr 51:241, 1990, abstract.
TEST(EnergyNeedReference, AtRest) {
  EXPECT_NEAR(energy_at_rest({kF, 45, 165.1, 75}), 1395.875, 0.001);
  EXPECT_NEAR(energy_at_rest({kM, 30, 180, 80}), 1780, 0.001);
}

// FAO/WHO/UNU, Human energy requirements, 2004, 5.4.1: 1302 kcal at rest times 1.85 is printed as
// 2410.
TEST(EnergyNeedReference, ManyTimesRest) {
  EXPECT_NEAR(1302 * 1.85, 2410, 2);
}

TEST(EnergyNeedReference, ARangeOfAllThree) {
  Person person;
  person.born = at("1997-01-01");
  person.sex = kF;
  person.height_cm = 165;
  person.mass_g = 60000;
  person.activity = Activity::kInactive;
  const auto need = energy_need(person, at("2027-06-01"));
  ASSERT_TRUE(need);
  EXPECT_EQ(need->low_kcal, 1800);   // the table: 1800
  EXPECT_EQ(need->high_kcal, 2050);  // NASEM: 2021
  EXPECT_EQ(need->sources.size(), 3U);
  person.activity.reset();  // inactive to active: 2319.45 or more
  EXPECT_GE(energy_need(person, at("2027-06-01"))->high_kcal, 2350);
  person.height_cm.reset();
  EXPECT_EQ(energy_need(person, at("2027-06-01"))->high_kcal, 2400) << "the table alone";
}

TEST(EnergyNeedReference, NothingForInfantsPetsAndUnknownAges) {
  Person person;
  EXPECT_FALSE(energy_need(person, at("2027-06-01")));
  person.born = at("2025-06-02");
  EXPECT_FALSE(energy_need(person, at("2027-06-01"))) << "one day short of two";
  EXPECT_TRUE(energy_need(person, at("2027-06-02")));
  EXPECT_FALSE(energy_need(person, at("2025-06-01"))) << "not born yet";
  person.species = "cat";
  EXPECT_FALSE(energy_need(person, at("2027-06-02")));
}

TEST(EnergyNeedReference, AgeOnADay) {
  EXPECT_EQ(years_on(at("2008-02-29"), at("2027-02-28")), 18);
  EXPECT_EQ(years_on(at("2008-02-29"), at("2027-03-01")), 19);
  EXPECT_EQ(months_on(at("2026-01-31"), at("2026-02-28")), 0);
  EXPECT_EQ(months_on(at("2026-01-31"), at("2026-03-31")), 2);
}

}  // namespace
}  // namespace larderloop
