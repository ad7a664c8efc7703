#include "larderloop/cli/program.h"

#include "cli/command.h"
#include "cli/complete.h"
#include "cli/exit_status.h"
#include "cli/help.h"
#include "larderloop/cli/runtime.h"
#include "larderloop/core/validate.h"
#include "larderloop/render/terminal_text.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <exception>
#include <optional>
#include <set>

namespace larderloop::cli {
namespace {

bool is_option(const std::string& word) {
  return word.size() > 1 && word.front() == '-';
}
bool takes_value(const std::string& option) {
  return option == "--book" || option == "--now" || option == "--color";
}

// The command that the words name, and everything else of the line in its order.
struct Called {
  const Command* command = nullptr;
  std::string words;  // as far as they were command words
  std::vector<std::string> rest;
};

const Command* find_command(std::string_view name) {
  const auto& all = commands();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Command& each) { return each.name == name; });
  return found == all.end() ? nullptr : &*found;
}

bool begins_commands(const std::string& words) {
  return std::any_of(commands().begin(), commands().end(), [&](const Command& each) {
    return each.name.substr(0, words.size() + 1) == words + " ";
  });
}

// The words that may follow `words` (empty: first words), each once.
std::vector<std::string> next_words(const std::string& words) {
  std::set<std::string> all;
  const std::string start = words.empty() ? "" : words + " ";
  for (const Command& each : commands()) {
    const std::string name(each.name);
    if (name.compare(0, start.size(), start) != 0) continue;
    all.insert(name.substr(start.size(), name.find(' ', start.size()) - start.size()));
  }
  if (words.empty()) all.insert("help");
  return {all.begin(), all.end()};
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : std::string(between)) + word;
  return all;
}

Error unknown_command(const std::string& before, const std::string& word) {
  const std::string whole = before.empty() ? word : before + " " + word;
  const std::string near = nearest(word, next_words(before));
  std::string hint = "see all commands: larderloop --help";
  if (!near.empty()) {
    hint = "did you mean '" + (before.empty() ? near : before + " " + near) + "'?";
  } else if (!before.empty()) {
    hint = "after '" + before + "' comes one of " + joined(next_words(before), ", ");
  }
  return make_error(ErrorKind::kUsage, "there is no command '" + whole + "'", hint);
}

Result<Called> find_called(const std::vector<std::string>& arguments) {
  Called called;
  bool open = true;  // command words may still come
  for (std::size_t index = 0; index < arguments.size(); ++index) {
    const std::string& word = arguments[index];
    if (!open || word == "--" || is_option(word)) {
      if (word == "--") open = false;
      called.rest.push_back(word);
      if (open && takes_value(word) && index + 1 < arguments.size())
        called.rest.push_back(arguments[++index]);
      continue;
    }
    const std::string longer = called.words.empty() ? word : called.words + " " + word;
    if (const Command* found = find_command(longer)) {
      called.command = found;
      called.words = longer;
      open = begins_commands(longer);
    } else if (begins_commands(longer)) {
      called.words = longer;
    } else if (called.command != nullptr) {
      open = false;
      called.rest.push_back(word);
    } else if (called.words.empty() && word == "help") {
      called.words = "help";
      called.rest.insert(called.rest.end(),
                         arguments.begin() + static_cast<std::ptrdiff_t>(index) + 1,
                         arguments.end());
      return called;
    } else {
      return fail(unknown_command(called.words, word));
    }
  }
  return called;
}

// What the parser complains about, in our words and with our codes.
Error usage_error(const CLI::App& app, const CLI::ParseError& error) {
  const std::string usage = "usage: " + usage_of(app);
  for (const std::string& word : app.remaining()) {
    if (!is_option(word)) continue;
    std::vector<std::string> known;
    for (const CLI::Option* option : app.get_options()) {
      for (const std::string& name : option->get_lnames()) known.push_back("--" + name);
    }
    const std::string name = word.substr(0, word.find('='));
    const std::string near = nearest(name, known);
    return make_error(ErrorKind::kUsage, "there is no option '" + name + "' here",
                      near.empty() ? "see the options: larderloop " + app.get_name() + " --help"
                                   : "did you mean '" + near + "'?");
  }
  if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr && !app.remaining().empty()) {
    return make_error(ErrorKind::kUsage,
                      "'" + app.remaining().front() + "' is one argument too many", usage);
  }
  std::string what = error.what();
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    return make_error(ErrorKind::kUsage, "'" + what.substr(0, what.find(' ')) + "' is missing",
                      usage);
  }
  if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
    return make_error(ErrorKind::kUsage,
                      "'" + what.substr(0, what.find(':')) + "' needs exactly one value", usage);
  }
  return make_error(ErrorKind::kUsage, what, usage);
}

int run_command(const Command& command, std::vector<std::string> rest, Runtime& runtime) {
  CLI::App app(std::string(command.purpose), std::string(command.name));
  add_global_options(app, runtime.options);
  const Action action = command.add(app, runtime);
  try {
    std::reverse(rest.begin(), rest.end());  // the parser takes them from the back
    app.parse(std::move(rest));
  } catch (const CLI::CallForHelp&) {
    runtime.print_bytes(help_of(app));
    return kDone;
  } catch (const CLI::CallForVersion&) {
    runtime.print_bytes(version_text());
    return kDone;
  } catch (const CLI::ParseError& error) {
    return runtime.report(usage_error(app, error));
  }
  const std::string& color = runtime.options.color;
  if (color != "auto" && color != "always" && color != "never") {
    runtime.options.color = "auto";
    return runtime.report(make_error(ErrorKind::kUsage, "cannot read --color '" + color + "'",
                                     "write auto, always or never"));
  }
  auto done = action();
  return done ? *done : runtime.report(done.error());
}

// Without a command: help, the version, or what is wrong with the options.
int run_without_command(const Called& called, Runtime& runtime) {
  CLI::App app("", "");
  add_global_options(app, runtime.options);
  auto rest = called.rest;
  std::reverse(rest.begin(), rest.end());
  try {
    app.parse(std::move(rest));
  } catch (const CLI::CallForHelp&) {
    if (!called.words.empty()) return runtime.report(unknown_command(called.words, "--help"));
    runtime.print_bytes(overview(app));
    return kDone;
  } catch (const CLI::CallForVersion&) {
    runtime.print_bytes(version_text());
    return kDone;
  } catch (const CLI::ParseError& error) {
    return runtime.report(usage_error(app, error));
  }
  if (!called.words.empty()) {
    return runtime.report(make_error(ErrorKind::kUsage,
                                     "'" + called.words + "' needs a second word",
                                     "one of " + joined(next_words(called.words), ", ")));
  }
  if (runtime.options.json) {
    return runtime.report(make_error(ErrorKind::kUsage, "no command was given",
                                     "see all commands: larderloop --help"));
  }
  runtime.warn_lines(short_help());
  return kUsageExit;
}

int run_help(const std::vector<std::string>& words, Runtime& runtime) {
  CLI::App globals("", "");
  add_global_options(globals, runtime.options);
  std::vector<std::string> names;
  std::copy_if(words.begin(), words.end(), std::back_inserter(names),
               [](const std::string& word) { return !is_option(word); });
  if (names.empty()) {
    runtime.print_bytes(overview(globals));
    return kDone;
  }
  const std::string name = joined(names, " ");
  if (const Command* command = find_command(name)) {
    CLI::App app(std::string(command->purpose), std::string(command->name));
    add_global_options(app, runtime.options);
    const Action unused = command->add(app, runtime);
    runtime.print_bytes(help_of(app));
    return kDone;
  }
  if (!begins_commands(name)) {
    const std::string before =
        names.size() > 1 && begins_commands(names.front()) ? names.front() : "";
    return runtime.report(unknown_command(before, before.empty() ? names.front() : names[1]));
  }
  std::string text = "Commands of '" + name + "':\n";
  for (const Command& each : commands()) {
    if (each.name.substr(0, name.size() + 1) == name + " ") {
      text += "  " + std::string(each.name) + ": " + std::string(each.purpose) + "\n";
    }
  }
  runtime.print_bytes(text);
  return kDone;
}

int dispatch(const std::vector<std::string>& arguments, Runtime& runtime) {
  // Known before parsing, so that a wrong command line is reported in the form that was asked for.
  const auto options_end = std::find(arguments.begin(), arguments.end(), "--");
  runtime.options.json = std::find(arguments.begin(), options_end, "--json") != options_end;
  // What is typed may end up in the book, and the book is UTF-8.
  for (const std::string& each : arguments) {
    if (is_utf8(each)) continue;
    return runtime.report(make_error(ErrorKind::kBadData, "'" + each + "' is not UTF-8 text",
                                     "type it in a UTF-8 terminal"));
  }
  // For the shells' completion; not a command for people.
  if (arguments.size() >= 2 && arguments[0] == "complete" && arguments[1] == "--")
    return complete({arguments.begin() + 2, arguments.end()}, runtime);
  auto called = find_called(arguments);
  if (!called) return runtime.report(called.error());
  if (called->words == "help") return run_help(called->rest, runtime);
  if (called->command == nullptr) {
    // "lot --help" lists the verbs of lot.
    const bool asks_help =
        std::any_of(called->rest.begin(), called->rest.end(),
                    [](const std::string& each) { return each == "-h" || each == "--help"; });
    if (asks_help && !called->words.empty()) return run_help({called->words}, runtime);
    return run_without_command(*called, runtime);
  }
  return run_command(*called->command, called->rest, runtime);
}

}  // namespace

void add_global_options(CLI::App& app, GlobalOptions& options) {
  const std::string group(kEverywhere);
  app.add_option("--book", options.book,
                 "The book (else LARDERLOOP_BOOK, else household.book in the data folder)")
      ->type_name("FILE")
      ->group(group);
  app.add_option("--now", options.now,
                 "Work as on this day, or at this instant (else LARDERLOOP_NOW, else the clock)")
      ->type_name("DATE")
      ->group(group);
  app.add_flag("-n,--dry-run", options.dry_run, "Check and show everything, write nothing")
      ->group(group);
  app.add_flag("--json", options.json,
               "The result as JSON; a failure as a JSON object on standard error")
      ->group(group);
  app.add_flag("-q,--quiet", options.quiet, "Do not say what was changed")->group(group);
  app.add_flag("-v,--verbose", options.verbose, "Say which book and which day are used, and more where there is more to tell")->group(group);
  app.add_option("--color", options.color, "auto, always or never")
      ->type_name("WHEN")
      ->group(group);
  app.add_flag("--no-input", options.no_input, "Never ask")->group(group);
  app.add_flag("-y,--yes", options.yes, "Answer yes to every question")->group(group);
  app.set_help_flag("-h,--help", "Show this help")->group(group);
  app.set_version_flag("-V,--version", std::function<std::string()>(version_text),
                       "Show the version")
      ->group(group);
}

int run_program(std::vector<std::string> arguments) {
  Runtime runtime(read_environment());
  int code = kDefectExit;
  try {
    code = dispatch(arguments, runtime);
  } catch (const std::exception& error) {
    code = runtime.report(
        make_error(ErrorKind::kDefect, std::string("the program failed: ") + error.what(),
                   "this is a defect; please report the command and this message"));
  }
  return runtime.finish(code);
}

}  // namespace larderloop::cli
