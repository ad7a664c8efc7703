#include "larderloop/render/cautions.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr std::size_t kWidth = 78;

std::string broken(std::string_view text) {
  std::string lines;
  std::size_t width = 0;
  while (!text.empty()) {
    const std::size_t blank = std::min(text.find(' '), text.size());
    if (width > 0 && width + 1 + blank > kWidth) {
      lines += '\n';
      width = 0;
    }
    if (width > 0) {
      lines += ' ';
      width += 1;
    }
    lines += text.substr(0, blank);
    width += blank;
    text.remove_prefix(std::min(blank + 1, text.size()));
  }
  return lines + "\n";
}

}  // namespace

std::string render_cautions(const std::vector<Caution>& cautions) {
  std::string text;
  for (const Caution each : cautions) text += broken(caution_words(each));
  return text;
}

}  // namespace larderloop
