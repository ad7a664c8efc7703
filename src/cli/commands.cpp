// commands.cpp - the table of commands; help, completions and manual follow it.
#include "cli/command.h"

namespace larderloop::cli {

Action add_backup(CLI::App& app, Runtime& runtime);
Action add_check(CLI::App& app, Runtime& runtime);
Action add_export(CLI::App& app, Runtime& runtime);
Action add_new(CLI::App& app, Runtime& runtime);

const std::vector<Command>& commands() {
  static const std::vector<Command> all = {
      {"new", "The book", "Make a book, empty or from a household document", add_new},
      {"export", "The book", "Write the whole book as a household document", add_export},
      {"check", "The book", "Look whether the book is sound", add_check},
      {"backup", "The book", "Copy the book, whole and checked", add_backup},
  };
  return all;
}

}  // namespace larderloop::cli
