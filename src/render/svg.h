// svg.h - writes the pictures: boxes, lines and text on a white sheet of one width, with three
// patterns that print in black.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::svg {

inline constexpr double kWidth = 480;
inline constexpr double kEdge = 10;  // free on both sides
inline constexpr double kTextSize = 12;
inline constexpr double kLetter = 7.2;  // width of a letter of it, on average, rather too much
inline constexpr std::size_t kRowCells =
    66;  // letters of a row of text, by the width of the wider ones

enum class Fill { kPlain, kHatched, kCrossed, kDotted };
enum class Anchor { kStart, kEnd };
enum class Stroke { kSolid, kDashed, kDotted };

// Somebody's own words: control characters shown, cut to `width` cells, in their own writing
// direction. Not yet escaped.
[[nodiscard]] std::string name(std::string_view text, std::size_t width);

class Picture {
 public:
  // What stored words are in the title is shown like any text.
  Picture(std::string_view title, std::string_view description);
  // Stored words in `words` have been through name().
  void text(double x, double y, std::string_view words, Anchor anchor = Anchor::kStart,
            bool strong = false);
  // The program's own words, in ASCII, on white over what was drawn.
  void over(double x, double y, std::string_view words, Anchor anchor);
  void box(double x, double y, double width, double height, Fill fill);
  void line(double x1, double y1, double x2, double y2, Stroke stroke = Stroke::kSolid);
  // A group with its numbers: class and data- attributes.
  void open(std::string_view kind, const std::vector<std::pair<std::string, std::string>>& data);
  void close() { body_ += "</g>\n"; }
  [[nodiscard]] std::string finish(double height) const;

 private:
  std::string title_, description_, body_;
};

}  // namespace larderloop::svg
