#include "cli/lines.h"

#include <cerrno>
#include <fcntl.h>
#include <system_error>
#include <termios.h>
#include <unistd.h>

namespace larderloop::cli {
namespace {

// Single keys without echo until it goes out of scope.
class RawKeys {
 public:
  explicit RawKeys(int fd) : fd_(fd), known_(::tcgetattr(fd, &before_) == 0) {
    if (!known_) return;
    termios raw = before_;
    raw.c_lflag &= ~static_cast<tcflag_t>(ICANON | ECHO | ISIG);  // an interrupt is a key, so that the terminal is set back
    raw.c_cc[VMIN] = 1;
    raw.c_cc[VTIME] = 0;
    (void)::tcsetattr(fd_, TCSANOW, &raw);
  }
  // What follows an escape at once belongs to it: arrows and the like.
  void drop_sequence() const {
    termios now{};
    if (!known_ || ::tcgetattr(fd_, &now) != 0) return;
    now.c_cc[VMIN] = 0;
    now.c_cc[VTIME] = 1;
    (void)::tcsetattr(fd_, TCSANOW, &now);
    char c = 0;
    while (::read(fd_, &c, 1) == 1) {
    }
  }
  RawKeys(const RawKeys&) = delete;
  RawKeys& operator=(const RawKeys&) = delete;
  ~RawKeys() {
    if (known_) (void)::tcsetattr(fd_, TCSANOW, &before_);
  }

 private:
  int fd_;
  termios before_{};
  bool known_;
};

bool read_one(int fd, char& into) {
  for (;;) {
    const ssize_t got = ::read(fd, &into, 1);
    if (got == 1) return true;
    if (got < 0 && errno == EINTR) continue;
    return false;
  }
}

}  // namespace

Result<LineInput> LineInput::open(const std::string& file) {
  if (file.empty() || file == "-") return LineInput(STDIN_FILENO, false);
  const int fd = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (fd < 0) {
    return fail(ErrorKind::kNotFound,
                "cannot read '" + file + "': " + std::generic_category().message(errno),
                "name a file that can be read, or - for standard input");
  }
  return LineInput(fd, true);
}

LineInput::LineInput(LineInput&& other) noexcept
    : fd_(other.fd_), own_(other.own_), number_(other.number_) {
  other.own_ = false;
}

LineInput::~LineInput() {
  if (own_) (void)::close(fd_);
}

std::optional<std::string> LineInput::line() {
  constexpr std::size_t kMost = 1U << 16;
  std::string text;
  char c = 0;
  bool any = false;
  while (read_one(fd_, c)) {
    any = true;
    if (c == '\n') break;
    if (text.size() < kMost) text += c;
  }
  if (!any) return std::nullopt;
  ++number_;
  if (!text.empty() && text.back() == '\r') text.pop_back();
  return text;
}

Result<std::string> LineInput::rest(std::size_t most) {
  std::string text;
  constexpr std::size_t kBlock = 1U << 14;
  std::string block(kBlock, '\0');
  for (;;) {
    const ssize_t got = ::read(fd_, block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0)
      return fail(ErrorKind::kNotFound, "cannot read: " + std::generic_category().message(errno),
                  "name a file that can be read, or - for standard input");
    if (got == 0) return text;
    text.append(block, 0, static_cast<std::size_t>(got));
    if (text.size() > most)
      return fail(ErrorKind::kBadData,
                  "there is more than " + std::to_string(most) + " bytes of it",
                  "cut it into smaller parts");
  }
}

bool LineInput::terminal() const {
  return ::isatty(fd_) == 1;
}

std::optional<char> LineInput::key(const std::function<void()>& ask) {
  if (terminal()) {
    const RawKeys raw(fd_);
    ask();
    char c = 0;
    if (!read_one(fd_, c) || c == '\x04' || c == '\x03') return std::nullopt;
    if (c == '\x1B') raw.drop_sequence();
    return c;
  }
  ask();
  const auto text = line();
  if (!text) return std::nullopt;
  return text->empty() ? '\n' : text->front();
}

}  // namespace larderloop::cli
