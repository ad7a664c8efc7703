#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"
#include "unit/intake/small_document.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace larderloop {
namespace {

std::string findings_of(const Error& error) {
  std::string out = error.what;
  for (const Problem& problem : error.problems) {
    out +=
        "\n" + problem.where + " [" + problem.value + "] " + problem.what + " -> " + problem.remedy;
  }
  return out;
}

Household read(const std::string& text) {
  auto household = parse_document(text);
  EXPECT_TRUE(household) << findings_of(household.error());
  return household.value_or(Household{});
}

TEST(RenderDocument, EveryKindOfRecordComesBackToTheByte) {
  EXPECT_EQ(render_document(read(kSmallDocument)), kSmallDocument);
}

TEST(RenderDocument, TheDemoHouseholdIsCanonical) {
  std::ifstream file(LARDERLOOP_SRC "/data/demo/household.json", std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  ASSERT_FALSE(text.empty());
  EXPECT_EQ(render_document(read(text)), text);
}

TEST(RenderDocument, ValuesArriveWhereTheyBelong) {
  const Household household = read(kSmallDocument);
  EXPECT_EQ(household.settings.tolerance, HalfServings(7));
  EXPECT_EQ(household.settings.monotony, Settings{}.monotony);
  ASSERT_EQ(household.people.size(), 3U);
  EXPECT_EQ(household.people[0].ratings.at(FoodKey("lentil-pouch")), 2);
  EXPECT_TRUE(household.people[0].avoid[1].accept_may_contain);
  EXPECT_FALSE(household.people[0].avoid[0].accept_may_contain);
  EXPECT_EQ(household.people[1].appetite, HalfServings(1));
  EXPECT_EQ(household.people[1].tolerance, HalfServings(4));
  const Food* lentils = find_food(household, FoodKey("lentil-pouch"));
  ASSERT_NE(lentils, nullptr);
  EXPECT_EQ(lentils->label->declared.at("celery"), Declared::kContains);
  EXPECT_EQ(lentils->label->declared.at("milk"), Declared::kMayContain);
  EXPECT_EQ(lentils->storage.opened_days, 0);
  EXPECT_EQ(lentils->rotate, Rotate::kYes);
  ASSERT_EQ(household.entries.size(), 8U);
  EXPECT_EQ(household.entries[0].amount, HalfServings(16));  // 4 pouches of 2 servings
  EXPECT_EQ(household.entries[3].amount, HalfServings(3));
  EXPECT_EQ(household.entries[3].at.opened_on, household.entries[3].on);
  EXPECT_EQ(household.entries[5].change, -2);
  EXPECT_EQ(household.entries[7].corrects, EntryId(7));
  EXPECT_EQ(household.menu[2].ml, 6000);
  EXPECT_EQ(household.menu[2].units, 1);
  EXPECT_EQ(household.feed[0].content, "SUMMARY:Review\r\n");
}

TEST(RenderDocument, WhatIsDefaultMayBeWrittenAndIsLeftOut) {
  const Household household = read(R"({"format": "larderloop.household", "version": 1,
    "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11", "settings": {"slack_days": 14},
    "people": [{"key": "ada", "name": "Ada", "species": "human", "appetite": 1.0, "avoid": [], "ratings": {}, "note": ""}],
    "foods": [{"key": "rice", "name": "Rice", "kind": "food", "no_cook": true, "storage": {}, "rotate": "auto", "servings": 1}],
    "menu": [], "lots": []})");
  EXPECT_EQ(render_document(household), R"({
  "format": "larderloop.household",
  "version": 1,
  "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11",
  "people": [
    {"key": "ada", "name": "Ada"}
  ],
  "foods": [
    {"key": "rice", "name": "Rice"}
  ]
}
)");
}

TEST(RenderDocument, AnyOrderOfTheTextGivesTheSameBytes) {
  const Household household = read(
      R"({"version": 1, "lots": [{"received": "2026-04-01", "mark": {"kind": "none"}, "food": "rice", "id": 3}],
    "entries": [{"units": 2, "place": "pantry", "lot": 3, "written_at": "2026-04-01T09:30:00Z", "on": "2026-04-01", "kind": "found", "id": 9}],
    "places": [{"kind": "pantry", "key": "pantry", "name": "Pantry"}],
    "foods": [{"roles": ["side", "main"], "servings": 3, "name": "Rice", "key": "rice"}, {"name": "Beans", "key": "beans"}],
    "people": [{"avoid": [{"key": "milk"}, {"key": "egg"}], "name": "Ben", "key": "ben"}, {"diets": ["vegan", "halal"], "key": "ada", "name": "Ada"}],
    "table": [{"weekday": "sunday", "meal": "lunch", "people": ["ben", "ada"]}, {"weekday": "sunday", "meal": "breakfast"}],
    "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11", "format": "larderloop.household"})");
  EXPECT_EQ(render_document(household), R"({
  "format": "larderloop.household",
  "version": 1,
  "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11",
  "people": [
    {"key": "ada", "name": "Ada", "diets": ["halal", "vegan"]},
    {"key": "ben", "name": "Ben", "avoid": [{"key": "egg"}, {"key": "milk"}]}
  ],
  "foods": [
    {"key": "beans", "name": "Beans"},
    {"key": "rice", "name": "Rice", "servings": 3, "roles": ["main", "side"]}
  ],
  "places": [
    {"key": "pantry", "name": "Pantry", "kind": "pantry"}
  ],
  "table": [
    {"weekday": "sunday", "meal": "breakfast"},
    {"weekday": "sunday", "meal": "lunch", "people": ["ada", "ben"]}
  ],
  "lots": [
    {"id": 3, "food": "rice", "mark": {"kind": "none"}, "received": "2026-04-01"}
  ],
  "entries": [
    {"id": 9, "kind": "found", "on": "2026-04-01", "written_at": "2026-04-01T09:30:00Z", "lot": 3, "place": "pantry", "units": 2}
  ]
}
)");
}

TEST(RenderDocument, ARecordKeepsToOneLineUpTo200Characters) {
  // The line is 41 characters and the note; a character is one, however many bytes it has.
  Household household;
  household.book_id = "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11";
  Person person;
  person.key = PersonKey("a");
  person.name = "A";
  std::string umlauts;
  for (int count = 0; count < 159; ++count) umlauts += "\xC3\xBC";
  person.note = umlauts;
  household.people = {person};
  const std::string opening = "    {\"key\": \"a\", \"name\": \"A\", \"note\": \"";
  const std::string closing = "\"}";
  ASSERT_EQ(opening.size() + closing.size(), 41U);
  EXPECT_NE(render_document(household).find(opening + umlauts + closing + "\n"), std::string::npos);
  household.people[0].note += "\xC3\xBC";
  EXPECT_NE(render_document(household).find(
                "    {\n      \"key\": \"a\",\n      \"name\": \"A\",\n      \"note\": \""),
            std::string::npos);
}

TEST(RenderDocument, EscapesWhatJsonMustAndNothingElse) {
  Household household;
  household.book_id = "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11";
  Person person;
  person.key = PersonKey("a");
  person.name = "Zo\xC3\xAB \"Z\" \\ /";
  person.note = "two\nlines\x1B";
  household.people = {person};
  const std::string text = render_document(household);
  EXPECT_NE(text.find(R"("name": "Zoë \"Z\" \\ /")"), std::string::npos) << text;
  EXPECT_NE(text.find(R"("note": "two\nlines\u001b")"), std::string::npos) << text;
  EXPECT_EQ(read(text), household);
}

}  // namespace
}  // namespace larderloop
