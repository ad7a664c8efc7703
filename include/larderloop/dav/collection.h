// collection.h - a calendar collection on a CalDAV server (RFC 4791), item by item: list, put,
// remove. Never overwrites what it was not told to: every change names the version it replaces
// (If-Match), or says that there must be none (If-None-Match), RFC 9110 section 13.1. Safety: https
// only, the certificate checked; plain http for this very machine, or where the caller allows it.
// Never follows a
//           redirection, so the password goes to no other place. Times out; tries again a bounded
//           number of times.
#pragma once

#include "larderloop/core/result.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

struct DavAccess {
  std::string url;  // of the collection: https://host/path/
  std::string user;
  std::string password;
  bool allow_plain = false;  // http to another machine
  std::string ca_file;       // certificates to trust instead of the system's; empty: the system's
  int timeout_seconds = 30;  // for one request
  int attempts = 3;          // for one request that fails in a way that may pass
};

// `href`: the path as the server writes it. `etag`: its mark of this version, with its quotes.
struct DavItem {
  std::string href;
  std::string etag;
  std::string data;
};

// What became of one change. kChanged: somebody else changed it meanwhile (412). kGone: it is not
// there (404, 410). kRefused: the server will not take it; `why` says what it answered, in plain
// words.
enum class DavResult { kDone, kChanged, kGone, kRefused };
struct DavDone {
  DavResult result = DavResult::kDone;
  std::string etag;  // of the new version, when the server tells it
  std::string why;
};

// Failures that end the work: kUsage: an address that cannot be used. kConfig: the name or password
// is refused (401), no right (403 on the collection), no such collection, or the library for HTTP
// is missing. kBusy: the server does not answer, or has trouble of its own (408, 429, 5xx): try
// later. kOutput: the connection is not safe (certificate), or the answer makes no sense. Each has
// a next step.
class DavCollection {
 public:
  // Reads the address only; nothing is sent.
  [[nodiscard]] static Result<DavCollection> open(DavAccess access);
  DavCollection(DavCollection&&) noexcept;
  DavCollection& operator=(DavCollection&&) noexcept;
  DavCollection(const DavCollection&) = delete;  // one connection
  DavCollection& operator=(const DavCollection&) = delete;
  ~DavCollection();

  // The address as it is kept: with '/' at its end, without name and password.
  [[nodiscard]] const std::string& url() const;
  // Is it a calendar that holds such items? `component`: "VEVENT" or "VTODO".
  [[nodiscard]] Status check(std::string_view component);
  // Everything in it.
  [[nodiscard]] Result<std::vector<DavItem>> list();
  // One item; nothing when it is not there.
  [[nodiscard]] Result<std::optional<DavItem>> get(const std::string& href);
  // Where a new item goes.
  [[nodiscard]] std::string href_for(std::string_view uid) const;
  // `etag`: the version it replaces; empty: there must be none yet.
  [[nodiscard]] Result<DavDone> put(const std::string& href, const std::string& data,
                                    const std::string& etag);
  // `etag`: the version that is removed; never empty.
  [[nodiscard]] Result<DavDone> remove(const std::string& href, const std::string& etag);

 private:
  struct Connection;
  explicit DavCollection(std::unique_ptr<Connection> connection);
  std::unique_ptr<Connection> connection_;
};

// The parts of an address. Nothing when it is no http or https address, or has a name, a password,
// a query or a fragment in it.
struct DavAddress {
  std::string scheme;     // "https"
  std::string authority;  // "host:port", lower case
  std::string host;       // without brackets
  std::string path;       // begins and ends with '/'
  [[nodiscard]] bool is_loopback() const;
};
[[nodiscard]] std::optional<DavAddress> parse_dav_address(std::string_view url);

}  // namespace larderloop
