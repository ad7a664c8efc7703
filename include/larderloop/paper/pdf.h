// pdf.h - pages of app/paper.h drawn as PDF, by Pango and Cairo. Black on white; what matters is in words, frames and weight.
// Same:     same document, fonts and libraries give the same bytes: the only time in the file is the one that is passed in.
#pragma once

#include "larderloop/app/paper.h"

#include <string>
#include <vector>

namespace larderloop {

// `no_glyphs`: texts with letters that no font of this machine has; they show as boxes. `too_long`: titles of labels on which not everything
// fits, so that the shorter text stands there. `sheets`: how many sheets the file has.
struct PaperPdf {
  std::string bytes;
  int sheets = 0;
  std::vector<std::string> no_glyphs;
  std::vector<std::string> too_long;
};
// kConfig when this machine has no fonts at all; kOutput when the file could not be made.
[[nodiscard]] Result<PaperPdf> draw_pdf(const PaperDocument& document, Instant now);

}  // namespace larderloop
