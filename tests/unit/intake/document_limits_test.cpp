// What a document may be before anything in it is judged, and how many findings come at once.
#include "larderloop/intake/findings.h"
#include "larderloop/intake/document.h"
#include "unit/intake/small_document.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

const std::string kHead =
    R"("format": "larderloop.household", "version": 1, "book_id": "0b5f0c9e-2c5d-4d8e-9a53-6f2d1c0a7e11")";

Problem only_problem(const std::string& text) {
  const auto household = parse_document(text);
  EXPECT_FALSE(household);
  if (household) return {};
  EXPECT_EQ(household.error().kind, ErrorKind::kBadData);
  EXPECT_FALSE(household.error().what.empty());
  EXPECT_FALSE(household.error().next_step.empty());
  EXPECT_EQ(household.error().problems.size(), 1U);
  return household.error().problems.empty() ? Problem{} : household.error().problems.front();
}

struct NotJson {
  const char* name;
  std::string text;
  const char* where;
};

class BrokenText : public testing::TestWithParam<NotJson> {};

TEST_P(BrokenText, IsReportedWithLineAndColumn) {
  const Problem problem = only_problem(GetParam().text);
  EXPECT_EQ(problem.where, GetParam().where) << problem.what;
  EXPECT_EQ(problem.what.find("json.exception"), std::string::npos) << problem.what;
  EXPECT_FALSE(problem.what.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Texts, BrokenText,
    testing::Values(NotJson{"empty", "", "line 1, column 1"},
                    NotJson{"unclosed", "{\n  \"format\": 1", "line 2, column 14"},
                    NotJson{"comma", "{\n\n  \"a\": 1,}", "line 3, column 10"},
                    NotJson{"after_umlauts", "{\"\xC3\xBC\xC3\xBC\": x}", "line 1, column 8"},
                    NotJson{"two_documents", "{} {}", "line 1, column 4"},
                    NotJson{"leading_zero", "[01]", "line 1, column 3"},
                    NotJson{"not_a_number", "[NaN]", "line 1, column 2"},
                    NotJson{"comment", "// hello\n{}", "line 1, column 1"},
                    NotJson{"not_utf8", "[\"\xE9\"]", "line 1, column 4"},
                    NotJson{"second_mark", "\xEF\xBB\xBF\xEF\xBB\xBF{}", "line 1, column 1"}),
    [](const auto& each) { return std::string(each.param.name); });

TEST(DocumentLimits, OneByteOrderMarkIsPassedOver) {
  EXPECT_TRUE(parse_document("\xEF\xBB\xBF{" + kHead + "}"));
}

TEST(DocumentLimits, OtherThanAnObjectIsNoDocument) {
  for (const char* text : {"[]", "null", "3", "\"household\""}) {
    const Problem problem = only_problem(text);
    EXPECT_EQ(problem.where, "") << text;
    EXPECT_NE(problem.what.find("one JSON object"), std::string::npos) << text;
  }
}

TEST(DocumentLimits, NestingOf32LevelsIsReadAndDeeperRefused) {
  const auto nested = [](std::size_t levels) {  // the document itself is one
    return "{" + kHead + ", \"people\": " + std::string(levels - 1, '[') +
           std::string(levels - 1, ']') + "}";
  };
  EXPECT_EQ(only_problem(nested(32)).where, "/people/0");  // read, and no person
  const Problem problem = only_problem(nested(33));
  EXPECT_NE(problem.what.find("nested deeper than 32"), std::string::npos) << problem.what;
  EXPECT_EQ(problem.where.substr(0, 9), "/people/0") << problem.where;
  EXPECT_NE(only_problem(std::string(1'000'000, '[')).what.find("nested"), std::string::npos);
}

TEST(DocumentLimits, MoreThan256MegabytesAreNotRead) {
  std::string text = "{" + kHead + "}";
  text.resize(std::size_t{256} * 1024 * 1024 + 1, ' ');  // blanks: it is well formed otherwise
  EXPECT_NE(only_problem(text).what.find("larger than 256 MB"), std::string::npos);
}

TEST(DocumentFindings, AllOfTheFormComeAtOnceInTheOrderOfTheText) {
  // Lists stand in another order than they are read in, and records too.
  const auto household = parse_document(
      "{\"lots\": [{\"id\": \"1\", \"receivd\": \"2026-04-01\"}], \"people\": [{\"key\": \"A\"}], "
      "\"zebra\": 1, " +
      kHead + ", \"feed\": 3, \"foods\": [{\"servings\": 1.5, \"key\": 1, \"name\": 2}]}");
  ASSERT_FALSE(household);
  std::vector<std::string> places;
  for (const Problem& problem : household.error().problems) places.push_back(problem.where);
  EXPECT_EQ(places, (std::vector<std::string>{"/lots/0", "/lots/0", "/lots/0", "/lots/0/id",
                                              "/lots/0/receivd", "/people/0", "/people/0/key",
                                              "/zebra", "/feed", "/foods/0/servings",
                                              "/foods/0/key", "/foods/0/name"}));
  EXPECT_NE(household.error().what.find("12 faults"), std::string::npos) << household.error().what;
}

TEST(DocumentFindings, ContentIsJudgedAsItStandsInTheText) {
  // Foods are not in the order of their keys; the finding counts them as written.
  const auto household = parse_document(
      "{" + kHead +
      ", \"foods\": [{\"key\": \"rice\", \"name\": \"Rice\", \"servings\": 0}, "
      "{\"key\": \"beans\", \"name\": \"\"}], \"lots\": [{\"id\": 1, \"food\": \"ryce\", \"mark\": "
      "{\"kind\": \"none\"}, \"received\": \"2026-04-01\"}]}");
  ASSERT_FALSE(household);
  const std::vector<Problem>& problems = household.error().problems;
  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(problems[0].where, "/foods/0/servings");
  EXPECT_EQ(problems[1].where, "/foods/1/name");
  EXPECT_EQ(problems[2].where, "/lots/0/food");
  EXPECT_EQ(problems[2].remedy, "did you mean 'rice'?");
}

TEST(DocumentFindings, ContentWaitsForTheForm) {
  const auto household = parse_document(
      "{" + kHead +
      ", \"people\": [{\"key\": \"ada\", \"name\": 5}, {\"key\": \"ada\", \"name\": \"Ada\"}]}");
  ASSERT_FALSE(household);
  ASSERT_EQ(household.error().problems.size(), 1U);
  EXPECT_EQ(household.error().problems[0].where, "/people/0/name");
}

TEST(DocumentFindings, TheFirst200AreListedAndAllCounted) {
  const auto with = [](int people) {
    std::string text = "{" + kHead + ", \"people\": [";
    for (int count = 0; count < people; ++count) {
      text += std::string(count == 0 ? "" : ", ") + "{\"key\": \"p" + std::to_string(count) + "\"}";
    }
    return text + "]}";
  };
  const auto exactly = parse_document(with(200));
  ASSERT_FALSE(exactly);
  EXPECT_EQ(exactly.error().problems.size(), 200U);
  EXPECT_EQ(exactly.error().what, "the household document has 200 faults");
  const auto more = parse_document(with(201));
  ASSERT_FALSE(more);
  EXPECT_EQ(more.error().problems.size(), 200U);
  EXPECT_EQ(more.error().problems.back().where, "/people/199");
  EXPECT_EQ(more.error().what, "the household document has 201 faults, here are the first 200");
}

TEST(DocumentFindings, LongValuesAreCutBetweenCharacters) {
  std::string kind(79, 'x');
  kind += "\xC3\xBC" + std::string(100, 'y');  // the cut would fall into the umlaut
  const Problem problem =
      only_problem("{" + kHead + ", \"foods\": [{\"key\": \"a\", \"name\": \"A\", \"kind\": \"" +
                   kind + "\"}]}");
  EXPECT_EQ(problem.value, std::string(79, 'x') + "...");
}

TEST(DocumentFindings, AZeroCharacterIsRefused) {
  const Problem problem =
      only_problem("{" + kHead + ", \"people\": [{\"key\": \"a\", \"name\": \"A\\u0000B\"}]}");
  EXPECT_EQ(problem.where, "/people/0/name");
  EXPECT_NE(problem.what.find("U+0000"), std::string::npos);
}

TEST(DocumentFindings, RepeatedNamesAreFoundAmongManyMembers) {
  std::string text =
      "{" + kHead + ", \"people\": [{\"key\": \"a\", \"name\": \"A\", \"ratings\": {";
  for (int count = 0; count < 500; ++count) text += "\"f" + std::to_string(count) + "\": 1, ";
  text += "\"f3\": 2}}]}";
  const Problem problem = only_problem(text);
  EXPECT_EQ(problem.where, "/people/0/ratings/f3");
  EXPECT_NE(problem.what.find("twice"), std::string::npos);
}

}  // namespace
}  // namespace larderloop
