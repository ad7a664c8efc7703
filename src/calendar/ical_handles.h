// ical_handles.h - owners for libical's C objects, and days as libical takes them.
// Ownership: a property or component belongs to its parent once added; borrowed pointers never
// leave a function. Strings:   only the functions ending in _r are used; the others hand out slots
// of a ring that is reused.
#pragma once

#include "larderloop/core/date.h"

#include <libical/ical.h>

#include <memory>
#include <optional>
#include <string>

namespace larderloop::ical {

struct ComponentFree {
  void operator()(icalcomponent* each) const noexcept { icalcomponent_free(each); }
};
struct PropertyFree {
  void operator()(icalproperty* each) const noexcept { icalproperty_free(each); }
};
struct IteratorFree {
  void operator()(icalrecur_iterator* each) const noexcept { icalrecur_iterator_free(each); }
};
struct BufferFree {
  void operator()(char* each) const noexcept { icalmemory_free_buffer(each); }
};
using Component = std::unique_ptr<icalcomponent, ComponentFree>;
using Property = std::unique_ptr<icalproperty, PropertyFree>;
using Iterator = std::unique_ptr<icalrecur_iterator, IteratorFree>;
using Buffer = std::unique_ptr<char, BufferFree>;

// libical's value type with its one string on the heap.
class Recurrence {
 public:
  explicit Recurrence(const std::string& text)
      : value_(icalrecurrencetype_from_string(text.c_str())) {}
  ~Recurrence() {
    if (value_.rscale != nullptr) icalmemory_free_buffer(value_.rscale);
  }
  Recurrence(const Recurrence&) = delete;  // the string has one owner; nothing needs a second
  Recurrence& operator=(const Recurrence&) = delete;
  [[nodiscard]] bool ok() const { return value_.freq != ICAL_NO_RECURRENCE; }
  [[nodiscard]] const icalrecurrencetype& value() const { return value_; }

 private:
  icalrecurrencetype value_;
};

// Errors are answers, never an abort. Debian's build has it so; said here once for every other
// build.
inline void prepare() {
  static const bool done = [] {
    icalerror_set_errors_are_fatal(0);
    return true;
  }();
  static_cast<void>(done);
  icalerror_clear_errno();
}

// Never made from text: libical 3.0.16 takes 30 February from a string and calls it valid. Nor from
// icaltime_null_date(): with its clock of -1:-1:-1 the iterator of a daily or weekly rule never
// ends.
inline icaltimetype day(Day of) {
  const date::year_month_day ymd{of};
  icaltimetype time{};
  time.year = static_cast<int>(ymd.year());
  time.month = static_cast<int>(static_cast<unsigned>(ymd.month()));
  time.day = static_cast<int>(static_cast<unsigned>(ymd.day()));
  time.is_date = 1;
  return time;
}

// libical reads the system's list of all zones before it names UTC. No other zone is ever asked of
// it here (zone_file.h reads those), so it is told to look where there is no list.
inline icaltimezone* utc_zone() {
  static icaltimezone* const zone = [] {
    icaltimezone_set_builtin_tzdata(1);
    set_zone_directory("/dev/null");
    return icaltimezone_get_utc_timezone();
  }();
  return zone;
}

inline icaltimetype utc(Instant at) {
  const date::sys_days midnight_of = date::floor<date::days>(at);
  const date::year_month_day ymd{midnight_of};
  const date::hh_mm_ss<std::chrono::seconds> clock{at - midnight_of};
  icaltimetype time{};
  time.year = static_cast<int>(ymd.year());
  time.month = static_cast<int>(static_cast<unsigned>(ymd.month()));
  time.day = static_cast<int>(static_cast<unsigned>(ymd.day()));
  time.hour = static_cast<int>(clock.hours().count());
  time.minute = static_cast<int>(clock.minutes().count());
  time.second = static_cast<int>(clock.seconds().count());
  time.zone = utc_zone();
  return time;
}

// Empty for the null time (the end of a rule) and for a day that is none.
inline std::optional<Day> day(const icaltimetype& time) {
  if (icaltime_is_null_time(time) || time.month < 1 || time.day < 1) return std::nullopt;
  const date::year_month_day ymd{date::year{time.year},
                                 date::month{static_cast<unsigned>(time.month)},
                                 date::day{static_cast<unsigned>(time.day)}};
  if (!ymd.ok()) return std::nullopt;
  return Day{ymd};
}

}  // namespace larderloop::ical
