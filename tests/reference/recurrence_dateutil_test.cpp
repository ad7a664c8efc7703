// Random rules of the safe shapes against python3-dateutil 2.8.2, an implementation of RFC 5545
// recurrence that shares no code with libical. The seed is fixed; a difference prints rule and
// start.
#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <memory>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace larderloop {
namespace {

constexpr int kRules = 200;
constexpr unsigned kSeed = 20260307;
constexpr int kYears = 6;

struct Case {
  std::string rule;
  Day starts{};
  [[nodiscard]] Day end() const { return add_months(starts, 12 * kYears); }
};

class Maker {
 public:
  Case next() {
    const Day starts = parse_iso_day("2020-01-01").value() + Days(below(3653));
    const date::year_month_day ymd{starts};
    const int day = static_cast<int>(static_cast<unsigned>(ymd.day()));
    const std::string own_weekday = weekday(static_cast<int>(weekday_of(starts)));
    std::string rule;
    switch (below(7)) {
      case 0:
        rule = "FREQ=YEARLY;BYMONTH=" + months() + ";BYDAY=" + ordinal() + weekday(below(7));
        break;
      case 1:
        rule =
            "FREQ=MONTHLY" + interval({2, 3, 4, 6, 12}) + ";BYDAY=" + ordinal() + weekday(below(7));
        break;
      case 2:
        rule = "FREQ=MONTHLY" + interval({2, 3, 4, 6, 12}) + ";BYMONTHDAY=-1";
        break;
      case 3:
        rule = "FREQ=YEARLY;BYMONTH=" + months() + ";BYMONTHDAY=" + std::to_string(below(28) + 1);
        break;
      case 4:
        rule = "FREQ=WEEKLY" + interval({2, 3, 8, 26}) + ";BYDAY=" + own_weekday;
        break;
      case 5:
        rule = "FREQ=MONTHLY" + interval({2, 3, 5, 6}) +
               ";BYDAY=MO,WE,SA;BYSETPOS=" + (below(2) == 0 ? "1" : "-2");
        break;
      default:
        rule = day <= 28 ? "FREQ=MONTHLY" + interval({3, 6})
                         : "FREQ=DAILY;INTERVAL=" + std::to_string(below(90) + 30);
    }
    return {rule, starts};
  }

 private:
  int below(int limit) { return static_cast<int>(random_() % static_cast<unsigned>(limit)); }
  static std::string weekday(int index) {
    constexpr std::array<const char*, 7> kNames{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};
    return kNames.at(static_cast<std::size_t>(index));
  }
  std::string ordinal() {
    constexpr std::array<const char*, 5> kOrdinals{"1", "2", "3", "4", "-1"};
    return kOrdinals.at(static_cast<std::size_t>(below(5)));
  }
  std::string interval(const std::vector<int>& from) {
    return ";INTERVAL=" +
           std::to_string(from.at(static_cast<std::size_t>(below(static_cast<int>(from.size())))));
  }
  std::string months() {
    const int first = below(12) + 1;
    const int second = below(12) + 1;
    return first == second ? std::to_string(first)
                           : std::to_string(first) + "," + std::to_string(second);
  }

  std::mt19937 random_{kSeed};
};

constexpr const char* kScript = R"(
import datetime, sys
from dateutil.rrule import rrulestr
for line in open(sys.argv[1]):
    rule, starts, end = line.strip().split('|')
    at = datetime.datetime.fromisoformat(starts)
    last = datetime.datetime.fromisoformat(end) - datetime.timedelta(days=1)
    text = rule + ';UNTIL=' + last.strftime('%Y%m%d')
    print(' '.join(d.date().isoformat() for d in rrulestr(text, dtstart=at)))
)";

struct PipeClose {
  void operator()(std::FILE* pipe) const noexcept { pclose(pipe); }
};
struct FileClose {
  void operator()(std::FILE* file) const noexcept { std::fclose(file); }
};

void write_file(const std::string& path, const std::string& text) {
  const std::unique_ptr<std::FILE, FileClose> file(std::fopen(path.c_str(), "w"));
  ASSERT_TRUE(file);
  ASSERT_EQ(std::fwrite(text.data(), 1, text.size(), file.get()), text.size());
}

std::string output_of(const std::string& command) {
  const std::unique_ptr<std::FILE, PipeClose> pipe(popen(command.c_str(), "r"));
  std::string text;
  if (!pipe) return text;
  std::array<char, 4096> buffer{};
  for (std::size_t got = 0; (got = std::fread(buffer.data(), 1, buffer.size(), pipe.get())) > 0;) {
    text.append(buffer.data(), got);
  }
  return text;
}

TEST(RecurrenceDateutil, TwoHundredRandomRulesGiveTheSameDates) {
  Maker maker;
  std::vector<Case> cases;
  std::string input;
  for (int i = 0; i < kRules; ++i) {
    cases.push_back(maker.next());
    const Case& last = cases.back();
    input += last.rule + "|" + iso_day(last.starts) + "|" + iso_day(last.end()) + "\n";
  }
  const std::string folder = ::testing::TempDir();
  const std::string script = folder + "larderloop_recurrence.py";
  const std::string rules = folder + "larderloop_recurrence.txt";
  write_file(script, kScript);
  write_file(rules, input);
  std::istringstream answers(output_of("/usr/bin/python3 '" + script + "' '" + rules + "'"));
  std::remove(script.c_str());
  std::remove(rules.c_str());

  std::size_t dates_seen = 0;
  for (const Case& each : cases) {
    std::string answer;
    ASSERT_TRUE(std::getline(answers, answer)) << "no answer for " << each.rule;
    const auto dates = rule_dates(each.rule, each.starts, each.starts, each.end());
    ASSERT_TRUE(dates) << each.rule << ": " << dates.error().what;
    std::string ours;
    for (const Day day : *dates) ours += (ours.empty() ? "" : " ") + iso_day(day);
    EXPECT_EQ(ours, answer) << each.rule << " from " << iso_day(each.starts);
    dates_seen += dates->size();
  }
  EXPECT_GT(dates_seen, 1500U);
}

}  // namespace
}  // namespace larderloop
