// document.h - the household document: a whole household, record included, as JSON (docs/schema/household-1.schema.json).
#pragma once

#include <string>
#include <string_view>

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

// Reads a document. On failure Error.problems holds every finding of form and content (validate.h), each with JSON pointer,
// offending value and remedy, in document order, at most 200. Repeated member names, unknown members and a higher version are findings.
[[nodiscard]] Result<Household> parse_document(std::string_view text);
// The canonical text: fixed member order, defaults left out, short records on one line, final newline.
// parse_document(render_document(h)) == h, and rendering that again gives the same bytes.
[[nodiscard]] std::string render_document(const Household& household);

}  // namespace larderloop
