// What the family asks of the week's meals: into its table and out of it.
#include "store/load.h"
#include "store/names.h"
#include "store/save.h"

namespace larderloop::store {
namespace {

constexpr const char* kWishes =
    "SELECT id, kind, food, from_day, through_day, meal, person FROM wish ORDER BY id";
constexpr const char* kSaveWish =
    "INSERT INTO wish (id, kind, food, from_day, through_day, meal, person) "
    "VALUES (:id, :kind, :food, :from, :through, :meal, :person) "
    "ON CONFLICT (id) DO UPDATE SET kind = excluded.kind, food = excluded.food, from_day = "
    "excluded.from_day,"
    "  through_day = excluded.through_day, meal = excluded.meal, person = excluded.person";
constexpr const char* kDropWish = "DELETE FROM wish WHERE id = :id";

}  // namespace

void load_wishes(const Connection& connection, Household& household) {
  Query rows(connection, kWishes);
  while (rows.step()) {
    Wish& wish = household.wishes.emplace_back();
    wish.id = rows.id<WishId>(0);
    wish.kind = rows.named(1, parse_wish_kind);
    wish.food = rows.key<FoodKey>(2);
    wish.from = rows.maybe_day(3);
    wish.through = rows.maybe_day(4);
    wish.meal = rows.maybe_named(5, parse_meal);
    if (!rows.is_null(6)) wish.person = rows.key<PersonKey>(6);
  }
}

void save_wishes(const Connection& connection, const std::vector<Wish>& wishes) {
  Query save(connection, kSaveWish);
  for (const Wish& wish : wishes) {
    save.set(":id", wish.id)
        .set(":kind", wish_kind_name(wish.kind))
        .set(":food", wish.food)
        .set(":from", wish.from)
        .set(":through", wish.through)
        .set(":person", wish.person);
    wish.meal ? save.set(":meal", meal_name(*wish.meal)) : save.set_null(":meal");
    save.run();
  }
}

void drop_wishes(const Connection& connection, const std::vector<WishId>& ids) {
  Query drop(connection, kDropWish);
  for (const WishId id : ids) drop.set(":id", id).run();
}

}  // namespace larderloop::store
