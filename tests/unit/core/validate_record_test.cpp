// Every inconsistency of a household is found, at its place in the document: menu, table, record,
// reviews.
#include "unit/core/broken_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

FeedAddress address(std::int64_t id, char digit) {
  FeedAddress made;
  made.id = FeedAddressId(id);
  made.name = "phone";
  made.token_sha256 = std::string(64, digit);
  return made;
}


const Broken kMenuAndTable[] = {
    {"line ids", [](Household& h) { h.menu.push_back(h.menu[0]); }, "/menu/1/id"},
    {"line id zero", [](Household& h) { h.menu[0].id = MenuLineId(0); }, "/menu/0/id"},
    {"line place", [](Household& h) { h.menu[0].place = PlaceKey("cellar"); }, "/menu/0/place"},
    {"line in the pantry", [](Household& h) { h.menu[0].place = PlaceKey("top-shelf"); },
     "/menu/0/place"},
    {"role and food", [](Household& h) { h.menu[0].food = FoodKey("lentil-stew"); }, "/menu/0"},
    {"neither role nor food", [](Household& h) { h.menu[0].role.reset(); }, "/menu/0"},
    {"line food",
     [](Household& h) {
       h.menu[0].role.reset();
       h.menu[0].food = FoodKey("soup");
     },
     "/menu/0/food"},
    {"conditional food",
     [](Household& h) {
       h.foods[3].needs_hot_water = true;
       h.menu[0].role.reset();
       h.menu[0].food = FoodKey("lentil-stew");
     },
     "/menu/0/food"},
    {"line person", [](Household& h) { h.menu[0].people = {PersonKey("zoe")}; }, "/menu/0/people"},
    {"nobody", [](Household& h) { h.menu[0].people.clear(); }, "/menu/0/people"},
    {"everyone and somebody", [](Household& h) { h.menu[0].everyone = true; }, "/menu/0/people"},
    {"people's food for a pet", [](Household& h) { h.menu[0].people = {PersonKey("minka")}; },
     "/menu/0/people"},
    {"pet meal for a person", [](Household& h) { h.menu[0].role = Role::kPetMeal; },
     "/menu/0/people"},
    {"pet meal for everyone", [](Household& h) { add_line(h, Role::kPetMeal, "", true); },
     "/menu/1/everyone"},
    {"a thing for somebody", [](Household& h) { h.menu[0].role = Role::kThing; }, "/menu/0/people"},
    {"water without ml", [](Household& h) { add_line(h, Role::kWater, "", true); }, "/menu/1/ml"},
    {"named water without ml", [](Household& h) { add_line(h, std::nullopt, "canister", true); },
     "/menu/1/ml"},
    {"ml of food", [](Household& h) { h.menu[0].ml = 500; }, "/menu/0/ml"},
    {"units", [](Household& h) { h.menu[0].units = 0; }, "/menu/0/units"},
    {"day", [](Household& h) { h.menu[0].day = 32; }, "/menu/0/day"},
    {"priority", [](Household& h) { h.menu[0].priority = 101; }, "/menu/0/priority"},
    {"seat twice", [](Household& h) { h.table.push_back(h.table[0]); }, "/table/1"},
    {"seat of nobody known", [](Household& h) { h.table[0].people = {PersonKey("zoe")}; },
     "/table/0/people"},
    {"seat of a pet", [](Household& h) { h.table[0].people = {PersonKey("minka")}; },
     "/table/0/people"},
    {"seat named twice",
     [](Household& h) {
       h.table[0].people = {PersonKey("ada"), PersonKey("ada")};
     },
     "/table/0/people"},
    {"exception ends first",
     [](Household& h) {
       h.exceptions = {{day_at("2026-12-02"), day_at("2026-12-01"), {}, true, {}, {}, ""}};
     },
     "/exceptions/0/through"},
    {"exception of nothing",
     [](Household& h) {
       h.exceptions = {{day_at("2026-12-01"), day_at("2026-12-01"), {}, false, {}, {}, ""}};
     },
     "/exceptions/0"},
    {"exception of a pet",
     [](Household& h) {
       h.exceptions = {
           {day_at("2026-12-01"), day_at("2026-12-01"), {}, false, {PersonKey("minka")}, {}, ""}};
     },
     "/exceptions/0/away"},
};

// The wish is for lentil stew on one day at dinner, for Ben.
void add_wish(Household& home, const std::function<void(Wish&)>& change) {
  const Day on = day_at("2026-12-01");
  Wish wish{WishId(3), WishKind::kWant, FoodKey("lentil-stew"), on, on, Meal::kDinner, PersonKey("ben")};
  change(wish);
  home.wishes = {wish};
}
void add_not(Household& home, const std::function<void(Wish&)>& change) {
  add_wish(home, [&](Wish& wish) {
    wish.kind = WishKind::kNot;
    change(wish);
  });
}

const Broken kWishes[] = {
    {"id again", [](Household& h) { add_wish(h, [](Wish&) {}); h.wishes.push_back(h.wishes[0]); }, "/wishes/1/id"},
    {"unknown food", [](Household& h) { add_wish(h, [](Wish& w) { w.food = FoodKey("soup"); }); }, "/wishes/0/food"},
    {"water at a meal", [](Household& h) { add_wish(h, [](Wish& w) { w.food = FoodKey("canister"); }); }, "/wishes/0/food"},
    {"unknown person", [](Household& h) { add_wish(h, [](Wish& w) { w.person = PersonKey("zoe"); }); }, "/wishes/0/person"},
    {"want of nothing", [](Household& h) { add_wish(h, [](Wish& w) { w.food = FoodKey(); }); }, "/wishes/0/food"},
    {"want on no day", [](Household& h) { add_wish(h, [](Wish& w) { w.from.reset(); w.through.reset(); }); }, "/wishes/0/from"},
    {"want on two days", [](Household& h) { add_wish(h, [](Wish& w) { *w.through += Days(1); }); }, "/wishes/0/through"},
    {"want at no meal", [](Household& h) { add_wish(h, [](Wish& w) { w.meal.reset(); }); }, "/wishes/0/meal"},
    {"no last day", [](Household& h) { add_not(h, [](Wish& w) { w.through.reset(); }); }, "/wishes/0/through"},
    {"no first day", [](Household& h) { add_not(h, [](Wish& w) { w.from.reset(); }); }, "/wishes/0/from"},
    {"ends before it begins", [](Household& h) { add_not(h, [](Wish& w) { *w.from += Days(1); }); }, "/wishes/0/through"},
    {"never anything", [](Household& h) { add_not(h, [](Wish& w) { w.food = FoodKey(); w.from.reset(); w.through.reset(); }); }, "/wishes/0"},
};

const Broken kRecordAndReviews[] = {
    {"lot ids", [](Household& h) { h.lots.push_back(h.lots[0]); }, "/lots/1/id"},
    {"lot food", [](Household& h) { h.lots[0].food = FoodKey("soup"); }, "/lots/0/food"},
    {"mark without day", [](Household& h) { h.lots[0].mark.day.reset(); }, "/lots/0/mark/day"},
    {"no mark with day", [](Household& h) { h.lots[0].mark.kind = MarkKind::kNone; },
     "/lots/0/mark/day"},
    {"month not at its end",
     [](Household& h) {
       h.lots[0].mark.precision = Precision::kMonth;
       h.lots[0].mark.day = day_at("2027-03-30");
     },
     "/lots/0/mark/day"},
    {"year not at its end", [](Household& h) { h.lots[0].mark.precision = Precision::kYear; },
     "/lots/0/mark/day"},
    {"lot label", [](Household& h) { h.lots[0].label->read_by.clear(); }, "/lots/0/label/read_by"},
    {"reading of nothing", [](Household& h) { add_reading(h, std::nullopt); }, "/readings/0"},
    {"reading of no lot",
     [](Household& h) {
       add_reading(h, LotState::kDoubtful);
       h.readings[0].lot = LotId(7);
     },
     "/readings/0/lot"},
    {"reading ids",
     [](Household& h) {
       add_reading(h, LotState::kOk);
       add_reading(h, LotState::kOk);
       h.readings[1].id = ReadingId(1);
     },
     "/readings/1/id"},
    {"reading mark",
     [](Household& h) {
       add_reading(h, std::nullopt);
       h.readings[0].mark = DateMark{"", MarkKind::kUseBy, Precision::kDay, std::nullopt};
     },
     "/readings/0/mark/day"},
    {"reading label",
     [](Household& h) {
       add_reading(h, std::nullopt);
       h.readings[0].label = Statement{};
     },
     "/readings/0/label/read_by"},
    {"entry ids",
     [](Household& h) {
       add_entry(h, EntryKind::kFound, 4);
       h.entries[1].id = EntryId(1);
     },
     "/entries/1/id"},
    {"entry lot", [](Household& h) { h.entries[0].at.lot = LotId(7); }, "/entries/0/lot"},
    {"entry place", [](Household& h) { h.entries[0].at.place = PlaceKey("cellar"); },
     "/entries/0/place"},
    {"entry to",
     [](Household& h) {
       add_entry(h, EntryKind::kMoved, 4);
       h.entries[1].to = PlaceKey("cellar");
     },
     "/entries/1/to"},
    {"entry who",
     [](Household& h) {
       add_entry(h, EntryKind::kEaten, 4);
       h.entries[1].who = PersonKey("zoe");
     },
     "/entries/1/who"},
    {"entry paid", [](Household& h) { h.entries[0].paid_cents = -1; }, "/entries/0/paid_cents"},
    {"overdrawn", [](Household& h) { add_entry(h, EntryKind::kEaten, 20); }, "/entries/1"},
    {"corrects nothing",
     [](Household& h) {
       add_entry(h, EntryKind::kCorrected, 0);
       h.entries[1].corrects = EntryId(9);
     },
     "/entries/1"},
    {"rule of no kit", [](Household& h) { h.review_rules[0].kit = PlaceKey("pantry"); },
     "/review_rules/0/kit"},
    {"rule of nothing", [](Household& h) { h.review_rules[0].kit = PlaceKey("cellar"); },
     "/review_rules/0/kit"},
    {"two rules", [](Household& h) { h.review_rules.push_back(h.review_rules[0]); },
     "/review_rules/1/kit"},
    {"empty rule", [](Household& h) { h.review_rules[0].rule.clear(); }, "/review_rules/0/rule"},
    {"rule slack", [](Household& h) { h.review_rules[0].slack_days = 366; },
     "/review_rules/0/slack_days"},
    {"finished unstarted", [](Household& h) { add_review(h, ReviewEventKind::kFinished); },
     "/review_events/0/slot"},
    {"moved nowhere", [](Household& h) { add_review(h, ReviewEventKind::kMoved); },
     "/review_events/0/moved_to"},
    {"started elsewhere",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       h.review_events[0].moved_to = day_at("2026-10-10");
     },
     "/review_events/0/moved_to"},
    {"mark unstarted", [](Household& h) { add_mark(h, MarkWhat::kThere, 0); },
     "/review_marks/0/slot"},
    {"missing nothing",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kMissing, 0);
     },
     "/review_marks/0"},
    {"redated to nothing",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kRedated, 0);
     },
     "/review_marks/0/mark"},
    {"mark place",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kThere, 0);
       h.review_marks[0].at.place = PlaceKey("x");
     },
     "/review_marks/0/place"},
    {"shown lot",
     [](Household& h) {
       h.shown_meals = {
           {day_at("2026-12-01"),
            Meal::kDinner,
            {{{LotId(7), PlaceKey("pantry"), std::nullopt}, PersonKey("ada"), HalfServings(2)}}}};
     },
     "/shown_meals/0/servings/0/lot"},
    {"shown person",
     [](Household& h) {
       h.shown_meals = {{day_at("2026-12-01"),
                         Meal::kDinner,
                         {{h.entries[0].at, PersonKey("zoe"), HalfServings(2)}}}};
     },
     "/shown_meals/0/servings/0/person"},
    {"stamp without key", [](Household& h) { h.feed = {{}}; }, "/feed/0"},
    {"stamp twice",
     [](Household& h) {
       h.feed = {{"a", 1, true, 0, {}, ""}, {"a", 1, false, 0, {}, ""}};
     },
     "/feed/1"},
    {"calendar without a kind", [](Household& h) { h.settings.feed.kinds.clear(); }, "/settings/feed/kinds"},
    {"alarm on the day", [](Household& h) { h.settings.feed.alarm_days[FeedKind::kEatSoon] = 0; },
     "/settings/feed/alarm_days/eat_soon"},
    {"alarm long before", [](Household& h) { h.settings.feed.alarm_days[FeedKind::kReview] = 31; },
     "/settings/feed/alarm_days/review"},
    {"address of number 0", [](Household& h) { h.feed_addresses = {address(0, 'a')}; }, "/feed_addresses/0/id"},
    {"address without name",
     [](Household& h) {
       h.feed_addresses = {address(1, 'a')};
       h.feed_addresses[0].name.clear();
     },
     "/feed_addresses/0/name"},
    {"address that is no hash", [](Household& h) { h.feed_addresses = {address(1, 'g')}; }, "/feed_addresses/0/token_sha256"},
    {"address twice", [](Household& h) { h.feed_addresses = {address(1, 'a'), address(2, 'a')}; },
     "/feed_addresses/1/token_sha256"},
    {"address of nobody",
     [](Household& h) {
       h.feed_addresses = {address(1, 'a')};
       h.feed_addresses[0].person = PersonKey("zoe");
     },
     "/feed_addresses/0/person"},
    {"address revoked too early",
     [](Household& h) {
       h.feed_addresses = {address(1, 'a')};
       h.feed_addresses[0].revoked_at = h.feed_addresses[0].created_at - std::chrono::seconds(1);
     },
     "/feed_addresses/0/revoked_at"},
    {"sent without a place", [](Household& h) { h.pushed = {{"c", "u", "", "", ""}}; }, "/pushed/0"},
    {"sent twice", [](Household& h) { h.pushed = {{"c", "u", "h", "", ""}, {"c", "u", "i", "", ""}}; }, "/pushed/1"},
    {"done without identity", [](Household& h) { h.tasks_done = {{"", Day{}, ""}}; }, "/tasks_done/0/uid"},
    {"done twice", [](Household& h) { h.tasks_done = {{"u", Day{}, ""}, {"u", Day{}, "x"}}; }, "/tasks_done/1/uid"},
};

// A weekend from the kit, with one note and its end.
void add_trial(Household& home, const std::function<void(Household&)>& change) {
  home.trials = {{TrialId(2), PlaceKey("home-kit"), day_at("2026-11-21"), day_at("2026-11-22"), {PersonKey("ben")}, ""}};
  home.trial_notes = {{TrialNoteId(1), TrialId(2), FoodKey("lentil-stew"), PersonKey("ben"), Verdict::kTired, day_at("2026-11-22"), ""}};
  home.trial_ends = {{TrialId(2), day_at("2026-11-22"), ""}};
  change(home);
}
const Broken kTrials[] = {
    {"id again", [](Household& h) { add_trial(h, [](Household& t) { t.trials.push_back(t.trials[0]); }); }, "/trials/1/id"},
    {"no kit", [](Household& h) { add_trial(h, [](Household& t) { t.trials[0].kit = PlaceKey("nowhere"); }); }, "/trials/0/kit"},
    {"a bag", [](Household& h) { add_trial(h, [](Household& t) { t.trials[0].kit = PlaceKey("ada-bag"); }); }, "/trials/0/kit"},
    {"backwards", [](Household& h) { add_trial(h, [](Household& t) { t.trials[0].from += Days(9); }); }, "/trials/0/through"},
    {"stranger", [](Household& h) { add_trial(h, [](Household& t) { t.trials[0].people = {PersonKey("zoe")}; }); }, "/trials/0/people/0"},
    {"twice", [](Household& h) { add_trial(h, [](Household& t) { t.trials[0].people.push_back(PersonKey("ben")); }); }, "/trials/0/people/1"},
    {"note of no trial", [](Household& h) { add_trial(h, [](Household& t) { t.trial_notes[0].trial = TrialId(3); }); }, "/trial_notes/0/trial"},
    {"note of no food", [](Household& h) { add_trial(h, [](Household& t) { t.trial_notes[0].food = FoodKey("soup"); }); }, "/trial_notes/0/food"},
    {"note of a stranger", [](Household& h) { add_trial(h, [](Household& t) { t.trial_notes[0].person = PersonKey("zoe"); }); }, "/trial_notes/0/person"},
    {"note again", [](Household& h) { add_trial(h, [](Household& t) { t.trial_notes.push_back(t.trial_notes[0]); }); }, "/trial_notes/1/id"},
    {"end of no trial", [](Household& h) { add_trial(h, [](Household& t) { t.trial_ends[0].trial = TrialId(1); }); }, "/trial_ends/0/trial"},
    {"two ends", [](Household& h) { add_trial(h, [](Household& t) { t.trial_ends.push_back(t.trial_ends[0]); }); }, "/trial_ends/1/trial"},
};

TEST(Validate, FindsFaultsOfTrials) {
  each_is_found(kTrials);
  Household home = core_household();
  add_trial(home, [](Household&) {});
  EXPECT_TRUE(validate(home).empty());
}
TEST(Validate, FindsFaultsOfMenuAndTable) {
  each_is_found(kMenuAndTable);
}
TEST(Validate, FindsFaultsOfWishes) {
  each_is_found(kWishes);
  Household home = core_household();
  add_wish(home, [](Wish&) {});
  home.wishes.push_back({WishId(4), WishKind::kNot, FoodKey("lentil-stew"), {}, {}, {}, {}});
  home.wishes.push_back({WishId(7), WishKind::kNot, FoodKey(), day_at("2026-12-01"), day_at("2026-12-03"), {}, {}});
  EXPECT_TRUE(validate(home).empty());
}
TEST(Validate, FindsFaultsOfTheRecordAndReviews) {
  each_is_found(kRecordAndReviews);
}

}  // namespace
}  // namespace larderloop
