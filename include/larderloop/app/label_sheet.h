// label_sheet.h - sheets of paper and the grids of labels on them, in millimetres.
// Source:   A4 is ISO 216 (210 x 297 mm); US Letter is 8.5 x 11 in (ANSI/ASME Y14.1), 215.9 x 279.4 mm. The grids are common practice, written
//           down from memory and not from any maker's page: measure the sheet at hand, and try them on plain paper first.
#pragma once

#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

enum class PaperSize { kA4, kLetter };
inline constexpr PaperSize kAllPaperSizes[] = {PaperSize::kA4, PaperSize::kLetter};
[[nodiscard]] std::string_view paper_size_name(PaperSize size);  // "a4", "letter"
[[nodiscard]] std::optional<PaperSize> parse_paper_size(std::string_view name);

struct PaperSheet {
  PaperSize size = PaperSize::kA4;
  [[nodiscard]] double width_mm() const { return size == PaperSize::kA4 ? 210.0 : 215.9; }
  [[nodiscard]] double height_mm() const { return size == PaperSize::kA4 ? 297.0 : 279.4; }
};

// `left`, `top`: from the corner of the sheet to the first label. `pitch_x`, `pitch_y`: from one label's left (upper) edge to the next one's.
struct LabelGrid {
  double width = 0, height = 0;
  int columns = 1, rows = 1;
  double left = 0, top = 0;
  double pitch_x = 0, pitch_y = 0;
  [[nodiscard]] int count() const { return columns * rows; }
};

// What somebody typed; what is absent follows from the rest: the grid that is usual for the size, else as many as fit, margins the same on both
// sides, pitch the label's own size.
struct GridRequest {
  std::optional<double> width, height;
  std::optional<int> columns, rows;
  std::optional<double> left, top;
  std::optional<double> pitch_x, pitch_y;
};
// kBadData when labels would overlap or lie outside the sheet, or are smaller than 20 x 10 mm.
[[nodiscard]] Result<LabelGrid> label_grid(PaperSheet sheet, const GridRequest& request);

// The usual grids of a sheet, largest label first.
[[nodiscard]] const std::vector<LabelGrid>& usual_grids(PaperSize size);
[[nodiscard]] std::string grid_words(const LabelGrid& grid);  // "63.5 x 38.1 mm, 3 x 7"

// Where a label lies. `index`: 0-based over all sheets, row by row; the first `start_at` - 1 places stay empty.
struct LabelPlace {
  int sheet = 0;
  double x = 0, y = 0;  // mm, its upper left corner
};
[[nodiscard]] LabelPlace place_of_label(const LabelGrid& grid, int start_at, int index);

}  // namespace larderloop
