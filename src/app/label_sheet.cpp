#include "larderloop/app/label_sheet.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace larderloop {
namespace {

constexpr double kLeastWidth = 20.0, kLeastHeight = 10.0;
constexpr double kSlack = 0.05;  // of rounding in what people type

// Labels in the middle of the sheet.
LabelGrid centred(PaperSize size, double width, double height, int columns, int rows, double pitch_x, double pitch_y) {
  const PaperSheet sheet{size};
  LabelGrid grid{width, height, columns, rows, 0, 0, pitch_x, pitch_y};
  grid.left = (sheet.width_mm() - (columns - 1) * pitch_x - width) / 2;
  grid.top = (sheet.height_mm() - (rows - 1) * pitch_y - height) / 2;
  return grid;
}

bool close_to(double a, double b) { return std::abs(a - b) <= kSlack; }

Status fits(PaperSheet sheet, const LabelGrid& grid) {
  const auto wrong = [](const std::string& what) {
    return fail(ErrorKind::kBadData, what, "measure the sheet of labels: --label WIDTHxHEIGHT, --columns, --rows, --left, --top, --pitch-x, --pitch-y, all in mm");
  };
  if (grid.width < kLeastWidth || grid.height < kLeastHeight) {
    return wrong(fmt::format("labels of {:g} x {:g} mm are too small to be read: at least {:g} x {:g} mm", grid.width, grid.height, kLeastWidth, kLeastHeight));
  }
  if ((grid.columns > 1 && grid.pitch_x < grid.width - kSlack) || (grid.rows > 1 && grid.pitch_y < grid.height - kSlack)) {
    return wrong(fmt::format("labels of {:g} x {:g} mm overlap at a pitch of {:g} x {:g} mm", grid.width, grid.height, grid.pitch_x, grid.pitch_y));
  }
  const double right = grid.left + (grid.columns - 1) * grid.pitch_x + grid.width;
  const double bottom = grid.top + (grid.rows - 1) * grid.pitch_y + grid.height;
  if (grid.left < -kSlack || grid.top < -kSlack || right > sheet.width_mm() + kSlack || bottom > sheet.height_mm() + kSlack) {
    return wrong(fmt::format("{} x {} labels of {:g} x {:g} mm do not lie on a sheet of {:g} x {:g} mm", grid.columns, grid.rows, grid.width, grid.height,
                             sheet.width_mm(), sheet.height_mm()));
  }
  return {};
}

}  // namespace

std::string_view paper_size_name(PaperSize size) { return size == PaperSize::kA4 ? "a4" : "letter"; }

std::optional<PaperSize> parse_paper_size(std::string_view name) {
  for (const PaperSize size : kAllPaperSizes) {
    if (paper_size_name(size) == name) return size;
  }
  return std::nullopt;
}

const std::vector<LabelGrid>& usual_grids(PaperSize size) {
  // Common practice, from memory.
  static const std::vector<LabelGrid> a4 = {
      centred(PaperSize::kA4, 105.0, 74.0, 2, 4, 105.0, 74.0),  centred(PaperSize::kA4, 99.1, 67.7, 2, 4, 101.6, 67.7),
      centred(PaperSize::kA4, 99.1, 38.1, 2, 7, 101.6, 38.1),   centred(PaperSize::kA4, 63.5, 46.6, 3, 6, 66.0, 46.6),
      centred(PaperSize::kA4, 70.0, 37.0, 3, 8, 70.0, 37.0),    centred(PaperSize::kA4, 63.5, 38.1, 3, 7, 66.0, 38.1)};
  // 4 x 3 1/3 in, 4 x 2 in, 2 5/8 x 1 in.
  static const std::vector<LabelGrid> letter = {centred(PaperSize::kLetter, 101.6, 84.67, 2, 3, 106.36, 84.67),
                                                centred(PaperSize::kLetter, 101.6, 50.8, 2, 5, 106.36, 50.8),
                                                centred(PaperSize::kLetter, 66.68, 25.4, 3, 10, 69.85, 25.4)};
  return size == PaperSize::kA4 ? a4 : letter;
}

std::string grid_words(const LabelGrid& grid) { return fmt::format("{:g} x {:g} mm, {} x {}", grid.width, grid.height, grid.columns, grid.rows); }

Result<LabelGrid> label_grid(PaperSheet sheet, const GridRequest& request) {
  const std::vector<LabelGrid>& usual = usual_grids(sheet.size);
  LabelGrid grid = usual[sheet.size == PaperSize::kA4 ? 1 : 0];
  if (request.width && request.height) {
    const auto known = std::find_if(usual.begin(), usual.end(), [&](const LabelGrid& each) {
      return close_to(each.width, *request.width) && close_to(each.height, *request.height);
    });
    if (known != usual.end()) {
      grid = *known;
    } else {
      grid = LabelGrid{*request.width, *request.height, 1, 1, 0, 0, *request.width, *request.height};
      if (grid.width > 0 && grid.height > 0) {
        grid.columns = std::max(1, static_cast<int>((sheet.width_mm() + kSlack) / request.pitch_x.value_or(grid.width)));
        grid.rows = std::max(1, static_cast<int>((sheet.height_mm() + kSlack) / request.pitch_y.value_or(grid.height)));
      }
    }
  }
  grid.columns = request.columns.value_or(grid.columns);
  grid.rows = request.rows.value_or(grid.rows);
  grid.pitch_x = request.pitch_x.value_or(grid.pitch_x);
  grid.pitch_y = request.pitch_y.value_or(grid.pitch_y);
  const LabelGrid middle = centred(sheet.size, grid.width, grid.height, grid.columns, grid.rows, grid.pitch_x, grid.pitch_y);
  grid.left = request.left.value_or(middle.left);
  grid.top = request.top.value_or(middle.top);
  if (Status sound = fits(sheet, grid); !sound) return fail(sound.error());
  return grid;
}

LabelPlace place_of_label(const LabelGrid& grid, int start_at, int index) {
  const int slot = start_at - 1 + index;
  const int on_sheet = slot % grid.count();
  return {slot / grid.count(), grid.left + on_sheet % grid.columns * grid.pitch_x, grid.top + on_sheet / grid.columns * grid.pitch_y};
}

}  // namespace larderloop
