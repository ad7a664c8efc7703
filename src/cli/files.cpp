#include "cli/files.h"

#include <cerrno>
#include <cstdlib>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace larderloop::cli {
namespace {

constexpr std::size_t kMaxInput = 64UL << 20;  // a household of many years is far smaller

std::string system_words(int code) {
  return std::generic_category().message(code);
}

class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;  // closes once
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ > STDERR_FILENO) ::close(fd_);
  }
  [[nodiscard]] int get() const { return fd_; }

 private:
  int fd_;
};

tl::unexpected<Error> cannot_write(const std::string& path, int code) {
  return fail(ErrorKind::kOutput, "cannot write '" + path + "': " + system_words(code),
              "name another file, or free some space");
}

}  // namespace

Result<std::string> read_input(const std::string& path) {
  const std::string name = path == "-" ? "standard input" : path;
  const Descriptor input(path == "-" ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (input.get() < 0) {
    const int code = errno;
    return fail(ErrorKind::kNotFound, "cannot read '" + name + "': " + system_words(code),
                "check the spelling of the file name");
  }
  std::string bytes;
  std::vector<char> part(1U << 16);
  while (true) {
    const ssize_t got = ::read(input.get(), part.data(), part.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) {
      const int code = errno;
      return fail(ErrorKind::kBadData, "cannot read '" + name + "': " + system_words(code));
    }
    if (got == 0) return bytes;
    bytes.append(part.data(), static_cast<std::size_t>(got));
    if (bytes.size() > kMaxInput) {
      return fail(ErrorKind::kBadData, "'" + name + "' is larger than 64 MiB",
                  "name a household document");
    }
  }
}

Status write_file(const std::string& path, std::string_view bytes) {
  std::string beside = path + ".XXXXXX";
  const int fd = ::mkstemp(beside.data());
  if (fd < 0) return cannot_write(path, errno);
  int code = 0;
  {
    const Descriptor output(fd);
    std::string_view rest = bytes;
    while (code == 0 && !rest.empty()) {
      const ssize_t written = ::write(output.get(), rest.data(), rest.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0)
        code = errno;
      else
        rest.remove_prefix(static_cast<std::size_t>(written));
    }
    // mkstemp makes files that only the owner reads; a result file has the usual mode.
    const mode_t mask = ::umask(0);
    ::umask(mask);
    if (code == 0 && ::fchmod(output.get(), 0666 & ~mask) != 0) code = errno;
    if (code == 0 && ::fsync(output.get()) != 0) code = errno;
  }
  if (code == 0 && ::rename(beside.c_str(), path.c_str()) != 0) code = errno;
  if (code == 0) return {};
  ::unlink(beside.c_str());
  return cannot_write(path, code);
}

bool file_holds(const std::string& path, std::string_view bytes) {
  struct stat facts {};
  if (::stat(path.c_str(), &facts) != 0 || !S_ISREG(facts.st_mode)) return false;
  if (facts.st_size != static_cast<off_t>(bytes.size())) return false;
  const auto held = read_input(path);
  return held && *held == bytes;
}

Status make_folder_of(const std::string& path) {
  for (std::size_t slash = path.find('/', 1); slash != std::string::npos;
       slash = path.find('/', slash + 1)) {
    const std::string folder = path.substr(0, slash);
    if (::mkdir(folder.c_str(), 0700) != 0 && errno != EEXIST) {
      const int code = errno;
      return fail(ErrorKind::kOutput,
                  "cannot make the folder '" + folder + "': " + system_words(code));
    }
  }
  return {};
}

}  // namespace larderloop::cli
