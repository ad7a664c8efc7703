// help.h - help texts, made from the same declarations that read the command line.
#pragma once

#include "cli/command.h"

#include <string>
#include <string_view>

namespace larderloop::cli {

// The heading of the global options.
inline constexpr std::string_view kEverywhere = "Options that work everywhere";

// Declares the options that work everywhere.
void add_global_options(CLI::App& app, GlobalOptions& options);

// Purpose, examples, the common commands, where to read more: for a call without a command.
[[nodiscard]] std::string short_help();
// All commands by group, and the options that work everywhere.
[[nodiscard]] std::string overview(const CLI::App& globals);
// One command: purpose, usage, examples, options by group, exit codes, manual.
[[nodiscard]] std::string help_of(const CLI::App& app);
// "larderloop lot add FOOD --units N --at PLACE [options]"
[[nodiscard]] std::string usage_of(const CLI::App& app);
// Version of the program, the book's schema, the licence.
[[nodiscard]] std::string version_text();

}  // namespace larderloop::cli
