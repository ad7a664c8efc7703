#include "cli/complete.h"

#include "cli/command.h"
#include "cli/help.h"
#include "cli/values.h"
#include "larderloop/app/by_hand.h"
#include "larderloop/core/stock.h"
#include "larderloop/render/by_hand.h"
#include "larderloop/render/wishes.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <set>

namespace larderloop::cli {
namespace {

using Candidates = std::vector<std::pair<std::string, std::string>>;

const Command* find_command(const std::string& name) {
  for (const Command& each : commands()) {
    if (each.name == name) return &each;
  }
  return nullptr;
}

// The next words of commands that begin with `words` (empty: first words), each once.
Candidates next_words(const std::string& words) {
  const std::string start = words.empty() ? "" : words + " ";
  Candidates all;
  for (const Command& each : commands()) {
    const std::string name(each.name);
    if (name.compare(0, start.size(), start) != 0) continue;
    const std::size_t end = name.find(' ', start.size());
    const std::string word = name.substr(start.size(), end - start.size());
    const auto same = [&](const auto& other) { return other.first == word; };
    if (std::any_of(all.begin(), all.end(), same)) continue;
    all.emplace_back(
        word, end == std::string::npos ? std::string(each.purpose) : std::string(each.group));
  }
  if (words.empty()) all.emplace_back("help", "Help for a command");
  return all;
}

template <class Values, class Name>
void add_names(Candidates& all, const Values& values, Name name) {
  for (const std::string& each : names_of(values, name)) all.emplace_back(each, "");
}

template <class Things>
void add_things(Candidates& all, const Things& things, bool also_retired) {
  for (const auto& each : things) {
    if (also_retired || !each.retired) all.emplace_back(each.key.str(), each.name);
  }
}

void add_lots(Candidates& all, const Household& household) {
  const auto ledger = replay(household);
  if (!ledger) return;
  std::set<LotId> lots;
  for (const auto& [at, amount] : ledger->stock()) lots.insert(at.lot);
  for (const LotId id : lots) {
    const Lot& lot = *find_lot(household, id);
    all.emplace_back(
        std::to_string(id.value()),
        find_food(household, lot.food)->name + (lot.mark.text.empty() ? "" : ", " + lot.mark.text));
  }
}

// What a value of this type may be ("FOOD", "MEALS"); `command` settles what words such as KIND
// mean.
Candidates values_of(const std::string& type, const std::string& command,
                     const Household* household) {
  Candidates all;
  if (type == "MEAL" || type == "MEALS") add_names(all, kAllMeals, meal_name);
  if (type == "ROLE" || type == "ROLES") add_names(all, kAllRoles, role_name);
  if (type == "DIETS") add_names(all, kAllDiets, diet_name);
  if (type == "KEYS") {
    for (const std::string& each : known_allergens()) all.emplace_back(each, "");
  }
  if (type == "RULE") {
    for (const std::string& each : review_rule_words()) all.emplace_back(each, "");
  }
  if (type == "SETTING") {
    for (const SettingInfo& each : setting_infos())
      all.emplace_back(dashed(each.name), std::string(each.meaning));
  }
  if (type == "DAYS" && command == "meals set") {
    for (const char* each : {"daily", "weekdays", "weekends", "monday", "tuesday", "wednesday",
                             "thursday", "friday", "saturday", "sunday"})
      all.emplace_back(each, "");
  }
  if (type == "KIND") {
    if (command.rfind("place", 0) == 0)
      add_names(all, kAllPlaceKinds, place_kind_name);
    else if (command.rfind("wish", 0) == 0)
      add_names(all, kAllWishKinds, wish_kind_name);
    else if (command == "lot add" || command == "lot date" || command == "lot change")
      add_names(all, kAllMarkKinds, mark_kind_name);
    else
      add_names(all, kAllFoodKinds, food_kind_name);
  }
  if (type == "DETAIL") add_names(all, kAllFeedDetails, feed_detail_name);
  if (type == "WHEN") all = {{"auto", ""}, {"always", ""}, {"never", ""}};
  if (type == "WHAT" && command == "picture") all = {{"timeline", ""}, {"stock", ""}, {"history", ""}};
  if (type == "SHEET") add_names(all, kAllSheetKinds, sheet_kind_name);
  if (type == "SIGN") all = {{"comma", ""}, {"semicolon", ""}, {"tab", ""}, {"bar", ""}};
  if (type == "STATE") all = {{"ok", ""}, {"doubtful", ""}, {"recalled", ""}};
  if (household == nullptr) return all;
  const bool retired = command.find(" show") != std::string::npos ||
                       command.find(" retire") != std::string::npos ||
                       command.find(" change") != std::string::npos || command == "history";
  if (type == "FOOD" || type == "FOOD:NUMBER") add_things(all, household->foods, retired);
  if (type == "PLACE") add_things(all, household->places, retired);
  if (type == "PERSON" || type == "PEOPLE") add_things(all, household->people, retired);
  if (type == "PEOPLE" && command != "meals guests")
    all.insert(all.end(), {{"everyone", ""}, {"nobody", ""}});
  if (type == "KIT") {
    for (const PlaceKey& each : places_of_kind(*household, PlaceKind::kKit))
      all.emplace_back(each.str(), find_place(*household, each)->name);
  }
  if (type == "LOT") add_lots(all, *household);
  if (type == "LINE") {
    for (const MenuLine& each : household->menu)
      all.emplace_back(std::to_string(each.id.value()), menu_line_words(*household, each));
  }
  if (type == "MAPPING" || (type == "NAME" && command == "import")) {
    for (const ImportMapping& each : household->mappings)
      all.emplace_back(each.name, std::string(sheet_kind_name(each.sheet)));
  }
  if (type == "WISH") {
    for (const Wish& each : household->wishes)
      all.emplace_back(std::to_string(each.id.value()), wish_words(*household, each));
  }
  if (type == "ADDRESS") {
    for (const FeedAddress& each : household->feed_addresses) {
      if (!each.revoked_at) all.emplace_back(std::to_string(each.id.value()), each.name);
    }
  }
  if (type == "NUMBER" && command == "meals remove") {
    for (std::size_t index = 0; index < household->exceptions.size(); ++index)
      all.emplace_back(std::to_string(index + 1),
                       exception_words(*household, household->exceptions[index]));
  }
  return all;
}

const CLI::Option* option_named(const CLI::App& app, const std::string& word) {
  const std::string name = word.substr(0, word.find('='));
  for (const CLI::Option* option : app.get_options()) {
    if (!option->get_positional() && option->check_name(name)) return option;
  }
  return nullptr;
}

bool takes_value(const CLI::Option* option) {
  return option != nullptr && option->get_items_expected_max() > 0;
}

Candidates options_of(const CLI::App& app) {
  Candidates all;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames())
      all.emplace_back("--" + name, option->get_description());
  }
  return all;
}

// Everything typed before the current word, understood as far as it goes.
struct Typed {
  std::string command;        // as far as words were command words
  bool may_go_on = true;      // command words may still come
  std::size_t arguments = 0;  // positional ones that are complete
  std::string value_of;       // the type of the value that is being typed; empty: none
};

std::string positional_type(const CLI::App& app, std::size_t number) {
  for (const CLI::Option* option : app.get_options()) {
    if (!option->get_positional()) continue;
    if (number == 0 || option->get_expected_max() > 1) return option->get_name();
    --number;
  }
  return {};
}

Typed understand(const std::vector<std::string>& words, CLI::App& app, Runtime& runtime) {
  Typed typed;
  bool declared = false;
  for (std::size_t index = 0; index + 1 < words.size(); ++index) {
    const std::string& word = words[index];
    if (word.size() > 1 && word.front() == '-') {
      const CLI::Option* option = option_named(app, word);
      if (!takes_value(option) || word.find('=') != std::string::npos) continue;
      if (index + 2 == words.size())
        typed.value_of = option->get_type_name();
      else if (option->check_name("--book"))
        runtime.options.book = words[index + 1];
      ++index;
      continue;
    }
    const std::string longer = typed.command.empty() ? word : typed.command + " " + word;
    const bool begins = !next_words(longer).empty() && longer != "";
    if (typed.may_go_on && (find_command(longer) != nullptr || begins)) {
      typed.command = longer;
      typed.may_go_on = begins;
      if (const Command* command = find_command(longer); command != nullptr && !declared) {
        app.name(std::string(command->name));
        static_cast<void>(command->add(app, runtime));
        declared = true;
      }
    } else {
      typed.may_go_on = false;
      ++typed.arguments;
    }
  }
  return typed;
}

}  // namespace

int complete(const std::vector<std::string>& words, Runtime& runtime) {
  runtime.options.quiet = true;
  const std::string current = words.empty() ? std::string() : words.back();
  CLI::App app("", "");
  add_global_options(app, runtime.options);
  const Typed typed = understand(words, app, runtime);
  Candidates all;
  std::string before;  // of a list, what is complete
  std::string type = typed.value_of;
  if (type.empty() && current.rfind('-', 0) == 0) {
    all = options_of(app);
  } else {
    if (type.empty() && typed.may_go_on && typed.arguments == 0) all = next_words(typed.command);
    if (type.empty()) type = positional_type(app, typed.arguments);
    const std::size_t comma = current.rfind(',');
    if (comma != std::string::npos) before = current.substr(0, comma + 1);
    if (!type.empty()) {
      Candidates values;
      const auto read = runtime.read([&](const Household& household, Asked) -> Result<int> {
        values = values_of(type, typed.command, &household);
        return 0;
      });
      if (!read) values = values_of(type, typed.command, nullptr);
      all.insert(all.end(), values.begin(), values.end());
    }
  }
  std::string text;
  for (const auto& [value, meaning] : all) {
    if ((before + value).rfind(current, 0) != 0) continue;
    std::string line = meaning;
    std::replace_if(
        line.begin(), line.end(), [](char each) { return static_cast<unsigned char>(each) < ' '; },
        ' ');
    text += before + value + "\t" + line + "\n";
  }
  runtime.print_bytes(text);
  return 0;
}

}  // namespace larderloop::cli
