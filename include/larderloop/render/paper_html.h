// paper_html.h - pages of app/paper.h as one HTML file with styles for print: no scripts, nothing from outside, every text escaped. On
// a narrow screen the rows of a table stand below each other; on paper headings stand again on every sheet.
#pragma once

#include "larderloop/app/paper.h"

#include <string>
#include <vector>

namespace larderloop {

// `too_long`: titles of labels on which not everything fits, so that the shorter text stands there. The type size of labels is estimated
// from the number of letters: the PDF measures it.
struct PaperHtml {
  std::string text;
  std::vector<std::string> too_long;
};
[[nodiscard]] PaperHtml render_paper_html(const PaperDocument& document);

// What was printed (docs/schema/printed-1.schema.json). `file`: as asked for; empty = standard output. `sheets`: 0 = not known (HTML).
struct Printed {
  PaperWhat what = PaperWhat::kLabels;
  std::string format;
  std::string file;
  PaperSheet sheet;
  int sheets = 0;
  int pages = 0;
  int labels = 0;
  std::vector<std::string> warnings;
};
[[nodiscard]] std::string render_printed_json(const Printed& printed, Day as_of);

}  // namespace larderloop
