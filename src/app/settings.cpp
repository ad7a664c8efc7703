// The household's settings, one by one, as people write them.
#include "larderloop/app/by_hand.h"
#include "larderloop/app/review_series.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/lowered.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <charconv>
#include <functional>

namespace larderloop {
namespace {

tl::unexpected<Error> unreadable(const std::string& value, std::string hint) {
  return fail(ErrorKind::kBadData, "cannot use the value '" + value + "'", std::move(hint));
}

Result<int> whole(const std::string& value) {
  int number = 0;
  const char* const end = value.data() + value.size();
  const auto read = std::from_chars(value.data(), end, number);
  if (value.empty() || read.ec != std::errc() || read.ptr != end)
    return unreadable(value, "write a whole number, for example 14");
  return number;
}

Result<HalfServings> servings(const std::string& value) {
  const std::size_t point = value.find('.');
  const std::string decimals = point == std::string::npos ? "0" : value.substr(point + 1);
  auto full = whole(value.substr(0, point));
  if (!full || *full < 0 || *full > kMaxUnits || (decimals != "0" && decimals != "5"))
    return unreadable(value, "write servings in halves, for example 4 or 2.5");
  return HalfServings(*full * 2 + (decimals == "5" ? 1 : 0));
}

Result<Weekday> weekday(const std::string& value) {
  if (const auto day = parse_weekday(value)) return *day;
  return unreadable(value, "write a day of the week, for example saturday");
}

struct Setting {
  SettingInfo info;
  std::function<std::string(const Settings&)> text;
  std::function<Status(Settings&, const std::string&, Asked)> put;
};

template <class Read, class Value>
auto putter(Read read, Value Settings::*member) {
  return [read, member](Settings& settings, const std::string& value, Asked) -> Status {
    auto got = read(value);
    if (!got) return fail(got.error());
    settings.*member = *got;
    return {};
  };
}

Setting days(std::string_view name, std::string_view meaning, int Settings::*member) {
  return {{name, meaning},
          [member](const Settings& all) { return std::to_string(all.*member); },
          putter(whole, member)};
}

std::string halves_text(HalfServings amount) {
  return std::to_string(amount.halves() / 2) + (amount.halves() % 2 == 0 ? "" : ".5");
}

template <class E>
Result<E> word(const std::string& value, std::optional<E> (*parse)(std::string_view),
               const std::string& hint) {
  if (const auto found = parse(lowered(value))) return *found;
  return unreadable(value, hint);
}

Status put_zone(Settings& settings, const std::string& value, Asked asked) {
  if (auto today = local_day(asked.now, value); !today) return fail(today.error());
  settings.time_zone = value;
  return {};
}

constexpr const char* kKindsHint = "name some of review, eat-soon, shop, give-away";

std::string kind_text(FeedKind kind) {
  std::string name(feed_kind_name(kind));
  std::replace(name.begin(), name.end(), '_', '-');
  return name;
}

std::optional<FeedKind> read_kind(const std::string& value) {
  std::string name = lowered(value);
  std::replace(name.begin(), name.end(), '-', '_');
  return parse_feed_kind(name);
}

std::vector<std::string> parts_of(const std::string& value) {
  std::vector<std::string> parts(1);
  for (const char each : value) {
    if (each == ',')
      parts.emplace_back();
    else if (each != ' ')
      parts.back() += each;
  }
  return parts;
}

std::string kinds_text(const FeedSettings& feed) {
  std::string text;
  for (const FeedKind kind : feed.kinds) text += (text.empty() ? "" : ",") + kind_text(kind);
  return text;
}

Status put_kinds(Settings& settings, const std::string& value, Asked) {
  std::set<FeedKind> kinds;
  for (const std::string& part : parts_of(value)) {
    const auto kind = read_kind(part);
    if (!kind) return unreadable(value, kKindsHint);
    kinds.insert(*kind);
  }
  settings.feed.kinds = kinds;
  return {};
}

std::string alarms_text(const FeedSettings& feed) {
  std::string text;
  for (const auto& [kind, before] : feed.alarm_days)
    text += (text.empty() ? "" : ",") + kind_text(kind) + ":" + std::to_string(before);
  return text.empty() ? "none" : text;
}

Status put_alarms(Settings& settings, const std::string& value, Asked) {
  std::map<FeedKind, int> alarms;
  for (const std::string& part : parts_of(lowered(value) == "none" ? "" : value)) {
    if (part.empty() && lowered(value) == "none") break;
    const std::size_t colon = part.find(':');
    const auto kind = read_kind(part.substr(0, colon));
    if (!kind || colon == std::string::npos)
      return unreadable(value, "write kinds with days, as review:7,shop:1, or none");
    auto before = whole(part.substr(colon + 1));
    if (!before) return fail(before.error());
    alarms[*kind] = *before;
  }
  settings.feed.alarm_days = alarms;
  return {};
}

const std::vector<Setting>& all_settings() {
  static const std::vector<Setting> all = {
      {{"name", "What the household calls itself"},
       [](const Settings& each) { return each.name; },
       [](Settings& each, const std::string& value, Asked) -> Status {
         each.name = value;
         return {};
       }},
      {{"time_zone", "Its time zone, as Europe/Lisbon; empty: that of the machine"},
       [](const Settings& each) { return each.time_zone; },
       put_zone},
      {{"region", "eu: use-by is a safety date for every food; us; other"},
       [](const Settings& each) { return std::string(region_name(each.region)); },
       putter(
           [](const std::string& value) {
             return word<Region>(value, parse_region, "one of other, eu, us");
           },
           &Settings::region)},
      {{"currency", "Three letters behind amounts of money"},
       [](const Settings& each) { return each.currency; },
       [](Settings& each, const std::string& value, Asked) -> Status {
         each.currency = value;
         return {};
       }},
      {{"date_order",
        "How all-number dates are meant: dmy, mdy, ymd; none: such a date is refused"},
       [](const Settings& each) { return std::string(date_order_name(each.date_order)); },
       putter(
           [](const std::string& value) {
             return word<DateOrder>(value, parse_date_order, "one of none, dmy, mdy, ymd");
           },
           &Settings::date_order)},
      days("margin_days", "Days taken off every date", &Settings::margin_days),
      days("slack_days", "Days behind the next review that what is in a kit must still last",
           &Settings::slack_days),
      days("donate_days", "Days before its last good day up to which food is given away",
           &Settings::donate_days),
      days("late_days", "Days after which a review that was not done is called late",
           &Settings::late_days),
      {{"tolerance", "Servings of kit food a person eats in one week at most"},
       [](const Settings& each) { return halves_text(each.tolerance); },
       putter(servings, &Settings::tolerance)},
      {{"monotony", "Servings of one kit food a person eats in one week at most"},
       [](const Settings& each) { return halves_text(each.monotony); },
       putter(servings, &Settings::monotony)},
      days("variety_cap", "Units of one food for one person in one kit", &Settings::variety_cap),
      {{"week_starts", "The first day of the week"},
       [](const Settings& each) { return lowered(weekday_name(each.week_starts)); },
       putter(weekday, &Settings::week_starts)},
      {{"shopping_day", "The day somebody goes shopping"},
       [](const Settings& each) { return lowered(weekday_name(each.shopping_day)); },
       putter(weekday, &Settings::shopping_day)},
      {{"feed_detail", "What the calendar tells: full; private: neither food nor place nor name"},
       [](const Settings& each) { return std::string(feed_detail_name(each.feed.detail)); },
       [](Settings& each, const std::string& value, Asked) -> Status {
         auto detail = word<FeedDetail>(value, parse_feed_detail, "full or private");
         if (!detail) return fail(detail.error());
         each.feed.detail = *detail;
         return {};
       }},
      {{"feed_kinds", "What stands in the calendar: review, eat-soon, shop, give-away"},
       [](const Settings& each) { return kinds_text(each.feed); },
       put_kinds},
      {{"feed_reviews",
        "Reviews in the calendar: dated: each by itself; series: one event a kit that repeats"},
       [](const Settings& each) { return std::string(feed_reviews_name(each.feed.reviews)); },
       [](Settings& each, const std::string& value, Asked) -> Status {
         auto reviews = word<FeedReviews>(value, parse_feed_reviews, "dated or series");
         if (!reviews) return fail(reviews.error());
         each.feed.reviews = *reviews;
         return {};
       }},
      {{"feed_alarms", "What rings and how many days before, as review:7,shop:1; none"},
       [](const Settings& each) { return alarms_text(each.feed); },
       put_alarms}};
  return all;
}

}  // namespace

const std::vector<SettingInfo>& setting_infos() {
  static const std::vector<SettingInfo> infos = [] {
    std::vector<SettingInfo> all;
    for (const Setting& each : all_settings()) all.push_back(each.info);
    return all;
  }();
  return infos;
}

std::string setting_text(const Settings& settings, std::string_view name) {
  for (const Setting& each : all_settings()) {
    if (each.info.name == name) return each.text(settings);
  }
  return {};
}

Result<Outcome<Settings>> set_setting(const Household& household, std::string_view name,
                                      const std::string& value, Asked asked) {
  std::vector<std::string> known;
  for (const Setting& each : all_settings()) {
    known.emplace_back(each.info.name);
    if (each.info.name != name) continue;
    Outcome<Settings> outcome;
    outcome.report = household.settings;
    if (Status put = each.put(outcome.report, value, asked); !put) return fail(put.error());
    if (Status fit = check_review_series(household, outcome.report); !fit) return fail(fit.error());
    outcome.changes.settings = outcome.report;
    return outcome;
  }
  const std::string near = nearest(name, known);
  return fail(
      ErrorKind::kNotFound, "there is no setting '" + std::string(name) + "'",
      near.empty() ? "see them all: larderloop settings show" : "did you mean '" + near + "'?");
}

}  // namespace larderloop
