// The book and the clock of a run.
#include "larderloop/cli/runtime.h"

#include "cli/answer_cache.h"
#include "cli/heap.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/validate.h"

#include <chrono>
#include <cstdlib>

namespace larderloop::cli {
namespace {

std::optional<std::string> variable(const char* name) {
  const char* value =
      std::getenv(name);  // NOLINT(concurrency-mt-unsafe): read once, before any thread
  if (value == nullptr || *value == '\0') return std::nullopt;
  return std::string(value);
}

// The zone that TZ names; empty when TZ names a file or nothing, which is the system's zone.
std::string zone_of_environment(const std::optional<std::string>& tz) {
  if (!tz) return {};
  const std::string name = tz->front() == ':' ? tz->substr(1) : *tz;
  return name.empty() || name.front() == '/' ? std::string() : name;
}

}  // namespace

Environment read_environment() {
  Environment env;
  env.book = variable("LARDERLOOP_BOOK");
  env.now = variable("LARDERLOOP_NOW");
  env.home = variable("HOME");
  env.xdg_data_home = variable("XDG_DATA_HOME");
  env.xdg_cache_home = variable("XDG_CACHE_HOME");
  env.tz = variable("TZ");
  env.no_color = variable("NO_COLOR");
  env.term = variable("TERM");
  env.columns = variable("COLUMNS");
  env.clock = Instant(std::chrono::duration_cast<std::chrono::seconds>(
      std::chrono::system_clock::now().time_since_epoch()));
  return env;
}

Result<std::string> Runtime::book_path() const {
  if (!options.book.empty()) return options.book;
  if (env_.book) return *env_.book;
  // A relative base folder counts as unset (XDG Base Directory Specification 0.8).
  if (env_.xdg_data_home && env_.xdg_data_home->front() == '/') {
    return *env_.xdg_data_home + "/larderloop/household.book";
  }
  if (env_.home && env_.home->front() == '/')
    return *env_.home + "/.local/share/larderloop/household.book";
  return fail(ErrorKind::kConfig, "nobody says where the book is: HOME is not set",
              "name the book: --book FILE, or set LARDERLOOP_BOOK");
}

Result<Asked> Runtime::ask(const Settings& settings) const {
  std::string zone = settings.time_zone.empty() ? zone_of_environment(env_.tz) : settings.time_zone;
  const bool from_option = !options.now.empty();
  if (from_option || env_.now) {
    const std::string text = from_option ? options.now : *env_.now;
    if (const auto day = parse_iso_day(text)) return Asked{*day, midnight(*day)};
    const auto instant = parse_iso_instant(text);
    if (!instant) {
      return fail(from_option ? ErrorKind::kUsage : ErrorKind::kConfig,
                  std::string("cannot read ") + (from_option ? "--now" : "LARDERLOOP_NOW") + " '" +
                      text + "'",
                  "write a day, 2027-03-15, or an instant, 2027-03-15T08:30:00Z");
    }
    auto today = local_day(*instant, zone);
    if (!today) return fail(today.error());
    return Asked{*today, *instant};
  }
  auto today = local_day(env_.clock, zone);
  if (!today) return fail(today.error());
  return Asked{*today, env_.clock};
}

Result<BookOptions> Runtime::book_options() const {
  // The stamp needs no zone; a bad --now is found here, before the book is touched.
  Settings utc;
  utc.time_zone = "UTC";
  auto asked = ask(utc);
  if (!asked) return fail(asked.error());
  BookOptions result;
  for (const char each : iso_instant(asked->now)) {
    if (each != '-' && each != ':') result.backup_stamp += each;
  }
  return result;
}

// $XDG_CACHE_HOME/larderloop, for what may vanish (XDG Base Directory Specification 0.8).
std::string Runtime::cache_folder() const {
  if (env_.xdg_cache_home && env_.xdg_cache_home->front() == '/') return *env_.xdg_cache_home + "/larderloop";
  if (env_.home && env_.home->front() == '/') return *env_.home + "/.cache/larderloop";
  return {};
}

std::optional<std::pair<std::string, int>> Runtime::recall(const std::string& question) const {
  const auto path = book_path();
  if (options.dry_run || !path) return std::nullopt;
  const auto today_in = [&](const std::string& zone) -> std::optional<Day> {
    Settings settings;
    settings.time_zone = zone;
    const auto when = ask(settings);
    return when ? std::optional<Day>(when->today) : std::nullopt;
  };
  auto kept = AnswerCache(cache_folder()).recall(*path, question, today_in);
  if (!kept) return std::nullopt;
  return std::make_pair(std::move(kept->body), kept->code);
}

void Runtime::remember(const std::string& question, const std::string& text, int code) const {
  const auto path = book_path();
  if (options.dry_run || !path) return;
  AnswerCache(cache_folder()).keep(*path, question, {text, code, asked_.today, household_.settings.time_zone});
}

Status Runtime::load_to_read() {
  fetch_heap_at_once();
  auto path = book_path();
  if (!path) return fail(path.error());
  auto with = book_options();
  if (!with) return fail(with.error());
  auto book = Book::open_read_only(*path, *with);
  if (!book) return fail(book.error());
  for (const std::string& line : book->notes()) note(line);
  auto loaded = book->load();
  if (!loaded) return fail(loaded.error());
  auto when = ask(loaded->settings);
  if (!when) return fail(when.error());
  household_ = std::move(*loaded);
  asked_ = *when;
  explain_start(*path);
  return {};
}

Status Runtime::load_to_write(bool keeping) {
  fetch_heap_at_once();
  auto path = book_path();
  if (!path) return fail(path.error());
  auto with = book_options();
  if (!with) return fail(with.error());
  auto opened = Book::open(*path, *with);
  if (!opened) return fail(opened.error());
  for (const std::string& line : opened->notes()) note(line);
  book_.emplace(std::move(*opened));
  Result<Household> loaded;
  if (book_->read_only() && (keeping || options.dry_run)) {
    loaded = book_->load();
  } else {
    auto begun = book_->begin_write();
    if (!begun) return fail(begun.error());
    write_.emplace(std::move(*begun));
    loaded = write_->load();
  }
  if (!loaded) {
    close();
    return fail(loaded.error());
  }
  auto when = ask(loaded->settings);
  if (!when) {
    close();
    return fail(when.error());
  }
  household_ = std::move(*loaded);
  asked_ = *when;
  explain_start(*path);
  return {};
}

// Where the answer comes from: the book and the day, and who named them.
void Runtime::explain_start(const std::string& path) {
  explain("the book is " + path + (!options.book.empty() ? ", named by --book" : env_.book ? ", named by LARDERLOOP_BOOK" : ", the one in the data folder"));
  explain("today is " + plain_day(asked_.today) + (!options.now.empty() ? ", named by --now" : env_.now ? ", named by LARDERLOOP_NOW" : ", by the clock") +
          (household_.settings.time_zone.empty() ? "" : ", in " + household_.settings.time_zone));
}

Status Runtime::finish_change(const Changes& changes, bool keeping) {
  apply_changes(household_, changes);
  // What only repeats what is written cannot make it inconsistent.
  std::vector<Problem> findings;
  if (!changes.empty()) findings = validate(household_);
  if (!findings.empty()) {
    close();
    Error error = make_error(
        ErrorKind::kBadData, "the book would not be consistent any more; nothing was changed",
        "mend what is named above, or see what is wrong already: larderloop check");
    error.problems = std::move(findings);
    return fail(std::move(error));
  }
  const bool writable = write_.has_value();
  if (writable && !changes.empty()) {
    if (Status applied = write_->apply(changes); !applied) {
      close();
      return applied;
    }
    if (!options.dry_run) {
      if (Status committed = write_->commit(); !committed) {
        close();
        return committed;
      }
    }
  }
  close();
  if (options.dry_run) {
    // The result of a format stays what it is; people read it in the first line.
    if (keeping || options.json)
      warn("Dry run: nothing was written.");
    else
      print("Dry run: nothing was written.\n");
  } else if (!writable && !changes.empty()) {
    note("The book can only be read: nothing was kept.");
  }
  return {};
}

void Runtime::close() {
  write_.reset();
  book_.reset();
}

}  // namespace larderloop::cli
