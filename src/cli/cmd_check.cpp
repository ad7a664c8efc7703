// check: is the book sound? Changes nothing.
#include "cli/command.h"
#include "cli/exit_status.h"
#include "larderloop/app/check.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <CLI/CLI.hpp>

namespace larderloop::cli {
namespace {

constexpr std::size_t kShown = 20;

Result<int> check_book(Runtime& runtime) {
  auto path = runtime.book_path();
  if (!path) return fail(path.error());
  auto options = runtime.book_options();
  if (!options) return fail(options.error());
  auto book = Book::open_read_only(*path, *options);
  if (!book) return fail(book.error());
  auto of_file = book->check();
  if (!of_file) return fail(of_file.error());
  std::vector<Problem> found;
  for (const std::string& each : *of_file) found.push_back({*path, "", each, ""});
  auto household = book->load();
  if (!household) {
    // Findings of the file explain why it cannot be read; without any, the failure stands for
    // itself.
    if (found.empty()) return fail(household.error());
    found.push_back({*path, "", household.error().what, household.error().next_step});
  } else {
    std::vector<Problem> inside = check_household(*household);
    found.insert(found.end(), inside.begin(), inside.end());
  }
  auto asked = runtime.ask(household ? household->settings : Settings{});
  if (!asked) return fail(asked.error());
  if (runtime.options.json) {
    runtime.print_bytes(render_findings_json(found, asked->today));
  } else {
    runtime.print(render_findings(found, kShown));
  }
  if (!found.empty()) {
    runtime.warn(
        "nothing was changed; next: keep a copy of '" + *path +
        "', then restore a backup, or export what can be read: larderloop export -o rescued.json");
    return kSomething;
  }
  runtime.note(*path + " is sound: file, references and record");
  return kDone;
}

}  // namespace

Action add_check(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop check\nlarderloop --book household.book check --json\n",
                 "Looks at the file, the references between things, the record, and the review "
                 "rules. It never changes "
                 "anything.",
                 {{1, "something is wrong; it is listed"}}});
  return [&runtime] { return check_book(runtime); };
}

}  // namespace larderloop::cli
