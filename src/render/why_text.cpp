#include "larderloop/core/eligible.h"
#include "larderloop/core/words.h"
#include "larderloop/render/why.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

std::string servings(std::int64_t halves) {
  if (halves == 1) return "half a serving";
  return fmt::format("{}{} {}", halves / 2, halves % 2 == 1 ? ".5" : "",
                     plural("serving", halves == 2 ? 1 : 2));
}

std::string time_words(const MealTime& when) {
  return fmt::format("{}, {}", plain_day(when.day), meal_name(when.meal));
}

std::string who(const Household& household, const Reason& reason) {
  return reason.person ? plain::people(household, {*reason.person}) : "nobody";
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
  return text;
}

// What is worse about the other way: "2 servings of Oat bar would be wasted".
std::string worse_words(const Household& household, const Worse& worse) {
  const std::string& level = worse.level;
  const std::string of = worse.food.empty() ? "" : " of " + plain::food(household, worse.food);
  const std::string instead =
      worse.food.empty() ? ""
                         : fmt::format(", with more {} to buy", plain::food(household, worse.food));
  if (level.empty()) return "the plan would be just as good";
  if (level == "wishes")
    return servings(worse.more) + " that somebody wished for would not be planned";
  if (level == "wasted") return servings(worse.more) + of + " more would be wasted";
  if (level == "donated") return servings(worse.more) + of + " more would be given away";
  if (level == "late") return "more food would be opened within the last days of its date";
  if (level == "order") return "food would be opened later, with less regard to the soonest date";
  if (level == "unmet") return "places of the menu would stay empty";
  if (level == "displaced") return "good units would have to leave their place";
  if (level == "energy") {
    return fmt::format("the bags would fall {} kcal further short of what is wanted", worse.more);
  }
  if (level == "repeats")
    return "somebody would have more of the same food in the kit than is wanted";
  if (level == "cost") {
    return fmt::format("the kit would cost {} more{}",
                       money_words(worse.more, household.settings.currency), instead);
  }
  if (level == "dislike") return "those who eat it would like the food less";
  if (level == "handled") {
    return fmt::format("{} more {} would have to be moved or bought", worse.more,
                       plural("unit", worse.more));
  }
  return "what is packed would have sooner dates";
}

std::string way_words(const Reason& reason) {
  switch (reason.worse->way) {
    case OtherWay::kAtThatMeal:
      return fmt::format("Not on {}: then ", time_words(*reason.when));
    case OtherWay::kEatIt:
      return fmt::format("It might be eaten on {}, but then ", time_words(*reason.when));
    case OtherWay::kNotThen:
      return "Without it at this meal, ";
    case OtherWay::kWithoutLot:
      return "Without it, ";
    case OtherWay::kWithoutFood:
      return "Without buying it, ";
  }
  return {};
}

std::string refused(const Household& household, const Reason& reason) {
  std::string words = who(household, reason) + " must not have it";
  if (reason.refusal && reason.refusal->refusal == Refusal::kRefuses)
    words = who(household, reason) + " will not have it";
  if (reason.refusal) words += " (" + refusal_words(*reason.refusal) + ")";
  return words;
}

// A rule that keeps it from one meal, as a clause.
std::string at_meal_words(const Household& household, const Reason& reason) {
  const std::string limit = servings(reason.limit.halves());
  switch (reason.rule) {
    case WhyRule::kStillInKit:
      return "it comes out of the kit on " + plain_day(*reason.until);
    case WhyRule::kMustNot:
      return (reason.alone ? "the only one at the table then is " : "") +
             (reason.alone ? who(household, reason) + ", and " : "") + refused(household, reason);
    case WhyRule::kNotWished:
      return "a wish keeps it from " + who(household, reason);
    case WhyRule::kNotForThatMeal:
      return fmt::format("it is no food for {}", meal_name(reason.when->meal));
    case WhyRule::kAppetite:
      return who(household, reason) + " has other kit food at that meal";
    case WhyRule::kWeekLimit:
      return fmt::format("{} has {} of kit food in a week at most", who(household, reason), limit);
    case WhyRule::kSameFoodLimit:
      return fmt::format("{} has {} of one food in a week at most", who(household, reason), limit);
    case WhyRule::kDate:
    case WhyRule::kSetAside:
    case WhyRule::kTooLateToGive:
    case WhyRule::kNeverGiven:
    case WhyRule::kShown:
    case WhyRule::kAllUsed:
    case WhyRule::kWorse:
      break;
  }
  return {};
}

// A rule that keeps more of it from being eaten, as a clause.
std::string not_eaten_words(const Household& household, const Reason& reason) {
  switch (reason.rule) {
    case WhyRule::kMustNot:
      return refused(household, reason);
    case WhyRule::kNotWished:
      return "a wish keeps it from " + who(household, reason);
    case WhyRule::kNotForThatMeal:
      return "it is food for no other meal of the day";
    case WhyRule::kAppetite:
      return "everybody at the table has other kit food by then";
    case WhyRule::kWeekLimit:
      return fmt::format("{} of kit food in a week, for most of the family, is the most",
                         servings(reason.limit.halves()));
    case WhyRule::kSameFoodLimit:
      return fmt::format("nobody has more than {} of one food in a week",
                         servings(reason.limit.halves()));
    case WhyRule::kDate:
      return "it is good only through " + plain_day(*reason.good_through);
    case WhyRule::kSetAside:
    case WhyRule::kStillInKit:
    case WhyRule::kTooLateToGive:
    case WhyRule::kNeverGiven:
    case WhyRule::kShown:
    case WhyRule::kAllUsed:
    case WhyRule::kWorse:
      break;
  }
  return {};
}

std::string lot_words(const Household& household, const Reason& reason) {
  return fmt::format("{} (lot {})", plain::food(household, reason.food), reason.lot->value());
}

std::string good_to(const Reason& reason) {
  if (!reason.good_through) return "nobody knows how long it keeps";
  return fmt::format("it is good only through {}, not to {}", plain_day(*reason.good_through),
                     plain_day(*reason.until));
}

// Of what is bought: what is on hand and does not do.
std::string bought_words(const Household& household, const WhyPart& part, const Reason& reason) {
  switch (reason.rule) {
    case WhyRule::kDate:
      return fmt::format("{} would do, but {}.", lot_words(household, reason), good_to(reason));
    case WhyRule::kSetAside:
      return fmt::format("{} would do, but it is set aside.", lot_words(household, reason));
    case WhyRule::kMustNot:
      return fmt::format("{} would do, but {}.", lot_words(household, reason),
                         refused(household, reason));
    case WhyRule::kAllUsed:
      return fmt::format("{} would do, but all of it is wanted elsewhere in {}.",
                         lot_words(household, reason), plain::place(household, *part.kit));
    case WhyRule::kNotWished:
    case WhyRule::kNotForThatMeal:
    case WhyRule::kStillInKit:
    case WhyRule::kAppetite:
    case WhyRule::kWeekLimit:
    case WhyRule::kSameFoodLimit:
    case WhyRule::kTooLateToGive:
    case WhyRule::kNeverGiven:
    case WhyRule::kShown:
    case WhyRule::kWorse:
      break;
  }
  return {};
}

std::string reason_text(const Household& household, const WhyPart& part, const Reason& reason) {
  if (reason.worse) {
    const std::string words = way_words(reason) + worse_words(household, *reason.worse);
    return words +
           (reason.worse->level.empty() || reason.worse->proven ? "." : ", as far as was looked.");
  }
  if (part.fate == Fate::kBought) return bought_words(household, part, reason);
  if (part.fate == Fate::kNothingThen) {
    return fmt::format("{} is eaten later: at this meal {}.", lot_words(household, reason),
                       at_meal_words(household, reason));
  }
  if (reason.when) {
    return fmt::format("Not on {}: {}.", time_words(*reason.when),
                       at_meal_words(household, reason));
  }
  const bool unpacked = part.fate == Fate::kEaten || part.fate == Fate::kSetAside;
  switch (reason.rule) {
    case WhyRule::kDate:
      if (unpacked)
        return "Not kept in the kit: " + good_to(reason) +
               ", the next review and the slack after it.";
      break;
    case WhyRule::kSetAside:
      return "It would be packed if it were sound.";
    case WhyRule::kShown:
      return "Not sooner: this is what the plan said when you last saw it.";
    case WhyRule::kTooLateToGive:
      return fmt::format("Too late to give it away: that needs {} days before its last day.",
                         household.settings.donate_days);
    case WhyRule::kNeverGiven:
      return "Food of this kind, or opened, is not given away.";
    case WhyRule::kMustNot:
      if (part.fate == Fate::kSpare)
        return "A line of the menu could use it, but " + refused(household, reason) + ".";
      break;
    case WhyRule::kNotWished:
    case WhyRule::kNotForThatMeal:
    case WhyRule::kStillInKit:
    case WhyRule::kAppetite:
    case WhyRule::kWeekLimit:
    case WhyRule::kSameFoodLimit:
    case WhyRule::kAllUsed:
    case WhyRule::kWorse:
      break;
  }
  return "Not eaten: " + not_eaten_words(household, reason) + ".";
}

std::string nothing_words(const WhyReport& report) {
  const std::string then = time_words(*report.meal);
  switch (report.no_meal) {
    case NoMeal::kPassed:
      return then + ": that day has passed.";
    case NoMeal::kBeyond:
      return fmt::format("{}: the plan reaches only to {}.", then,
                         plain_day(*report.plan_end - Days(1)));
    case NoMeal::kRecorded:
      return then + ": that meal is in the record already.";
    case NoMeal::kNobody:
      return then + ": nobody is at the table.";
    case NoMeal::kWish:
      return then + ": a wish says nothing of the kit then.";
    case NoMeal::kNothingLeft:
      return then + ": nothing of the kit is planned; all that has to be eaten is eaten before.";
    case NoMeal::kNone:
      break;
  }
  return then + ": nothing of the kit is planned.";
}

std::string amount(const Household& household, const WhyPart& part) {
  return plain::amount_of(household, part.food, part.amount);
}

std::string to_be_eaten(const WhyPart& part) {
  return part.good_through ? "; it has to be eaten by " + plain_day(*part.good_through) : "";
}

std::string opening_words(const Household& household, const WhyReport& report,
                          const WhyPart& part) {
  const auto kit = [&] { return plain::place(household, *part.kit); };
  switch (part.fate) {
    case Fate::kStays:
      return fmt::format("{}: stays in {}; good through {}.", amount(household, part), kit(),
                         part.good_through ? plain_day(*part.good_through) : "no known day");
    case Fate::kMovesIn:
      return fmt::format("{}: goes into {}.", amount(household, part),
                         plain::place(household, *part.place));
    case Fate::kSpare:
      return fmt::format("{}: good, but no line of the menu of {} needs it.",
                         amount(household, part), kit());
    case Fate::kEaten:
      return fmt::format("{}: eaten from {} on by {}{}.", amount(household, part),
                         time_words(*part.when), plain::people(household, part.people),
                         to_be_eaten(part));
    case Fate::kGivenAway:
      return fmt::format("{}: given away rather than eaten.", amount(household, part));
    case Fate::kLeftOver:
      return fmt::format("{}: neither eaten nor given away; good through {}.",
                         amount(household, part),
                         part.good_through ? plain_day(*part.good_through) : "no known day");
    case Fate::kPast:
      return fmt::format("{}: past its date, {}; nothing is planned with it.",
                         amount(household, part), plain_day(*part.good_through));
    case Fate::kSetAside:
      return fmt::format("{}: set aside until it is settled; nothing is planned with it.",
                         amount(household, part));
    case Fate::kKept:
      return part.good_through
                 ? fmt::format("{}: left where it is, good through {}.", amount(household, part),
                               plain_day(*part.good_through))
                 : fmt::format("{}: left where it is; no date is known.", amount(household, part));
    case Fate::kGone:
      return fmt::format("{}: nothing of this lot is left.", plain::food(household, part.food));
    case Fate::kBought: {
      std::string words = fmt::format(
          "{} to buy for {}",
          plain::amount_of(
              household, part.food,
              HalfServings::units(part.buy->units, find_food(household, part.food)->servings)),
          part.people.empty() ? kit() : plain::people(household, part.people));
      if (part.buy->ml > 0)
        words += fmt::format(": {} of drinking water is missing", plain::litres(part.buy->ml));
      return words + fmt::format(", good through {} at least.", plain_day(*part.hold_until));
    }
    case Fate::kAtMeal:
      return fmt::format("{} of {} (lot {}) for {}{}.", capital(servings(part.amount.halves())),
                         plain::food(household, part.food), part.at->lot.value(),
                         plain::people(household, part.people), to_be_eaten(part));
    case Fate::kNothingThen:
      return nothing_words(report);
  }
  return {};
}

}  // namespace

std::string render_why_text(const Household& household, const WhyReport& report) {
  std::string text;
  for (const WhyPart& part : report.parts) {
    text += opening_words(household, report, part);
    for (const Reason& reason : part.reasons) text += " " + reason_text(household, part, reason);
    text += "\n";
  }
  return text;
}

}  // namespace larderloop
