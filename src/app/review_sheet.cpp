// The walk on paper: what should lie in each bag and box, in packing order.
#include <algorithm>
#include <functional>

#include "app/book_view.h"
#include "larderloop/app/reviews.h"

namespace larderloop {
namespace {

// The kit itself, then each box with its bags, by key.
std::vector<PlaceKey> packing_order(const Household& household, const PlaceKey& kit) {
  std::vector<PlaceKey> order;
  const std::function<void(const PlaceKey&)> visit = [&](const PlaceKey& place) {
    order.push_back(place);
    for (const Place& child : household.places) {
      if (child.parent == place) visit(child.key);
    }
  };
  visit(kit);
  return order;
}

}  // namespace

Result<ReviewSheet> review_sheet(const Household& household, const PlaceKey& kit, Day today) {
  auto schedule = kit_schedule(household, kit, today);
  if (!schedule) return fail(schedule.error());
  auto view = view_book(household, today);
  if (!view) return fail(view.error());
  ReviewSheet sheet;
  sheet.schedule = *schedule;
  for (const PlaceKey& place : packing_order(household, kit)) {
    SheetPlace page;
    page.place = place;
    for (const Position& position : view->positions) {
      if (position.at.place != place) continue;
      SheetLine line;
      line.at = position.at;
      line.food = position.food->key;
      line.amount = position.amount;
      line.mark = position.facts->mark;
      line.good_through = position.good_through;
      line.label_read = position.facts->label.has_value();
      line.leaves = !lasts(position, schedule->hold_until);
      line.reason = why_leave(position, today);
      if (schedule->current) {
        for (const ReviewMark& mark : household.review_marks) {
          if (mark.kit == kit && mark.slot == schedule->current->slot && mark.at == position.at) line.marked = mark.what;
        }
      }
      page.lines.push_back(line);
    }
    std::stable_sort(page.lines.begin(), page.lines.end(), [](const SheetLine& a, const SheetLine& b) {
      return a.food != b.food ? a.food < b.food : a.at < b.at;
    });
    if (!page.lines.empty()) sheet.places.push_back(std::move(page));
  }
  return sheet;
}

}  // namespace larderloop
