// The bytes of a file to its text: encoding and delimiter.
#include "larderloop/intake/csv.h"

#include <iconv.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <utility>

namespace larderloop {
namespace {

constexpr std::string_view kDelimiters = ",;\t|";

// Well-formed UTF-8 (RFC 3629): shortest forms, no surrogates, up to U+10FFFF.
bool is_well_formed(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto lead = static_cast<unsigned char>(text[at]);
    if (lead < 0x80) {
      ++at;
      continue;
    }
    const std::size_t more = lead >= 0xC2 && lead < 0xE0 ? 1 : lead >= 0xE0 && lead < 0xF0 ? 2 : lead >= 0xF0 && lead < 0xF5 ? 3 : 0;
    if (more == 0 || text.size() - at <= more) return false;
    for (std::size_t each = 1; each <= more; ++each) {
      const auto next = static_cast<unsigned char>(text[at + each]);
      const unsigned least = each == 1 && lead == 0xE0 ? 0xA0 : each == 1 && lead == 0xF0 ? 0x90 : 0x80;
      const unsigned most = each == 1 && lead == 0xED ? 0x9F : each == 1 && lead == 0xF4 ? 0x8F : 0xBF;
      if (next < least || next > most) return false;
    }
    at += more + 1;
  }
  return true;
}

class Converter {
 public:
  explicit Converter(const char* from) : handle_(iconv_open("UTF-8", from)) {}
  ~Converter() {
    if (good()) iconv_close(handle_);
  }
  Converter(const Converter&) = delete;  // closes once
  Converter& operator=(const Converter&) = delete;
  // The bytes as UTF-8; nothing when some of them mean nothing in this encoding.
  [[nodiscard]] std::optional<std::string> convert(std::string_view bytes) {
    if (!good()) return std::nullopt;
    std::string in(bytes);
    std::string out;
    std::array<char, 16384> buffer{};
    char* from = in.data();
    std::size_t left = in.size();
    while (left > 0) {
      char* to = buffer.data();
      std::size_t room = buffer.size();
      const std::size_t done = iconv(handle_, &from, &left, &to, &room);
      const int code = errno;
      out.append(buffer.data(), buffer.size() - room);
      if (done == static_cast<std::size_t>(-1) && code != E2BIG) return std::nullopt;
    }
    return out;
  }

 private:
  [[nodiscard]] bool good() const {
    return handle_ != reinterpret_cast<iconv_t>(-1);  // NOLINT: iconv's own word for a failure
  }
  iconv_t handle_;
};

tl::unexpected<Error> not_that(const std::string& what) {
  return fail(ErrorKind::kBadData, what, "save it again in the spreadsheet as CSV, character set UTF-8");
}

Result<CsvText> decode(std::string bytes) {
  const std::string_view all = bytes;
  const bool big = all.substr(0, 2) == "\xFE\xFF";
  if (big || all.substr(0, 2) == "\xFF\xFE") {
    auto text = Converter(big ? "UTF-16BE" : "UTF-16LE").convert(all.substr(2));
    if (!text) return not_that("the file says that it is UTF-16, but it is not");
    return CsvText{std::move(*text), "UTF-16", ',', 1};
  }
  const bool marked = all.substr(0, 3) == "\xEF\xBB\xBF";
  if (is_well_formed(all)) {
    if (marked) bytes.erase(0, 3);
    return CsvText{std::move(bytes), "UTF-8", ',', 1};
  }
  if (marked) return not_that("the file says that it is UTF-8, but it is not");
  auto text = Converter("WINDOWS-1252").convert(all);
  if (!text) return not_that("the file is neither UTF-8 nor UTF-16 nor Windows-1252");
  return CsvText{std::move(*text), "Windows-1252", ',', 1};
}

// The one that stands most often outside quotes in the first line that holds something; a comma where none stands at all.
char delimiter_of(std::string_view text) {
  std::array<std::size_t, kDelimiters.size()> counts{};
  bool quoted = false;
  bool begun = false;
  for (const char each : text) {
    if (each == '"') quoted = !quoted;
    if (quoted) continue;
    if (each == '\n' || each == '\r') {
      if (begun) break;
      continue;
    }
    begun = true;
    const std::size_t which = kDelimiters.find(each);
    if (which != std::string_view::npos) ++counts.at(which);
  }
  return kDelimiters[static_cast<std::size_t>(std::max_element(counts.begin(), counts.end()) - counts.begin())];
}

}  // namespace

Result<CsvText> open_csv(std::string bytes, std::optional<char> delimiter) {
  auto csv = decode(std::move(bytes));
  if (!csv) return fail(csv.error());
  if (csv->text.find('\0') != std::string::npos)
    return not_that("the file has zero bytes in it: it is no text, or UTF-16 without its mark");
  // "sep=;" as the first line, as spreadsheets write it (common practice).
  constexpr std::string_view kSep = "sep=";
  std::string& text = csv->text;
  std::optional<char> said;
  if (text.compare(0, kSep.size(), kSep) == 0) {
    const std::size_t end = text.find_first_of("\r\n");
    const std::string_view value = std::string_view(text).substr(0, end).substr(kSep.size());
    if (value.size() == 1 && kDelimiters.find(value.front()) != std::string_view::npos) {
      said = value.front();
      const std::size_t rest = end == std::string::npos ? text.size() : end + (text.compare(end, 2, "\r\n") == 0 ? 2 : 1);
      text.erase(0, rest);
      csv->first_line = 2;
    }
  }
  if (text.find_first_not_of(" \t\r\n") == std::string::npos) return fail(ErrorKind::kBadData, "the table is empty", "its first row names the columns; see: larderloop template");
  csv->delimiter = delimiter ? *delimiter : said ? *said : delimiter_of(text);
  return csv;
}

}  // namespace larderloop
