#include "cli/credentials.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace larderloop::cli {
namespace {

constexpr std::size_t kMost = 4096;

tl::unexpected<Error> unfit(const std::string& path, const std::string& what, std::string next) {
  return fail(ErrorKind::kConfig, "the file of --credentials, '" + path + "', " + what,
              std::move(next));
}

// Takes the first line off.
std::string line_of(std::string& text) {
  const std::size_t end = text.find('\n');
  std::string line = text.substr(0, end);
  text.erase(0, end == std::string::npos ? text.size() : end + 1);
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return line;
}

Status check_file(int fd, const std::string& path) {
  struct stat about {};
  if (::fstat(fd, &about) != 0 || !S_ISREG(about.st_mode))
    return unfit(path, "is no plain file",
                 "name a file with the name in its first line and the password in its second");
  if ((about.st_mode & (S_IRWXG | S_IRWXO)) != 0) {
    return unfit(path, "can be read by others", "make it yours alone: chmod 600 '" + path + "'");
  }
  if (about.st_uid != ::geteuid())
    return unfit(path, "belongs to somebody else", "use a file of your own");
  return {};
}

}  // namespace

Result<Credentials> read_credentials(const std::string& path) {
  const int fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (fd < 0) {
    const int code = errno;
    return fail(ErrorKind::kNotFound,
                "cannot read the file of --credentials, '" + path +
                    "': " + std::generic_category().message(code),
                "make it with the name in its first line and the password in its second, then: "
                "chmod 600 '" +
                    path + "'");
  }
  const Status fit = check_file(fd, path);
  std::string text(kMost + 1, '\0');
  const ssize_t got = fit ? ::read(fd, text.data(), text.size()) : 0;
  ::close(fd);
  if (!fit) return fail(fit.error());
  const std::string two_lines = "write the name in its first line and the password in its second";
  if (got < 0 || static_cast<std::size_t>(got) > kMost)
    return unfit(path, "cannot be read, or is too long", two_lines);
  text.resize(static_cast<std::size_t>(got));
  Credentials credentials;
  credentials.user = line_of(text);
  credentials.password = line_of(text);
  const bool odd = credentials.user.find(':') != std::string::npos ||
                   text.find_first_not_of("\r\n") != std::string::npos ||
                   (credentials.user + credentials.password).find('\0') != std::string::npos;
  if (credentials.user.empty() || credentials.password.empty() || odd) {
    return unfit(path, "has not one name and one password",
                 two_lines + "; a name has no colon (RFC 7617)");
  }
  return credentials;
}

}  // namespace larderloop::cli
