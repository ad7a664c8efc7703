// by_hand.h - what a household writes down of itself besides people, foods, places and lots: the
// menus of its kits, its week at the table, its settings, when kits are reviewed, and what is kept
// no more. Every function gives the changes; what contradicts the rest of the book is found when
// they are written (core/validate.h).
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

// "3" or "#3". kNotFound: there is no such line.
[[nodiscard]] Result<MenuLine> named_menu_line(const Household& household, std::string_view text);
// A line of a kit menu. An empty id: a new line, numbered here; else it replaces the one of that
// id.
[[nodiscard]] Outcome<MenuLine> save_menu_line(const Household& household, MenuLine line);
// Takes lines out and reports them. kBadData: one named twice.
[[nodiscard]] Result<Outcome<std::vector<MenuLine>>> remove_menu_lines(
    const Household& household, const std::vector<MenuLine>& lines);

// These people, and nobody else, are usually at the table then. Nobody: the meal is taken out.
[[nodiscard]] Outcome<std::vector<TableSeat>> set_table(const Household& household,
                                                        const std::set<Weekday>& weekdays,
                                                        const std::set<Meal>& meals,
                                                        std::vector<PersonKey> people);
// A time when it is otherwise. kBadData: the very same is there already.
[[nodiscard]] Result<Outcome<TableException>> add_exception(const Household& household,
                                                            TableException exception);
// Takes exceptions out by their numbers, which are their places in the list, from 1. kNotFound:
// there is no such number.
[[nodiscard]] Result<Outcome<std::vector<TableException>>> remove_exceptions(
    const Household& household, const std::vector<std::size_t>& numbers);

// The names of the settings ("slack_days"), in the order they are shown, the value of one as people
// write it, and what it means.
struct SettingInfo {
  std::string_view name;
  std::string_view meaning;
};
[[nodiscard]] const std::vector<SettingInfo>& setting_infos();
[[nodiscard]] std::string setting_text(const Settings& settings, std::string_view name);
// kNotFound: there is no such setting; kBadData: no such value. Ranges are the validator's.
[[nodiscard]] Result<Outcome<Settings>> set_setting(const Household& household,
                                                    std::string_view name, const std::string& value,
                                                    Asked asked);

// How often a kit is reviewed. `rule`: one of review_rule_words(), or a recurrence rule of RFC 5545
// that check_review_rule() accepts. The first review is the first day of the rule from `from` on.
// kBadData: what check_review_rule() refuses.
[[nodiscard]] std::vector<std::string> review_rule_words();
[[nodiscard]] Result<Outcome<ReviewRule>> set_review_rule(const Household& household,
                                                          const PlaceKey& kit,
                                                          const std::string& rule, Day from,
                                                          std::optional<int> slack_days);

// Retired on a day, or brought back (no day). A retired person leaves the weekly table and coming
// guest lists, and a retired kit its review rule, for nobody would be asked about them again; what
// else names the thing has to be settled first. kBadData: it is so already, or the day has not
// come.
[[nodiscard]] Result<Outcome<Person>> retire_person(const Household& household,
                                                    const Person& person, std::optional<Day> on,
                                                    Asked asked);
[[nodiscard]] Result<Outcome<Food>> retire_food(const Household& household, const Food& food,
                                                std::optional<Day> on, Asked asked);
[[nodiscard]] Result<Outcome<Place>> retire_place(const Household& household, const Place& place,
                                                  std::optional<Day> on, Asked asked);

}  // namespace larderloop
