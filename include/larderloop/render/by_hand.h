// by_hand.h - kit menus, the week at the table, settings and review rules, as text and as JSON
// documents (docs/schema/). Width:    0 = not a terminal: nothing is cut.
#pragma once

#include "larderloop/core/household.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace larderloop {

// "day 2, dinner, 1 main for Mira, in Mira's bag"
[[nodiscard]] std::string menu_line_words(const Household& household, const MenuLine& line);
[[nodiscard]] std::string render_menu(const Household& household,
                                      const std::vector<MenuLine>& lines, std::size_t width);
[[nodiscard]] std::string render_menu_json(const std::vector<MenuLine>& lines, Day as_of);

// "Ned is away from Thu 24 Dec 2026 through Sat 26 Dec 2026"
[[nodiscard]] std::string exception_words(const Household& household,
                                          const TableException& exception);
[[nodiscard]] std::string render_meals(const Household& household, std::size_t width);
[[nodiscard]] std::string render_meals_json(const Household& household, Day as_of);

[[nodiscard]] std::string render_settings(const Settings& settings, std::size_t width);
[[nodiscard]] std::string render_settings_json(const Settings& settings, Day as_of);

[[nodiscard]] std::string render_review_rules(const Household& household,
                                              const std::vector<ReviewRule>& rules,
                                              std::size_t width);
[[nodiscard]] std::string render_review_rules_json(const std::vector<ReviewRule>& rules, Day as_of);

// Something that was retired or brought back: `kind` is "person", "food" or "place".
[[nodiscard]] std::string render_retired_json(const std::string& kind, const std::string& key,
                                              const std::string& name,
                                              const std::optional<Day>& retired, Day as_of);

}  // namespace larderloop
