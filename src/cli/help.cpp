#include "cli/help.h"

#include "cli/exit_status.h"
#include "larderloop/store/book.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>
#include <sstream>

namespace larderloop::cli {
namespace {

constexpr std::size_t kWidth = 80;
constexpr std::size_t kOptionColumn = 28;

// Keeps the extra parts of a command's help with the command; the texts are made below.
class HelpKeeper : public CLI::Formatter {
 public:
  explicit HelpKeeper(Help help) : help_(std::move(help)) {}
  std::string make_help(const CLI::App* app, std::string /*name*/,
                        CLI::AppFormatMode /*mode*/) const override {
    return help_of(*app);
  }
  [[nodiscard]] const Help& help() const { return help_; }

 private:
  Help help_;
};

// Words of `text` in lines of at most kWidth cells, each after `indent` spaces; the first line goes
// on at column `used`.
std::string wrapped(std::string_view text, std::size_t indent, std::size_t used) {
  std::istringstream words{std::string(text)};
  std::string all;
  std::string word;
  std::size_t column = used;
  bool fresh = true;
  while (words >> word) {
    if (!fresh && column + 1 + word.size() > kWidth) {
      all += "\n" + std::string(indent, ' ');
      column = indent;
      fresh = true;
    }
    all += (fresh ? "" : " ") + word;
    column += word.size() + (fresh ? 0 : 1);
    fresh = false;
  }
  return all + "\n";
}

std::string lines_indented(const std::string& text) {
  std::istringstream lines(text);
  std::string all;
  for (std::string line; std::getline(lines, line);) all += "  " + line + "\n";
  return all;
}

// "-n, --dry-run", "    --units N"
std::string option_words(const CLI::Option& option) {
  std::string words =
      option.get_snames().empty() ? "    " : "-" + option.get_snames().front() + ", ";
  if (!option.get_lnames().empty()) words += "--" + option.get_lnames().front();
  if (option.get_items_expected_max() > 0) words += " " + option.get_type_name();
  return words;
}

std::string left_column(const std::string& words, std::string_view description) {
  std::string line = "  " + words;
  if (line.size() + 2 > kOptionColumn) {
    line += "\n" + std::string(kOptionColumn, ' ');
  } else {
    line += std::string(kOptionColumn - line.size(), ' ');
  }
  return line + wrapped(description, kOptionColumn, kOptionColumn);
}

// The command's own groups first; what works everywhere comes last.
std::string options_text(const CLI::App& app) {
  std::vector<std::string> groups = app.get_groups();
  std::stable_partition(groups.begin(), groups.end(),
                        [](const std::string& group) { return group != kEverywhere; });
  std::string all;
  for (const std::string& group : groups) {
    std::string lines;
    for (const CLI::Option* option : app.get_options()) {
      if (group.empty() || option->get_group() != group || option->get_positional()) continue;
      lines += left_column(option_words(*option), option->get_description());
    }
    if (!lines.empty()) all += "\n" + group + ":\n" + lines;
  }
  return all;
}

std::string positional_name(const CLI::Option& option) {
  std::string name = option.get_name();
  if (option.get_expected_max() > 1) name += "...";
  return option.get_required() ? name : "[" + name + "]";
}

}  // namespace

void set_help(CLI::App& app, Help help) {
  app.formatter(std::make_shared<HelpKeeper>(std::move(help)));
}

std::string usage_of(const CLI::App& app) {
  std::string usage = "larderloop " + app.get_name();
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) usage += " " + positional_name(*option);
  }
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional() || !option->get_required()) continue;
    usage += " --" + option->get_lnames().front() + " " + option->get_type_name();
  }
  return usage + " [options]";
}

std::string help_of(const CLI::App& app) {
  const auto keeper = std::dynamic_pointer_cast<HelpKeeper>(app.get_formatter());
  const Help help = keeper ? keeper->help() : Help{};
  std::string text = wrapped(app.get_description() + ".", 0, 0);
  text += "\nUsage: " + wrapped(usage_of(app), 7, 7);
  if (!help.examples.empty()) text += "\nExamples:\n" + lines_indented(help.examples);
  if (!help.details.empty()) text += "\n" + wrapped(help.details, 0, 0);
  std::string arguments;
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional())
      arguments += left_column(option->get_name(), option->get_description());
  }
  if (!arguments.empty()) text += "\nArguments:\n" + arguments;
  text += options_text(app);
  text += "\nExit codes:\n";
  auto exits = help.exits;
  for (const int common : {0, 2, 3, 4, 6, 7, 8}) {
    const bool own = std::any_of(exits.begin(), exits.end(),
                                 [&](const auto& each) { return each.first == common; });
    if (own) continue;
    for (const auto& [code, meaning] : exit_meanings()) {
      if (code == common) exits.emplace_back(code, std::string(meaning));
    }
  }
  std::sort(exits.begin(), exits.end());
  for (const auto& [code, meaning] : exits)
    text += "  " + std::to_string(code) + "  " + wrapped(meaning, 5, 5);
  return text + "\nManual: man larderloop\n";
}

std::string short_help() {
  return "larderloop keeps a household's grab-and-go food kit fresh: what is in it, what\n"
         "must leave it, who eats what when, and what to buy.\n"
         "\n"
         "Examples:\n"
         "  larderloop new household.book --from household.json\n"
         "  larderloop record eaten 17 2 --who mira\n"
         "\n"
         "Common commands: plan, review, shop, nudge, record, lot add.\n"
         "All commands: larderloop --help. One of them: larderloop help record eaten.\n"
         "Manual: man larderloop\n";
}

std::string overview(const CLI::App& globals) {
  std::string text =
      "larderloop keeps a household's grab-and-go food kit fresh.\n\nUsage: larderloop COMMAND "
      "[options] [arguments]\n\n"
      "The book is the household's file: everything larderloop knows. A kit is food and\n"
      "things packed for one purpose, in boxes and bags; its menu says what belongs in\n"
      "it. A lot is units of one food bought together with the same date. An entry is\n"
      "one line of the record of what happened to a lot; entries are never changed.\n";
  std::vector<std::string_view> groups;
  for (const Command& command : commands()) {
    if (std::find(groups.begin(), groups.end(), command.group) == groups.end())
      groups.push_back(command.group);
  }
  for (const std::string_view group : groups) {
    text += "\n" + std::string(group) + ":\n";
    for (const Command& command : commands()) {
      if (command.group == group) text += left_column(std::string(command.name), command.purpose);
    }
  }
  text += options_text(globals);
  text += "\nExit codes:\n";
  for (const auto& [code, meaning] : exit_meanings()) {
    const std::string number = std::to_string(code);
    text += "  " + number + std::string(5 - number.size(), ' ') + wrapped(meaning, 7, 7);
  }
  return text + "\nHelp for a command: larderloop help COMMAND. Manual: man larderloop\n";
}

std::string version_text() {
  return std::string("larderloop ") + LARDERLOOP_VERSION + "\nbook schema " +
         std::to_string(newest_schema()) + "\ncommand line by CLI11 " + CLI11_VERSION +
         "\nlicence Apache-2.0\n";
}

}  // namespace larderloop::cli
