#include "larderloop/render/wishes.h"

#include "larderloop/render/table.h"
#include "render/json_common.h"
#include "render/plain.h"

namespace larderloop {
namespace {

std::string days_words(const Wish& wish) {
  if (!wish.from) return {};
  if (wish.from == wish.through) return plain_day(*wish.from);
  return plain_day(*wish.from) + " through " + plain_day(*wish.through);
}

}  // namespace

std::string wish_words(const Household& household, const Wish& wish) {
  std::string words = wish.kind == WishKind::kNot ? "no " : "";
  words += wish.food.empty() ? "kit food" : plain::food(household, wish.food);
  if (wish.person) words += " for " + plain::people(household, {*wish.person});
  if (wish.meal) words += " at " + std::string(meal_name(*wish.meal));
  if (wish.from) words += (wish.from == wish.through ? " on " : " from ") + days_words(wish);
  return words;
}

std::string render_wishes(const Household& household, const std::vector<Wish>& wishes, Day today,
                          std::size_t width) {
  Table table({{"WISH", Align::kRight}, {"KIND"}, {"FOOD"}, {"FOR"}, {"MEAL"}, {"DAYS"}});
  for (const Wish& each : wishes) {
    const bool past = each.through && *each.through < today;
    table.add({std::to_string(each.id.value()), std::string(wish_kind_name(each.kind)),
               each.food.empty() ? "any" : plain::food(household, each.food),
               each.person ? plain::people(household, {*each.person}) : "everyone",
               each.meal ? std::string(meal_name(*each.meal)) : "every meal",
               !each.from ? "always" : days_words(each) + (past ? " (past)" : "")});
  }
  return table.text(width);
}

std::string render_wishes_json(const Household& household, const std::vector<Wish>& wishes,
                               Day as_of) {
  json::Json all = json::Json::array();
  for (const Wish& each : wishes) {
    const Food* food = each.food.empty() ? nullptr : find_food(household, each.food);
    json::Json item;
    item["wish"] = each.id.value();
    item["kind"] = wish_kind_name(each.kind);
    item["food"] = json::text_or_null(each.food.str());
    item["name"] = json::text_or_null(food == nullptr ? "" : food->name);
    item["person"] = json::text_or_null(each.person ? each.person->str() : "");
    item["meal"] = json::text_or_null(each.meal ? meal_name(*each.meal) : "");
    item["from"] = json::day(each.from);
    item["through"] = json::day(each.through);
    all.push_back(std::move(item));
  }
  return json::document("wishes", as_of, std::move(all));
}

}  // namespace larderloop
