#include "web/head.h"

#include "larderloop/core/lowered.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr std::size_t kMostRequestLine = 8000;
constexpr std::size_t kMostFields = 100;

// RFC 9110 section 5.6.2.
bool is_token(std::string_view text) {
  return !text.empty() &&
         text.find_first_not_of(
             "!#$%&'*+-.^_`|~0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") ==
             std::string_view::npos;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

bool is_target(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char each) { return each > ' ' && each != 0x7F; });
}

// "Kit.Example:8467" -> "kit.example"; empty when it is no host.
std::string host_of(std::string_view authority) {
  std::string host = lowered(authority);
  const std::size_t port = host.rfind(':');
  if (port != std::string::npos && host.find(']', port) == std::string::npos) {
    if (host.find_first_not_of("0123456789", port + 1) != std::string::npos) return {};
    host.erase(port);
  }
  const bool plain =
      host.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-._[]:") == host.npos;
  return plain ? host : std::string();
}

}  // namespace

std::string RequestHead::text() const {
  std::string all = method + " " + target + (old ? " HTTP/1.0\r\n" : " HTTP/1.1\r\n");
  for (const auto& [name, value] : fields) all += name + ": " + value + "\r\n";
  return all + "\r\n";
}

std::size_t end_of_head(std::string_view bytes) {
  const std::size_t end = bytes.find("\r\n\r\n");
  return end == std::string_view::npos ? end : end + 4;
}

std::optional<HeadFault> hopeless(std::string_view bytes) {
  if (bytes.find("\n\n") != std::string_view::npos || bytes.find('\0') != std::string_view::npos)
    return HeadFault{400, "-", {}};
  if (bytes.size() < kMostRequestLine) return std::nullopt;
  const std::size_t line = bytes.find("\r\n");
  if (line == std::string_view::npos || line > kMostRequestLine) return HeadFault{414, "-", {}};
  if (bytes.size() > kMostHeadBytes) return HeadFault{431, "-", {}};
  return std::nullopt;
}

std::optional<RequestHead> read_head(std::string_view bytes, HeadFault& fault) {
  const auto refused = [&](int status) -> std::optional<RequestHead> {
    fault.status = status;
    return std::nullopt;
  };
  fault = {};
  RequestHead head;
  std::vector<std::string_view> lines;
  while (!bytes.empty()) {
    const std::size_t end = bytes.find("\r\n");
    if (end == std::string_view::npos) return refused(400);
    const std::string_view line = bytes.substr(0, end);
    bytes.remove_prefix(end + 2);
    for (const char each : line) {
      if ((static_cast<unsigned char>(each) < ' ' && each != '\t') || each == 0x7F)
        return refused(400);
    }
    if (!line.empty()) lines.push_back(line);
  }
  if (lines.empty()) return refused(400);
  const std::string_view first = lines.front();
  const std::size_t one = first.find(' ');
  const std::size_t two = first.rfind(' ');
  if (one == std::string_view::npos || one == two) return refused(400);
  const std::string_view method = first.substr(0, one);
  const std::string_view target = first.substr(one + 1, two - one - 1);
  const std::string_view version = first.substr(two + 1);
  if (!is_token(method) || target.empty() || !is_target(target)) return refused(400);
  if (version != "HTTP/1.1" && version != "HTTP/1.0")
    return refused(version.substr(0, 5) == "HTTP/" ? 505 : 400);
  if (first.size() > kMostRequestLine) return refused(414);
  if (lines.size() - 1 > kMostFields) return refused(431);
  head.method = method;
  head.target = target;
  head.old = version == "HTTP/1.0";
  std::size_t hosts = 0;
  for (std::size_t index = 1; index < lines.size(); ++index) {
    const std::size_t colon = lines[index].find(':');
    if (colon == std::string_view::npos || !is_token(lines[index].substr(0, colon)))
      return refused(400);
    const std::string name(lines[index].substr(0, colon));
    const std::string value(trimmed(lines[index].substr(colon + 1)));
    const std::string low = lowered(name);
    if (low == "host") {
      ++hosts;
      head.host = host_of(value);
    }
    if (low == "transfer-encoding" || (low == "content-length" && value != "0"))
      head.has_body = true;
    if (low == "accept-encoding")
      head.accept_encoding += (head.accept_encoding.empty() ? "" : ", ") + value;
    // Neither ranges nor expectations are done here (RFC 9110 sections 14.2, 10.1.1), and there is
    // no body to look for.
    if (low == "range" || low == "if-range" || low == "expect" || low == "content-length" ||
        low == "transfer-encoding" || low == "accept-encoding")
      continue;
    head.fields.emplace_back(name, value);
  }
  if (head.method == "GET" || head.method == "HEAD") {
    fault.method = head.method;
  } else {
    fault.fields = {"Allow: GET, HEAD"};
    return refused(405);
  }
  if (hosts != 1) return refused(400);
  // The absolute form says the host itself (RFC 9112 section 3.2.2).
  for (const std::string_view scheme : {"http://", "https://"}) {
    if (lowered(head.target.substr(0, scheme.size())) != scheme) continue;
    const std::string rest = head.target.substr(scheme.size());
    const std::size_t slash = rest.find('/');
    head.host = host_of(rest.substr(0, slash));
    head.target = slash == std::string::npos ? "/" : rest.substr(slash);
    break;
  }
  if (head.host.empty() || head.target.front() != '/') return refused(400);
  return head;
}

std::string_view reason_of(int status) {
  switch (status) {
    case 400:
      return "Bad Request";
    case 404:
      return "Not Found";
    case 405:
      return "Method Not Allowed";
    case 408:
      return "Request Timeout";
    case 414:
      return "URI Too Long";
    case 421:
      return "Misdirected Request";
    case 431:
      return "Request Header Fields Too Large";
    case 503:
      return "Service Unavailable";
    case 505:
      return "HTTP Version Not Supported";
    default:
      return "Error";
  }
}

bool is_own_host(const std::string& host, const std::string& local,
                 const std::vector<std::string>& hosts) {
  if (host == "localhost" || host == local || host == "[" + local + "]") return true;
  // A machine with both kinds of addresses gives the older one like this (RFC 4291
  // section 2.5.5.2).
  if (local.rfind("::ffff:", 0) == 0 && host == local.substr(7)) return true;
  return std::find(hosts.begin(), hosts.end(), host) != hosts.end();
}

}  // namespace larderloop
