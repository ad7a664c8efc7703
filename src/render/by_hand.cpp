#include "larderloop/render/by_hand.h"

#include "larderloop/app/by_hand.h"
#include "larderloop/core/lowered.h"
#include "larderloop/render/table.h"
#include "render/json_common.h"
#include "render/plain.h"

#include <algorithm>

namespace larderloop {
namespace {

std::string spaced(std::string_view name) {
  std::string all(name);
  std::replace(all.begin(), all.end(), '_', ' ');
  return all;
}

std::string what_of(const Household& household, const MenuLine& line) {
  if (line.ml > 0)
    return plain::litres(line.ml) + " of " +
           (line.role ? spaced(role_name(*line.role)) : plain::food(household, line.food));
  return std::to_string(line.units) + " " +
         (line.role ? spaced(role_name(*line.role)) : plain::food(household, line.food));
}

std::string whom_of(const Household& household, const MenuLine& line) {
  if (line.everyone) return "everyone";
  return line.people.empty() ? "the kit" : plain::people(household, line.people);
}

std::string meals_words(const std::set<Meal>& meals) {
  std::string all;
  for (const Meal meal : meals) all += (all.empty() ? "" : ", ") + std::string(meal_name(meal));
  return all;
}

json::Json meal_list(const std::set<Meal>& meals) {
  json::Json all = json::Json::array();
  for (const Meal meal : meals) all.push_back(meal_name(meal));
  return all;
}

}  // namespace

std::string menu_line_words(const Household& household, const MenuLine& line) {
  std::string words;
  if (line.day > 0) words += "day " + std::to_string(line.day) + ", ";
  if (line.meal) words += std::string(meal_name(*line.meal)) + ", ";
  return words + what_of(household, line) + " for " + whom_of(household, line) + ", in " +
         plain::place(household, line.place);
}

std::string render_menu(const Household& household, const std::vector<MenuLine>& lines,
                        std::size_t width) {
  Table table({{"LINE", Align::kRight},
               {"WHERE"},
               {"FOR"},
               {"DAY", Align::kRight},
               {"MEAL"},
               {"WHAT"},
               {"PRIORITY", Align::kRight}});
  for (const MenuLine& line : lines) {
    table.add({std::to_string(line.id.value()), plain::place(household, line.place),
               whom_of(household, line), line.day == 0 ? "any" : std::to_string(line.day),
               line.meal ? std::string(meal_name(*line.meal)) : "", what_of(household, line),
               line.priority == 0 ? "" : std::to_string(line.priority)});
  }
  return table.text(width);
}

std::string render_menu_json(const std::vector<MenuLine>& lines, Day as_of) {
  json::Json all = json::Json::array();
  for (const MenuLine& line : lines) {
    json::Json item;
    item["menu_line"] = line.id.value();
    item["place"] = line.place.str();
    item["everyone"] = line.everyone;
    item["people"] = json::keys(line.people);
    item["day"] = line.day;
    item["meal"] = json::text_or_null(line.meal ? meal_name(*line.meal) : "");
    item["role"] = json::text_or_null(line.role ? role_name(*line.role) : "");
    item["food"] = json::text_or_null(line.food.str());
    item["units"] = line.ml > 0 ? json::Json() : json::Json(line.units);
    item["water"] =
        json::quantity(line.ml > 0 ? std::optional<std::int64_t>(line.ml) : std::nullopt, "ml");
    item["priority"] = line.priority == 0 ? json::Json() : json::Json(line.priority);
    all.push_back(std::move(item));
  }
  return json::document("menu", as_of, std::move(all));
}

std::string exception_words(const Household& household, const TableException& exception) {
  std::string words;
  if (exception.nobody) words = "nobody eats at home";
  if (!exception.away.empty()) words = "away: " + plain::people(household, exception.away);
  if (!exception.guests.empty())
    words += std::string(words.empty() ? "" : "; ") +
             "guests: " + plain::people(household, exception.guests);
  words += exception.from == exception.through
               ? " on " + plain_day(exception.from)
               : " from " + plain_day(exception.from) + " through " + plain_day(exception.through);
  if (!exception.meals.empty()) words += " at " + meals_words(exception.meals);
  return words;
}

std::string render_meals(const Household& household, std::size_t width) {
  Table week({{"DAY"}, {"MEAL"}, {"AT THE TABLE"}});
  for (const TableSeat& seat : household.table)
    week.add({std::string(weekday_name(seat.weekday)), std::string(meal_name(seat.meal)),
              plain::people(household, seat.people)});
  std::string text = week.text(width);
  Table otherwise({{"NUMBER", Align::kRight}, {"OTHERWISE"}, {"NOTE"}});
  for (std::size_t index = 0; index < household.exceptions.size(); ++index) {
    const TableException& each = household.exceptions[index];
    otherwise.add({std::to_string(index + 1), exception_words(household, each), each.note});
  }
  return otherwise.empty() ? text : text + "\n" + otherwise.text(width);
}

std::string render_meals_json(const Household& household, Day as_of) {
  json::Json data;
  data["table"] = json::Json::array();
  for (const TableSeat& seat : household.table) {
    json::Json item;
    item["weekday"] = lowered(weekday_name(seat.weekday));
    item["meal"] = meal_name(seat.meal);
    item["people"] = json::keys(seat.people);
    data["table"].push_back(std::move(item));
  }
  data["exceptions"] = json::Json::array();
  for (std::size_t index = 0; index < household.exceptions.size(); ++index) {
    const TableException& each = household.exceptions[index];
    json::Json item;
    item["number"] = index + 1;
    item["from"] = iso_day(each.from);
    item["through"] = iso_day(each.through);
    item["meals"] = meal_list(each.meals);
    item["nobody"] = each.nobody;
    item["away"] = json::keys(each.away);
    item["guests"] = json::keys(each.guests);
    item["note"] = json::text_or_null(each.note);
    data["exceptions"].push_back(std::move(item));
  }
  return json::document("meals", as_of, std::move(data));
}

std::string render_settings(const Settings& settings, std::size_t width) {
  Table table({{"SETTING"}, {"VALUE"}, {"WHAT IT MEANS"}});
  const Settings usual;
  for (const SettingInfo& info : setting_infos()) {
    std::string name(info.name);
    std::replace(name.begin(), name.end(), '_', '-');
    const std::string value = setting_text(settings, info.name);
    table.add({name, value + (value == setting_text(usual, info.name) ? " (usual)" : ""),
               std::string(info.meaning)});
  }
  return table.text(width);
}

std::string render_settings_json(const Settings& settings, Day as_of) {
  json::Json data;
  for (const SettingInfo& info : setting_infos())
    data[std::string(info.name)] = setting_text(settings, info.name);
  return json::document("settings", as_of, std::move(data));
}

std::string render_review_rules(const Household& household, const std::vector<ReviewRule>& rules,
                                std::size_t width) {
  Table table({{"KIT"}, {"RULE"}, {"FIRST REVIEW"}, {"SLACK DAYS", Align::kRight}});
  for (const ReviewRule& each : rules) {
    table.add({plain::place(household, each.kit), each.rule, plain_day(each.starts),
               std::to_string(each.slack_days.value_or(household.settings.slack_days))});
  }
  return table.text(width);
}

std::string render_review_rules_json(const std::vector<ReviewRule>& rules, Day as_of) {
  json::Json all = json::Json::array();
  for (const ReviewRule& each : rules) {
    json::Json item;
    item["kit"] = each.kit.str();
    item["rule"] = each.rule;
    item["starts"] = iso_day(each.starts);
    item["slack_days"] = each.slack_days ? json::Json(*each.slack_days) : json::Json();
    all.push_back(std::move(item));
  }
  return json::document("review_rules", as_of, std::move(all));
}

std::string render_retired_json(const std::string& kind, const std::string& key,
                                const std::string& name, const std::optional<Day>& retired,
                                Day as_of) {
  json::Json data;
  data["kind"] = kind;
  data["key"] = key;
  data["name"] = name;
  data["retired"] = json::day(retired);
  return json::document("retired", as_of, std::move(data));
}

}  // namespace larderloop
