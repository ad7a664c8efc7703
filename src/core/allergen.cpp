#include "larderloop/core/allergen.h"

#include "core/embedded.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

namespace larderloop {
namespace {

struct Row {
  std::string key;
  std::string words;
  std::string group;
};

// The table's first three columns; nothing in it is quoted.
std::vector<Row> read_rows() {
  std::vector<Row> rows;
  std::string_view text = embedded_table("allergens");
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    const std::size_t first = line.find(',');
    const std::size_t second = line.find(',', first + 1);
    const std::size_t third = line.find(',', second + 1);
    rows.push_back({std::string(line.substr(0, first)),
                    std::string(line.substr(first + 1, second - first - 1)),
                    std::string(line.substr(second + 1, third - second - 1))});
  }
  std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.key < b.key; });
  return rows;
}

const std::vector<Row>& rows() {
  static const std::vector<Row> all = read_rows();
  return all;
}

// Enough to tell the keys of the table apart, and a tenth of the work of a good hash.
struct KeyHash {
  std::size_t operator()(std::string_view key) const {
    if (key.empty()) return 0;
    return key.size() + 31 * static_cast<unsigned char>(key.front()) + 961 * static_cast<unsigned char>(key.back());
  }
};

// A plan asks this some ten thousand times.
const Row* row_of(std::string_view key) {
  static const std::unordered_map<std::string_view, const Row*, KeyHash> by_key = [] {
    std::unordered_map<std::string_view, const Row*, KeyHash> found;
    for (const Row& row : rows()) found.emplace(row.key, &row);
    return found;
  }();
  const auto found = by_key.find(key);
  return found == by_key.end() ? nullptr : found->second;
}

bool is_word(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(),
                                      [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; });
}

// Labels name the species of these ("fish: cod"), so any word after the colon is one.
bool names_species(std::string_view key) {
  for (const std::string_view group : {"fish:", "crustacean:", "mollusc:"}) {
    if (key.substr(0, group.size()) == group) return is_word(key.substr(group.size()));
  }
  return false;
}

// The group above a key: what stands before the colon, or what the table says (wheat -> gluten).
// Empty at the top.
std::string_view group_of(std::string_view key) {
  if (const Row* row = row_of(key); row != nullptr && !row->group.empty()) return row->group;
  const std::size_t colon = key.rfind(':');
  return colon == std::string_view::npos ? std::string_view() : key.substr(0, colon);
}

bool within(std::string_view key, std::string_view group) {
  for (std::string_view each = key; !each.empty(); each = group_of(each)) {
    if (each == group) return true;
  }
  return false;
}

constexpr std::pair<Diet, std::string_view> kDietNames[] = {{Diet::kVegan, "vegan"},
                                                            {Diet::kVegetarian, "vegetarian"},
                                                            {Diet::kPescatarian, "pescatarian"},
                                                            {Diet::kGlutenFree, "gluten_free"},
                                                            {Diet::kHalal, "halal"},
                                                            {Diet::kKosher, "kosher"}};

// What a claim rules out. Vegan and vegetarian: ISO 23662:2021; gluten-free: 21 CFR 101.91 and
// Regulation (EU) 828/2014 (oats may be gluten-free); kosher: from memory.
constexpr std::pair<Diet, std::string_view> kRuledOut[] = {{Diet::kVegan, "milk"},
                                                           {Diet::kVegan, "egg"},
                                                           {Diet::kVegan, "fish"},
                                                           {Diet::kVegan, "crustacean"},
                                                           {Diet::kVegan, "mollusc"},
                                                           {Diet::kVegetarian, "fish"},
                                                           {Diet::kVegetarian, "crustacean"},
                                                           {Diet::kVegetarian, "mollusc"},
                                                           {Diet::kGlutenFree, "gluten"},
                                                           {Diet::kGlutenFree, "wheat"},
                                                           {Diet::kGlutenFree, "rye"},
                                                           {Diet::kGlutenFree, "barley"},
                                                           {Diet::kKosher, "crustacean"},
                                                           {Diet::kKosher, "mollusc"}};

}  // namespace

std::string_view diet_name(Diet diet) {
  for (const auto& [each, name] : kDietNames) {
    if (each == diet) return name;
  }
  return "";
}

std::optional<Diet> parse_diet(std::string_view name) {
  for (const auto& [diet, each] : kDietNames) {
    if (each == name) return diet;
  }
  return std::nullopt;
}

bool is_known_allergen(std::string_view key) {
  return row_of(key) != nullptr || names_species(key);
}

const std::vector<std::string>& known_allergens() {
  static const std::vector<std::string> keys = [] {
    std::vector<std::string> list;
    for (const Row& row : rows()) list.push_back(row.key);
    return list;
  }();
  return keys;
}

std::string allergen_words(std::string_view key) {
  if (const Row* row = row_of(key)) return row->words;
  std::string words(key.substr(key.rfind(':') == std::string_view::npos ? 0 : key.rfind(':') + 1));
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

bool overlaps(std::string_view a, std::string_view b) {
  return within(a, b) || within(b, a);
}

bool supports(const std::set<Diet>& suits, Diet wanted) {
  if (suits.count(wanted) > 0) return true;
  if (wanted == Diet::kVegetarian) return suits.count(Diet::kVegan) > 0;
  if (wanted == Diet::kPescatarian) return supports(suits, Diet::kVegetarian);
  return false;
}

std::vector<std::pair<Diet, std::string>> contradictions(const Statement& statement) {
  std::vector<std::pair<Diet, std::string>> found;
  for (const auto& [diet, ruled_out] : kRuledOut) {
    if (statement.suits.count(diet) == 0) continue;
    for (const auto& [key, declared] : statement.declared) {
      // Oats are in the group of gluten and may be free of it, so only the group's own name is
      // meant there.
      if (declared != Declared::kContains) continue;
      const bool hit = ruled_out == "gluten" ? key == "gluten" : within(key, ruled_out);
      if (hit) found.emplace_back(diet, key);
    }
  }
  return found;
}

}  // namespace larderloop
