#include "larderloop/core/words.h"
#include "larderloop/render/plan_json.h"
#include "render/plain.h"

namespace larderloop {
namespace {

// One cell as RFC 4180 has it. A text that a spreadsheet would run as a formula gets an apostrophe before it (OWASP, CSV Injection).
std::string cell(std::string text) {
  const bool formula = !text.empty() && std::string("=+-@\t\r\n").find(text.front()) != std::string::npos;
  const bool escaped = text.size() > 1 && text.front() == '\'' && std::string("=+-@\t\r\n'").find(text[1]) != std::string::npos;
  if (formula || escaped) text.insert(text.begin(), '\'');
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char letter : text) {
    quoted += letter;
    if (letter == '"') quoted += '"';
  }
  return quoted + "\"";
}

std::string joined(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& each : list) text += (text.empty() ? "" : "; ") + each;
  return text;
}

}  // namespace

std::string render_shop_csv(const Household& household, const ShopList& list) {
  std::string text =
      "shop,food,name,packs,units_a_pack,units_needed,price_cents,good_through_at_least,kits,for,must_not_contain,"
      "must_not_warn_of,must_suit,read_the_label\r\n";
  for (const ShopGroup& group : list.groups) {
    for (const BuyLine& line : group.lines) {
      std::vector<std::string> people, diets;
      for (const PersonKey& person : line.for_people) people.push_back(plain::people(household, {person}));
      for (const Diet diet : line.must_suit) diets.emplace_back(diet_name(diet));
      const std::vector<std::string> cells{
          cell(group.shop),
          cell(line.food.str()),
          cell(plain::food(household, line.food)),
          std::to_string(line.packs),
          std::to_string(line.pack.units),
          std::to_string(line.units),
          line.packs > 0 ? std::to_string(line.pack.price_cents) : "",
          line.kits.empty() ? "" : iso_day(line.good_through_at_least),
          cell(plain::places(household, line.kits)),
          cell(joined(people)),
          cell(joined(line.must_not_say)),
          cell(joined(line.nor_may_contain)),
          cell(joined(diets)),
          "yes"};
      for (std::size_t index = 0; index < cells.size(); ++index) text += (index == 0 ? "" : ",") + cells[index];
      text += "\r\n";
    }
  }
  return text;
}

}  // namespace larderloop
