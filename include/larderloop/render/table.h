// table.h - rows and columns as plain text: a heading, two spaces between columns, one record a
// line.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace larderloop {

enum class Align { kLeft, kRight };

struct Column {
  std::string heading;
  Align align = Align::kLeft;
};

class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
  // Missing cells are empty. Control characters and line ends in a cell are shown escaped.
  void add(std::vector<std::string> cells);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  // All lines, each ended; only the heading without rows. `width` > 0 fits lines into so many cells
  // by cutting the widest column; 0 cuts nothing.
  [[nodiscard]] std::string text(std::size_t width = 0) const;

 private:
  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace larderloop
