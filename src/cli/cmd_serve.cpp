// serve: the calendar over HTTP.
#include "cli/command.h"
#include "cli/feed_source.h"
#include "cli/option_parts.h"
#include "cli/web_module.h"
#include "larderloop/render/feed_addresses.h"

#include <charconv>
#include <chrono>
#include <csignal>
#include <memory>

namespace larderloop::cli {
namespace {

constexpr const char* kUsual = "127.0.0.1:8467";

struct ServeOptions {
  std::string listen, base;
  std::vector<std::string> hosts;
};

// "127.0.0.1:8467", "[::1]:8467".
Status read_listen(const std::string& text, WebSettings& settings) {
  const auto wrong = [&] {
    return fail(ErrorKind::kUsage, "cannot read --listen '" + text + "'",
                std::string("write an address of this machine and a port: ") + kUsual);
  };
  const std::size_t colon = text.rfind(':');
  if (colon == std::string::npos || colon == 0) return wrong();
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data() + colon + 1, end, settings.port);
  if (read.ec != std::errc() || read.ptr != end || settings.port < 0 || settings.port > 65535)
    return wrong();
  std::string address = text.substr(0, colon);
  const bool brackets = address.front() == '[' && address.back() == ']';
  if (brackets) address = address.substr(1, address.size() - 2);
  if (address.empty() || brackets != (address.find(':') != std::string::npos) ||
      address.find_first_not_of(
          "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.:-") != address.npos)
    return wrong();
  settings.address = std::move(address);
  return {};
}

bool is_loopback(const std::string& address) {
  return address == "localhost" || address == "::1" || address.rfind("127.", 0) == 0;
}

Status read_hosts(const ServeOptions& given, WebSettings& settings) {
  for (const std::string& text : given.hosts) {
    auto base = parse_feed_base("https://" + text);
    if (!base || !base->path.empty())
      return fail(ErrorKind::kUsage, "cannot read --host '" + text + "'",
                  "write the name by which phones call this server, for example kit.example");
    settings.hosts.push_back(base->host);
  }
  if (given.base.empty()) return {};
  auto base = parse_feed_base(given.base);
  if (!base) return fail(base.error());
  settings.hosts.push_back(base->host);
  settings.prefix = base->path;
  return {};
}

// Waits for the wish to stop. The signals are held back in every thread that is made from now on.
class Signals {
 public:
  Signals() {
    sigemptyset(&set_);
    sigaddset(&set_, SIGINT);
    sigaddset(&set_, SIGTERM);
    pthread_sigmask(SIG_BLOCK, &set_, &before_);
  }
  ~Signals() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  Signals(const Signals&) = delete;
  Signals& operator=(const Signals&) = delete;
  void wait() {
    int which = 0;
    while (sigwait(&set_, &which) != 0) {
    }
    // A second one ends the program at once.
    pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }

 private:
  sigset_t set_{}, before_{};
};

// Lines of several threads, one after the other.
class Log {
 public:
  explicit Log(Runtime& runtime) : runtime_(runtime) {}
  void request(const WebLogLine& line) {
    const std::lock_guard lock(mutex_);
    const auto now = std::chrono::duration_cast<std::chrono::seconds>(
        std::chrono::system_clock::now().time_since_epoch());
    runtime_.note(iso_instant(Instant(now)) + " " + line.client + " " + line.method + " " +
                  (line.name.empty() ? "-" : "\"" + line.name + "\"") + " " +
                  std::to_string(line.status) + " " + std::to_string(line.bytes));
  }
  void say(const std::string& text) {
    const std::lock_guard lock(mutex_);
    runtime_.warn(text);
  }

 private:
  Runtime& runtime_;
  std::mutex mutex_;
};

void greet(const Household& household, const WebSettings& settings, const ServeOptions& given,
           int port, Runtime& runtime) {
  const std::string host = settings.address.find(':') == std::string::npos
                               ? settings.address
                               : "[" + settings.address + "]";
  const std::string here = "http://" + host + ":" + std::to_string(port);
  std::size_t valid = 0;
  for (const FeedAddress& each : household.feed_addresses) {
    if (each.revoked_at) continue;
    ++valid;
    runtime.note("address " + std::to_string(each.id.value()) + ", " + each.name + ": " +
                 feed_address_words(household, each));
  }
  const std::string base =
      given.base.empty() ? is_loopback(settings.address) ? here : "URL" : given.base;
  runtime.note(std::string(valid == 0 ? "there is no address yet; make one for each phone"
                                      : "one for another phone") +
               ": larderloop feed add NAME --base " + base);
  if (!is_loopback(settings.address))
    runtime.warn(
        "not protected: everybody in this network can read what is sent; only for a home network "
        "that you trust, or "
        "behind a server with TLS");
  runtime.warn("serving the calendar at " + here + "/ until Ctrl-C");
}

Result<int> serve(const ServeOptions& given, Runtime& runtime) {
  WebSettings settings;
  if (Status read = read_listen(given.listen.empty() ? kUsual : given.listen, settings); !read)
    return fail(read.error());
  if (Status read = read_hosts(given, settings); !read) return fail(read.error());
  auto module = web_module();
  if (!module) return fail(module.error());
  Signals signals;
  Log log(runtime);
  FeedSource source(read_environment(), runtime.options, (*module)->pack,
                    [&](const std::string& text) { log.say(text); });
  auto household = source.start();
  if (!household) return fail(household.error());
  const Household first = **household;
  auto server =
      (*module)->open(settings, {[&](const std::string& word) { return source.find(word); },
                                 [&](const WebLogLine& line) { log.request(line); }});
  if (!server) return fail(server.error());
  greet(first, settings, given, (*server)->port(), runtime);
  signals.wait();
  server->reset();
  runtime.note("stopped");
  return 0;
}

}  // namespace

Action add_serve(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ServeOptions>();
  add_text(
      app, "--listen", given->listen, "ADDRESS:PORT",
      std::string("Where to serve (") + kUsual + ": this very machine); port 0: any that is free");
  add_list(app, "--host", given->hosts, "NAME",
           "A name by which phones call this server; may be repeated");
  add_text(app, "--base", given->base, "URL",
           "Where phones find it when another server stands before it: https://HOST/PATH");
  set_help(app, {"larderloop serve\n"
                 "larderloop serve --base https://kit.example/feed\n"
                 "larderloop serve --listen 192.168.1.4:8467\n",
                 "Gives the calendar to phones that subscribe, each under an address of its own: "
                 "larderloop feed add. It follows the book while it runs. Ctrl-C or SIGTERM stops "
                 "it. TLS is the task of a server before it; plain http is only for this machine "
                 "and for a home network that you trust. One line for each request goes to "
                 "standard error, without the address.",
                 {}});
  return [given, &runtime]() -> Result<int> { return serve(*given, runtime); };
}

}  // namespace larderloop::cli
