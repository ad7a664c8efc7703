// paper_kit.h - what lies in a kit today, dealt out to its menu lines as somebody at the box would: each line from its own place.
// Safety:   only what why_not() gives everybody on the line, what is sound, sealed, not past, and eaten as it is fills a line; all the
//           rest is in `beside`, with what speaks against it.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "app/book_view.h"
#include "larderloop/core/eligible.h"

namespace larderloop::paper {

struct Dealt {
  const Position* position = nullptr;
  std::int64_t units = 0;
};
struct LineNow {
  const MenuLine* line = nullptr;
  std::vector<PersonKey> eaters;
  std::vector<Dealt> dealt;  // by lot
  std::int64_t missing = 0;  // units
};
// Stock that no line takes. `refusals`: who eats from its place and must not have it; `state`: why it is not to be eaten at all, or
// what to look at, in plain words; empty = nothing speaks against it.
struct Beside {
  const Position* position = nullptr;
  HalfServings amount;
  std::vector<PersonRefusal> refusals;
  std::string state;
  [[nodiscard]] bool warned() const {
    return !state.empty() || std::any_of(refusals.begin(), refusals.end(), [](const PersonRefusal& each) { return each.reason.refusal != Refusal::kRefuses; });
  }
};
struct KitNow {
  std::vector<LineNow> lines;   // food and pet food, by day, meal, people, line; without water and things
  std::vector<Beside> beside;   // food and drink, in walking order
};
// The view must outlive the result.
[[nodiscard]] KitNow kit_now(const BookView& view, const PlaceKey& kit, Day today);

}  // namespace larderloop::paper
