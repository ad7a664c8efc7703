#include "larderloop/render/feed_addresses.h"

#include "larderloop/calendar/rule.h"
#include "larderloop/render/table.h"
#include "render/json_common.h"
#include "render/plain.h"

#include <cmath>

namespace larderloop {
namespace {

constexpr int kQuietZone = 4;  // ISO/IEC 18004: four modules on every side

std::string day_words(const Household& household, Instant at) {
  const auto day = local_day(at, household.settings.time_zone);
  return plain_day(day ? *day : day_of(at));
}

json::Json item_of(const FeedAddress& address) {
  json::Json item;
  item["address"] = address.id.value();
  item["name"] = address.name;
  item["person"] = json::text_or_null(address.person ? address.person->str() : "");
  item["detail"] = feed_detail_name(address.detail);
  item["created_at"] = iso_instant(address.created_at);
  item["revoked_at"] =
      json::text_or_null(address.revoked_at ? iso_instant(*address.revoked_at) : "");
  return item;
}

class Modules {
 public:
  explicit Modules(const std::string& modules)
      : modules_(modules), side_(static_cast<int>(std::lround(std::sqrt(modules.size())))) {}
  [[nodiscard]] int begin() const { return -kQuietZone; }
  [[nodiscard]] int end() const { return side_ + kQuietZone; }
  [[nodiscard]] bool dark(int row, int column) const {
    if (row < 0 || column < 0 || row >= side_ || column >= side_) return false;
    return modules_[static_cast<std::size_t>(row) * static_cast<std::size_t>(side_) +
                    static_cast<std::size_t>(column)] == '1';
  }

 private:
  const std::string& modules_;
  int side_;
};

}  // namespace

std::string feed_address_words(const Household& household, const FeedAddress& address) {
  std::string words = address.person ? "the meals of " + plain::people(household, {*address.person})
                                     : std::string("the whole household");
  words += address.detail == FeedDetail::kFull ? ", in full" : ", without food, places and names";
  return words;
}

std::string render_feed_addresses(const Household& household,
                                  const std::vector<FeedAddress>& addresses, std::size_t width) {
  Table table({{"NUMBER", Align::kRight}, {"NAME"}, {"FOR"}, {"DETAIL"}, {"MADE"}, {"STATE"}});
  for (const FeedAddress& each : addresses) {
    table.add({std::to_string(each.id.value()), each.name,
               each.person ? plain::people(household, {*each.person}) : "everyone",
               std::string(feed_detail_name(each.detail)), day_words(household, each.created_at),
               each.revoked_at ? "revoked " + day_words(household, *each.revoked_at) : "valid"});
  }
  return table.text(width);
}

std::string render_feed_addresses_json(const std::vector<FeedAddress>& addresses, Day as_of) {
  json::Json all = json::Json::array();
  for (const FeedAddress& each : addresses) all.push_back(item_of(each));
  return json::document("feed_addresses", as_of, std::move(all));
}

FeedAddressTold render_feed_address_made(const Household& household, const FeedAddressMade& made,
                                         const std::optional<FeedBase>& base) {
  FeedAddressTold told;
  told.before = "Calendar address " + std::to_string(made.address.id.value()) + ", " +
                made.address.name + ": " + feed_address_words(household, made.address) + ".\n\n";
  if (base) {
    told.before +=
        "  " + base->address(made.token, false) + "\n  " + base->address(made.token, true) + "\n\n";
    told.after =
        "Scan the code with the phone, or give one of the two to its calendar where it takes\n"
        "subscriptions. Opening the first in a browser only copies the events once.\n";
  } else {
    told.before += "  /" + made.token + ".ics\n\n";
    told.after =
        "That is the end of the address. Before it comes where the phone finds the server;\n"
        "with --base https://HOST/PATH the whole address is told, with a code to scan.\n";
  }
  told.after +=
      "It is told this once, for the book keeps only its fingerprint. Whoever has it reads\n"
      "the calendar. Lost, or seen by others: larderloop feed revoke " +
      std::to_string(made.address.id.value()) + "\n";
  return told;
}

std::string render_feed_address_made_json(const FeedAddressMade& made,
                                          const std::optional<FeedBase>& base, Day as_of) {
  json::Json data = item_of(made.address);
  data["path"] = "/" + made.token + ".ics";
  data["url"] = json::text_or_null(base ? base->address(made.token, false) : "");
  data["subscribe"] = json::text_or_null(base ? base->address(made.token, true) : "");
  return json::document("feed_address_made", as_of, std::move(data));
}

std::string draw_code(const std::string& modules, CodeStyle style) {
  const Modules code(modules);
  std::string text;
  if (style == CodeStyle::kPlain) {
    for (int row = code.begin(); row < code.end(); ++row) {
      for (int column = code.begin(); column < code.end(); ++column)
        text += code.dark(row, column) ? "##" : "  ";
      text += "\n";
    }
    return text;
  }
  const bool paint = style == CodeStyle::kPaint;
  for (int row = code.begin(); row < code.end(); row += 2) {
    if (paint) text += "\x1b[30;107m";  // black on bright white
    for (int column = code.begin(); column < code.end(); ++column) {
      const bool upper = code.dark(row, column) == paint;
      // Beyond the last row there is only quiet zone.
      const bool lower = (row + 1 < code.end() && code.dark(row + 1, column)) == paint;
      text += upper ? (lower ? "\u2588" : "\u2580") : (lower ? "\u2584" : " ");
    }
    if (paint) text += "\x1b[0m";
    text += "\n";
  }
  return text;
}

}  // namespace larderloop
