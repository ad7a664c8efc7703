#include "larderloop/dav/collection.h"

#include <algorithm>
#include <cctype>

namespace larderloop {
namespace {

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(), [](unsigned char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : static_cast<char>(c);
  });
  return result;
}

bool is_port(std::string_view text) {
  return !text.empty() && text.size() <= 5 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// 127.0.0.0/8, written out (RFC 1122 section 3.2.1.3).
bool is_loopback_4(std::string_view host) {
  if (host.substr(0, 4) != "127.") return false;
  return std::count(host.begin(), host.end(), '.') == 3 &&
         std::all_of(host.begin(), host.end(),
                     [](char c) { return c == '.' || (c >= '0' && c <= '9'); });
}

}  // namespace

bool DavAddress::is_loopback() const {
  return host == "localhost" || host == "::1" || is_loopback_4(host);
}

std::optional<DavAddress> parse_dav_address(std::string_view url) {
  DavAddress address;
  const std::size_t mark = url.find("://");
  if (mark == std::string_view::npos) return std::nullopt;
  address.scheme = lower(url.substr(0, mark));
  if (address.scheme != "http" && address.scheme != "https") return std::nullopt;
  std::string_view rest = url.substr(mark + 3);
  const bool odd = std::any_of(rest.begin(), rest.end(), [](char c) {
    return static_cast<unsigned char>(c) <= ' ' || c == 0x7f || c == '"' || c == '<' || c == '>' ||
           c == '\\';
  });
  if (odd || rest.find_first_of("?#") != std::string_view::npos) return std::nullopt;
  const std::size_t slash = rest.find('/');
  address.authority = lower(rest.substr(0, slash));
  address.path = slash == std::string_view::npos ? "/" : std::string(rest.substr(slash));
  if (address.path.back() != '/') address.path += '/';
  if (address.authority.find('@') != std::string::npos) return std::nullopt;
  std::string_view host = address.authority;
  if (!host.empty() && host.front() == '[') {
    const std::size_t end = host.find(']');
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view port = host.substr(end + 1);
    if (!port.empty() && (port.front() != ':' || !is_port(port.substr(1)))) return std::nullopt;
    host = host.substr(1, end - 1);
  } else if (const std::size_t colon = host.find(':'); colon != std::string_view::npos) {
    if (!is_port(host.substr(colon + 1))) return std::nullopt;
    host = host.substr(0, colon);
  }
  if (host.empty()) return std::nullopt;
  address.host = std::string(host);
  return address;
}

}  // namespace larderloop
