// new: makes a book, empty or from a household document.
#include "cli/command.h"
#include "cli/files.h"
#include "larderloop/app/check.h"
#include "larderloop/calendar/ics.h"
#include "larderloop/intake/document.h"
#include "larderloop/render/done_json.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>

namespace larderloop::cli {
namespace {

struct NewOptions {
  std::string book;
  std::string from;
};

Result<Household> household_for(const NewOptions& given) {
  Household household;
  if (!given.from.empty()) {
    auto text = read_input(given.from);
    if (!text) return fail(text.error());
    auto parsed = parse_document(*text);
    if (!parsed) return fail(parsed.error());
    household = std::move(*parsed);
  }
  if (household.book_id.empty()) household.book_id = random_uuid();
  if (std::vector<Problem> findings = check_household(household); !findings.empty()) {
    Error error =
        make_error(ErrorKind::kBadData, "the household is not consistent; no book was made",
                   "mend what is named above and try again");
    error.problems = std::move(findings);
    return fail(std::move(error));
  }
  return household;
}

std::string counted(std::size_t number, const std::string& one, const std::string& many) {
  return std::to_string(number) + " " + (number == 1 ? one : many);
}

std::string contents_words(const Household& household) {
  return counted(household.people.size(), "person", "people") + ", " +
         counted(household.foods.size(), "food", "foods") + ", " +
         counted(household.places.size(), "place", "places") + ", " +
         counted(household.lots.size(), "lot", "lots") + ", " +
         counted(household.entries.size(), "entry", "entries");
}

Result<int> make_book(const NewOptions& given, Runtime& runtime) {
  std::string path = given.book;
  if (path.empty()) {
    auto standard = runtime.book_path();
    if (!standard) return fail(standard.error());
    path = *standard;
  }
  auto household = household_for(given);
  if (!household) return fail(household.error());
  auto options = runtime.book_options();
  if (!options) return fail(options.error());
  std::error_code ignored;
  if (std::filesystem::exists(path, ignored)) {
    return fail(ErrorKind::kBadData, "'" + path + "' exists already; it was left as it is",
                "name another file, or use that book: larderloop --book " + path + " check");
  }
  if (runtime.options.dry_run) {
    if (runtime.options.json)
      runtime.warn("Dry run: nothing was written.");
    else
      runtime.print("Dry run: nothing was written.\n");
    runtime.note("would make the book " + path + ": " + contents_words(*household));
    return 0;
  }
  if (given.book.empty()) {
    if (Status made = make_folder_of(path); !made) return fail(made.error());
  }
  if (Status created = Book::create(path, *household, *options); !created)
    return fail(created.error());
  if (runtime.options.json) {
    auto asked = runtime.ask(household->settings);
    if (!asked) return fail(asked.error());
    runtime.print_bytes(render_book_made_json(path, *household, asked->today));
  }
  runtime.note("made the book " + path + ": " + contents_words(*household));
  runtime.note(household->people.empty() ? "next: larderloop --book " + path + " person add NAME"
                                         : "next: larderloop --book " + path + " plan");
  return 0;
}

}  // namespace

Action add_new(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<NewOptions>();
  app.add_option(
      "BOOK", given->book,
      "The file to make (else --book, LARDERLOOP_BOOK, or household.book in the data folder)");
  app.add_option("--from", given->from, "A household document (JSON); - is standard input")
      ->type_name("FILE");
  set_help(app, {"larderloop new household.book --from household.json\n"
                 "larderloop new car.book\n"
                 "gunzip -c household.json.gz | larderloop new household.book --from -\n",
                 "Without --from the book is empty. A document with anything wrong makes no book; "
                 "everything that is "
                 "wrong with it is listed.",
                 {{4, "the document was not found"}}});
  return [given, &runtime] { return make_book(*given, runtime); };
}

}  // namespace larderloop::cli
