// http.h - one request, one answer, by libcurl: bounded in time, size and attempts; no redirection,
// no proxy, no cookie.
#pragma once

#include "larderloop/core/result.h"
#include "larderloop/dav/collection.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::dav {

struct Request {
  std::string method;
  std::string url;
  std::vector<std::string> headers;  // "Name: value"
  std::string body;
};
struct Answer {
  long status = 0;
  std::string etag;
  std::string location;
  std::string body;
};

class Http {
 public:
  // kConfig when libcurl is missing.
  [[nodiscard]] static Result<std::unique_ptr<Http>> make(const DavAccess& access);
  virtual ~Http() = default;
  Http(const Http&) = delete;  // one connection
  Http& operator=(const Http&) = delete;

  // Any answer that is not a sign of passing trouble. kBusy: no answer, or trouble (408, 429, 500,
  // 502 to 504), at the last attempt too; kOutput: the connection cannot be trusted, or the answer
  // is too large.
  [[nodiscard]] virtual Result<Answer> send(const Request& request) = 0;

 protected:
  Http() = default;
};

}  // namespace larderloop::dav
