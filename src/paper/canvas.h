// canvas.h - a PDF in memory, in millimetres, with text by Pango. One place that holds the C objects.
#pragma once

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <vector>

#include "larderloop/app/paper.h"

namespace larderloop::paper {

struct Unref {
  void operator()(cairo_t* each) const { cairo_destroy(each); }
  void operator()(cairo_surface_t* each) const { cairo_surface_destroy(each); }
  void operator()(PangoLayout* each) const { g_object_unref(each); }
  void operator()(PangoFontDescription* each) const { pango_font_description_free(each); }
};
template <class T>
using Handle = std::unique_ptr<T, Unref>;

struct Style {
  double points = 9.5;
  bool bold = false;
};

// One line of a set text: its height and baseline, in mm from the text's top.
struct SetLine {
  double top = 0, bottom = 0, baseline = 0;
  PangoLayoutLine* line = nullptr;  // belongs to the layout
  double x = 0;
};
class SetText {
 public:
  [[nodiscard]] double height() const { return lines_.empty() ? 0 : lines_.back().bottom; }
  [[nodiscard]] const std::vector<SetLine>& lines() const { return lines_; }
  [[nodiscard]] bool broken_word() const { return broken_word_; }

 private:
  friend class Canvas;
  std::shared_ptr<PangoLayout> layout_;
  std::vector<SetLine> lines_;
  bool broken_word_ = false;
};

class Canvas {
 public:
  // The bytes are complete after finish().
  Canvas(PaperSheet sheet, const std::string& title, Instant now);
  [[nodiscard]] SetText set(const std::string& text, Style style, double width_mm);
  // Lines [from, to) of the text, the first of them at y. Returns their height.
  double draw(const SetText& text, double x, double y, std::size_t from, std::size_t to);
  double draw(const SetText& text, double x, double y) { return draw(text, x, y, 0, text.lines().size()); }
  void line(double x1, double y1, double x2, double y2, double width = 0.15);
  void frame(double x, double y, double width, double height, double line_width = 0.15);
  void filled(double x, double y, double width, double height);
  void next_sheet();
  [[nodiscard]] int sheets() const { return sheets_; }
  [[nodiscard]] const std::vector<std::string>& no_glyphs() const { return no_glyphs_; }
  [[nodiscard]] Result<std::string> finish();

 private:
  std::string bytes_;
  Handle<cairo_surface_t> surface_;
  Handle<cairo_t> cairo_;
  int sheets_ = 1;
  std::vector<std::string> no_glyphs_;
};
[[nodiscard]] bool has_fonts();

}  // namespace larderloop::paper
