#include "dav/http.h"

#include "dav/curl_library.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <thread>

namespace larderloop::dav {
namespace {

constexpr std::size_t kMaxAnswer = 32UL
                                   << 20;  // a calendar of ten thousand items is a third of that
constexpr long kConnectSeconds = 10;
constexpr int kMaxWaitSeconds = 5;  // however long the server asks to wait
constexpr std::chrono::milliseconds kFirstWait{400};

std::string trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() &&
         (text.back() == ' ' || text.back() == '\t' || text.back() == '\r' || text.back() == '\n'))
    text.remove_suffix(1);
  return std::string(text);
}

// What the callbacks fill.
struct Receiving {
  Answer answer;
  int retry_after = 0;
  bool too_large = false;
};

std::size_t take_body(char* bytes, std::size_t size, std::size_t count, void* into) {
  Receiving& receiving = *static_cast<Receiving*>(into);
  if (receiving.answer.body.size() + size * count > kMaxAnswer) {
    receiving.too_large = true;
    return 0;  // ends the transfer
  }
  receiving.answer.body.append(bytes, size * count);
  return size * count;
}

std::size_t take_header(char* bytes, std::size_t size, std::size_t count, void* into) {
  Receiving& receiving = *static_cast<Receiving*>(into);
  const std::string_view line(bytes, size * count);
  if (line.substr(0, 5) ==
      "HTTP/") {  // a new answer begins: after a 100, or after being asked for the password
    receiving = Receiving();
    return size * count;
  }
  const std::size_t colon = line.find(':');
  if (colon == std::string_view::npos) return size * count;
  std::string name(line.substr(0, colon));
  std::transform(name.begin(), name.end(), name.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  const std::string value = trimmed(line.substr(colon + 1));
  if (name == "etag") receiving.answer.etag = value;
  if (name == "location") receiving.answer.location = value;
  if (name == "retry-after")
    std::from_chars(value.data(), value.data() + value.size(), receiving.retry_after);
  return size * count;
}

bool may_pass(long status) {
  return status == 408 || status == 429 || status == 500 || (status >= 502 && status <= 504);
}

bool may_pass(CURLcode code) {
  return code == CURLE_COULDNT_CONNECT || code == CURLE_OPERATION_TIMEDOUT ||
         code == CURLE_GOT_NOTHING || code == CURLE_RECV_ERROR || code == CURLE_SEND_ERROR ||
         code == CURLE_COULDNT_RESOLVE_HOST || code == CURLE_PARTIAL_FILE;
}

bool is_untrusted(CURLcode code) {
  return code == CURLE_PEER_FAILED_VERIFICATION || code == CURLE_SSL_CONNECT_ERROR ||
         code == CURLE_SSL_CACERT_BADFILE || code == CURLE_SSL_CERTPROBLEM ||
         code == CURLE_SSL_ISSUER_ERROR;
}

class CurlHttp : public Http {
 public:
  CurlHttp(const CurlLibrary& curl, const DavAccess& access)
      : curl_(curl), access_(access), handle_(curl.easy_init()) {}
  ~CurlHttp() override {
    if (handle_ != nullptr) curl_.easy_cleanup(handle_);
  }
  CurlHttp(const CurlHttp&) = delete;  // owns the handle
  CurlHttp& operator=(const CurlHttp&) = delete;

  Result<Answer> send(const Request& request) override {
    if (handle_ == nullptr) return fail(ErrorKind::kDefect, "libcurl gives no handle");
    const std::string host =
        parse_dav_address(access_.url) ? parse_dav_address(access_.url)->authority : access_.url;
    for (int attempt = 1;; ++attempt) {
      Receiving receiving;
      const CURLcode code = once(request, receiving);
      const bool passing = code == CURLE_OK ? may_pass(receiving.answer.status) : may_pass(code);
      if (code == CURLE_OK && !passing) return std::move(receiving.answer);
      if (receiving.too_large) {
        return fail(ErrorKind::kOutput, "the answer of '" + host + "' is larger than 32 MiB",
                    "use a calendar of its own for the household");
      }
      if (is_untrusted(code)) {
        return fail(ErrorKind::kOutput,
                    "the connection to '" + host + "' is not safe: " + curl_.easy_strerror(code),
                    "check the address; a server at home with a certificate of its own: --ca FILE");
      }
      if (!passing) {
        return fail(ErrorKind::kOutput,
                    "cannot talk to '" + host + "': " + curl_.easy_strerror(code),
                    "check the address");
      }
      if (attempt >= access_.attempts) {
        const std::string why = code == CURLE_OK
                                    ? "it answers " + std::to_string(receiving.answer.status)
                                    : curl_.easy_strerror(code);
        return fail(ErrorKind::kBusy,
                    "'" + host + "' cannot be reached or has trouble, tried " +
                        std::to_string(attempt) + " times: " + why,
                    "see whether the server runs, then give the same command again; what was done "
                    "stays done");
      }
      const std::chrono::milliseconds asked =
          std::chrono::seconds(std::clamp(receiving.retry_after, 0, kMaxWaitSeconds));
      std::this_thread::sleep_for(std::max(asked, kFirstWait * attempt));
    }
  }

 private:
  CURLcode once(const Request& request, Receiving& receiving) {
    curl_.easy_reset(handle_);
    curl_slist* headers = nullptr;
    for (const std::string& each : request.headers)
      headers = curl_.slist_append(headers, each.c_str());
    headers = curl_.slist_append(headers, "Expect:");  // no waiting for 100 Continue
    const auto set = [this](CURLoption option, auto value) {
      curl_.easy_setopt(handle_, option, value);
    };
    set(CURLOPT_URL, request.url.c_str());
    set(CURLOPT_CUSTOMREQUEST, request.method.c_str());
    if (!request.body.empty()) {
      set(CURLOPT_POSTFIELDS, request.body.data());
      set(CURLOPT_POSTFIELDSIZE_LARGE, static_cast<curl_off_t>(request.body.size()));
    }
    set(CURLOPT_HTTPHEADER, headers);
    set(CURLOPT_PROTOCOLS_STR, "http,https");
    set(CURLOPT_FOLLOWLOCATION, 0L);
    set(CURLOPT_PROXY, "");
    set(CURLOPT_NOSIGNAL, 1L);
    set(CURLOPT_PATH_AS_IS, 1L);
    set(CURLOPT_USERAGENT, "larderloop");
    set(CURLOPT_CONNECTTIMEOUT,
        std::min(kConnectSeconds, static_cast<long>(access_.timeout_seconds)));
    set(CURLOPT_TIMEOUT, static_cast<long>(access_.timeout_seconds));
    set(CURLOPT_SSL_VERIFYPEER, 1L);
    set(CURLOPT_SSL_VERIFYHOST, 2L);
    if (!access_.ca_file.empty()) set(CURLOPT_CAINFO, access_.ca_file.c_str());
    if (!access_.user.empty()) {
      set(CURLOPT_HTTPAUTH, static_cast<long>(CURLAUTH_BASIC | CURLAUTH_DIGEST));
      set(CURLOPT_USERNAME, access_.user.c_str());
      set(CURLOPT_PASSWORD, access_.password.c_str());
    }
    set(CURLOPT_WRITEFUNCTION, &take_body);
    set(CURLOPT_WRITEDATA, static_cast<void*>(&receiving));
    set(CURLOPT_HEADERFUNCTION, &take_header);
    set(CURLOPT_HEADERDATA, static_cast<void*>(&receiving));
    const CURLcode code = curl_.easy_perform(handle_);
    curl_.slist_free_all(headers);
    curl_.easy_getinfo(handle_, CURLINFO_RESPONSE_CODE, &receiving.answer.status);
    return code;
  }

  const CurlLibrary& curl_;
  const DavAccess access_;
  CURL* handle_;
};

}  // namespace

Result<std::unique_ptr<Http>> Http::make(const DavAccess& access) {
  auto library = curl_library();
  if (!library) return fail(library.error());
  return std::make_unique<CurlHttp>(**library, access);
}

}  // namespace larderloop::dav
