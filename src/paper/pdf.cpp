#include "larderloop/paper/pdf.h"

#include "paper/flow.h"

#include <algorithm>

namespace larderloop {
namespace paper {
namespace {

constexpr double kLabelPad = 2.5;    // printers are off by a millimetre or so
constexpr double kLeastPoints = 7.0; // the smallest type on a label
constexpr double kMostPoints = 14.0, kMostLarge = 20.0;

struct SetLabel {
  std::vector<SetText> texts;
  double height = 0;
};

SetLabel set_label(Canvas& canvas, const std::string& title, const std::vector<PaperCell>& lines, double points, double width) {
  SetLabel made;
  const auto add = [&](const std::string& text, Style style) {
    made.texts.push_back(canvas.set(text, style, width));
    made.height += made.texts.back().height() + 0.6;
  };
  add(title, {points * 1.45, true});
  for (const PaperCell& line : lines) add(line.text, {points, line.strong});
  return made;
}

// The largest type in which everything fits; empty when not even the smallest does.
std::vector<SetText> fitted(Canvas& canvas, const PaperDocument& document, const std::string& title, const std::vector<PaperCell>& lines) {
  const double width = document.grid.width - 2 * kLabelPad, height = document.grid.height - 2 * kLabelPad;
  for (double points = document.large ? kMostLarge : kMostPoints; points >= kLeastPoints; points -= 0.5) {
    SetLabel made = set_label(canvas, title, lines, points, width);
    if (made.height <= height) return std::move(made.texts);
  }
  return {};
}

void draw_labels(Canvas& canvas, const PaperDocument& document, std::vector<std::string>& too_long) {
  for (std::size_t each = 0; each < document.labels.size(); ++each) {
    const PaperLabel& label = document.labels[each];
    const LabelPlace place = place_of_label(document.grid, document.start_at, static_cast<int>(each));
    while (canvas.sheets() <= place.sheet) canvas.next_sheet();
    if (document.outlines) canvas.frame(place.x, place.y, document.grid.width, document.grid.height, 0.1);
    std::vector<SetText> texts = fitted(canvas, document, label.title, label.lines);
    if (texts.empty()) {
      too_long.push_back(label.title);
      texts = fitted(canvas, document, label.title, label.instead);
    }
    // As much as there is room for, the name first; the caller is told.
    if (texts.empty()) texts = set_label(canvas, label.title, label.instead, kLeastPoints, document.grid.width - 2 * kLabelPad).texts;
    double y = place.y + kLabelPad;
    for (const SetText& text : texts) {
      for (std::size_t line = 0; line < text.lines().size(); ++line) {
        const double bottom = y + text.lines()[line].bottom;
        if (bottom <= place.y + document.grid.height - 0.5) canvas.draw(text, place.x + kLabelPad, y + text.lines()[line].top, line, line + 1);
      }
      y += text.height() + 0.6;
    }
  }
}

int draw_pages(Canvas& canvas, const PaperDocument& document, int sheets) {
  Flow flow(canvas, document, sheets);
  for (const PaperPage& page : document.pages) flow.page(page);
  return canvas.sheets();
}

}  // namespace
}  // namespace paper

Result<PaperPdf> draw_pdf(const PaperDocument& document, Instant now) {
  if (!paper::has_fonts()) return fail(ErrorKind::kConfig, "this machine has no fonts to print with", "install some, for example: apt-get install fonts-dejavu-core");
  PaperPdf made;
  int sheets = 0;
  if (document.what != PaperWhat::kLabels) {
    paper::Canvas counting(document.sheet, document.title, now);
    sheets = paper::draw_pages(counting, document, 0);
  }
  paper::Canvas canvas(document.sheet, document.title + ", " + document.household, now);
  if (document.what == PaperWhat::kLabels) {
    paper::draw_labels(canvas, document, made.too_long);
  } else {
    paper::draw_pages(canvas, document, sheets);
  }
  made.sheets = canvas.sheets();
  made.no_glyphs = canvas.no_glyphs();
  auto bytes = canvas.finish();
  if (!bytes) return fail(bytes.error());
  made.bytes = std::move(*bytes);
  return made;
}

}  // namespace larderloop
