#include "web/server.h"

#include "web/choice.h"
#include "web/connections.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
#include <chrono>
#include <httplib.h>
#include <netdb.h>
#include <poll.h>
#include <sys/socket.h>
#include <system_error>
#include <thread>

namespace larderloop {
namespace {

constexpr int kMostRequests = 1000;  // of one connection

// What every answer says. Nobody between here and the phone keeps a copy, so a revoked address is
// gone at once; whoever has a copy asks whether it still holds.
constexpr std::array<std::pair<const char*, const char*>, 5> kAlways = {
    {{"Cache-Control", "private, no-cache"},
     {"X-Content-Type-Options", "nosniff"},
     {"Referrer-Policy", "no-referrer"},
     {"X-Robots-Tag", "noindex"},
     {"Vary", "Accept-Encoding"}}};

Instant now() {
  return Instant(std::chrono::duration_cast<std::chrono::seconds>(
      std::chrono::system_clock::now().time_since_epoch()));
}

std::string address_of(int socket, bool ours) {
  sockaddr_storage storage{};
  socklen_t length = sizeof storage;
  auto* const address = reinterpret_cast<sockaddr*>(&storage);
  if ((ours ? ::getsockname(socket, address, &length) : ::getpeername(socket, address, &length)) !=
      0)
    return "-";
  std::array<char, NI_MAXHOST> text{};
  if (::getnameinfo(address, length, text.data(), text.size(), nullptr, 0, NI_NUMERICHOST) != 0)
    return "-";
  return text.data();
}

// One request's head, which was read already, and the way back to the client, which must not take
// for ever.
class HeadStream : public httplib::Stream {
 public:
  HeadStream(int socket, std::string head, std::chrono::seconds patience)
      : socket_(socket),
        head_(std::move(head)),
        until_(std::chrono::steady_clock::now() + patience) {}
  [[nodiscard]] bool is_readable() const override { return at_ < head_.size(); }
  [[nodiscard]] bool is_writable() const override {
    const auto left =
        std::chrono::ceil<std::chrono::milliseconds>(until_ - std::chrono::steady_clock::now())
            .count();
    pollfd polled{socket_, POLLOUT, 0};
    return left > 0 && ::poll(&polled, 1, static_cast<int>(left)) == 1 &&
           (polled.revents & (POLLERR | POLLHUP)) == 0;
  }
  ssize_t read(char* into, size_t size) override {
    const std::size_t part = std::min(size, head_.size() - at_);
    std::copy_n(head_.data() + at_, part, into);
    at_ += part;
    return static_cast<ssize_t>(part);
  }
  ssize_t write(const char* from, size_t size) override {
    while (is_writable()) {
      const ssize_t sent = ::send(socket_, from, size, MSG_DONTWAIT | MSG_NOSIGNAL);
      if (sent >= 0) return sent;
      if (errno != EAGAIN && errno != EINTR) return -1;
    }
    return -1;
  }
  void get_remote_ip_and_port(std::string& ip, int& port) const override {
    ip = address_of(socket_, false);
    port = 0;
  }
  void get_local_ip_and_port(std::string& ip, int& port) const override {
    ip = address_of(socket_, true);
    port = 0;
  }
  [[nodiscard]] socket_t socket() const override { return socket_; }

 private:
  int socket_;
  std::string head_;
  std::size_t at_ = 0;
  std::chrono::steady_clock::time_point until_;
};

// Connections are accepted one after the other and handed on at once.
class AtOnce : public httplib::TaskQueue {
 public:
  void enqueue(std::function<void()> task) override { task(); }
  void shutdown() override {}
};

// The library: accepts, reads the request again, and writes the answer.
class Library : public httplib::Server {
 public:
  std::function<void(int)> take;
  // False: the connection is of no more use.
  bool answer(httplib::Stream& stream, bool last) {
    bool closed = false;
    return process_request(stream, last, closed, nullptr) && !closed && !last;
  }
  // Ends the accepting, also when it had only just begun.
  void end() {
    if (is_running() && svr_sock_ != INVALID_SOCKET) stop();
  }

 private:
  bool process_and_close_socket(socket_t socket) override {
    take(socket);
    return true;
  }
};

class FeedServer : public WebServer {
 public:
  FeedServer(const WebSettings& settings, const WebCallbacks& callbacks)
      : settings_(settings), callbacks_(callbacks) {
    library_.new_task_queue = [] { return new AtOnce; };  // the library deletes it
    library_.set_socket_options([](socket_t socket) {
      const int yes =
          1;  // a port that is in use stays in use: no second server beside the first one
      ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    library_.set_tcp_nodelay(true);
    library_.set_keep_alive_timeout(settings.idle_seconds);
    library_.set_keep_alive_max_count(kMostRequests);
    library_.set_pre_routing_handler(
        [this](const httplib::Request& request, httplib::Response& response) {
          handle(request, response);
          return httplib::Server::HandlerResponse::Handled;
        });
    library_.set_post_routing_handler([](const httplib::Request&, httplib::Response& response) {
      for (const auto& [name, value] : kAlways) response.set_header(name, value);
      response.set_header("Date", http_date(now()));
      response.headers.erase("Accept-Ranges");
      if (response.status ==
          304) {  // has no body, and must not say that the calendar is empty (RFC 9110 section 8.6)
        response.headers.erase("Content-Length");
        response.headers.erase("Content-Type");
      }
    });
  }
  ~FeedServer() override {
    stopping_ = true;
    while (accepting_.joinable() && !ended_) {
      library_.end();
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    if (accepting_.joinable()) accepting_.join();
    connections_.reset();  // before the library that its workers use
  }
  Status start() {
    errno = 0;
    const bool any = settings_.port == 0;
    port_ = any ? library_.bind_to_any_port(settings_.address) : settings_.port;
    if (any ? port_ <= 0 : !library_.bind_to_port(settings_.address, settings_.port)) {
      const int why = errno;
      const std::string where =
          "'" + settings_.address + ":" + std::to_string(settings_.port) + "'";
      if (why == EADDRINUSE)
        return fail(ErrorKind::kOutput,
                    "cannot serve at " + where + ": another program does already",
                    "stop it, or take another port, for example --listen " + settings_.address +
                        ":" + std::to_string(settings_.port == 65535 ? 8467 : settings_.port + 1));
      return fail(ErrorKind::kOutput,
                  "cannot serve at " + where +
                      (why == 0 ? "" : ": " + std::generic_category().message(why)),
                  "name an address of this machine and a port above 1023: --listen 127.0.0.1:8467");
    }
    Connections::Limits limits;
    limits.most = settings_.connections;
    limits.head = std::chrono::seconds(settings_.head_seconds);
    limits.idle = std::chrono::seconds(settings_.idle_seconds);
    limits.workers = settings_.workers;
    connections_ = std::make_unique<Connections>(
        limits,
        [this](int socket, const RequestHead& head, int count) {
          return answer(socket, head, count);
        },
        [this](int socket, const HeadFault& fault) { return refused(socket, fault); });
    library_.take = [this](int socket) { connections_->take(socket); };
    accepting_ = std::thread([this] { accept_all(); });
    while (!library_.is_running() && !ended_)
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return {};
  }
  [[nodiscard]] int port() const override { return port_; }

 private:
  // The library gives up when the system is short of something; it is tried again until the end is
  // wanted.
  void accept_all() {
    while (!stopping_) {
      library_.listen_after_bind();
      while (!stopping_) {
        std::this_thread::sleep_for(std::chrono::milliseconds(200));
        if (library_.bind_to_port(settings_.address, port_)) break;
      }
    }
    ended_ = true;
  }

  Connections::After answer(int socket, const RequestHead& head, int count) {
    if (!is_own_host(head.host, address_of(socket, true), settings_.hosts)) {
      HeadStream stream(socket, {}, std::chrono::seconds(settings_.answer_seconds));
      const std::string text = refused(socket, {421, head.method, {}});
      (void)stream.write(text.data(), text.size());
      return Connections::After::kClose;
    }
    gzip_ = accepts_gzip(head.accept_encoding);
    HeadStream stream(socket, head.text(), std::chrono::seconds(settings_.answer_seconds));
    const bool last = head.has_body || count + 1 >= kMostRequests;
    return library_.answer(stream, last) ? Connections::After::kKeep : Connections::After::kClose;
  }

  // The word of the path: what stands behind the prefix and before ".ics". Anything else gives a
  // word that nobody has.
  [[nodiscard]] std::string word_of(const std::string& path) const {
    std::string_view rest = path;
    if (!settings_.prefix.empty() &&
        rest.substr(0, settings_.prefix.size() + 1) == settings_.prefix + "/")
      rest.remove_prefix(settings_.prefix.size());
    constexpr std::string_view kEnd = ".ics";
    if (rest.size() <= kEnd.size() || rest.substr(rest.size() - kEnd.size()) != kEnd) return path;
    return std::string(rest.substr(1, rest.size() - 1 - kEnd.size()));
  }

  void handle(const httplib::Request& request, httplib::Response& response) {
    const WebAnswer found = callbacks_.find(word_of(request.path));
    std::size_t bytes = 0;
    if (found.found == WebFound::kYes) {
      bytes = give(request, response, found.document);
    } else {
      response.status = found.found == WebFound::kNo ? 404 : 503;
      if (response.status == 503) response.set_header("Retry-After", "30");
      response.set_content(std::string(reason_of(response.status)) + "\n",
                           "text/plain; charset=utf-8");
    }
    callbacks_.log({request.remote_addr, request.method, found.name, response.status, bytes});
  }

  static std::size_t give(const httplib::Request& request, httplib::Response& response,
                          const std::shared_ptr<const WebDocument>& document) {
    const std::string plain = "\"" + document->mark + "\"";
    const std::string zipped = "\"" + document->mark + "-gzip\"";
    const std::string changed = http_date(document->changed_at);
    response.set_header("ETag", gzip_ ? zipped : plain);
    response.set_header("Last-Modified", changed);
    bool same = false;
    if (request.has_header(
            "If-None-Match")) {  // then the date is not asked for (RFC 9110 section 13.1.3)
      std::string asked;
      for (std::size_t index = 0; index < request.get_header_value_count("If-None-Match"); ++index)
        asked += (index == 0 ? "" : ", ") + request.get_header_value("If-None-Match", index);
      const bool has_plain = names_tag(asked, plain);
      const bool has_zipped = names_tag(asked, zipped);
      same = has_plain || has_zipped;
      if (same && !(gzip_ ? has_zipped : has_plain)) {
        response.headers.erase("ETag");
        response.set_header("ETag", has_plain ? plain : zipped);
      }
    } else {
      // The very date that was given: a book that was put back has an older one, and another
      // calendar.
      same = request.get_header_value("If-Modified-Since") == changed;
    }
    if (same) {
      response.status = 304;
      return 0;
    }
    response.status = 200;
    if (gzip_) response.set_header("Content-Encoding", "gzip");
    const std::string& bytes = gzip_ ? document->packed : document->bytes;
    response.set_content_provider(
        bytes.size(), "text/calendar; charset=utf-8",
        [document, &bytes](std::size_t from, std::size_t length, httplib::DataSink& sink) {
          return sink.write(bytes.data() + from, length);
        });
    return request.method == "HEAD" ? 0 : bytes.size();
  }

  // A whole answer, for requests that the library does not see.
  [[nodiscard]] std::string refused(int socket, const HeadFault& fault) const {
    callbacks_.log({address_of(socket, false), fault.method, {}, fault.status, 0});
    const std::string body =
        fault.method == "HEAD" ? "" : std::string(reason_of(fault.status)) + "\n";
    std::string text = "HTTP/1.1 " + std::to_string(fault.status) + " " +
                       std::string(reason_of(fault.status)) + "\r\nDate: " + http_date(now()) +
                       "\r\n";
    for (const auto& [name, value] : kAlways) text += std::string(name) + ": " + value + "\r\n";
    for (const std::string& field : fault.fields) text += field + "\r\n";
    return text + "Content-Type: text/plain; charset=utf-8\r\nContent-Length: " +
           std::to_string(body.size()) + "\r\nConnection: close\r\n\r\n" + body;
  }

  static thread_local bool gzip_;  // may the answer that this worker gives be packed?
  WebSettings settings_;
  WebCallbacks callbacks_;
  Library library_;
  std::unique_ptr<Connections> connections_;
  int port_ = 0;
  std::atomic<bool> stopping_ = false, ended_ = false;
  std::thread accepting_;
};

thread_local bool FeedServer::gzip_ = false;

}  // namespace

Result<std::unique_ptr<WebServer>> open_server(const WebSettings& settings,
                                               const WebCallbacks& callbacks) {
  auto server = std::make_unique<FeedServer>(settings, callbacks);
  if (Status started = server->start(); !started) return fail(started.error());
  return server;
}

}  // namespace larderloop
