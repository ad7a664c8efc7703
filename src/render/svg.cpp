#include "render/svg.h"

#include "larderloop/render/terminal_text.h"
#include "render/html_text.h"

#include <fmt/core.h>

namespace larderloop::svg {
namespace {

// Coordinates to the tenth: "12", "12.5".
std::string number(double value) {
  std::string text = fmt::format("{:.1f}", value);
  if (text.size() > 2 && text.compare(text.size() - 2, 2, ".0") == 0) text.resize(text.size() - 2);
  return text;
}

std::string_view fill_of(Fill fill) {
  switch (fill) {
    case Fill::kPlain:
      return "#ddd";
    case Fill::kHatched:
      return "url(#hatched)";
    case Fill::kCrossed:
      return "url(#crossed)";
    case Fill::kDotted:
      return "url(#dotted)";
  }
  return "none";
}

constexpr std::string_view kPatterns =
    R"(<defs><pattern id="hatched" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" fill="#fff"/><path d="M0 6L6 0M-1.5 1.5L1.5 -1.5M4.5 7.5L7.5 4.5" stroke="#000" stroke-width="1.3"/></pattern>
<pattern id="crossed" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" fill="#fff"/><path d="M0 5L5 0M0 0L5 5" stroke="#000" stroke-width="1.1"/></pattern>
<pattern id="dotted" width="4" height="4" patternUnits="userSpaceOnUse"><rect width="4" height="4" fill="#fff"/><circle cx="2" cy="2" r="0.9"/></pattern></defs>
)";

}  // namespace

std::string name(std::string_view text, std::size_t width) {
  // First-strong isolates (Unicode Standard Annex 9): the words around keep their order.
  return "\u2068" + fit_cells(visible_text(text, LineEnds::kEscape), width) + "\u2069";
}

Picture::Picture(std::string_view title, std::string_view description)
    : title_(visible_text(title, LineEnds::kEscape)),
      description_(visible_text(description, LineEnds::kEscape)) {}

void Picture::over(double x, double y, std::string_view words, Anchor anchor) {
  const double width = kLetter * static_cast<double>(words.size());
  body_ +=
      fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"12\" fill=\"#fff\"/>\n",
                  number(anchor == Anchor::kEnd ? x - width : x), number(y - 10), number(width));
  text(x, y, words, anchor);
}

void Picture::text(double x, double y, std::string_view words, Anchor anchor, bool strong) {
  body_ += fmt::format("<text x=\"{}\" y=\"{}\"{}{}>{}</text>\n", number(x), number(y),
                       anchor == Anchor::kEnd ? " text-anchor=\"end\"" : "",
                       strong ? " font-weight=\"bold\"" : "", html_text(words));
}

void Picture::box(double x, double y, double width, double height, Fill fill) {
  body_ += fmt::format(
      "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\" stroke=\"#000\" "
      "stroke-width=\"0.8\"/>\n",
      number(x), number(y), number(width), number(height), fill_of(fill));
}

void Picture::line(double x1, double y1, double x2, double y2, Stroke stroke) {
  const std::string_view dashes = stroke == Stroke::kSolid    ? ""
                                  : stroke == Stroke::kDashed ? " stroke-dasharray=\"5 3\""
                                                              : " stroke-dasharray=\"1 3\"";
  body_ += fmt::format("<path d=\"M{} {}L{} {}\" stroke=\"#000\"{}/>\n", number(x1), number(y1),
                       number(x2), number(y2), dashes);
}

void Picture::open(std::string_view kind,
                   const std::vector<std::pair<std::string, std::string>>& data) {
  body_ += fmt::format("<g class=\"{}\"", kind);
  for (const auto& [key, value] : data)
    body_ += fmt::format(" data-{}=\"{}\"", key, html_text(value));
  body_ += ">\n";
}

std::string Picture::finish(double height) const {
  return fmt::format(
             "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
             "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" role=\"img\" "
             "aria-labelledby=\"title desc\" font-family=\"DejaVu Sans, Noto Sans, sans-serif\" "
             "font-size=\"{2}\" direction=\"ltr\">\n"
             "<title id=\"title\">{3}</title>\n<desc id=\"desc\">{4}</desc>\n",
             number(kWidth), number(height), number(kTextSize), html_text(title_),
             html_text(description_)) +
         std::string(kPatterns) +
         fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"#fff\"/>\n<g fill=\"#000\">\n",
                     number(kWidth), number(height)) +
         body_ + "</g>\n</svg>\n";
}

}  // namespace larderloop::svg
