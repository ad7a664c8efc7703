#include "larderloop/render/trial.h"

#include "render/json_common.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

using json::Json;

std::string verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::kLiked:
      return "liked it";
    case Verdict::kTired:
      return "got tired of it";
    case Verdict::kHardToOpen:
      return "hard to open";
    case Verdict::kHardToPrepare:
      return "hard to prepare";
    case Verdict::kNeededWater:
      return "needed water";
    case Verdict::kNotEnough:
      return "not enough";
  }
  return {};
}

std::string rating_line(const Household& household, const RatingChange& each) {
  return fmt::format("{} from {:+} to {:+} for {}, because {}", plain::food(household, each.food),
                     each.before, each.after, find_person(household, each.person)->name, each.why);
}

}  // namespace

std::string render_trial_text(const Household& household, const TrialReport& report) {
  const Trial& trial = report.trial;
  std::string text = fmt::format(
      "Trial {} of the {}, {} to {}, {}{}.\n", trial.id.value(), plain::place(household, trial.kit),
      plain_day(trial.from), plain_day(trial.through),
      trial.people.empty() ? "everyone" : plain::people(household, trial.people),
      report.end ? "; ended on " + plain_day(report.end->on) : "");
  if (!trial.note.empty()) text += "  " + trial.note + "\n";
  text += "\n";
  plain::Section eaten("Eaten from the kit");
  for (const EatenInTrial& each : report.eaten)
    eaten.line(plain::amount_of(household, each.food, each.amount));
  plain::Section notes("Said");
  for (const TrialNote& each : report.notes) {
    notes.line(
        plain::food(household, each.food),
        fmt::format("{}: {}{}", find_person(household, each.person)->name,
                    verdict_words(each.verdict), each.note.empty() ? "" : " (" + each.note + ")"));
  }
  plain::Section ratings(report.end ? "Ratings that changed; refills and meals follow them"
                                    : "What the end will change; refills and meals follow ratings");
  for (const RatingChange& each : report.ratings) ratings.line(rating_line(household, each));
  plain::Section advice("To think about");
  for (const std::string& each : report.advice) advice.line(each);
  for (const plain::Section* section : {&eaten, &notes, &ratings, &advice}) {
    if (!section->empty()) text += section->text();
  }
  if (report.notes.empty())
    text += "Nothing was said yet: larderloop trial note FOOD liked --person PERSON\n";
  return text;
}

std::string render_trial_json(const Household&, const TrialReport& report, Day as_of) {
  Json data;
  data["trial"] = report.trial.id.value();
  data["kit"] = report.trial.kit.str();
  data["from"] = iso_day(report.trial.from);
  data["through"] = iso_day(report.trial.through);
  data["people"] = json::keys(report.trial.people);
  data["note"] = json::text_or_null(report.trial.note);
  data["ended_on"] = report.end ? Json(iso_day(report.end->on)) : Json(nullptr);
  data["notes"] = Json::array();
  for (const TrialNote& each : report.notes) {
    data["notes"].push_back({{"note", each.id.value()},
                             {"food", each.food.str()},
                             {"person", each.person.str()},
                             {"verdict", verdict_name(each.verdict)},
                             {"on", iso_day(each.on)},
                             {"text", json::text_or_null(each.note)}});
  }
  data["eaten"] = Json::array();
  for (const EatenInTrial& each : report.eaten)
    data["eaten"].push_back({{"food", each.food.str()}, {"amount", json::servings(each.amount)}});
  data["ratings"] = Json::array();
  for (const RatingChange& each : report.ratings) {
    data["ratings"].push_back({{"person", each.person.str()},
                               {"food", each.food.str()},
                               {"before", each.before},
                               {"after", each.after},
                               {"why", each.why}});
  }
  data["advice"] = report.advice;
  return json::document("trial", as_of, std::move(data));
}

}  // namespace larderloop
