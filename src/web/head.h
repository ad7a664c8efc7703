// head.h - the head of a request, read strictly before anything else sees it (RFC 9112 sections 2
// to 5): what is doubtful is refused, so that no two readers can understand it differently. Limits:
// a request line of 8,000 octets (RFC 9112 section 3), 100 fields, 16 KiB in all.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop {

inline constexpr std::size_t kMostHeadBytes = 16384;

// What is answered to a head that goes no further. `fields`: whole lines without their ends.
struct HeadFault {
  int status = 400;
  std::string method = "-";
  std::vector<std::string> fields;
};

// A request. `fields` are without what this server does not do (ranges, expectations) and what it
// decides itself (the coding).
struct RequestHead {
  std::string method;  // GET or HEAD
  std::string target;  // begins with "/"
  std::string host;    // without port, lower case; IPv6 in brackets
  bool old = false;    // HTTP/1.0
  bool has_body = false;
  std::string accept_encoding;                              // all of it, with commas between
  std::vector<std::pair<std::string, std::string>> fields;  // as sent
  // As a head again.
  [[nodiscard]] std::string text() const;
};

// Where the head ends (behind its empty line), when it is complete; npos otherwise.
[[nodiscard]] std::size_t end_of_head(std::string_view bytes);
// Is it already clear that no good head will come of these bytes? The fault, then.
[[nodiscard]] std::optional<HeadFault> hopeless(std::string_view bytes);
// Reads a complete head. Nothing: it is refused, and `fault` says how.
[[nodiscard]] std::optional<RequestHead> read_head(std::string_view bytes, HeadFault& fault);

[[nodiscard]] std::string_view reason_of(int status);  // "Not Found"

// May a client call this server `host`? `local`: the address of this machine that the connection
// reached.
[[nodiscard]] bool is_own_host(const std::string& host, const std::string& local,
                               const std::vector<std::string>& hosts);

}  // namespace larderloop
