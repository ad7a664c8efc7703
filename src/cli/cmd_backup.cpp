// backup: a consistent copy of the book.
#include "cli/command.h"
#include "larderloop/render/done_json.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>

namespace larderloop::cli {

Action add_backup(CLI::App& app, Runtime& runtime) {
  auto target = std::make_shared<std::string>();
  app.add_option("FILE", *target, "The file to make; it must not exist")->required();
  set_help(app, {"larderloop backup household-2027-03-15.book\n",
                 "The copy is a whole book: use it with --book. It is checked before this command "
                 "says it is done.",
                 {}});
  return [target, &runtime]() -> Result<int> {
    auto path = runtime.book_path();
    if (!path) return fail(path.error());
    auto options = runtime.book_options();
    if (!options) return fail(options.error());
    auto book = Book::open_read_only(*path, *options);
    if (!book) return fail(book.error());
    if (runtime.options.dry_run) {
      std::error_code ignored;
      if (std::filesystem::exists(*target, ignored)) {
        return fail(ErrorKind::kBadData, "'" + *target + "' exists already", "name another file");
      }
      if (runtime.options.json)
        runtime.warn("Dry run: nothing was written.");
      else
        runtime.print("Dry run: nothing was written.\n");
      return 0;
    }
    if (Status copied = book->backup(*target); !copied) return fail(copied.error());
    if (runtime.options.json) {
      auto household = book->load();
      if (!household) return fail(household.error());
      auto asked = runtime.ask(household->settings);
      if (!asked) return fail(asked.error());
      runtime.print_bytes(render_book_copied_json(*path, *target, asked->today));
    }
    runtime.note("copied " + *path + " to " + *target + "; try it: larderloop --book " + *target +
                 " check");
    return 0;
  };
}

}  // namespace larderloop::cli
