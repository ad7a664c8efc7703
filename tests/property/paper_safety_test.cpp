// No page shows a person food that they must not have without a warning: generated households, judged by the predicate of their own
// (raw_predicate.h). That the walk can fail is shown by taking the avoid lists away before the pages are made.
#include <gtest/gtest.h>

#include <cstdlib>

#include "app/paper_kit.h"
#include "larderloop/app/paper.h"
#include "larderloop/app/placing.h"
#include "support/household_gen.h"
#include "support/raw_predicate.h"

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2026-11-25");

int scale() {
  const char* text = std::getenv("LARDERLOOP_TEST_SCALE");
  return text == nullptr ? 1 : std::max(1, std::atoi(text));
}

struct Seen {
  std::vector<std::string> findings;
  int servings = 0, warnings = 0;
};

// `shown`: the household that the pages are made from; `truth`: by which they are judged.
Seen walk_kits(const Household& truth, const Household& shown) {
  Seen seen;
  const auto view = view_book(shown, kToday);
  EXPECT_TRUE(view.has_value());
  for (const PlaceKey& kit : places_of_kind(shown, PlaceKind::kKit)) {
    const paper::KitNow now = paper::kit_now(*view, kit, kToday);
    for (const paper::LineNow& line : now.lines) {
      for (const paper::Dealt& dealt : line.dealt) {
        seen.servings += 1;
        for (const PersonKey& person : line.eaters) {
          const std::string why = raw::forbidden_lot(truth, person, dealt.position->at.lot, kToday);
          if (!why.empty()) seen.findings.push_back(person.str() + ": " + why);
        }
      }
    }
    PaperRequest request;
    request.what = PaperWhat::kMenuCard;
    request.kits = {kit};
    const auto card = make_paper(shown, request, kToday);
    if (!card) continue;
    // Every line of the card that speaks of a lot is a warning; the others name nobody who must not have it.
    for (const paper::Beside& each : now.beside) {
      for (const PersonKey& person : eaters_at(truth, each.position->at.place)) {
        const std::string why = raw::forbidden_lot(truth, person, each.position->at.lot, kToday);
        const bool people_and_pets = find_person(truth, person)->is_human() == (each.position->food->kind == FoodKind::kPetFood);
        if (why.empty() || people_and_pets) continue;
        const std::string lot = "lot " + std::to_string(each.position->at.lot.value()) + ";";
        bool warned = false;
        for (const PaperPage& page : card->pages) {
          for (const PaperBlock& block : page.blocks) {
            const auto* warning = std::get_if<PaperWarning>(&block);
            if (warning != nullptr && warning->text.find(lot) != std::string::npos) warned = true;
          }
        }
        seen.warnings += warned ? 1 : 0;
        const bool only_refused = why.rfind("refused by", 0) == 0;
        if (!warned && !only_refused) seen.findings.push_back("no warning of " + lot + " for " + person.str() + ": " + why);
      }
    }
  }
  return seen;
}

TEST(PaperSafety, NothingForbiddenStandsBesideANameWithoutAWarning) {
  int servings = 0, warnings = 0, caught = 0;
  for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(60 * scale()); ++seed) {
    const Household truth = generate_household(seed, 40 + static_cast<int>(seed % 5) * 20);
    const Seen seen = walk_kits(truth, truth);
    EXPECT_TRUE(seen.findings.empty()) << "seed " << seed << ": " << seen.findings.front();
    servings += seen.servings;
    warnings += seen.warnings;
    Household blind = truth;
    for (Person& person : blind.people) {
      person.avoid.clear();
      person.diets.clear();
    }
    caught += walk_kits(truth, blind).findings.empty() ? 0 : 1;
  }
  EXPECT_GT(servings, 100);
  EXPECT_GT(warnings, 20);
  EXPECT_GT(caught, 20) << "the walk must be able to fail";
}

}  // namespace
}  // namespace larderloop
