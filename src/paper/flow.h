// flow.h - rows of cells poured over sheets: breaks between rows, headings again on every sheet, a foot with the number of the sheet.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "paper/canvas.h"

namespace larderloop::paper {

struct FlowCell {
  SetText text;
  double x = 0;  // of the text
  bool tick = false;
};
enum class Border { kNone, kBelow, kFrame };
struct FlowRow {
  std::vector<FlowCell> cells;
  Border border = Border::kNone;
  double before = 0, after = 0;  // space, mm
  [[nodiscard]] double height() const;
};

class Flow {
 public:
  // `sheets`: of the whole document, for the foot; 0 while they are being counted.
  Flow(Canvas& canvas, const PaperDocument& document, int sheets);
  void page(const PaperPage& page);

 private:
  void block(const PaperBlock& block);
  void table(const PaperTable& table);
  void code(const PaperCode& code);
  void put(const FlowRow& row);
  void put_long(const FlowRow& row);
  void draw(const FlowRow& row, double height);
  void foot();
  void fresh_sheet();
  [[nodiscard]] double room() const { return bottom_ - y_; }
  [[nodiscard]] FlowRow plain(const std::string& text, Style style, double before, double after);
  [[nodiscard]] FlowRow row_of(const std::vector<PaperCell>& cells, const std::vector<PaperColumn>& columns, bool heading);
  [[nodiscard]] double size(double points) const { return document_.large ? points * 1.45 : points; }

  Canvas& canvas_;
  const PaperDocument& document_;
  int sheets_ = 0;
  bool started_ = false;
  double width_ = 0, bottom_ = 0, y_ = 0;
  std::string running_;                   // the page's title, on the sheets it runs on to
  std::function<void()> repeat_;          // headings of the table that is running
};

}  // namespace larderloop::paper
