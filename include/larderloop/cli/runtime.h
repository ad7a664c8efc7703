// runtime.h - what every command of the program shares: the book, the clock, the output. One object
// a run. Use:      a command parses into its own struct and then calls exactly one of read(),
// write() and keep() with its task:
//             auto report = runtime.write([&](const Household& h, Asked asked) { return eat(h,
//             request, asked); }); if (!report) return fail(report.error());
//             runtime.note(eaten_words(runtime.household(), *report));
// Streams:  print() is the result (standard output, flushed and checked at the end); note() and
// warn() are standard error.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/store/book.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>

namespace larderloop::cli {

// As given before or after the command. `book`, `now`: the text of the option, empty when it was
// not given.
struct GlobalOptions {
  std::string book;
  std::string now;
  std::string color = "auto";
  bool dry_run = false;
  bool json = false;
  bool quiet = false;
  bool verbose = false;
  bool no_input = false;
  bool yes = false;
};

// What the program takes from outside, read once at the start. `clock`: the system's time, used
// when no `now` replaces it.
struct Environment {
  std::optional<std::string> book, now, home, xdg_data_home, xdg_cache_home, tz, no_color, term, columns;
  Instant clock{};
};
[[nodiscard]] Environment read_environment();

class Runtime {
 public:
  explicit Runtime(Environment environment) : env_(std::move(environment)) {}
  Runtime(const Runtime&) = delete;  // one output, one book
  Runtime& operator=(const Runtime&) = delete;

  GlobalOptions options;

  // ---- the three ways to work with the book ----

  // Opens read-only, loads, and answers with task(household, asked): a Result<R>.
  template <class Task>
  auto read(Task&& task) -> std::invoke_result_t<Task, const Household&, Asked> {
    if (Status loaded = load_to_read(); !loaded) return fail(loaded.error());
    return std::forward<Task>(task)(household(), asked());
  }
  // Takes the write lock, loads, and asks task(household, asked) for a Result<Outcome<R>>. Its
  // changes are applied in memory, the household is validated, and they are committed; under
  // --dry-run all the same, then rolled back. Returns the R. A finding or a failure: nothing was
  // changed.
  template <class Task>
  auto write(Task&& task) {
    return change(std::forward<Task>(task), false);
  }
  // As write(), for questions that remember what they answered (plan, nudge, calendar). On a
  // read-only book and under --dry-run the answer is the same, and standard error says that nothing
  // was kept.
  template <class Task>
  auto keep(Task&& task) {
    return change(std::forward<Task>(task), true);
  }

  // After one of the three: the household as it is now, with the changes (under --dry-run: as it
  // would be).
  [[nodiscard]] const Household& household() const { return household_; }
  [[nodiscard]] Asked asked() const { return asked_; }

  // ---- the outside world ----

  // --book, LARDERLOOP_BOOK, $XDG_DATA_HOME/larderloop/household.book. kConfig when no home is
  // known.
  [[nodiscard]] Result<std::string> book_path() const;
  // --now, LARDERLOOP_NOW or the clock; today in the zone of `settings`, else of TZ, else of the
  // system. A date is that very day.
  [[nodiscard]] Result<Asked> ask(const Settings& settings) const;
  [[nodiscard]] Result<BookOptions> book_options() const;

  // ---- answers that were given before (answer_cache.h) ----

  // The answer to `question` while book, day and program are the same; its first is the text, its second a 0 or 1 that was kept with
  // it. Never under --dry-run.
  [[nodiscard]] std::optional<std::pair<std::string, int>> recall(const std::string& question) const;
  // Keeps an answer after keep() has worked it out.
  void remember(const std::string& question, const std::string& text, int code) const;

  // ---- output ----

  // Text for people: control characters other than line ends are shown escaped.
  void print(std::string_view text);
  // A format: bytes as they are (JSON, iCalendar, HTML).
  void print_bytes(std::string_view bytes);
  // The bytes of a format to the file of -o, or to standard output for none and for "-". A file is
  // written beside its place, synced and renamed; a note names it. Under --dry-run no file is
  // written.
  [[nodiscard]] Status deliver(const std::string& output, std::string_view bytes);
  // One line about the work, for standard error; not under --quiet.
  void note(std::string_view line);
  // One line that must be seen even under --quiet.
  void warn(std::string_view line);
  // Several lines of the program's own, each ended.
  void warn_lines(std::string_view text);
  // One line that explains a decision; only under --verbose.
  void explain(std::string_view line);
  // A failure as text, or as one JSON object under --json. Returns the exit code.
  int report(const Error& error);
  // Asks on a terminal; --yes answers. kUsage when it may not ask: nothing was done, `what` names
  // the deed.
  [[nodiscard]] Result<bool> confirm(const std::string& what);
  // Writes out what is buffered. The exit code: `code`, or that of kOutput with a message when the
  // output could not be written. A reader that closed the pipe is no failure.
  int finish(int code);
  // Cells of a line when standard output is a terminal (COLUMNS, else what the terminal says, else
  // 80); 0 when it is not.
  [[nodiscard]] std::size_t width() const;
  // May colours go to standard output?
  [[nodiscard]] bool colours() const;

 private:
  template <class Task>
  auto change(Task&& task, bool keeping) {
    using Answer = std::invoke_result_t<Task, const Household&, Asked>;
    using Report = decltype(std::declval<Answer>()->report);
    if (Status loaded = load_to_write(keeping); !loaded)
      return Result<Report>(fail(loaded.error()));
    Answer answer = std::forward<Task>(task)(household(), asked());
    if (!answer) {
      close();
      return Result<Report>(fail(answer.error()));
    }
    if (Status done = finish_change(answer->changes, keeping); !done)
      return Result<Report>(fail(done.error()));
    return Result<Report>(std::move(answer->report));
  }
  [[nodiscard]] Status load_to_read();
  [[nodiscard]] Status load_to_write(bool keeping);
  [[nodiscard]] Status finish_change(const Changes& changes, bool keeping);
  void explain_start(const std::string& path);
  void close();
  [[nodiscard]] std::string cache_folder() const;
  void flush();
  void say(std::string_view line);
  [[nodiscard]] bool color_on(int stream) const;

  Environment env_;
  std::optional<Book> book_;
  std::optional<Book::Write> write_;
  Household household_;
  Asked asked_;
  std::string buffer_;
  int output_error_ = 0;  // errno of the first failed write
};

}  // namespace larderloop::cli
