#include "calendar/ical_text.h"

#include <cstdint>

namespace larderloop {
namespace {

constexpr std::string_view kEllipsis = "\xE2\x80\xA6";

unsigned byte_at(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

bool continues(std::string_view text, std::size_t at) {
  return at < text.size() && (byte_at(text, at) & 0xC0U) == 0x80U;
}

struct Character {
  std::uint32_t code = 0;
  std::size_t size = 0;  // 0: the byte begins no valid character
};

// RFC 3629 section 4: the shortest form only, no surrogates, nothing above U+10FFFF.
Character character_at(std::string_view text, std::size_t at) {
  const unsigned first = byte_at(text, at);
  if (first < 0x80U) return {first, 1};
  std::size_t size = 0;
  std::uint32_t code = 0;
  std::uint32_t lowest = 0;
  if ((first & 0xE0U) == 0xC0U) {
    size = 2;
    code = first & 0x1FU;
    lowest = 0x80;
  } else if ((first & 0xF0U) == 0xE0U) {
    size = 3;
    code = first & 0x0FU;
    lowest = 0x800;
  } else if ((first & 0xF8U) == 0xF0U) {
    size = 4;
    code = first & 0x07U;
    lowest = 0x10000;
  } else {
    return {};
  }
  for (std::size_t i = 1; i < size; ++i) {
    if (!continues(text, at + i)) return {};
    code = (code << 6U) | (byte_at(text, at + i) & 0x3FU);
  }
  if (code < lowest || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return {};
  return {code, size};
}

// Bytes of printable ASCII that `text` begins with: most of what is written.
std::size_t plain_run(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && text[end] >= 0x20 && text[end] < 0x7F) ++end;
  return end;
}

bool is_line_end(std::uint32_t code) {
  return code == '\n' || code == '\r' || code == 0x85 || code == 0x2028 || code == 0x2029;
}

bool is_unfit(std::uint32_t code) {
  const bool control = (code < 0x20 && code != '\t') || (code >= 0x7F && code < 0xA0);
  const bool nonchar = (code & 0xFFFEU) == 0xFFFEU || (code >= 0xFDD0 && code <= 0xFDEF);
  return control || nonchar || code == 0xFEFF;
}

}  // namespace

std::string clean_text(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    if (const std::size_t plain = plain_run(text.substr(at)); plain > 0) {
      result += text.substr(at, plain);
      at += plain;
      continue;
    }
    const Character each = character_at(text, at);
    if (each.size == 0) {
      ++at;
      continue;
    }
    if (is_line_end(each.code)) {
      const bool pair = each.code == '\r' && at + 1 < text.size() && text[at + 1] == '\n';
      result += '\n';
      at += pair ? 2 : each.size;
      continue;
    }
    if (!is_unfit(each.code)) result += text.substr(at, each.size);
    at += each.size;
  }
  return result;
}

std::string clean_line(std::string_view text) {
  std::string result;
  for (const char c : clean_text(text)) {
    const bool gap = c == '\n' || c == '\t' || c == ' ';
    if (gap && (result.empty() || result.back() == ' ')) continue;
    result += gap ? ' ' : c;
  }
  while (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

std::string cut_text(std::string text, std::size_t octets) {
  if (text.size() <= octets) return text;
  std::size_t end = octets - kEllipsis.size();
  while (end > 0 && continues(text, end)) --end;
  text.resize(end);
  text += kEllipsis;
  return text;
}

}  // namespace larderloop
