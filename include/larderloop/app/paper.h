// paper.h - what lies in the box on paper, as structured pages: headings, tables, tick boxes, warnings, codes. A drawing room
// (paper/pdf.h) or a markup (render/paper_html.h) turns them into sheets and decides nothing.
// Safety:   every food beside a name has been through why_not() (eligible.h); what somebody must not have, and what nobody has read
//           the label of, is there as a warning or not at all. Meaning is in words, never in a colour.
// Privacy:  paper that stays in the house says what people must avoid: that is what it is for. `private_` leaves health facts off.
#pragma once

#include "larderloop/app/label_sheet.h"
#include "larderloop/app/plan.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace larderloop {

enum class PaperWhat { kLabels, kBoxCard, kReviewSheet, kMenuCard, kHousehold, kReplacementList };
inline constexpr PaperWhat kAllPapers[] = {PaperWhat::kLabels,   PaperWhat::kBoxCard,   PaperWhat::kReviewSheet,
                                           PaperWhat::kMenuCard, PaperWhat::kHousehold, PaperWhat::kReplacementList};
[[nodiscard]] std::string_view paper_name(PaperWhat what);  // "box_card"
[[nodiscard]] std::optional<PaperWhat> parse_paper(std::string_view name);

// Lines of a cell are separated by '\n'. `tick`: an empty box to tick stands before it.
struct PaperCell {
  std::string text;
  bool tick = false;
  bool strong = false;
};
// `share`: of the width, relative to the other columns.
struct PaperColumn {
  std::string heading;
  int share = 1;
};
// Runs on over several sheets; `title` and the column headings then stand again on each of them.
struct PaperTable {
  std::string title;
  std::vector<PaperColumn> columns;
  std::vector<std::vector<PaperCell>> rows;
};
struct PaperHeading {
  std::string text;
};
struct PaperText {
  std::string text;
  bool strong = false;
};
// Stands in a frame, after the word WARNING.
struct PaperWarning {
  std::string text;
};
// A two-dimensional code (ISO/IEC 18004) of `payload`. `modules`: its square of '0' and '1', row by row; empty until somebody has
// made it (paper/qr.h).
struct PaperCode {
  std::string payload;
  std::string caption;
  std::string modules;
};
using PaperBlock = std::variant<PaperHeading, PaperText, PaperWarning, PaperTable, PaperCode>;

// Begins on a sheet of its own.
struct PaperPage {
  std::string title;
  std::string subtitle;
  std::vector<PaperBlock> blocks;
};
// One label. `lines` in the order of importance. `whole`: all of it must be readable; when it does not fit, `instead` is printed.
struct PaperLabel {
  std::string title;
  std::vector<PaperCell> lines;
  std::vector<PaperCell> instead;
};
struct PaperDocument {
  PaperWhat what = PaperWhat::kLabels;
  std::string title;      // of the whole, for the file's own title
  std::string household;  // its name
  Day as_of{};
  bool large = false;
  PaperSheet sheet;
  std::vector<PaperPage> pages;    // not for labels
  LabelGrid grid;                  // labels only
  int start_at = 1;
  bool outlines = false;
  std::vector<PaperLabel> labels;
};

// `kits`: which; none = all. `url`: for the code on box cards; empty = none. `private_`: no health facts. `plan`: of the same household
// and day, for the replacement list alone.
struct PaperRequest {
  PaperWhat what = PaperWhat::kLabels;
  std::vector<PlaceKey> kits;
  std::string url;
  bool private_ = false;
  bool large = false;
  bool pantry = false;  // replacement list: also the par levels
  PaperSheet sheet;
  LabelGrid grid;
  int start_at = 1;
  bool outlines = false;
  const PlanReport* plan = nullptr;
};
// kBadData when there is nothing to print: no kit, no bags, no menu, nothing to buy. Says what to do first.
[[nodiscard]] Result<PaperDocument> make_paper(const Household& household, const PaperRequest& request, Day today);

// All that a document says, a line each cell: for tests and for looking at it.
[[nodiscard]] std::string paper_words(const PaperDocument& document);

}  // namespace larderloop
