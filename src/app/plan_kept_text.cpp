#include "app/plan_kept_text.h"

#include <array>
#include <bit>
#include <charconv>
#include <cstring>
#include <string_view>
#include <vector>

namespace larderloop {
namespace {

// Two multiplicative hashes of 64 bits over every value, and the lengths of texts and lists, eight bytes a step. They tell one
// household's problems of different days apart; they are no protection against somebody who wants them to collide.
class Fingerprint {
 public:
  void add(std::int64_t value) { word(static_cast<std::uint64_t>(value)); }
  void add(const std::string& text) {
    add(static_cast<std::int64_t>(text.size()));
    std::string_view rest = text;
    for (; rest.size() >= 8; rest.remove_prefix(8)) word(eight(rest.data()));
    std::uint64_t packed = 0;
    for (const char letter : rest) packed = packed << 8U | static_cast<unsigned char>(letter);
    if (!rest.empty()) word(packed);
  }
  void add(const std::optional<std::int64_t>& value) {
    add(value ? 1 : 0);
    add(value.value_or(0));
  }
  template <typename List, typename Each>
  void list(const List& all, Each each) {
    add(static_cast<std::int64_t>(all.size()));
    for (const auto& one : all) each(one);
  }
  template <typename List>
  void texts(const List& all) {
    list(all, [&](const std::string& text) { add(text); });
  }
  void eaters(const std::vector<plan::Eater>& all) {
    list(all, [&](const plan::Eater& each) {
      add(each.id);
      texts(each.avoid);
      list(each.ratings, [&](const auto& rating) {
        add(rating.first);
        add(rating.second);
      });
      add(each.tolerance);
      add(each.monotony);
      list(each.eaten_this_week, [&](const auto& eaten) {
        add(eaten.first);
        add(eaten.second);
      });
      add(each.energy_target);
    });
  }
  void servings(const std::vector<plan::MealServing>& all) {
    list(all, [&](const plan::MealServing& each) {
      add(each.product);
      add(each.meal);
      add(each.eater);
      add(each.servings);
    });
  }
  [[nodiscard]] std::string text() const {
    std::string digits;
    for (const std::uint64_t half : state_) {
      for (int shift = 60; shift >= 0; shift -= 4)
        digits += "0123456789abcdef"[(half >> shift) & 0xFU];
    }
    return digits;
  }

 private:
  // The first letter highest.
  static std::uint64_t eight(const char* letters) {
    std::uint64_t value = 0;
    std::memcpy(&value, letters, sizeof value);
    if constexpr (std::endian::native == std::endian::little) value = __builtin_bswap64(value);
    return value;
  }
  void word(std::uint64_t value) {
    for (std::size_t half = 0; half < state_.size(); ++half) {
      state_[half] = (state_[half] ^ value) * kFactors[half];
      state_[half] ^= state_[half] >> 32U;  // high bits, which depend on all others, take part in the next step's low ones
    }
  }
  static constexpr std::array<std::uint64_t, 2> kFactors{0x9E3779B97F4A7C15U, 0xC2B2AE3D27D4EB4FU};  // odd, without pattern
  std::array<std::uint64_t, 2> state_{0xCBF29CE484222325U, 0x9AE16A3B2F90404FU};
};

// Lines of fields with tabs between; no id holds a tab or a line end.
class Lines {
 public:
  template <typename... Fields>
  void add(const char* kind, const Fields&... fields) {
    text_ += kind;
    (field(fields), ...);
    text_ += '\n';
  }
  void levels(const std::vector<plan::Level>& all) {
    for (const plan::Level& each : all)
      add("level", each.name, each.value,
          each.bound ? std::to_string(*each.bound) : std::string("-"));
  }
  [[nodiscard]] std::string text() && { return std::move(text_); }

 private:
  void field(const std::string& value) { text_ += '\t' + value; }
  void field(std::int64_t value) { text_ += '\t' + std::to_string(value); }
  std::string text_;
};

using Fields = std::vector<std::string_view>;  // of the line that is read

bool read_number(std::string_view text, std::int64_t& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc() && end == text.data() + text.size();
}

// Calls `line` with the fields of each line until one is refused.
template <typename Line>
bool each_line(const std::string& text, Line line) {
  std::string_view rest = text;
  Fields fields;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    if (end == std::string_view::npos) return false;
    std::string_view here = rest.substr(0, end);
    rest.remove_prefix(end + 1);
    fields.clear();
    while (true) {
      const std::size_t tab = here.find('\t');
      fields.emplace_back(here.substr(0, tab));
      if (tab == std::string_view::npos) break;
      here.remove_prefix(tab + 1);
    }
    if (!line(fields)) return false;
  }
  return true;
}

bool read_level(const Fields& fields, std::vector<plan::Level>& levels) {
  plan::Level level;
  if (fields.size() != 4 || !read_number(fields[2], level.value)) return false;
  level.name = fields[1];
  std::int64_t bound = 0;
  if (fields[3] != "-") {
    if (!read_number(fields[3], bound)) return false;
    level.bound = bound;
  }
  levels.push_back(std::move(level));
  return true;
}

}  // namespace

std::string fingerprint(const plan::EatDownProblem& problem) {
  Fingerprint print;
  for (const std::int64_t number :
       {problem.today, problem.week_start, problem.horizon_days, problem.donate_days,
        problem.late_days, problem.tolerance, problem.monotony})
    print.add(number);
  print.eaters(problem.eaters);
  print.list(problem.products, [&](const plan::EatProduct& each) {
    print.add(each.id);
    print.add(each.servings);
    print.add(each.open_days);
    print.list(each.kinds, [&](plan::Kind kind) { print.add(static_cast<std::int64_t>(kind)); });
    print.texts(each.contains);
  });
  print.list(problem.lots, [&](const plan::EatLot& each) {
    print.add(each.id);
    print.add(each.product);
    print.add(each.units);
    print.add(each.last_good_day);
    print.add(each.available_from);
    print.add(each.already_open ? 1 : 0);
    print.add(each.open_servings);
    print.add(each.may_donate ? 1 : 0);
  });
  print.list(problem.meals, [&](const plan::EatMeal& each) {
    print.add(each.id);
    print.add(each.day);
    print.add(static_cast<std::int64_t>(each.kind));
    print.texts(each.eaters);
    print.list(each.appetite, [&](const auto& appetite) {
      print.add(appetite.first);
      print.add(appetite.second);
    });
    print.texts(each.without);
  });
  print.servings(problem.wished);
  return print.text();
}

std::string fingerprint(const plan::RefillProblem& problem) {
  Fingerprint print;
  for (const std::int64_t number :
       {problem.hold_until, problem.variety_cap, problem.surplus_credit_percent,
        problem.date_cap_days, std::int64_t{problem.keep_in_place ? 1 : 0}})
    print.add(number);
  print.add(problem.budget);
  print.eaters(problem.eaters);
  print.list(problem.products, [&](const plan::RefillProduct& each) {
    print.add(each.id);
    print.texts(each.roles);
    print.texts(each.contains);
    for (const std::int64_t number : {each.kcal, each.mass, each.volume}) print.add(number);
    print.add((each.no_cook ? 1 : 0) + (each.staple ? 2 : 0));
  });
  print.list(problem.containers, [&](const plan::Container& each) {
    print.add(each.id);
    print.add(each.kit);
    print.add(each.mass_limit);
    print.add(each.volume_limit);
  });
  print.list(problem.lines, [&](const plan::RefillLine& each) {
    print.add(each.id);
    print.add(each.container);
    print.texts(each.eaters);
    print.add(each.day);
    print.add(each.kind);
    print.add(each.role);
    print.add(each.units);
    print.add(each.priority);
  });
  print.list(problem.lots, [&](const plan::RefillLot& each) {
    print.add(each.id);
    print.add(each.product);
    print.add(each.units);
    print.add(each.last_good_day);
    print.add(each.in_kit ? 1 : 0);
    print.add(each.container);
  });
  print.list(problem.offers, [&](const plan::Offer& each) {
    print.add(each.id);
    print.add(each.product);
    for (const std::int64_t number : {each.pack_units, each.price, each.last_good_day})
      print.add(number);
    print.add(each.max_packs);
  });
  return print.text();
}

std::string plan_text(const plan::Solution<plan::EatDownPlan>& solution) {
  Lines lines;
  lines.levels(solution.levels);
  for (const plan::Opened& each : solution.plan.opened)
    lines.add("open", each.lot, each.meal, each.units);
  for (const plan::MealServing& each : solution.plan.servings)
    lines.add("serve", each.product, each.meal, each.eater, each.servings);
  for (const plan::LotUnits& each : solution.plan.donated)
    lines.add("donate", each.lot, each.units);
  for (const plan::LotUnits& each : solution.plan.wasted) lines.add("waste", each.lot, each.units);
  return std::move(lines).text();
}

std::string plan_text(const plan::Solution<plan::RefillPlan>& solution) {
  Lines lines;
  lines.levels(solution.levels);
  for (const plan::OfferPacks& each : solution.plan.packs) lines.add("buy", each.offer, each.packs);
  for (const plan::Move& each : solution.plan.moves)
    lines.add("move", each.lot, each.offer, each.line, each.units);
  for (const plan::LineUnits& each : solution.plan.unmet) lines.add("unmet", each.line, each.units);
  return std::move(lines).text();
}

bool read_plan(const std::string& text, plan::Solution<plan::EatDownPlan>& solution) {
  return each_line(text, [&](const Fields& fields) {
    std::int64_t number = 0;
    if (fields[0] == "level") return read_level(fields, solution.levels);
    if (!read_number(fields.back(), number)) return false;
    if (fields[0] == "open" && fields.size() == 4) {
      solution.plan.opened.push_back({std::string(fields[1]), std::string(fields[2]), number});
    } else if (fields[0] == "serve" && fields.size() == 5) {
      solution.plan.servings.push_back({std::string(fields[1]), std::string(fields[2]), std::string(fields[3]), number});
    } else if (fields[0] == "donate" && fields.size() == 3) {
      solution.plan.donated.push_back({std::string(fields[1]), number});
    } else if (fields[0] == "waste" && fields.size() == 3) {
      solution.plan.wasted.push_back({std::string(fields[1]), number});
    } else {
      return false;
    }
    return true;
  });
}

bool read_plan(const std::string& text, plan::Solution<plan::RefillPlan>& solution) {
  return each_line(text, [&](const Fields& fields) {
    std::int64_t number = 0;
    if (fields[0] == "level") return read_level(fields, solution.levels);
    if (!read_number(fields.back(), number)) return false;
    if (fields[0] == "buy" && fields.size() == 3) {
      solution.plan.packs.push_back({std::string(fields[1]), number});
    } else if (fields[0] == "move" && fields.size() == 5) {
      solution.plan.moves.push_back({std::string(fields[1]), std::string(fields[2]), std::string(fields[3]), number});
    } else if (fields[0] == "unmet" && fields.size() == 3) {
      solution.plan.unmet.push_back({std::string(fields[1]), number});
    } else {
      return false;
    }
    return true;
  });
}

}  // namespace larderloop
