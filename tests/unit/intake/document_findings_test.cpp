// Every way in which a document can be wrong in form, once each: the small document is broken in
// one place, and the finding has to point there.
#include "larderloop/intake/findings.h"
#include "larderloop/intake/document.h"
#include "unit/intake/small_document.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

std::string all_of(const Error& error) {
  std::string out = error.what;
  for (const Problem& problem : error.problems) {
    out +=
        "\n" + problem.where + " [" + problem.value + "] " + problem.what + " -> " + problem.remedy;
  }
  return out;
}

// The small document with its first `from` replaced.
std::string broken(const std::string& from, const std::string& to) {
  std::string text = kSmallDocument;
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << "nothing to break: " << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  return text;
}

struct Case {
  const char* name;
  const char* from;
  const char* to;
  const char* where;   // of the only finding
  const char* value;   // as shown
  const char* what;    // part of it
  const char* remedy;  // part of it
};

void PrintTo(const Case& each, std::ostream* out) {
  *out << each.name;
}

class BrokenDocument : public testing::TestWithParam<Case> {};

TEST_P(BrokenDocument, IsReportedAtItsPlace) {
  const Case& each = GetParam();
  const auto household = parse_document(broken(each.from, each.to));
  ASSERT_FALSE(household);
  const Error& error = household.error();
  EXPECT_EQ(error.kind, ErrorKind::kBadData);
  ASSERT_EQ(error.problems.size(), 1U) << all_of(error);
  const Problem& problem = error.problems.front();
  EXPECT_EQ(problem.where, each.where) << all_of(error);
  EXPECT_EQ(problem.value, each.value) << all_of(error);
  EXPECT_NE(problem.what.find(each.what), std::string::npos) << all_of(error);
  EXPECT_NE(problem.remedy.find(each.remedy), std::string::npos) << all_of(error);
}

const Case kCases[] = {
    // head
    {"no_format", "\"format\": \"larderloop.household\",", "", "", "", "its format", "\"format\""},
    {"other_format", "larderloop.household", "something.else", "/format", "something.else",
     "not a household document", "larderloop.household"},
    {"format_number", "\"larderloop.household\"", "7", "/format", "7", "not a household document",
     "larderloop.household"},
    {"newer_version", "\"version\": 1", "\"version\": 2", "/version", "2", "newer",
     "newer release"},
    {"older_version", "\"version\": 1", "\"version\": 0", "/version", "0", "no such version", "1"},
    {"version_text", "\"version\": 1", "\"version\": \"1\"", "/version", "1", "no such version",
     "1"},
    {"no_version", "\"version\": 1,", "", "", "", "its version", "1"},
    {"no_book_id", "\"book_id\": \"0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11\",", "", "", "",
     "'book_id'", "add"},
    {"bad_book_id", "0b5f0c9e-", "0B5F0C9E-", "/book_id", "0B5F0C9E-2c5d-4d8e-9a53-6f2d1c0a7e11",
     "UUID", ""},
    {"head_unknown", "\"version\": 1,", "\"version\": 1, \"peoples\": [],", "/peoples", "[]",
     "no member 'peoples'", "'people'"},
    // types
    {"allergens_number",
     "\"own_allergens\": [\n    {\"key\": \"kiwi\", \"since\": \"2026-02-01\"}\n  ]",
     "\"own_allergens\": 3", "/own_allergens", "3", "a list", "square brackets"},
    {"text_for_number", "\"energy_kcal\": 1750", "\"energy_kcal\": \"1750\"",
     "/people/1/energy_kcal", "1750", "whole number", "without quotes"},
    {"number_for_text", "\"name\": \"Ada\"", "\"name\": 5", "/people/0/name", "5", "a text",
     "quotes"},
    {"null_for_text", "\"name\": \"Ada\"", "\"name\": null", "/people/0/name", "null", "not null",
     ""},
    {"text_for_flag", "\"accept_may_contain\": true", "\"accept_may_contain\": \"yes\"",
     "/people/0/avoid/1/accept_may_contain", "yes", "true or false", "without quotes"},
    {"object_for_list", "\"diets\": [\"vegetarian\"]", "\"diets\": {\"vegetarian\": true}",
     "/people/0/diets", "{...}", "a list", "square brackets"},
    {"text_for_list", "\"people\": [\"ada\"]", "\"people\": \"ada\"", "/menu/0/people", "ada",
     "a list", ""},
    {"text_for_object", "{\"key\": \"kiwi\"}", "\"kiwi\"", "/people/0/avoid/0", "kiwi", "an object",
     "braces"},
    {"list_for_ratings", "{\"lentil-pouch\": 2}", "[]", "/people/0/ratings", "[]", "an object", ""},
    // numbers
    {"exponent", "\"energy_kcal\": 1750", "\"energy_kcal\": 1e3", "/people/1/energy_kcal", "1e3",
     "not a whole number", "digits only"},
    {"fraction", "\"mass_g\": 260", "\"mass_g\": 260.0", "/foods/1/mass_g", "260.0",
     "not a whole number", "digits only"},
    {"beyond_64_bits", "\"mass_g\": 260", "\"mass_g\": 9223372036854775808", "/foods/1/mass_g",
     "9223372036854775808", "not a whole number", ""},
    {"far_beyond_64_bits", "\"mass_g\": 260", "\"mass_g\": 99999999999999999999999999",
     "/foods/1/mass_g", "99999999999999999999999999", "not a whole number", ""},
    {"beyond_32_bits", "\"slack_days\": 10", "\"slack_days\": 2147483648",
     "/review_rules/0/slack_days", "2147483648", "out of range", "2147483647"},
    {"id_zero", "{\"id\": 1, \"place\": \"ada-bag\"", "{\"id\": 0, \"place\": \"ada-bag\"",
     "/menu/0/id", "0", "out of range", "from 1"},
    {"rating_three", "\"lentil-pouch\": 2", "\"lentil-pouch\": 3", "/people/0/ratings/lentil-pouch",
     "3", "out of range", "from -2 to 2"},
    {"appetite_quarter", "\"appetite\": 0.5", "\"appetite\": 0.25", "/people/1/appetite", "0.25",
     "steps of a half", "0.5"},
    {"appetite_zeros", "\"appetite\": 0.5", "\"appetite\": 0.50", "/people/1/appetite", "0.50",
     "steps of a half", ""},
    {"appetite_exponent", "\"appetite\": 0.5", "\"appetite\": 5e-1", "/people/1/appetite", "5e-1",
     "steps of a half", ""},
    {"appetite_negative", "\"appetite\": 0.5", "\"appetite\": -0.5", "/people/1/appetite", "-0.5",
     "steps of a half", ""},
    {"tolerance_negative", "\"tolerance\": 2,", "\"tolerance\": -2,", "/people/1/tolerance", "-2",
     "out of range", ""},
    {"tolerance_text", "\"tolerance\": 2,", "\"tolerance\": \"2\",", "/people/1/tolerance", "2",
     "number of servings", ""},
    // dates and times
    {"no_such_day", "\"born\": \"1985-09-17\"", "\"born\": \"1985-02-29\"", "/people/0/born",
     "1985-02-29", "not a date", "2027-03-15"},
    {"day_as_number", "\"born\": \"1985-09-17\"", "\"born\": 19850917", "/people/0/born",
     "19850917", "a date", "2027-03-15"},
    {"moment_without_zone", "2026-04-01T09:30:00Z", "2026-04-01T09:30:00", "/entries/0/written_at",
     "2026-04-01T09:30:00", "not a time", "Z"},
    {"moment_as_number", "\"2026-04-01T09:30:00Z\"", "1775035800", "/entries/0/written_at",
     "1775035800", "a time", "Z"},
    // names and keys
    {"key_capital", "{\"key\": \"ada\"", "{\"key\": \"Ada\"", "/people/0/key", "Ada", "not a key",
     "ada"},
    {"key_empty", "{\"kit\": \"home-kit\", \"rule\"", "{\"kit\": \"\", \"rule\"",
     "/review_rules/0/kit", "", "not a key", "home-kit"},
    {"rating_of_no_key", "\"lentil-pouch\": 2", "\"Lentil/pouch~\": 2",
     "/people/0/ratings/Lentil~1pouch~0", "2", "not a food key", ""},
    {"kind_slip", "\"kind\": \"pet_food\"", "\"kind\": \"petfood\"", "/foods/0/kind", "petfood",
     "not known here", "'pet_food'"},
    {"kind_far_off", "\"kind\": \"pet_food\"", "\"kind\": \"xylophone\"", "/foods/0/kind",
     "xylophone", "not known here", "food, drink, water, pet_food, thing"},
    {"kind_number", "\"kind\": \"pet_food\"", "\"kind\": 3", "/foods/0/kind", "3", "a name",
     "food, drink"},
    {"weekday_capital", "\"weekday\": \"monday\"", "\"weekday\": \"Monday\"", "/table/0/weekday",
     "Monday", "not known here", "'monday'"},
    {"region", "\"region\": \"eu\"", "\"region\": \"EU\"", "/settings/region", "EU",
     "not known here", ""},
    {"diet", "[\"vegetarian\"]", "[\"vegetarien\"]", "/people/0/diets/0", "vegetarien",
     "not known here", "'vegetarian'"},
    {"rotate", "\"rotate\": \"yes\"", "\"rotate\": true", "/foods/1/rotate", "true", "a name",
     "auto, yes, no"},
    {"lot_state", "\"state\": \"doubtful\"", "\"state\": \"doubtfull\"", "/lots/1/state",
     "doubtfull", "not known here", "'doubtful'"},
    {"what_found", "\"what\": \"missing\"", "\"what\": \"mising\"", "/review_marks/0/what",
     "mising", "not known here", "'missing'"},
    {"precision", "\"precision\": \"month\"", "\"precision\": \"months\"", "/lots/0/mark/precision",
     "months", "not known here", "'month'"},
    // members
    {"unknown_member", "\"appetite\": 0.5", "\"apetite\": 0.5", "/people/1/apetite", "0.5",
     "no member 'apetite'", "'appetite'"},
    {"unknown_far_off", "\"appetite\": 0.5", "\"zzzzzzzz\": 0.5", "/people/1/zzzzzzzz", "0.5",
     "no member 'zzzzzzzz'", "key, name"},
    {"unknown_deep", "\"suits\": [\"vegan\"]", "\"suit\": [\"vegan\"]", "/foods/1/label/suit",
     "[...]", "no member 'suit'", "'suits'"},
    {"missing_name", "\"key\": \"ben\", \"name\": \"Ben\",", "\"key\": \"ben\",", "/people/1", "",
     "'name'", "add"},
    {"missing_received", ", \"received\": \"2026-04-02\"", "", "/lots/1", "", "'received'", "add"},
    {"missing_mark", "\"mark\": {\"kind\": \"none\"}, ", "", "/lots/1", "", "'mark'", "add"},
    {"missing_mark_kind", "{\"kind\": \"none\"}", "{}", "/lots/1/mark", "", "'kind'", "add"},
    {"missing_may_contain", "\"may_contain\": [\"milk\"], ", "", "/foods/1/label", "",
     "'may_contain'", "add"},
    {"missing_read_by", "\"read_by\": \"Ada\", ", "", "/foods/1/label", "", "'read_by'", "add"},
    {"repeated_member", "\"name\": \"Ben\"", "\"name\": \"Ben\", \"name\": \"Bert\"",
     "/people/1/name", "name", "stands there twice", "keep one"},
    {"repeated_list", "\"table\": [", "\"lots\": [], \"table\": [", "/lots", "lots",
     "stands there twice", "keep one"},
    // sets
    {"diet_twice", "[\"vegetarian\"]", "[\"vegetarian\", \"vegetarian\"]", "/people/0/diets/1",
     "vegetarian", "twice", "keep one"},
    {"person_twice", "[\"ada\", \"ben\"]", "[\"ada\", \"ada\"]", "/table/0/people/1", "ada",
     "twice", "keep one"},
    {"allergen_twice", "[\"celery\"]", "[\"celery\", \"celery\"]", "/foods/1/label/contains/1",
     "celery", "twice", "keep one"},
    {"allergen_in_both", "\"may_contain\": [\"milk\"]", "\"may_contain\": [\"celery\"]",
     "/foods/1/label/may_contain/0", "celery", "both", "contains only"},
    // amounts and what belongs to which kind
    {"amount_missing", "\"units\": 4, \"paid_cents\"", "\"paid_cents\"", "/entries/0", "",
     "amount is missing", "units"},
    {"amount_twice", "\"units\": 4,", "\"units\": 4, \"half_servings\": 16,", "/entries/0", "",
     "twice", "keep"},
    {"amount_negative", "\"units\": 4,", "\"units\": -4,", "/entries/0/units", "-4", "out of range",
     "100000"},
    {"amount_absurd", "\"units\": 4,", "\"units\": 100001,", "/entries/0/units", "100001",
     "out of range", "100000"},
    {"halves_absurd", "\"half_servings\": 3,", "\"half_servings\": 2000000001,",
     "/entries/3/half_servings", "2000000001", "out of range", "2000000000"},
    {"shown_without_amount", ", \"half_servings\": 1}", "}", "/shown_meals/0/servings/0", "",
     "amount is missing", ""},
    {"entry_without_kind", "\"kind\": \"moved\", \"on\": \"2026-04-01\", \"written_at\"",
     "\"on\": \"2026-04-01\", \"written_at\"", "/entries/1", "", "'kind'", "add"},
    {"moved_without_to", "\"to\": \"ada-bag\", ", "", "/entries/1", "", "'to'", "add"},
    {"to_without_moved", "\"units\": 4,", "\"units\": 4, \"to\": \"ada-bag\",", "/entries/0/to",
     "ada-bag", "moved only", "leave it out"},
    {"counted_without_change", ", \"change_half_servings\": -2", "", "/entries/5", "",
     "'change_half_servings'", "add"},
    {"change_without_counted", "\"units\": 4,", "\"units\": 4, \"change_half_servings\": 0,",
     "/entries/0/change_half_servings", "0", "counted only", "leave it out"},
    {"corrects_without_corrected", "\"units\": 4,", "\"units\": 4, \"corrects\": 1,",
     "/entries/0/corrects", "1", "corrected only", "leave it out"},
    {"corrected_without_corrects", "\"corrects\": 7, ", "", "/entries/7", "", "'corrects'", "add"},
    {"corrected_with_lot", "\"corrects\": 7, ", "\"corrects\": 7, \"lot\": 2, ", "/entries/7/lot",
     "2", "does not belong", "leave it out"},
    {"mark_without_day", ", \"day\": \"2028-02-01\"", "", "/readings/0/mark", "", "'day'", "add"},
    {"units_and_ml", "\"ml\": 6000", "\"units\": 2, \"ml\": 6000", "/menu/2", "", "not both",
     "ml for water"},
    // content, by core's rules
    {"no_such_food", "\"food\": \"cat-tin\"", "\"food\": \"cat-tim\"", "/lots/1/food", "cat-tim",
     "no such food", "'cat-tin'"},
    {"not_the_last_day", "\"day\": \"2027-08-31\"", "\"day\": \"2027-08-30\"", "/lots/0/mark/day",
     "2027-08-30", "last day", "2027-08-31"},
    {"ids_not_growing", "{\"id\": 2, \"kit\"", "{\"id\": 1, \"kit\"", "/review_events/1/id", "1",
     "grow", "above 1"},
    {"overdrawn", "\"half_servings\": 3,", "\"half_servings\": 5,", "/entries/3", "4",
     "Lentil pouch", "count"},
};

INSTANTIATE_TEST_SUITE_P(Forms, BrokenDocument, testing::ValuesIn(kCases),
                         [](const auto& each) { return std::string(each.param.name); });

}  // namespace
}  // namespace larderloop
