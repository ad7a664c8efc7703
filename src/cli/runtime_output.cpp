// The output of a run: what is the result, what is said about the work, and whether it got out.
#include "cli/exit_status.h"
#include "cli/files.h"
#include "larderloop/cli/runtime.h"
#include "larderloop/render/json_error.h"
#include "larderloop/render/terminal_text.h"

#include <cerrno>
#include <charconv>
#include <csignal>
#include <sys/ioctl.h>
#include <system_error>
#include <unistd.h>

namespace larderloop::cli {
namespace {

constexpr std::size_t kShownProblems = 20;
constexpr std::size_t kFlushAt = 1U << 20;
constexpr std::string_view kBold = "\x1b[1m";
constexpr std::string_view kPlain = "\x1b[0m";

// 0, or the errno of the failed write.
int write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(fd, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

std::string problem_lines(const Problem& problem) {
  std::string line = "  ";
  if (!problem.where.empty()) line += problem.where + ": ";
  line += problem.what;
  if (!problem.value.empty() && problem.what.find(problem.value) == std::string::npos)
    line += " ('" + problem.value + "')";
  line += "\n";
  if (!problem.remedy.empty()) line += "    hint: " + problem.remedy + "\n";
  return line;
}

}  // namespace

void Runtime::print(std::string_view text) {
  print_bytes(visible_text(text, LineEnds::kKeep));
}

void Runtime::print_bytes(std::string_view bytes) {
  buffer_ += bytes;
  if (buffer_.size() >= kFlushAt) flush();
}

Status Runtime::deliver(const std::string& output, std::string_view bytes) {
  if (output.empty() || output == "-") {
    print_bytes(bytes);
    return {};
  }
  if (options.dry_run) {
    warn("Dry run: '" + output + "' was not written.");
    return {};
  }
  // A file that need not change keeps its times: whoever serves it can say that nothing is new.
  if (file_holds(output, bytes)) {
    note(output + " is up to date");
    return {};
  }
  if (Status written = write_file(output, bytes); !written) return written;
  note("wrote " + output);
  return {};
}

void Runtime::note(std::string_view line) {
  if (!options.quiet) say(line);
}

void Runtime::warn(std::string_view line) {
  say(line);
}

void Runtime::warn_lines(std::string_view text) {
  flush();
  (void)write_all(STDERR_FILENO, visible_text(text, LineEnds::kKeep));
}

void Runtime::explain(std::string_view line) {
  if (options.verbose) say(line);
}

void Runtime::say(std::string_view line) {
  flush();  // what was printed before is seen before
  // Nobody is left to tell when standard error fails.
  (void)write_all(STDERR_FILENO, visible_text(line, LineEnds::kEscape) + "\n");
}

int Runtime::report(const Error& error) {
  const int code = exit_code(error.kind);
  flush();
  if (options.json) {
    (void)write_all(STDERR_FILENO, render_error_json(error, error_kind_name(error.kind), code));
    return code;
  }
  std::string text = error.what + "\n";
  std::size_t shown = 0;
  for (const Problem& problem : error.problems) {
    if (shown++ == kShownProblems) break;
    text += problem_lines(problem);
  }
  if (error.problems.size() > kShownProblems) {
    text += "  and " + std::to_string(error.problems.size() - kShownProblems) +
            " more (all with --json)\n";
  }
  if (!error.next_step.empty()) text += "  hint: " + error.next_step + "\n";
  const std::string name = color_on(STDERR_FILENO)
                               ? std::string(kBold) + "larderloop:" + std::string(kPlain)
                               : "larderloop:";
  (void)write_all(STDERR_FILENO, name + " " + visible_text(text, LineEnds::kKeep));
  return code;
}

Result<bool> Runtime::confirm(const std::string& what) {
  if (options.yes) return true;
  if (options.no_input || ::isatty(STDIN_FILENO) == 0) {
    return fail(ErrorKind::kUsage, "this needs a yes: " + what, "say it in advance: --yes");
  }
  flush();
  (void)write_all(STDERR_FILENO, visible_text(what, LineEnds::kEscape) + "? [y/N] ");
  char answer = 0;
  const ssize_t got = ::read(STDIN_FILENO, &answer, 1);
  return got == 1 && (answer == 'y' || answer == 'Y');
}

void Runtime::flush() {
  if (buffer_.empty()) return;
  if (output_error_ == 0) output_error_ = write_all(STDOUT_FILENO, buffer_);
  buffer_.clear();
}

int Runtime::finish(int code) {
  flush();
  // A reader that has seen enough closes the pipe; that is its right.
  if (output_error_ == 0 || output_error_ == EPIPE) return code;
  const std::string why = std::generic_category().message(output_error_);
  output_error_ = 0;
  return report(make_error(ErrorKind::kOutput, "cannot write to standard output: " + why,
                           "free some space, or send the output elsewhere"));
}

std::size_t Runtime::width() const {
  if (::isatty(STDOUT_FILENO) == 0) return 0;
  std::size_t columns = 0;
  if (env_.columns)
    std::from_chars(env_.columns->data(), env_.columns->data() + env_.columns->size(), columns);
  if (columns > 0) return columns;
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  return 80;
}

bool Runtime::colours() const {
  return color_on(STDOUT_FILENO);
}

bool Runtime::color_on(int stream) const {
  if (options.color == "always") return true;
  if (options.color == "never" || env_.no_color || !env_.term || *env_.term == "dumb") return false;
  return ::isatty(stream) == 1;
}

}  // namespace larderloop::cli
