#include "paper/flow.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop::paper {
namespace {

constexpr double kMargin = 13, kFoot = 8;
constexpr double kPad = 1.0, kGap = 2.0;   // in and between cells
constexpr double kTick = 3.4;              // side of a box to tick
constexpr double kCode = 38;               // side of a code with its quiet zone
constexpr double kLeastRoom = 22;          // a table begins only where this much is left
constexpr double kLeastPoints = 8.5;       // of type in a table, however long a word

}  // namespace

double FlowRow::height() const {
  double tallest = 0;
  for (const FlowCell& cell : cells) tallest = std::max(tallest, std::max(cell.text.height(), cell.tick ? kTick + 0.6 : 0));
  return tallest + (border == Border::kNone ? 0 : 2 * kPad);
}

Flow::Flow(Canvas& canvas, const PaperDocument& document, int sheets) : canvas_(canvas), document_(document), sheets_(sheets) {
  width_ = document.sheet.width_mm() - 2 * kMargin;
  bottom_ = document.sheet.height_mm() - kMargin - kFoot;
  y_ = kMargin;
}

void Flow::foot() {
  const double y = document_.sheet.height_mm() - kMargin - 4;
  canvas_.line(kMargin, y - 1, kMargin + width_, y - 1);
  const std::string text = fmt::format("{}. As of {}. Page {} of {}", document_.household, plain_day(document_.as_of), canvas_.sheets(), sheets_);
  const SetText set = canvas_.set(text, {8}, width_);
  canvas_.draw(set, kMargin, y, 0, 1);
}

void Flow::fresh_sheet() {
  canvas_.next_sheet();
  foot();
  y_ = kMargin;
  put(plain(running_ + " (continued)", {size(9), true}, 0, 2));
}

FlowRow Flow::plain(const std::string& text, Style style, double before, double after) {
  FlowRow row;
  row.cells.push_back({canvas_.set(text, style, width_), kMargin, false});
  row.before = before;
  row.after = after;
  return row;
}

void Flow::page(const PaperPage& page) {
  if (started_) canvas_.next_sheet();
  started_ = true;
  foot();
  y_ = kMargin;
  repeat_ = nullptr;
  running_ = page.title;
  put(plain(page.title, {size(20), true}, 0, 1));
  if (!page.subtitle.empty()) put(plain(page.subtitle, {size(11)}, 0, 3));
  for (const PaperBlock& each : page.blocks) block(each);
}

void Flow::block(const PaperBlock& block) {
  repeat_ = nullptr;
  if (const auto* heading = std::get_if<PaperHeading>(&block)) put(plain(heading->text, {size(13), true}, 3, 1));
  if (const auto* text = std::get_if<PaperText>(&block)) put(plain(text->text, {size(10.5), text->strong}, 0, 1.3));
  if (const auto* warning = std::get_if<PaperWarning>(&block)) {
    FlowRow row;
    row.cells.push_back({canvas_.set("WARNING: " + warning->text, {size(10.5), true}, width_ - 2 * kGap), kMargin + kGap, false});
    row.border = Border::kFrame;
    row.before = 1;
    row.after = 1;
    put(row);
  }
  if (const auto* each = std::get_if<PaperTable>(&block)) table(*each);
  if (const auto* each = std::get_if<PaperCode>(&block)) code(*each);
}

FlowRow Flow::row_of(const std::vector<PaperCell>& cells, const std::vector<PaperColumn>& columns, bool heading) {
  int shares = 0;
  for (const PaperColumn& column : columns) shares += column.share;
  const double each = (width_ - kGap * static_cast<double>(columns.size() - 1)) / shares;
  FlowRow row;
  row.border = Border::kBelow;
  double x = kMargin;
  for (std::size_t at = 0; at < columns.size(); ++at) {
    const double width = each * columns[at].share;
    const PaperCell cell = at < cells.size() ? cells[at] : PaperCell{};
    const double indent = cell.tick ? kTick + 1.6 : 0;
    Style style{size(heading ? 8.5 : 10), heading || cell.strong};
    SetText set = canvas_.set(cell.text, style, width - indent);
    // A word that does not fit its column is set smaller before it is broken.
    while (set.broken_word() && style.points > size(kLeastPoints)) {
      style.points -= 0.5;
      set = canvas_.set(cell.text, style, width - indent);
    }
    row.cells.push_back({std::move(set), x + indent, cell.tick});
    x += width + kGap;
  }
  return row;
}

void Flow::table(const PaperTable& table) {
  std::vector<PaperCell> headings;
  for (const PaperColumn& column : table.columns) headings.push_back({column.heading});
  const FlowRow heads = row_of(headings, table.columns, true);
  // A heading does not stand alone at the foot of a sheet: its first row comes along.
  const FlowRow title = plain(table.title, {size(12.5), true}, 3, 0.5);
  double begins = title.before + title.height() + title.after + heads.height();
  if (!table.rows.empty()) begins += row_of(table.rows.front(), table.columns, false).height();
  if (begins > bottom_ - kMargin) begins = kLeastRoom;  // it is longer than a sheet anyway
  if (room() < std::max(begins, kLeastRoom)) fresh_sheet();
  const auto begin = [&](const std::string& more, double before) {
    put(plain(table.title + more, {size(12.5), true}, before, 0.5));
    put(heads);
    canvas_.line(kMargin, y_, kMargin + width_, y_, 0.5);
  };
  begin("", 3);
  // While the headings themselves are put, nothing is repeated.
  const std::function<void()> again = [&] {
    repeat_ = nullptr;
    begin(" (continued)", 0);
  };
  for (const auto& cells : table.rows) {
    repeat_ = again;
    put(row_of(cells, table.columns, false));
  }
  y_ += 2;
  repeat_ = nullptr;
}

void Flow::put(const FlowRow& row) {
  const double height = row.height();
  if (height > room() - row.before && y_ > kMargin) {
    const std::function<void()> repeat = repeat_;
    fresh_sheet();
    if (repeat) repeat();
    if (height > room()) {
      put_long(row);
      return;
    }
  }
  y_ += row.before;
  draw(row, height);
  y_ += height + row.after;
}

void Flow::draw(const FlowRow& row, double height) {
  const double pad = row.border == Border::kNone ? 0 : kPad;
  for (const FlowCell& cell : row.cells) {
    if (cell.tick) canvas_.frame(cell.x - (cell.text.lines().empty() ? 0 : kTick + 1.6), y_ + pad + 0.3, kTick, kTick, 0.3);
    canvas_.draw(cell.text, cell.x, y_ + pad);
  }
  if (row.border == Border::kBelow) canvas_.line(kMargin, y_ + height, kMargin + width_, y_ + height);
  if (row.border == Border::kFrame) canvas_.frame(kMargin, y_, width_, height, 0.6);
}

// A row taller than a sheet goes on, line by line, on the next ones.
void Flow::put_long(const FlowRow& row) {
  std::vector<std::size_t> done(row.cells.size(), 0);
  const auto left = [&] {
    for (std::size_t each = 0; each < done.size(); ++each) {
      if (done[each] < row.cells[each].text.lines().size()) return true;
    }
    return false;
  };
  while (left()) {
    double tallest = 0;
    for (std::size_t each = 0; each < done.size(); ++each) {
      const std::vector<SetLine>& lines = row.cells[each].text.lines();
      std::size_t to = done[each];
      while (to < lines.size() && lines[to].bottom - lines[done[each]].top < room()) ++to;
      tallest = std::max(tallest, canvas_.draw(row.cells[each].text, row.cells[each].x, y_, done[each], to));
      done[each] = to;
    }
    y_ += tallest + row.after;
    if (left()) fresh_sheet();
  }
}

void Flow::code(const PaperCode& code) {
  int side = 0;
  while (static_cast<std::size_t>((side + 1) * (side + 1)) <= code.modules.size()) ++side;
  if (room() < kCode + 2) fresh_sheet();
  y_ += 2;
  if (side > 0) {
    const double module = kCode / (side + 8);  // the quiet zone is four modules wide (ISO/IEC 18004)
    for (int y = 0; y < side; ++y) {
      for (int x = 0; x < side; ++x) {
        if (code.modules[static_cast<std::size_t>(y * side + x)] == '1') canvas_.filled(kMargin + (x + 4) * module, y_ + (y + 4) * module, module, module);
      }
    }
  }
  const SetText caption = canvas_.set(code.caption, {size(9)}, width_ - kCode - 4);
  canvas_.draw(caption, kMargin + kCode + 3, y_ + kCode / 2 - caption.height() / 2);
  y_ += kCode;
}

}  // namespace larderloop::paper
