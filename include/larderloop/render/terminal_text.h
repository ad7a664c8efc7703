// terminal_text.h - text for a terminal: nothing stored can move the cursor, and widths count
// cells, not bytes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace larderloop {

enum class LineEnds { kKeep, kEscape };

// Control characters (C0, DEL, C1) and the marks that reorder text (U+202A to U+202E, U+2066 to
// U+2069) as "\x1b", "\u202e"; bytes that are no UTF-8 as "\xff". A name is shown with
// LineEnds::kEscape, a whole text with kKeep. What is left is valid UTF-8.
[[nodiscard]] std::string visible_text(std::string_view text, LineEnds line_ends);
// Is all of it UTF-8 (RFC 3629)?
[[nodiscard]] bool is_utf8(std::string_view text);
// Cells that the text takes on a terminal: 0 for combining marks, 2 for wide East Asian characters
// and emoji (Unicode Standard Annex 11, whole blocks), 1 for others. Independent of the locale.
// Pre: visible text.
[[nodiscard]] std::size_t cells(std::string_view text);
// The text cut to `width` cells, the last one "…" when something was cut. Pre: width > 0.
[[nodiscard]] std::string fit_cells(std::string_view text, std::size_t width);

}  // namespace larderloop
