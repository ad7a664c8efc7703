#include "larderloop/core/id.h"

namespace larderloop {
namespace {

constexpr std::size_t kMostLetters = 48;

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

// The plain letters of accented Latin ones that UTF-8 writes in two bytes beginning with C3, C4 or
// C5. Empty: none.
std::string plain_letters(unsigned char lead, unsigned char next) {
  const unsigned code = ((lead & 0x1FU) << 6U) | (next & 0x3FU);
  static constexpr std::string_view kLatin1 =
      "aaaaaa*ceeeeiiii*nooooo**uuuuy**aaaaaa*ceeeeiiii*nooooo**uuuuy*y";
  if (code == 0xC6 || code == 0xE6) return "ae";
  if (code == 0xD8 || code == 0xF8) return "o";
  if (code == 0xDF) return "ss";
  if (code >= 0xC0 && code <= 0xFF) {
    const char plain = kLatin1[code - 0xC0];
    return plain == '*' ? std::string() : std::string(1, plain);
  }
  static constexpr std::string_view kExtended =
      "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiii**jjkk*llllllllllnnnnnn***oooooo**"
      "rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzz*";
  if (code >= 0x100 && code < 0x100 + kExtended.size()) {
    const char plain = kExtended[code - 0x100];
    return plain == '*' ? std::string() : std::string(1, plain);
  }
  return {};
}

}  // namespace

bool is_key(std::string_view text) {
  if (text.empty() || text.size() > kMostLetters || text.front() == '-' || text.back() == '-')
    return false;
  for (std::size_t index = 0; index < text.size(); ++index) {
    if (is_letter(text[index])) continue;
    if (text[index] != '-' || text[index - 1] == '-') return false;
  }
  return true;
}

std::string key_from_name(std::string_view name, std::string_view fallback) {
  std::string key;
  const auto append = [&](std::string_view letters) { key += letters; };
  for (std::size_t index = 0; index < name.size(); ++index) {
    const auto byte = static_cast<unsigned char>(name[index]);
    if (byte < 0x80) {
      char letter = name[index];
      if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
      if (is_letter(letter))
        append(std::string_view(&letter, 1));
      else if (letter != '\'' && !key.empty() && key.back() != '-')
        append("-");
      continue;
    }
    if (byte >= 0xC3 && byte <= 0xC5 && index + 1 < name.size()) {
      append(plain_letters(byte, static_cast<unsigned char>(name[index + 1])));
      ++index;
    }
  }
  if (key.size() > kMostLetters) key.resize(kMostLetters);
  while (!key.empty() && key.back() == '-') key.pop_back();
  return key.empty() ? std::string(fallback) : key;
}

}  // namespace larderloop
