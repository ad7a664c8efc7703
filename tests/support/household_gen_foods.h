// household_gen_foods.h - the foods that generated households choose from.
#pragma once

#include "larderloop/core/household.h"

#include <cstddef>
#include <string_view>

namespace larderloop::made {

// Lists are words with single spaces between. `contains` and `suits` agree with each other.
struct FoodSeed {
  std::string_view name;
  FoodKind kind;
  std::string_view unit;
  int servings;
  int size;  // g of one unit, ml for drinks and water
  int kcal;
  std::string_view roles;
  std::string_view meals;
  std::string_view contains;
  std::string_view suits;
  int months_short;  // 0 = no storage time known
  int months_long;
  int opened_days;
  std::string_view traits;  // species of a pet food; or: hot opener formula filled home staple
};

inline constexpr FoodKind kF = FoodKind::kFood;
inline constexpr FoodKind kD = FoodKind::kDrink;

// The first kAlways of these are in every household.
inline constexpr std::size_t kAlways = 12;
inline constexpr FoodSeed kFoodSeeds[] = {
    {"Bottled water", FoodKind::kWater, "bottle", 1, 1500, 0, "water", "", "", "", 0, 0, 3,
     "staple"},
    {"Filled canister", FoodKind::kWater, "canister", 1, 10000, 0, "water", "", "", "", 0, 0, 3,
     "filled staple"},
    {"Can opener", FoodKind::kThing, "piece", 1, 120, 0, "thing", "", "", "", 0, 0, 0, "opens"},
    {"Spare batteries", FoodKind::kThing, "pack", 1, 90, 0, "thing", "", "", "", 0, 0, 0, ""},
    {"Lentil stew", kF, "pouch", 2, 400, 420, "main", "lunch dinner", "celery",
     "vegan gluten_free halal kosher", 24, 60, 3, ""},
    {"Tuna in water", kF, "can", 1, 150, 160, "main side", "lunch dinner", "fish",
     "pescatarian gluten_free halal", 36, 36, 2, "opener"},
    {"Chickpea curry", kF, "pouch", 2, 350, 390, "main", "lunch dinner", "mustard",
     "vegan gluten_free halal", 24, 60, 3, ""},
    {"Wheat crackers", kF, "box", 4, 200, 880, "side snack", "breakfast lunch snack", "wheat",
     "vegan", 8, 8, 30, ""},
    {"Apple sauce", kF, "jar", 3, 360, 240, "fruit snack", "breakfast snack", "",
     "vegan gluten_free halal kosher", 12, 18, 7, ""},
    {"Raisins", kF, "bag", 4, 200, 600, "fruit snack", "breakfast snack", "", "vegan gluten_free",
     6, 6, 30, ""},
    {"Dark chocolate", kF, "bar", 4, 100, 560, "comfort snack", "snack", "soy", "vegetarian", 12,
     24, 90, ""},
    {"Soy drink", kD, "carton", 4, 1000, 420, "drink", "breakfast", "soy", "vegan gluten_free", 6,
     12, 5, "staple"},
    {"Chicken rice bowl", kF, "tray", 1, 320, 380, "main", "lunch dinner", "celery",
     "gluten_free halal", 12, 18, 1, ""},
    {"Bean chili", kF, "can", 2, 400, 410, "main", "lunch dinner", "", "vegan gluten_free kosher",
     24, 60, 3, "opener"},
    {"Salmon flakes", kF, "pouch", 1, 120, 180, "main side", "lunch dinner", "fish", "pescatarian",
     18, 18, 2, ""},
    {"Beef ravioli", kF, "can", 2, 400, 430, "main", "dinner", "wheat egg milk celery", "", 24, 60,
     3, "opener"},
    {"Falafel wrap", kF, "pack", 2, 300, 560, "main", "lunch dinner", "wheat sesame", "vegan halal",
     6, 9, 1, ""},
    {"Peanut noodles", kF, "tray", 1, 280, 520, "main", "dinner", "peanut wheat soy", "vegan", 9,
     12, 1, ""},
    {"Tofu goulash", kF, "jar", 3, 500, 510, "main", "dinner", "soy", "vegan gluten_free", 12, 18,
     3, ""},
    {"Cheese macaroni", kF, "tray", 1, 300, 480, "main comfort", "lunch dinner", "milk wheat",
     "vegetarian", 9, 12, 1, ""},
    {"Shrimp paella", kF, "tray", 1, 300, 390, "main", "dinner", "crustacean mollusc fish",
     "gluten_free", 12, 12, 1, ""},
    {"Instant couscous", kF, "cup", 1, 70, 240, "main", "lunch", "wheat", "vegan", 12, 24, 0,
     "hot"},
    {"Porridge cup", kF, "cup", 1, 65, 230, "main", "breakfast", "oats milk", "vegetarian", 12, 12,
     0, "hot"},
    {"Corn kernels", kF, "can", 2, 280, 190, "side", "lunch dinner", "",
     "vegan gluten_free halal kosher", 24, 60, 3, "opener"},
    {"Potato salad", kF, "jar", 3, 450, 500, "side", "lunch dinner", "egg mustard",
     "vegetarian gluten_free", 12, 18, 3, ""},
    {"Rice cakes", kF, "pack", 5, 130, 490, "side snack", "breakfast snack", "",
     "vegan gluten_free", 6, 9, 14, ""},
    {"Rye crispbread", kF, "pack", 6, 250, 850, "side", "breakfast lunch", "rye", "vegan", 8, 12,
     30, ""},
    {"Peach halves", kF, "can", 3, 410, 280, "fruit", "breakfast snack", "",
     "vegan gluten_free halal kosher", 12, 18, 5, "opener"},
    {"Dried apricots", kF, "bag", 5, 250, 600, "fruit snack", "snack", "sulphite",
     "vegan gluten_free", 6, 6, 30, ""},
    {"Almond bar", kF, "bar", 1, 40, 200, "snack comfort", "breakfast snack", "tree_nut:almond soy",
     "vegetarian", 6, 12, 0, ""},
    {"Walnut halves", kF, "bag", 5, 150, 980, "snack", "snack", "tree_nut:walnut",
     "vegan gluten_free", 12, 12, 60, ""},
    {"Mixed nuts", kF, "can", 5, 200, 1200, "snack", "snack", "tree_nut peanut",
     "vegan gluten_free", 12, 12, 60, ""},
    {"Sesame sticks", kF, "bag", 3, 125, 630, "snack", "snack", "sesame wheat", "vegetarian", 4, 9,
     21, ""},
    {"Hazelnut spread", kF, "jar", 6, 400, 2100, "comfort side", "breakfast",
     "tree_nut:hazelnut milk soy", "vegetarian gluten_free", 9, 12, 60, ""},
    {"Peanut butter", kF, "jar", 6, 340, 2000, "side comfort", "breakfast snack", "peanut",
     "vegan gluten_free", 6, 24, 60, ""},
    {"Cashew cookies", kF, "pack", 4, 160, 780, "snack comfort", "snack",
     "tree_nut:cashew wheat egg", "vegetarian", 6, 9, 14, ""},
    {"Coconut chips", kF, "bag", 2, 60, 400, "snack", "snack", "coconut", "vegan gluten_free", 6,
     12, 14, ""},
    {"Kiwi leather", kF, "strip", 1, 20, 70, "fruit snack", "snack", "kiwi", "vegan gluten_free", 6,
     12, 0, ""},
    {"Long-life milk", kD, "carton", 4, 1000, 640, "drink", "breakfast", "milk",
     "vegetarian gluten_free halal kosher", 6, 12, 5, "staple"},
    {"Apple juice", kD, "box", 1, 200, 90, "drink", "breakfast snack", "",
     "vegan gluten_free halal", 12, 18, 2, ""},
    {"Vegetable broth", kD, "carton", 2, 500, 60, "drink side", "lunch dinner", "celery",
     "vegan gluten_free", 12, 18, 4, ""},
    {"Ready-to-feed formula", kD, "bottle", 1, 200, 130, "drink", "breakfast", "milk", "vegetarian",
     0, 0, 1, "formula"},
    {"Garden plums", kF, "jar", 4, 600, 420, "fruit", "breakfast snack", "", "", 9, 12, 7, "home"},
    {"Cat dinner", FoodKind::kPetFood, "pouch", 1, 85, 70, "pet_meal", "", "fish", "", 24, 36, 1,
     "cat"},
    {"Dog dinner", FoodKind::kPetFood, "can", 2, 400, 420, "pet_meal", "", "", "", 24, 36, 2,
     "dog"},
    {"Spoon set", FoodKind::kThing, "set", 1, 60, 0, "thing", "", "", "", 0, 0, 0, ""},
};

}  // namespace larderloop::made
