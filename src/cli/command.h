// command.h - a command is one row of commands() and one file cmd_<name>.cpp with its add function.
// To add one: write cmd_x.cpp with `Action add_x(CLI::App&, Runtime&)`, declare it in commands.cpp
// and give it a row there.
#pragma once

#include "larderloop/cli/runtime.h"
#include "larderloop/core/result.h"

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace CLI {
class App;
}

namespace larderloop::cli {

// Runs the command after its options were read; the value is the exit code (0, or 1 and 5 where the
// command says so).
using Action = std::function<Result<int>()>;

// `name`: one word, or object and verb ("lot add"). `group`: heading in the overview. `purpose`:
// one plain line without full stop. `add`: declares options and arguments on `app` (bound to a
// struct that the action shares) and returns the action. The global options are declared already.
// Values stay text; values.h reads them.
struct Command {
  std::string_view name;
  std::string_view group;
  std::string_view purpose;
  Action (*add)(CLI::App& app, Runtime& runtime);
};

// In the order of the overview.
[[nodiscard]] const std::vector<Command>& commands();

// What the help of a command shows besides its purpose and options. `examples`: whole command lines
// with real values, one a line. `details`: a paragraph. `exits`: exit codes with a meaning of their
// own, on top of the common ones.
struct Help {
  std::string examples;
  std::string details;
  std::vector<std::pair<int, std::string>> exits;
};
void set_help(CLI::App& app, Help help);

}  // namespace larderloop::cli
