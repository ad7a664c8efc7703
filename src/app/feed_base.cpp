// Where the addresses of the calendar begin.
#include "larderloop/app/feed_address.h"

#include <algorithm>
#include <charconv>

namespace larderloop {
namespace {

constexpr const char* kPathLetters =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";

bool is_host(const std::string& host) {
  if (host.empty() || host.size() > 253) return false;
  if (host.front() == '[') {  // IPv6
    return host.size() > 3 && host.back() == ']' &&
           host.substr(1, host.size() - 2).find_first_not_of("0123456789abcdef:.") == host.npos;
  }
  return host.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-.") == host.npos;
}

bool is_path(const std::string& path) {
  return path.find_first_not_of(kPathLetters) == path.npos && path.find("//") == path.npos &&
         (path + "/").find("/../") == path.npos && (path + "/").find("/./") == path.npos;
}

}  // namespace

bool FeedBase::is_loopback() const {
  return host == "localhost" || host == "[::1]" || host.rfind("127.", 0) == 0;
}

std::string FeedBase::address(const std::string& token, bool subscribe) const {
  const std::string scheme =
      subscribe ? (secure ? "webcals" : "webcal") : (secure ? "https" : "http");
  return scheme + "://" + authority + path + "/" + token + ".ics";
}

Result<FeedBase> parse_feed_base(const std::string& text) {
  const auto wrong = [&] {
    return fail(ErrorKind::kUsage, "cannot read --base '" + text + "'",
                "write where the phone finds the server, for example https://kit.example/feed");
  };
  const std::size_t colon = text.find("://");
  if (colon == std::string::npos) return wrong();
  std::string scheme = text.substr(0, colon);
  std::string rest = text.substr(colon + 3);
  FeedBase base;
  const std::size_t slash = rest.find('/');
  if (slash != std::string::npos) {
    base.path = rest.substr(slash);
    rest.erase(slash);
  }
  for (std::string* each : {&scheme, &rest}) {
    std::transform(each->begin(), each->end(), each->begin(), [](char letter) {
      return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
  }
  if (scheme != "https" && scheme != "http" && scheme != "webcals" && scheme != "webcal")
    return wrong();
  base.secure = scheme == "https" || scheme == "webcals";
  while (!base.path.empty() && base.path.back() == '/') base.path.pop_back();
  const std::size_t port_at = rest.rfind(':');
  base.host = rest;
  if (port_at != std::string::npos && rest.find(']', port_at) == std::string::npos) {
    int port = 0;
    const char* const end = rest.data() + rest.size();
    const auto read = std::from_chars(rest.data() + port_at + 1, end, port);
    if (read.ec != std::errc() || read.ptr != end || port < 1 || port > 65535) return wrong();
    base.host = rest.substr(0, port_at);
    base.authority = base.host;
    if (port != (base.secure ? 443 : 80)) base.authority += ":" + std::to_string(port);
  } else {
    base.authority = base.host;
  }
  if (!is_host(base.host) || !is_path(base.path)) return wrong();
  return base;
}

}  // namespace larderloop
