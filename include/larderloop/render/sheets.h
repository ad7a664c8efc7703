// sheets.h - what an import came to, the columns of a spreadsheet and kept mappings, as text and as JSON documents (docs/schema/).
// Width:    0 = not a terminal: nothing is cut.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "larderloop/app/sheets.h"

namespace larderloop {

// "12 rows: 3 new, 1 changed, 8 known already", and a line for each row that is not known; then what is passed over.
[[nodiscard]] std::string render_sheet_report(const SheetReport& report);
[[nodiscard]] std::string render_sheet_report_json(const SheetReport& report, Day as_of);
[[nodiscard]] std::string render_sheet_columns(SheetKind sheet, std::size_t width);
[[nodiscard]] std::string render_sheet_columns_json(SheetKind sheet, Day as_of);
[[nodiscard]] std::string render_mappings(const std::vector<ImportMapping>& mappings, std::size_t width);
[[nodiscard]] std::string render_mappings_json(const std::vector<ImportMapping>& mappings, Day as_of);

}  // namespace larderloop
