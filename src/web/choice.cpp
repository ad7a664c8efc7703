#include "web/choice.h"

#include "larderloop/core/lowered.h"

#include <array>
#include <new>
#include <optional>
#include <zlib.h>

namespace larderloop {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

// The text up to the separator, taken off the front.
std::string_view part_of(std::string_view& text, char separator) {
  const std::size_t end = text.find(separator);
  const std::string_view part = text.substr(0, end);
  text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  return trimmed(part);
}

// "q=0", "q=0.000": not at all.
bool is_refused(std::string_view parameters) {
  while (!parameters.empty()) {
    const std::string parameter = lowered(part_of(parameters, ';'));
    if (parameter.substr(0, 2) != "q=") continue;
    return parameter.find_first_not_of("0.", 2) == std::string::npos;
  }
  return false;
}

}  // namespace

bool accepts_gzip(std::string_view accept_encoding) {
  std::optional<bool> named, any;
  while (!accept_encoding.empty()) {
    std::string_view item = part_of(accept_encoding, ',');
    const std::string coding = lowered(part_of(item, ';'));
    if (coding == "gzip" || coding == "x-gzip") named = !is_refused(item);
    if (coding == "*") any = !is_refused(item);
  }
  return named.value_or(any.value_or(false));
}

bool names_tag(std::string_view if_none_match, std::string_view tag) {
  if (trimmed(if_none_match) == "*") return true;
  while (!if_none_match.empty()) {
    // A comma may stand within the quotes of somebody's tag, so tags are taken from quote to quote.
    const std::size_t begin = if_none_match.find('"');
    if (begin == std::string_view::npos) return false;
    const std::size_t end = if_none_match.find('"', begin + 1);
    if (end == std::string_view::npos) return false;
    if (if_none_match.substr(begin, end - begin + 1) == tag) return true;
    if_none_match.remove_prefix(end + 1);
  }
  return false;
}

std::string http_date(Instant at) {
  static constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::string iso = iso_instant(at);  // 2027-04-03T08:00:00Z
  const auto month = static_cast<std::size_t>((iso[5] - '0') * 10 + (iso[6] - '0'));
  return std::string(weekday_name(weekday_of(day_of(at))).substr(0, 3)) + ", " + iso.substr(8, 2) +
         " " + kMonths[month - 1] + " " + iso.substr(0, 4) + " " + iso.substr(11, 8) + " GMT";
}

std::string packed(std::string_view bytes) {
  z_stream stream{};
  constexpr int kGzip = 15 + 16;  // the largest window, with the head of gzip
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, kGzip, 8, Z_DEFAULT_STRATEGY) != Z_OK)
    throw std::bad_alloc();
  std::string out(deflateBound(&stream, bytes.size()), '\0');
  stream.next_in =
      reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));  // the library only reads
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int done = deflate(&stream, Z_FINISH);
  out.resize(stream.total_out);
  deflateEnd(&stream);
  if (done != Z_STREAM_END) throw std::bad_alloc();
  return out;
}

}  // namespace larderloop
