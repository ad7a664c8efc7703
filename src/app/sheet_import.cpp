// A file in somebody's hand to changes of the household: which column is what, then row after row.
#include "app/sheet_work.h"
#include "larderloop/core/validate.h"

#include <algorithm>

namespace larderloop {
namespace {

Result<HeaderHow> header_how(const Household& household, const SheetRequest& request) {
  HeaderHow how;
  how.said = request.columns;
  how.pass_over = request.pass_over;
  if (request.mapping.empty()) return how;
  std::vector<std::string> names;
  for (const ImportMapping& each : household.mappings) {
    names.push_back(each.name);
    if (each.name != request.mapping) continue;
    if (each.sheet != request.sheet) {
      return fail(ErrorKind::kBadData, "the mapping '" + each.name + "' is for " + std::string(sheet_kind_name(each.sheet)),
                  "use it with --as " + std::string(sheet_kind_name(each.sheet)));
    }
    how.kept = each.columns;
    return how;
  }
  const std::string near = nearest(request.mapping, names);
  return fail(ErrorKind::kNotFound, "no mapping is kept under the name '" + request.mapping + "'",
              !near.empty() ? "did you mean '" + near + "'?" : "keep one: --column 'HEADER=COLUMN' --save-mapping '" + request.mapping + "'");
}

std::string count_words(std::size_t count) { return std::to_string(count) + (count == 1 ? " cell or row is wrong" : " cells or rows are wrong"); }

}  // namespace

Result<Outcome<SheetReport>> import_sheet(const Household& household, const SheetRequest& request, Asked asked) {
  auto how = header_how(household, request);
  if (!how) return fail(how.error());
  auto csv = open_csv(request.bytes, request.delimiter);
  if (!csv) return fail(csv.error());
  CsvReader reader(*csv);
  CsvRow row;
  bool found = false;
  while (!found && reader.next(row)) found = !row.blank() || !row.fault.empty();
  if (!found || !row.fault.empty()) {
    return fail(ErrorKind::kBadData, found ? "line " + std::to_string(row.line) + ", the names of the columns: " + row.fault : "the table is empty",
                "its first row names the columns; see: larderloop template " + std::string(sheet_kind_name(request.sheet)));
  }
  std::vector<std::string> headers;
  for (const std::string_view each : row.cells) headers.emplace_back(trimmed_cell(each));
  while (headers.size() > 1 && headers.back().empty()) headers.pop_back();
  auto columns = match_columns(request.sheet, headers, row.line, *how);
  if (!columns) return fail(columns.error());
  SheetWork work(household, request, asked, *columns, csv->delimiter);
  work.report.sheet = request.sheet;
  work.report.encoding = csv->encoding;
  work.report.delimiter = csv->delimiter;
  work.report.columns = columns->columns;
  switch (request.sheet) {
    case SheetKind::kFoods:
      import_foods(work, reader);
      break;
    case SheetKind::kLots:
      import_lots(work, reader);
      break;
    case SheetKind::kPeople:
      import_people(work, reader);
      break;
    case SheetKind::kMenu:
      import_menu(work, reader);
      break;
  }
  if (!work.problems.empty()) {
    Error error = make_error(ErrorKind::kBadData, count_words(work.problems.size()) + "; nothing was written", "mend what is named above and import the whole file again");
    error.problems = std::move(work.problems);
    return fail(std::move(error));
  }
  if (!request.save_mapping.empty()) {
    work.report.saved_mapping = request.save_mapping;
    work.changes.mappings = {{request.save_mapping, request.sheet, columns_to_keep(request.sheet, *columns)}};
  }
  return Outcome<SheetReport>{std::move(work.report), std::move(work.changes)};
}

}  // namespace larderloop
