// module.h - the drawing room as a file of its own (larderloop-paper.so), which the program opens only when something is to be drawn: looking up
// the symbols of Pango, Cairo and what they need would double the time of every other command.
// Rule:     program and module come from one build; `build` and the sizes say so, and a module that differs is refused.
#pragma once

#include "larderloop/paper/pdf.h"

#include <cstddef>

namespace larderloop {

inline constexpr const char* kPaperModuleFile = "larderloop-paper.so";
inline constexpr const char* kPaperModuleEntry = "larderloop_paper_module";

struct PaperModule {
  const char* build = "";  // version of the program and of its compiler
  std::size_t document_size = sizeof(PaperDocument), pdf_size = sizeof(PaperPdf), error_size = sizeof(Error);
  Result<PaperPdf> (*draw)(const PaperDocument&, Instant) = nullptr;
  Status (*codes)(PaperDocument&) = nullptr;
  [[nodiscard]] bool same_form(const PaperModule& other) const {
    return document_size == other.document_size && pdf_size == other.pdf_size && error_size == other.error_size;
  }
};
using PaperModuleEntry = const PaperModule* (*)();

}  // namespace larderloop
