// review walk: through a kit bag by bag, one line a lot, one key a line.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/kit_argument.h"
#include "cli/lines.h"
#include "larderloop/app/record.h"
#include "larderloop/core/words.h"
#include "larderloop/render/plan_json.h"

#include <CLI/CLI.hpp>

#include <charconv>
#include <memory>
#include <utility>

namespace larderloop::cli {
namespace {

struct WalkOptions {
  std::string kit;
  bool all = false;
  bool plain = false;
};

enum class Key { kThere, kMissing, kDamaged, kRedated, kEatNow, kLater, kUndo, kPause, kHelp, kUnknown };

Key key_of(char c) {
  switch (c) {
    case 't':
    case 'T':
    case ' ':
    case '\n':
    case '\r':
      return Key::kThere;
    case 'm':
    case 'M':
      return Key::kMissing;
    case 'd':
    case 'D':
      return Key::kDamaged;
    case 'r':
    case 'R':
      return Key::kRedated;
    case 'e':
    case 'E':
      return Key::kEatNow;
    case 'l':
    case 'L':
      return Key::kLater;
    case 'u':
    case 'U':
      return Key::kUndo;
    case 'p':
    case 'P':
    case 'q':
      return Key::kPause;
    case '?':
    case 'h':
      return Key::kHelp;
    default:
      return Key::kUnknown;
  }
}

constexpr std::string_view kHelp =
    "t or Enter there, m missing, d damaged, r date reads otherwise,\n"
    "e eat now (into the pantry), l later, u undo, p pause, ? help\n";

// Lines broken between words to fit a narrow screen; 0: as they are.
std::string fitted(const std::string& text, std::size_t width) {
  if (width == 0) return text;
  std::string out;
  std::size_t used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::size_t length = end - at;
    if (used > 0 && used + 1 + length > width) {
      out += "\n  ";
      used = 2;
    } else if (at > 0) {
      out += ' ';
      ++used;
    }
    out += text.substr(at, length);
    used += length;
    at = end + 1;
  }
  return out;
}

class Walk {
 public:
  Walk(const WalkOptions& given, Runtime& runtime, LineInput& input, PlaceKey kit) : given_(given), runtime_(runtime), input_(input), kit_(std::move(kit)) {}

  Result<int> run() {
    auto sheet = review_sheet(runtime_.household(), kit_, runtime_.asked().today);
    if (!sheet) return fail(sheet.error());
    for (const SheetPlace& place : sheet->places) {
      for (const SheetLine& line : place.lines) lines_.push_back(line);
    }
    places_ = sheet->places.size();
    say(std::string(kHelp));
    std::size_t at = 0;
    while (at < lines_.size()) {
      if (!given_.all && lines_[at].marked && again_ != at) {
        ++at;
        continue;
      }
      auto next = one(at);
      if (!next) return fail(next.error());
      if (paused_) break;
      at = *next;
    }
    return finish();
  }

 private:
  struct Step {
    std::size_t line = 0;
    Key key = Key::kThere;
    std::vector<EntryId> entries;
    std::optional<MarkWhat> before;
  };

  void say(const std::string& text) { runtime_.warn_lines(text); }

  // Writes, or under --dry-run only checks.
  template <class Task>
  auto change(Task&& task) -> Result<typename std::decay_t<decltype(task(std::declval<const Household&>(), std::declval<Asked>())->report)>> {
    if (!runtime_.options.dry_run) return runtime_.write(task);
    auto tried = runtime_.read(task);
    if (!tried) return fail(tried.error());
    return tried->report;
  }

  [[nodiscard]] std::string words_of(const SheetLine& line) const {
    const Household& household = runtime_.household();
    const Food& food = *find_food(household, line.food);
    std::string text = units_words(food, line.amount) + " " + food.name;
    if (line.at.opened_on) text += " (opened)";
    text += line.mark.day ? ", " + std::string(mark_kind_words(line.mark.kind)) + " " + plain_day(*line.mark.day) : ", no date";
    text += ", lot " + std::to_string(line.at.lot.value());
    if (line.leaves) text += " - comes out: " + std::string(line.reason == LeaveReason::kPast ? "past its date" : line.reason == LeaveReason::kTooOld ? "will not last" : "not to be used");
    return text;
  }

  void head(std::size_t at) {
    if (at > 0 && lines_[at - 1].at.place == lines_[at].at.place && headed_) return;
    headed_ = true;
    std::size_t number = 1;
    for (std::size_t each = 1; each <= at; ++each) {
      if (lines_[each].at.place != lines_[each - 1].at.place) ++number;
    }
    say("\n" + find_place(runtime_.household(), lines_[at].at.place)->name + " (" + std::to_string(number) + " of " + std::to_string(places_) + ")\n");
  }

  std::optional<char> key(const std::string& question) {
    if (input_.terminal() && !given_.plain) {
      auto pressed = input_.key([&] { say(question); });
      if (pressed) say(*pressed > ' ' && *pressed < '\x7F' ? std::string(1, *pressed) + "\n" : std::string("\n"));
      return pressed;
    }
    say(question);
    const auto line = input_.line();
    if (!line) return std::nullopt;
    return line->empty() ? '\n' : line->front();
  }

  // One line of the sheet; the index to go on with.
  Result<std::size_t> one(std::size_t at) {
    head(at);
    const SheetLine line = lines_[at];
    for (;;) {
      const auto pressed = key(fitted(words_of(line), runtime_.width()) + (given_.plain ? "\nThere, missing, damaged, redated, eat now, later, undo or pause: " : " ? "));
      if (!pressed) {
        paused_ = true;
        say("\n");
        return at;
      }
      switch (const Key what = key_of(*pressed)) {
        case Key::kHelp:
        case Key::kUnknown:
          say(std::string(kHelp));
          continue;
        case Key::kPause:
          paused_ = true;
          return at;
        case Key::kLater:
          if (Status written = write_waiting(); !written) return fail(written.error());
          later_ += 1;
          return at + 1;
        case Key::kUndo: {
          if (steps_.empty()) {
            say("nothing to undo since this walk was begun\n");
            continue;
          }
          return undo();
        }
        case Key::kEatNow: {
          if (Status written = write_waiting(); !written) return fail(written.error());
          auto done = eat_now(at);
          if (!done) return fail(done.error());
          return at + 1;
        }
        case Key::kThere:
        case Key::kMissing:
        case Key::kDamaged:
        case Key::kRedated: {
          auto done = mark(at, what);
          if (!done) return fail(done.error());
          if (*done) return at + 1;
          continue;
        }
      }
    }
  }

  // False: it was called off, or not understood.
  Result<bool> mark(std::size_t at, Key what) {
    const SheetLine& line = lines_[at];
    MarkRequest request;
    request.kit = kit_;
    request.at = line.at;
    request.what = what == Key::kThere ? MarkWhat::kThere : what == Key::kMissing ? MarkWhat::kMissing : what == Key::kDamaged ? MarkWhat::kDamaged : MarkWhat::kRedated;
    if (what == Key::kMissing || what == Key::kDamaged) {
      auto units = how_many(line);
      if (!units) return false;
      request.units = *units;
    }
    if (what == Key::kRedated) {
      say("The date as it is printed (Enter: leave it): ");
      const auto text = input_.line();
      if (!text || text->empty()) return false;
      const Lot& lot = *find_lot(runtime_.household(), line.at.lot);
      auto printed = read_printed(runtime_.household(), find_food(runtime_.household(), line.food), *text, MarkKind::kBestBefore, runtime_.asked().today, lot.received);
      if (!printed) {
        say("  " + printed.error().what + "; " + printed.error().next_step + "\n");
        return false;
      }
      request.mark = printed->mark;
      say("  read as " + std::string(mark_kind_words(printed->mark.kind)) + (printed->mark.day ? " " + plain_day(*printed->mark.day) : "") + "\n");
    }
    if (Status written = write_waiting(); !written) return fail(written.error());
    waiting_ = request;
    if (what == Key::kDamaged) say("  throw it out unopened\n");
    steps_.push_back({at, what, {}, line.marked});
    lines_[at].marked = request.what;
    return true;
  }

  // A mark is written with the next key, so that taking back the last one leaves nothing behind; the position would else count as looked at.
  // Whatever ends the walk writes it.
  Status write_waiting() {
    if (!waiting_) return {};
    const MarkRequest request = *std::exchange(waiting_, std::nullopt);
    auto done = change([&](const Household& household, Asked asked) { return mark_review(household, request, asked); });
    if (!done) return fail(done.error());
    return {};
  }

  // Absent inside: all of it. Nothing: not understood.
  std::optional<std::optional<std::int64_t>> how_many(const SheetLine& line) {
    const Food& food = *find_food(runtime_.household(), line.food);
    const std::int64_t there = line.amount.whole_units(food.servings);
    if (there < 2) return std::optional<std::int64_t>();
    say("How many of " + std::to_string(there) + "? (Enter: all) ");
    const auto text = input_.line();
    if (!text) return std::nullopt;
    if (text->empty() || *text == "all") return std::optional<std::int64_t>();
    std::int64_t units = 0;
    const auto read = std::from_chars(text->data(), text->data() + text->size(), units);
    if (read.ec == std::errc() && read.ptr == text->data() + text->size() && units >= 1 && units <= there) return std::optional<std::int64_t>(units);
    say("  from 1 to " + std::to_string(there) + "\n");
    return std::nullopt;
  }

  Result<int> eat_now(std::size_t at) {
    const SheetLine& line = lines_[at];
    RecordRequest request;
    request.kind = EntryKind::kMoved;
    request.lot = line.at.lot;
    request.amount = {AmountUnit::kAll, 0};
    request.at = line.at.place;
    request.which = line.at.opened_on ? Which::kOpened : Which::kSealed;
    request.note = "taken out at the review to be eaten now";
    auto moved = change([&](const Household& household, Asked asked) -> Result<Outcome<Recorded>> {
      auto pantry = pantry_place(household);
      if (!pantry) return fail(pantry.error());
      request.to = *pantry;
      return record(household, request, asked);
    });
    if (!moved) return fail(moved.error());
    say("  put it into " + find_place(runtime_.household(), *request.to)->name + "\n");
    Step step{at, Key::kEatNow, {}, line.marked};
    for (const Entry& entry : moved->entries) step.entries.push_back(entry.id);
    steps_.push_back(std::move(step));
    return 0;
  }

  Result<std::size_t> undo() {
    const Step step = steps_.back();
    const SheetLine& line = lines_[step.line];
    if (step.key == Key::kEatNow && !runtime_.options.dry_run) {
      std::vector<EntryId> entries(step.entries.rbegin(), step.entries.rend());
      auto back = runtime_.write([&](const Household& household, Asked asked) { return correct(household, entries, "undone at the review", asked); });
      if (!back) return fail(back.error());
    }
    const bool written = step.key != Key::kEatNow && !waiting_;
    waiting_.reset();  // there is one only of the last step
    if (written && step.key != Key::kThere) {
      MarkRequest request;
      request.kit = kit_;
      request.at = line.at;
      request.what = step.key == Key::kRedated ? MarkWhat::kRedated : MarkWhat::kThere;
      if (step.key == Key::kRedated) request.mark = line.mark;  // as it was known before
      auto back = change([&](const Household& household, Asked asked) { return mark_review(household, request, asked); });
      if (!back) return fail(back.error());
    }
    steps_.pop_back();
    lines_[step.line].marked = step.before;
    again_ = step.line;
    headed_ = false;
    say("  taken back\n");
    if (written && !step.before) say("  until you answer again it counts as there\n");
    return step.line;
  }

  Result<int> finish() {
    if (Status written = write_waiting(); !written) return fail(written.error());
    std::size_t count[5] = {0, 0, 0, 0, 0};
    for (const Step& step : steps_) count[static_cast<std::size_t>(step.key)] += 1;
    std::size_t open = 0;
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      bool done = lines_[at].marked.has_value();
      for (const Step& step : steps_) done = done || step.line == at;
      open += done ? 0 : 1;
    }
    if (runtime_.options.dry_run) runtime_.warn("Dry run: nothing was written.");
    if (runtime_.options.json) {
      auto sheet = review_sheet(runtime_.household(), kit_, runtime_.asked().today);
      if (!sheet) return fail(sheet.error());
      runtime_.print_bytes(render_review_sheet_json(runtime_.household(), *sheet, runtime_.asked().today));
    } else {
      runtime_.print("Walked: " + std::to_string(count[0]) + " there, " + std::to_string(count[1]) + " missing, " + std::to_string(count[2]) + " damaged, " +
                     std::to_string(count[3]) + " with another date, " + std::to_string(count[4]) + " to eat now; " + std::to_string(open) + " not looked at.\n");
    }
    if (open > 0) runtime_.note("go on where you left off: larderloop review walk " + kit_.str());
    else runtime_.note("all was looked at; next: larderloop review finish " + kit_.str());
    return 0;
  }

  const WalkOptions& given_;
  Runtime& runtime_;
  LineInput& input_;
  PlaceKey kit_;
  std::vector<SheetLine> lines_;
  std::vector<Step> steps_;
  std::optional<MarkRequest> waiting_;
  std::optional<std::size_t> again_;
  std::size_t places_ = 0;
  std::size_t later_ = 0;
  bool headed_ = false;
  bool paused_ = false;
};

}  // namespace

Action add_review_walk(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<WalkOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out when there is only one");
  app.add_flag("--all", given->all, "Also what was marked before");
  app.add_flag("--plain", given->plain, "Whole words, and Enter behind every answer: for screen readers");
  set_help(app,
           {"larderloop review walk\nlarderloop review walk home-kit --plain\n"
            "printf 't\\nm\\n1\\nt\\np\\n' | larderloop review walk home-kit\n",
            "Goes through the kit bag by bag in packing order, begins the review if need be, and writes down every mark as you go: stop when "
            "you like, and begin again where you left off. Keys: t or Enter there, m missing, d damaged, r the date reads otherwise, e eat now, "
            "l later, u undo, p pause. What is to be eaten now goes into the pantry by the book. Without a terminal each answer is a "
            "line. Tins and packs that bulge, leak, are cracked, rusted or badly dented are damaged: throw them out unopened.",
            {}});
  return [given, &runtime]() -> Result<int> {
    auto input = LineInput::open("");
    if (!input) return fail(input.error());
    PlaceKey kit;
    const auto begin = [&](const Household& household, Asked asked) -> Result<Outcome<ReviewStarted>> {
      auto named = kit_named(household, given->kit);
      if (!named) return fail(named.error());
      kit = *named;
      return start_review(household, kit, asked);
    };
    Result<ReviewStarted> started;
    if (runtime.options.dry_run) {
      auto tried = runtime.read(begin);
      if (!tried) return fail(tried.error());
      if (!tried->report.already_open) {
        return fail(ErrorKind::kBadData, "no review of '" + kit.str() + "' has been started, so there is nothing to try", "start one: larderloop review start " + kit.str());
      }
    } else {
      started = runtime.write(begin);
      if (!started) return fail(started.error());
    }
    return Walk(*given, runtime, *input, kit).run();
  };
}

}  // namespace larderloop::cli
