// Which food or place do a few words mean?
#include "larderloop/intake/quick_line.h"
#include "larderloop/intake/sheet_cells.h"

#include <algorithm>

namespace larderloop {
namespace {

void add_words(std::vector<std::string>& into, std::string_view text) {
  std::string word;
  for (const char c : lowered_cell(text)) {
    if (c == ' ' || c == '-' || c == ',' || c == '(' || c == ')') {
      if (!word.empty()) into.push_back(word);
      word.clear();
    } else {
      word += c;
    }
  }
  if (!word.empty()) into.push_back(word);
}

// 1500 -> "1500g" and "1.5kg".
void add_amount(std::vector<std::string>& into, std::optional<std::int64_t> amount, const char* small, const char* large) {
  constexpr std::int64_t kThousand = 1000;
  if (!amount) return;
  into.push_back(std::to_string(*amount) + small);
  std::string text = std::to_string(*amount / kThousand);
  if (const std::int64_t rest = *amount % kThousand; rest != 0) {
    std::string decimals = std::to_string(kThousand + rest).substr(1);
    decimals.erase(decimals.find_last_not_of('0') + 1);
    text += "." + decimals;
  }
  into.push_back(text + large);
}

// An amount is written as a whole: the 15 of a day is no beginning of 150g.
bool begins_one(const std::string& word, const std::vector<std::string>& of) {
  if (word.front() >= '0' && word.front() <= '9') return std::find(of.begin(), of.end(), word) != of.end();
  return std::any_of(of.begin(), of.end(), [&](const std::string& each) {
    if (each.compare(0, word.size(), word) == 0) return true;
    // "pouches" for the unit "pouch"
    return word == each + "s" || word == each + "es";
  });
}

template <class Thing, class Words>
std::vector<const Thing*> of_words(const std::vector<Thing>& things, const std::vector<std::string>& typed, Words words_of) {
  std::string joined;
  for (const std::string& word : typed) joined += (joined.empty() ? "" : " ") + lowered_cell(word);
  std::vector<const Thing*> found;
  for (const Thing& thing : things) {
    if (thing.retired) continue;
    if (thing.key.str() == joined) return {&thing};
    if (lowered_cell(thing.name) == joined) found.push_back(&thing);
  }
  if (!found.empty() || typed.empty()) return found;
  std::vector<std::string> pieces;
  for (const std::string& word : typed) add_words(pieces, word);
  if (pieces.empty()) return {};
  for (const Thing& thing : things) {
    if (thing.retired) continue;
    const std::vector<std::string> words = words_of(thing);
    if (std::all_of(pieces.begin(), pieces.end(), [&](const std::string& each) { return begins_one(each, words); })) found.push_back(&thing);
  }
  return found;
}

}  // namespace

std::vector<const Food*> foods_of_words(const Household& household, const std::vector<std::string>& words) {
  return of_words(household.foods, words, [](const Food& food) {
    std::vector<std::string> all;
    add_words(all, food.key.str());
    add_words(all, food.name);
    add_words(all, food.unit);
    add_amount(all, food.mass_g, "g", "kg");
    add_amount(all, food.volume_ml, "ml", "l");
    return all;
  });
}

std::vector<const Place*> places_of_words(const Household& household, const std::vector<std::string>& words) {
  return of_words(household.places, words, [](const Place& place) {
    std::vector<std::string> all;
    add_words(all, place.key.str());
    add_words(all, place.name);
    return all;
  });
}

}  // namespace larderloop
