// module.h - the room that speaks HTTP, as a file of its own (larderloop-web.so), which the program
// opens only for serving: the library for it brings three dozen others, and looking up their
// symbols would double the time of every other command. Division: this room knows connections,
// requests, conditions and codings (RFC 9110, 9112). Which word is an address, and what its
//           calendar is, comes from outside.
// Rule:     program and module come from one build; `build` and the sizes say so, and a module that
// differs is refused. Threads:  `find` and `log` are called from several at once.
#pragma once

#include "larderloop/core/date.h"
#include "larderloop/core/result.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

inline constexpr const char* kWebModuleFile = "larderloop-web.so";
inline constexpr const char* kWebModuleEntry = "larderloop_web_module";

// Where, and how patiently. `port` 0: any that is free. `hosts`: names by which clients may call
// it, besides localhost and the address they reached; lower case. `prefix`: "/feed" when a server
// before this one leaves that in the path.
struct WebSettings {
  std::string address = "127.0.0.1";
  int port = 0;
  std::vector<std::string> hosts;
  std::string prefix;
  int head_seconds = 10;    // from its first byte to the end of a request
  int idle_seconds = 15;    // between two requests of one connection
  int answer_seconds = 30;  // for the client to take the answer
  std::size_t connections = 128;
  int workers = 4;
};

// One calendar, finished. `packed`: the same as gzip. `mark`: what changes with the bytes, letters
// and digits.
struct WebDocument {
  std::string bytes;
  std::string packed;
  std::string mark;
  Instant changed_at{};
};
enum class WebFound { kYes, kNo, kNotNow };
struct WebAnswer {
  WebFound found = WebFound::kNo;
  std::shared_ptr<const WebDocument> document;
  std::string name;  // for the log; empty: none
};
// What happened to one request. Neither path nor query stands in it. `method`: "GET", "HEAD" or
// "-".
struct WebLogLine {
  std::string client, method, name;
  int status = 0;
  std::size_t bytes = 0;
};
struct WebCallbacks {
  std::function<WebAnswer(const std::string& word)> find;
  std::function<void(const WebLogLine& line)> log;
};

// Serves from the moment it is made; deleting it stops it after the running answers.
class WebServer {
 public:
  WebServer() = default;
  WebServer(const WebServer&) = delete;
  WebServer& operator=(const WebServer&) = delete;
  virtual ~WebServer() = default;
  [[nodiscard]] virtual int port() const = 0;
};

struct WebModule {
  const char* build = "";  // version of the program and of its compiler
  std::size_t settings_size = sizeof(WebSettings), document_size = sizeof(WebDocument),
              answer_size = sizeof(WebAnswer), error_size = sizeof(Error);
  // kOutput: nothing can be served at this address and port.
  Result<std::unique_ptr<WebServer>> (*open)(const WebSettings&, const WebCallbacks&) = nullptr;
  std::string (*pack)(std::string_view bytes) =
      nullptr;  // gzip (RFC 1952), the same bytes for the same
  [[nodiscard]] bool same_form(const WebModule& other) const {
    return settings_size == other.settings_size && document_size == other.document_size &&
           answer_size == other.answer_size && error_size == other.error_size;
  }
};
using WebModuleEntry = const WebModule* (*)();

}  // namespace larderloop
