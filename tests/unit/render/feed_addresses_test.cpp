// A code in characters: the same picture in three ways, with four modules of quiet zone.
#include "larderloop/render/feed_addresses.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const std::string kCode =
    "100"
    "010"
    "111";

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char each : text) {
    if (each == '\n')
      lines.emplace_back();
    else
      lines.back() += each;
  }
  lines.pop_back();
  return lines;
}

TEST(DrawCode, PlainHasTwoCharactersAModule) {
  const auto lines = lines_of(draw_code(kCode, CodeStyle::kPlain));
  ASSERT_EQ(lines.size(), 11U);
  EXPECT_EQ(lines[3], std::string(22, ' '));
  EXPECT_EQ(lines[4], std::string(8, ' ') + "##" + std::string(12, ' '));
  EXPECT_EQ(lines[5], std::string(10, ' ') + "##" + std::string(10, ' '));
  EXPECT_EQ(lines[6], std::string(8, ' ') + "######" + std::string(8, ' '));
}

TEST(DrawCode, BlocksDrawTheLight) {
  const auto lines = lines_of(draw_code(kCode, CodeStyle::kBlocks));
  ASSERT_EQ(lines.size(), 6U);
  std::string full;
  for (int each = 0; each < 4; ++each) full += "█";
  EXPECT_EQ(lines[0], full + "███" + full);
  EXPECT_EQ(lines[2], full + "▄▀█" + full) << "upper 100, lower 010";
  EXPECT_EQ(lines[3], full + "▄▄▄" + full) << "upper 111, lower quiet";
}

TEST(DrawCode, PaintIsTheReverseInBlackOnWhite) {
  const auto lines = lines_of(draw_code(kCode, CodeStyle::kPaint));
  ASSERT_EQ(lines.size(), 6U);
  EXPECT_EQ(lines[2], "\x1b[30;107m    ▀▄     \x1b[0m");
  EXPECT_EQ(lines[3], "\x1b[30;107m    ▀▀▀    \x1b[0m");
}

}  // namespace
}  // namespace larderloop
