// Date marks against the law and the standards that say what they mean. The source stands beside
// each row.
#include "larderloop/core/lot.h"
#include "larderloop/intake/date_text.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Day at(const char* text) {
  return parse_iso_day(text).value();
}

struct Law {
  const char* source;
  int year;
  unsigned month;  // 0 = the year alone is printed
  const char* last_day;
};

// Regulation (EU) No 1169/2011, Annex X, 1(a)(ii): "best before end ..." where the day is left out;
// 1(c): month and year will do for three to eighteen months, the year alone for more than eighteen.
// The end of a month or year is its last day. GS1 General Specifications, AI (15) and (17): with
// day 00 the date is the last day of that month, leap years included (examples 130200 and 160200).
constexpr Law kLaws[] = {
    {"1169/2011 Annex X 1(c)(ii)", 2027, 3, "2027-03-31"},
    {"1169/2011 Annex X 1(c)(ii)", 2027, 4, "2027-04-30"},
    {"1169/2011 Annex X 1(c)(ii)", 2027, 12, "2027-12-31"},
    {"1169/2011 Annex X 1(c)(ii)", 2028, 2, "2028-02-29"},
    {"1169/2011 Annex X 1(c)(iii)", 2027, 0, "2027-12-31"},
    {"1169/2011 Annex X 1(c)(iii)", 2028, 0, "2028-12-31"},
    {"GS1 130200", 2013, 2, "2013-02-28"},
    {"GS1 160200", 2016, 2, "2016-02-29"},
};

Household one_lot(MarkKind kind, std::optional<Day> day, Region region = Region::kOther,
                  bool formula = false) {
  Household home;
  home.settings.region = region;
  Food food;
  food.key = FoodKey("crackers");
  food.infant_formula = formula;
  home.foods = {food};
  Lot lot;
  lot.id = LotId(1);
  lot.food = food.key;
  lot.received = at("2026-01-10");
  lot.mark.kind = kind;
  lot.mark.day = day;
  home.lots = {lot};
  return home;
}

TEST(DateMarkLaw, AMonthOrAYearAloneLastsToItsEnd) {
  for (const Law& law : kLaws) {
    const auto day = law.month == 0 ? resolve_year(law.year) : resolve_month(law.year, law.month);
    ASSERT_TRUE(day) << law.source;
    EXPECT_EQ(iso_day(*day), law.last_day) << law.source;
    const Household home = one_lot(MarkKind::kBestBefore, day);
    EXPECT_EQ(lot_facts(home, home.lots[0]).good_through, at(law.last_day)) << law.source;
  }
}

// "Use by" holds to midnight at the end of the printed day: Food and Drink Federation, application
// of minimum durability. After it food is deemed unsafe in the EU: Regulation (EU) No 1169/2011
// Article 24(1). "Best before" is about quality: Annex X 1(a). In the US a use-by date is the last
// day of peak quality, but for infant formula: USDA FSIS, Food Product Dating; for infant formula
// 21 CFR 107.20(c).
TEST(DateMarkLaw, OnlyTheseDatesAreAboutSafety) {
  const struct {
    const char* source;
    MarkKind kind;
    Region region;
    bool formula;
    bool safety;
  } rows[] = {{"1169/2011 Art. 24(1)", MarkKind::kUseBy, Region::kEu, false, true},
              {"1169/2011 Annex X 1(a)", MarkKind::kBestBefore, Region::kEu, false, false},
              {"FSIS Food Product Dating", MarkKind::kUseBy, Region::kUs, false, false},
              {"FSIS Food Product Dating", MarkKind::kBestBefore, Region::kUs, false, false},
              {"21 CFR 107.20(c)", MarkKind::kUseBy, Region::kUs, true, true},
              {"21 CFR 107.20(c)", MarkKind::kUseBy, Region::kOther, true, true}};
  for (const auto& row : rows) {
    const Household home = one_lot(row.kind, at("2026-05-10"), row.region, row.formula);
    const LotFacts facts = lot_facts(home, home.lots[0]);
    EXPECT_EQ(facts.good_through, at("2026-05-10"))
        << row.source << ": the printed day still counts";
    EXPECT_EQ(facts.safety, row.safety) << row.source;
  }
}

// Codex CXS 1-1985 (2018), section 2: "use-by date" and "expiration date" are one, after which food should not be sold or eaten; so is AI (17),
// USE BY OR EXPIRY (GS1 General Specifications). Whether it is about safety is said by the law of the region: no federal law of the US makes it
// so but for infant formula (USDA FSIS, Food Product Dating; 21 CFR 107.20(c)). Labels of the EU print "use by" in words (Regulation (EU)
// 1169/2011 Annex X 2), so EXP there comes from elsewhere and is kept on the safe side.
TEST(DateMarkLaw, ExpiryIsUseByAndTheRegionSaysWhetherItIsAboutSafety) {
  for (const char* text : {"EXP 10 MAY 2026", "exp. 2026-05-10", "EXP DATE 10MAY2026", "Expires May 10, 2026", "expiry date 10 May 2026", "(17)260510"}) {
    const auto mark = parse_date_text(text, MarkKind::kBestBefore, at("2026-01-10"));
    ASSERT_TRUE(mark) << text;
    EXPECT_EQ(mark->kind, MarkKind::kUseBy) << text;
    EXPECT_EQ(mark->day, at("2026-05-10")) << text;
    const struct {
      Region region;
      bool formula, safety;
    } rows[] = {{Region::kUs, false, false}, {Region::kUs, true, true}, {Region::kEu, false, true}, {Region::kEu, true, true}, {Region::kOther, false, false}, {Region::kOther, true, true}};
    for (const auto& row : rows) {
      const Household home = one_lot(mark->kind, mark->day, row.region, row.formula);
      EXPECT_EQ(lot_facts(home, home.lots[0]).safety, row.safety) << text << " in " << region_name(row.region);
    }
  }
}

// Codex CXS 1-1985 (2018), section 2: the dates of manufacture and of packaging are no indication
// of durability; sell-by was dropped from it and is for the shop's stock (USDA FSIS, Food Product
// Dating).
TEST(DateMarkLaw, DatesOfPackingMakingAndSellingTellNoEnd) {
  for (const MarkKind kind : {MarkKind::kPackedOn, MarkKind::kProducedOn, MarkKind::kSellBy}) {
    EXPECT_FALSE(gives_good_through(kind));
    const Household home = one_lot(kind, at("2026-03-01"), Region::kEu);
    EXPECT_EQ(lot_facts(home, home.lots[0]).good_through, std::nullopt) << mark_kind_name(kind);
  }
}

// Codex CXS 1-1985 section 2: a date of minimum durability is that of the unopened product.
TEST(DateMarkLaw, TheDateIsThatOfTheUnopenedProduct) {
  Household home = one_lot(MarkKind::kBestBefore, at("2027-05-10"));
  home.foods[0].storage.opened_days = 3;
  const LotFacts facts = lot_facts(home, home.lots[0]);
  EXPECT_EQ(good_through_at(home.foods[0], facts, at("2026-11-20")), at("2026-11-23"));
}

}  // namespace
}  // namespace larderloop
