#include "larderloop/render/table.h"

#include "larderloop/render/terminal_text.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace larderloop {
namespace {

constexpr std::size_t kGap = 2;
constexpr std::size_t kLeastColumn = 8;  // a column is not cut below this

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::size_t used = cells(text);
  const std::string space(width > used ? width - used : 0, ' ');
  return align == Align::kRight ? space + text : text + space;
}

}  // namespace

void Table::add(std::vector<std::string> row) {
  row.resize(columns_.size());
  for (std::string& cell : row) cell = visible_text(cell, LineEnds::kEscape);
  rows_.push_back(std::move(row));
}

std::string Table::text(std::size_t width) const {
  std::vector<std::size_t> widths;
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    std::size_t widest = cells(columns_[column].heading);
    for (const auto& row : rows_) widest = std::max(widest, cells(row[column]));
    widths.push_back(widest);
  }
  if (width > 0 && !widths.empty()) {
    const auto total = [&] {
      return std::accumulate(widths.begin(), widths.end(), kGap * (widths.size() - 1));
    };
    while (total() > width) {
      auto widest = std::max_element(widths.begin(), widths.end());
      if (*widest <= kLeastColumn) break;
      *widest = std::max(kLeastColumn, *widest - std::min(*widest, total() - width));
    }
  }
  const auto line = [&](const auto& cell_of) {
    std::string all;
    for (std::size_t column = 0; column < columns_.size(); ++column) {
      all += padded(fit_cells(cell_of(column), widths[column]), widths[column],
                    columns_[column].align);
      if (column + 1 < columns_.size()) all += std::string(kGap, ' ');
    }
    all.erase(all.find_last_not_of(' ') + 1);
    return all + "\n";
  };
  std::string all = line([&](std::size_t column) { return columns_[column].heading; });
  for (const auto& row : rows_) all += line([&](std::size_t column) { return row[column]; });
  return all;
}

}  // namespace larderloop
