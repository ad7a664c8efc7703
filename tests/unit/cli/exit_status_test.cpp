#include "cli/exit_status.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace larderloop::cli {
namespace {

TEST(ExitStatus, EveryKindHasAFailingCodeOfItsOwnWithAMeaning) {
  std::set<int> codes;
  std::set<std::string_view> names;
  for (const ErrorKind kind : kAllErrorKinds) {
    const int code = exit_code(kind);
    EXPECT_NE(code, kDone);
    EXPECT_NE(code, kSomething);
    EXPECT_TRUE(codes.insert(code).second) << code;
    EXPECT_TRUE(names.insert(error_kind_name(kind)).second) << error_kind_name(kind);
    const auto& meanings = exit_meanings();
    EXPECT_TRUE(std::any_of(meanings.begin(), meanings.end(), [&](const auto& each) {
      return each.first == code;
    })) << code;
  }
}

TEST(ExitStatus, TheListOfKindsIsComplete) {
  // kDefect is the last enumerator; a kind added behind or before it changes the count.
  EXPECT_EQ(kAllErrorKinds.size(), static_cast<std::size_t>(ErrorKind::kDefect) + 1);
}

TEST(ExitStatus, MeaningsAscendAndAreNeverRepeated) {
  const auto& meanings = exit_meanings();
  EXPECT_TRUE(std::is_sorted(meanings.begin(), meanings.end(),
                             [](const auto& a, const auto& b) { return a.first <= b.first; }));
  for (const auto& [code, meaning] : meanings) EXPECT_FALSE(meaning.empty()) << code;
}

TEST(ExitStatus, NumbersAreAnInterface) {
  EXPECT_EQ(exit_code(ErrorKind::kUsage), 2);
  EXPECT_EQ(exit_code(ErrorKind::kBadData), 3);
  EXPECT_EQ(exit_code(ErrorKind::kNotFound), 4);
  EXPECT_EQ(exit_code(ErrorKind::kNotProven), 5);
  EXPECT_EQ(exit_code(ErrorKind::kStore), 6);
  EXPECT_EQ(exit_code(ErrorKind::kBusy), 7);
  EXPECT_EQ(exit_code(ErrorKind::kOutput), 8);
  EXPECT_EQ(exit_code(ErrorKind::kConfig), 9);
  EXPECT_EQ(exit_code(ErrorKind::kDefect), 70);
}

}  // namespace
}  // namespace larderloop::cli
