// plain.h - small pieces that every text view is made of.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "larderloop/app/reviews.h"
#include "larderloop/core/household.h"

namespace larderloop::plain {

[[nodiscard]] std::string food(const Household& household, const FoodKey& key);
[[nodiscard]] std::string place(const Household& household, const PlaceKey& key);
[[nodiscard]] std::string places(const Household& household, const std::vector<PlaceKey>& keys);
[[nodiscard]] std::string people(const Household& household, const std::vector<PersonKey>& keys);
// "lot 17" or "lot 17, opened Sat 3 Apr 2027"
[[nodiscard]] std::string lot(const StockKey& at);
// "good through Sat 3 Apr 2027", "no date known"
[[nodiscard]] std::string good_through(const std::optional<Day>& day);
[[nodiscard]] std::string litres(std::int64_t ml);  // "4.5 l"
// Why it leaves a kit: "will not last", "past its date", ...
[[nodiscard]] std::string reason(LeaveReason reason, const std::optional<Day>& good_through);
// "2 pouches Lentil stew"
[[nodiscard]] std::string amount_of(const Household& household, const FoodKey& key, HalfServings amount);
// What a menu line is: "day 2, dinner, main for Mira"
[[nodiscard]] std::string menu_line(const Household& household, MenuLineId id);

// A heading, then indented lines; nothing at all without lines.
class Section {
 public:
  explicit Section(std::string heading) : heading_(std::move(heading)) {}
  void line(std::string text) { groups_[{}].push_back(std::move(text)); }
  // Lines of one group stand together under its name, groups in the order they were first named.
  void line(const std::string& group, std::string text);
  [[nodiscard]] bool empty() const { return groups_.empty(); }
  [[nodiscard]] std::string text() const;

 private:
  std::string heading_;
  std::vector<std::string> order_;
  std::map<std::string, std::vector<std::string>> groups_;
};

}  // namespace larderloop::plain
