#include "larderloop/render/terminal_text.h"

#include <fmt/core.h>

#include <cstdint>

namespace larderloop {
namespace {

struct Decoded {
  char32_t code = 0;
  std::size_t bytes = 0;  // 0: not UTF-8 here
};

// One character of UTF-8 (RFC 3629 section 4): no overlong forms, no surrogates, nothing above
// U+10FFFF.
Decoded decode(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t index) { return static_cast<unsigned char>(text[index]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || at + length > text.size()) return {};
  char32_t code = lead & (0xFFU >> (length + 1));
  for (std::size_t index = 1; index < length; ++index) {
    const unsigned char next = byte(at + index);
    if ((next & 0xC0) != 0x80) return {};
    code = (code << 6) | (next & 0x3FU);
  }
  constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  if (code < kLeast[length] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return {};
  return {code, length};
}

bool is_control(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0);
}
bool reorders(char32_t code) {
  return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

std::size_t cells_of(char32_t code) {
  const auto in = [&](char32_t first, char32_t last) { return code >= first && code <= last; };
  if (in(0x300, 0x36F) || in(0x200B, 0x200F) || in(0xFE00, 0xFE0F) || in(0x20D0, 0x20FF)) return 0;
  if (in(0x1100, 0x115F) || in(0x2E80, 0x303E) || in(0x3041, 0xA4CF) || in(0xAC00, 0xD7A3) ||
      in(0xF900, 0xFAFF) || in(0xFE30, 0xFE6F) || in(0xFF00, 0xFF60) || in(0xFFE0, 0xFFE6) ||
      in(0x1F300, 0x1F64F) || in(0x1F680, 0x1F6FF) || in(0x1F900, 0x1F9FF) ||
      in(0x20000, 0x3FFFD)) {
    return 2;
  }
  return 1;
}

}  // namespace

std::string visible_text(std::string_view text, LineEnds line_ends) {
  std::string shown;
  shown.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Decoded character = decode(text, at);
    if (character.bytes == 0) {
      shown += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[at]));
      at += 1;
      continue;
    }
    const bool kept_end = character.code == '\n' && line_ends == LineEnds::kKeep;
    if (character.code == '\n' && !kept_end)
      shown += "\\n";
    else if (is_control(character.code) && !kept_end)
      shown += fmt::format("\\x{:02x}", static_cast<std::uint32_t>(character.code));
    else if (reorders(character.code))
      shown += fmt::format("\\u{:04x}", static_cast<std::uint32_t>(character.code));
    else
      shown += text.substr(at, character.bytes);
    at += character.bytes;
  }
  return shown;
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Decoded character = decode(text, at);
    if (character.bytes == 0) return false;
    at += character.bytes;
  }
  return true;
}

std::size_t cells(std::string_view text) {
  std::size_t sum = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded character = decode(text, at);
    if (character.bytes == 0) return sum + (text.size() - at);
    sum += cells_of(character.code);
    at += character.bytes;
  }
  return sum;
}

std::string fit_cells(std::string_view text, std::size_t width) {
  if (cells(text) <= width) return std::string(text);
  std::size_t used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const Decoded character = decode(text, at);
    const std::size_t more = cells_of(character.code);
    if (character.bytes == 0 || used + more > width - 1) break;
    used += more;
    at += character.bytes;
  }
  return std::string(text.substr(0, at)) + "…";
}

}  // namespace larderloop
