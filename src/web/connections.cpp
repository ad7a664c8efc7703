#include "web/connections.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <poll.h>
#include <sys/eventfd.h>
#include <sys/socket.h>
#include <system_error>
#include <unistd.h>

namespace larderloop {
namespace {

constexpr std::size_t kMostFarewellBytes = 65536;

void send_short(int socket, const std::string& text) {
  // A few hundred bytes into an empty buffer; a client that does not even take those gets none.
  (void)::send(socket, text.data(), text.size(), MSG_DONTWAIT | MSG_NOSIGNAL);
}

}  // namespace

Connections::Connections(const Limits& limits, Answer answer, Refuse refuse)
    : limits_(limits),
      answer_(std::move(answer)),
      refuse_(std::move(refuse)),
      wake_(::eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC)) {
  if (wake_ < 0) throw std::system_error(errno, std::generic_category(), "eventfd");
  for (int each = 0; each < limits_.workers; ++each) workers_.emplace_back([this] { work(); });
  watcher_ = std::thread([this] { watch(); });
}

Connections::~Connections() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  have_job_.notify_all();
  wake();
  watcher_.join();
  for (std::thread& each : workers_) each.join();
  for (const Waiting& each : waiting_) ::close(each.socket);
  for (const Waiting& each : arrived_) ::close(each.socket);
  for (const Job& each : jobs_) ::close(each.socket);
  ::close(wake_);
}

void Connections::wake() const {
  const std::uint64_t one = 1;
  (void)!::write(wake_, &one, sizeof one);
}

void Connections::take(int socket) {
  {
    const std::lock_guard lock(mutex_);
    arrived_.push_back({socket, State::kReading, 0, {}, 0, Clock::now() + limits_.head});
  }
  wake();
}

// A place for one more, at the cost of whoever waits longest: those who leave first, then the idle,
// then the slow.
void Connections::admit(Waiting waiting) {
  if (waiting_.size() + busy_ >= limits_.most) {
    const auto rank = [](const Waiting& each) {
      return std::make_pair(each.state == State::kLeaving ? 0
                            : each.state == State::kIdle  ? 1
                                                          : 2,
                            each.until);
    };
    const auto victim =
        std::min_element(waiting_.begin(), waiting_.end(),
                         [&](const Waiting& a, const Waiting& b) { return rank(a) < rank(b); });
    if (victim == waiting_.end()) {
      ::close(waiting.socket);
      return;
    }
    // Who asked nothing yet is told nothing: it could take that for the answer to what it asks
    // next.
    if (victim->state == State::kReading && !victim->bytes.empty())
      send_short(victim->socket, refuse_(victim->socket, {503, "-", {"Retry-After: 30"}}));
    ::close(victim->socket);
    waiting_.erase(victim);
  }
  // What came together with the request before may be a whole one already.
  if (waiting.state == State::kLeaving || go_on(waiting)) waiting_.push_back(std::move(waiting));
}

void Connections::watch() {
  std::vector<pollfd> polled;
  std::vector<Waiting> arrived;
  while (!stopping_) {
    {
      const std::lock_guard lock(mutex_);
      arrived.swap(arrived_);
    }
    for (Waiting& each : arrived) admit(std::move(each));
    arrived.clear();
    polled.clear();
    polled.push_back({wake_, POLLIN, 0});
    Clock::time_point next = Clock::now() + std::chrono::hours(1);
    for (const Waiting& each : waiting_) {
      polled.push_back({each.socket, POLLIN, 0});
      next = std::min(next, each.until);
    }
    const auto pause = std::chrono::ceil<std::chrono::milliseconds>(next - Clock::now()).count();
    (void)::poll(polled.data(), polled.size(), static_cast<int>(std::max<std::int64_t>(0, pause)));
    if (polled.front().revents != 0) {
      std::uint64_t count = 0;
      (void)!::read(wake_, &count, sizeof count);
    }
    const Clock::time_point now = Clock::now();
    std::vector<Waiting> staying;
    for (std::size_t index = 0; index < waiting_.size(); ++index) {
      Waiting& each = waiting_[index];
      bool stays = polled[index + 1].revents == 0 || read_some(each);
      if (stays && each.until <= now) stays = expire(each);
      if (stays) staying.push_back(std::move(each));
    }
    waiting_.swap(staying);
  }
}

bool Connections::read_some(Waiting& waiting) {
  std::array<char, 4096> buffer{};
  const ssize_t got = ::recv(waiting.socket, buffer.data(), buffer.size(), MSG_DONTWAIT);
  if (got < 0 && (errno == EAGAIN || errno == EINTR)) return true;
  if (got <= 0) {
    ::close(waiting.socket);
    return false;
  }
  if (waiting.state == State::kLeaving) {
    waiting.left += static_cast<std::size_t>(got);
    if (waiting.left <= kMostFarewellBytes) return true;
    ::close(waiting.socket);
    return false;
  }
  if (waiting.state == State::kIdle) {
    waiting.state = State::kReading;
    waiting.until = Clock::now() + limits_.head;
  }
  waiting.bytes.append(buffer.data(), static_cast<std::size_t>(got));
  return go_on(waiting);
}

bool Connections::go_on(Waiting& waiting) {
  std::string& bytes = waiting.bytes;
  if (bytes.rfind("\r\n", 0) == 0)
    bytes.erase(0, 2);  // an empty line before a request is to be ignored (RFC 9112 section 2.2)
  const std::size_t end = end_of_head(bytes);
  HeadFault fault;
  if (end == std::string::npos || end > kMostHeadBytes) {
    const auto hopeless_one = hopeless(bytes);
    return hopeless_one ? refuse(waiting, *hopeless_one) : true;
  }
  auto head = read_head(std::string_view(bytes).substr(0, end), fault);
  if (!head) return refuse(waiting, fault);
  ++busy_;
  {
    const std::lock_guard lock(mutex_);
    jobs_.push_back({waiting.socket, waiting.count, std::move(*head), bytes.substr(end)});
  }
  have_job_.notify_one();
  return false;
}

bool Connections::refuse(Waiting& waiting, const HeadFault& fault) {
  send_short(waiting.socket, refuse_(waiting.socket, fault));
  leave(waiting);
  return true;
}

// Closing with unread bytes would take the answer back from the client, so what still comes is read
// and thrown away for a moment.
void Connections::leave(Waiting& waiting) {
  (void)::shutdown(waiting.socket, SHUT_WR);
  waiting.state = State::kLeaving;
  waiting.bytes.clear();
  waiting.until = Clock::now() + limits_.farewell;
}

bool Connections::expire(Waiting& waiting) {
  if (waiting.state == State::kReading && !waiting.bytes.empty())
    return refuse(waiting, {408, "-", {}});
  ::close(waiting.socket);
  return false;
}

void Connections::work() {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      have_job_.wait(lock, [this] { return stopping_ || !jobs_.empty(); });
      if (stopping_) return;
      job = std::move(jobs_.front());
      jobs_.pop_front();
    }
    const After after = answer_(job.socket, job.head, job.count);
    Waiting waiting{job.socket,
                    State::kIdle,
                    job.count + 1,
                    std::move(job.rest),
                    0,
                    Clock::now() + limits_.idle};
    if (after == After::kClose) {
      leave(waiting);
    } else if (!waiting.bytes.empty()) {
      waiting.state = State::kReading;
      waiting.until = Clock::now() + limits_.head;
    }
    {
      const std::lock_guard lock(mutex_);
      arrived_.push_back(std::move(waiting));
      --busy_;
    }
    wake();
  }
}

}  // namespace larderloop
