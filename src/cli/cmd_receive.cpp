// receive: the replacement list, thing by thing, as it comes out of the shopping bag.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/lines.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/placing.h"
#include "larderloop/app/shop.h"
#include "larderloop/core/validate.h"
#include "larderloop/core/words.h"
#include "larderloop/render/cautions.h"
#include "larderloop/render/json_things.h"

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

struct ReceiveOptions {
  std::string answers, read_by;
  bool pantry = false;
};

std::vector<std::string> keys_of(const std::string& text) {
  std::vector<std::string> keys;
  std::string key;
  for (const char c : text + ",") {
    if (c != ',' && c != ' ') {
      key += c;
    } else if (!key.empty()) {
      keys.push_back(key);
      key.clear();
    }
  }
  return keys;
}

// The questions. An answer that does not do is asked again by a person and ends a script, whose answers all have to stand.
class Receiving {
 public:
  Receiving(const ReceiveOptions& given, Runtime& runtime, LineInput& input) : given_(given), runtime_(runtime), input_(input) {}

  Result<int> ask(const Household& household, const ShopList& list, Asked asked) {
    household_ = household;
    asked_ = asked;
    person_ = input_.terminal() && !runtime_.options.no_input;
    std::vector<BuyLine> lines;
    for (const ShopGroup& group : list.groups) lines.insert(lines.end(), group.lines.begin(), group.lines.end());
    if (!lines.empty()) say(render_cautions({Caution::kPurchase, Caution::kContainers}));
    for (std::size_t at = 0; at < lines.size() && !stopped_; ++at) {
      say("\n" + std::to_string(at + 1) + " of " + std::to_string(lines.size()) + ": " + wanted_words(lines[at]) + "\n");
      const auto done = one(lines[at]);
      if (!done && done.error().kind == ErrorKind::kUsage && person_) break;  // the input ended: what is whole counts
      if (!done) return fail(done.error());
    }
    count_ = lines.size();
    return 0;
  }

  std::vector<LotToEnter> lots;
  std::vector<BuyNote> notes;
  [[nodiscard]] std::size_t asked_for() const { return count_; }

 private:
  void say(const std::string& text) { runtime_.warn_lines(text); }

  Result<std::string> answer(const std::string& question) {
    say(question + " ");
    auto line = input_.line();
    if (!line) {
      say("\n");
      return fail(person_ ? ErrorKind::kUsage : ErrorKind::kBadData, "the answers end at the question '" + question + "'; nothing was written", "answer every question; 'q' as the number of units ends the list");
    }
    if (!person_) say(*line + "\n");
    return *line;
  }

  // Nothing: asked again. An error: a script is wrong.
  Status again(const Error& error) {
    if (!person_) {
      Error located = error;
      located.what = "answer " + std::to_string(input_.number()) + ": " + error.what;
      return fail(std::move(located));
    }
    say("  " + error.what + "; " + error.next_step + "\n");
    return {};
  }

  [[nodiscard]] std::string wanted_words(const BuyLine& line) const {
    const Food& food = *find_food(household_, line.food);
    std::string text = food.name + ", " + units_words(food, HalfServings::units(line.units, food.servings));
    if (line.packs > 0) {
      text += " (" + std::to_string(line.packs) + " x " + std::to_string(line.pack.units) + " at " + line.pack.shop + ")";
    }
    text += ", good through " + plain_day(line.good_through_at_least) + " at least";
    std::vector<std::string> keys = line.must_not_say;
    if (!keys.empty()) text += "; the label must not say " + list_words(keys);
    if (!line.nor_may_contain.empty()) text += "; nor may contain " + list_words(line.nor_may_contain);
    if (const BuyNote* note = open_buy_note(household_, line.food)) text += "; " + buy_note_words(household_, *note);
    return text;
  }

  void note(const BuyLine& line, BuyNoteKind kind, const FoodKey& instead) {
    BuyNote made;
    made.id = BuyNoteId(next_ids(household_).buy_note.value() + static_cast<std::int64_t>(notes.size()));
    made.food = line.food;
    if (!line.kits.empty()) made.kit = line.kits.front();
    made.on = asked_.today;
    made.kind = kind;
    made.instead = instead;
    notes.push_back(std::move(made));
  }

  // One thing of the list.
  Status one(const BuyLine& line) {
    const std::int64_t listed = line.packs > 0 ? line.packs * line.pack.units : line.units;
    NewLot lot;
    lot.food = line.food;
    for (;;) {
      auto text = answer("How many units? (Enter: " + std::to_string(listed) + "; 0 not to be had; i another food instead; - not bought; q end)");
      if (!text) return fail(text.error());
      if (*text == "-") return {};
      if (*text == "q") {
        stopped_ = true;
        return {};
      }
      if (*text == "0") {
        note(line, BuyNoteKind::kNotAvailable, {});
        return {};
      }
      if (*text == "i") {
        auto name = answer("Which food was bought instead?");
        if (!name) return fail(name.error());
        auto food = named_food(household_, *name);
        if (food && (*food)->key == line.food) food = fail(ErrorKind::kBadData, "that is the food of the list", "name the other one");
        if (!food) {
          if (Status asked = again(food.error()); !asked) return asked;
          continue;
        }
        lot.food = (*food)->key;
        *text = "";
        auto many = answer("How many units of it?");
        if (!many) return fail(many.error());
        *text = *many;
      }
      auto units = text->empty() && lot.food == line.food ? Result<std::int64_t>(listed) : read_count("units", *text, 1, kMaxUnits);
      if (units) {
        lot.units = *units;
        break;
      }
      lot.food = line.food;
      if (Status asked = again(units.error()); !asked) return asked;
    }
    if (find_food(household_, lot.food)->infant_formula) say(render_cautions({Caution::kFormula}));
    if (Status done = date(line, lot); !done) return done;
    if (Status done = label(lot); !done) return done;
    if (Status done = price(line, lot); !done) return done;
    if (Status done = place(line, lot); !done) return done;
    if (lot.food != line.food) note(line, BuyNoteKind::kBoughtInstead, lot.food);
    say("  " + new_lot_words(household_, lot) + "\n");
    auto added = add_lot(household_, lot, asked_);
    if (!added) return fail(added.error());
    apply_changes(household_, added->changes);
    lots.push_back({find_food(household_, lot.food)->name, lot});
    return {};
  }

  Status date(const BuyLine& line, NewLot& lot) {
    const Food& food = *find_food(household_, lot.food);
    for (;;) {
      auto text = answer("The date as it is printed, or a scan (none: there is none)");
      if (!text) return fail(text.error());
      std::vector<std::string> warnings;
      auto printed = read_printed(household_, &food, *text, MarkKind::kBestBefore, asked_.today, asked_.today, &warnings);
      if (!printed) {
        if (Status asked = again(printed.error()); !asked) return asked;
        continue;
      }
      for (const std::string& warning : warnings) say("  " + warning + "\n");
      lot.mark = printed->mark;
      lot.lot_code = printed->lot_code;
      Lot as_lot;
      as_lot.food = lot.food;
      as_lot.mark = lot.mark;
      as_lot.received = asked_.today;
      const LotFacts facts = lot_facts(household_, as_lot);
      if (lot.mark.day) say("  read as " + std::string(mark_kind_words(lot.mark.kind)) + " " + plain_day(*lot.mark.day) + "\n");
      if (!facts.good_through || *facts.good_through >= line.good_through_at_least) return {};
      auto take = answer("It is good through " + plain_day(*facts.good_through) + " and should be through " + plain_day(line.good_through_at_least) + ". Take it? (y; Enter: read it again)");
      if (!take) return fail(take.error());
      if (*take == "y") return {};
      if (!person_) return fail(ErrorKind::kBadData, "answer " + std::to_string(input_.number()) + ": the date is too early and was not taken", "answer y to take it all the same, or leave the thing out with -");
    }
  }

  Status label(NewLot& lot) {
    const Food& food = *find_food(household_, lot.food);
    for (;;) {
      auto text = answer(std::string("Was the label of this very package read? (") + (food.label ? "s same as last time, " : "") + "c write down what it says; Enter: not read)");
      if (!text) return fail(text.error());
      lot.label.reset();
      if (text->empty()) return {};
      if (*text != "c" && (*text != "s" || !food.label)) {
        if (Status asked = again(make_error(ErrorKind::kBadData, "cannot read the answer '" + *text + "'", food.label ? "s, c or nothing" : "c or nothing")); !asked) return asked;
        continue;
      }
      LabelRead read;
      read.read_by = given_.read_by;
      if (read.read_by.empty()) {
        auto who = answer("Who read it?");
        if (!who) return fail(who.error());
        read.read_by = *who;
      }
      if (*text == "s") {
        read.same_as_food = true;
      } else {
        auto contains = answer("It contains (allergen keys; Enter: none of them):");
        if (!contains) return fail(contains.error());
        auto may = answer("It may contain:");
        if (!may) return fail(may.error());
        auto suits = answer("It suits (diets):");
        if (!suits) return fail(suits.error());
        auto diets = read_diets("diets", keys_of(*suits));
        if (!diets) {
          if (Status asked = again(diets.error()); !asked) return asked;
          continue;
        }
        const auto contained = keys_of(*contains);
        const auto warned = keys_of(*may);
        read.contains = {contained.begin(), contained.end()};
        read.may_contain = {warned.begin(), warned.end()};
        read.suits = *diets;
      }
      auto news = news_of(lot, read);
      if (!news) {
        if (Status asked = again(news.error()); !asked) return asked;
        continue;
      }
      lot.label = read;
      if (!food.label || !news->differs) return {};
      say("  The label is not the one that was read last" + (food.label->read_on == Day{} ? std::string() : " (" + plain_day(food.label->read_on) + ", " + food.label->read_by + ")") + ".\n");
      for (const std::string& line : concerned_words(household_, *news)) say("  " + line + "\n");
      if (news->must_not.empty()) say("  It keeps nobody of the household from it.\n");
      auto go_on = answer("Take it as it is? (y; Enter: read it again)");
      if (!go_on) return fail(go_on.error());
      if (*go_on == "y") return {};
      if (!person_) return fail(ErrorKind::kBadData, "answer " + std::to_string(input_.number()) + ": the label differs and was not taken", "answer y to take it as it is; it can go only where nobody is kept from it");
    }
  }

  // What the words mean, in the pantry, where nobody in particular eats.
  Result<LabelNews> news_of(NewLot lot, const LabelRead& read) {
    auto pantry = pantry_place(household_);
    if (!pantry) return fail(pantry.error());
    lot.at = *pantry;
    lot.label = read;
    auto tried = add_lot(household_, lot, asked_);
    if (!tried) return fail(tried.error());
    return *tried->report.label;
  }

  Status price(const BuyLine& line, NewLot& lot) {
    std::optional<std::int64_t> listed;
    if (lot.food == line.food && line.packs > 0 && lot.units % line.pack.units == 0) listed = lot.units / line.pack.units * line.pack.price_cents;
    const std::string known = listed ? money_words(*listed, household_.settings.currency) : std::string("not known");
    for (;;) {
      auto text = answer("Paid for all of them together? (Enter: " + known + "; - not known)");
      if (!text) return fail(text.error());
      if (text->empty() || *text == "-") {
        if (text->empty()) lot.paid_cents = listed;
        return {};
      }
      auto paid = read_money("price", *text);
      if (paid) {
        lot.paid_cents = *paid;
        return {};
      }
      if (Status asked = again(paid.error()); !asked) return asked;
    }
  }

  Status place(const BuyLine& line, NewLot& lot) {
    auto usual = pantry_place(household_);
    if (!usual) return fail(usual.error());
    // Straight into the only place that wants it, where it may go.
    if (line.places.size() == 1) {
      lot.at = line.places.front();
      if (add_lot(household_, lot, asked_)) usual = lot.at;
    }
    const std::string several = lot.units > 1 ? "; as '1 PLACE, rest PLACE' for several" : "";
    for (;;) {
      auto text = answer("Put where? (Enter: " + find_place(household_, *usual)->name + several + ")");
      if (!text) return fail(text.error());
      lot.elsewhere.clear();
      Status put;
      if (text->empty()) lot.at = *usual;
      else put = share_out(*text, lot);
      if (put) {
        auto tried = add_lot(household_, lot, asked_);
        if (tried) return {};
        put = fail(tried.error());
      }
      if (Status asked = again(put.error()); !asked) return asked;
    }
  }

  // "pantry", "3 Ada's bag, 3 pantry", "3 bag-ada, rest pantry": every unit has its place.
  Status share_out(const std::string& text, NewLot& lot) {
    std::vector<std::pair<PlaceKey, std::int64_t>> parts;
    std::optional<std::size_t> rest;
    std::int64_t shared = 0;
    std::size_t from = 0;
    while (from <= text.size()) {
      const std::size_t end = std::min(text.find(',', from), text.size());
      std::string part = text.substr(from, end - from);
      from = end + 1;
      part.erase(0, std::min(part.find_first_not_of(' '), part.size()));
      part.erase(part.find_last_not_of(' ') + 1);
      const std::size_t blank = part.find(' ');
      const std::string first = part.substr(0, blank);
      std::int64_t units = 0;
      const bool one = parts.empty() && from > text.size();
      if (const bool number = blank != std::string::npos && first.find_first_not_of("0123456789") == std::string::npos; number || first == "rest") {
        if (number) {
          auto read = read_count("the units", first, 1, lot.units);
          if (!read) return fail(read.error());
          units = *read;
        }
        part = blank == std::string::npos ? "" : part.substr(blank + 1);
      } else if (!one) {
        return fail(ErrorKind::kBadData, "nothing says how many go to '" + part + "'", "write a number before each place, or rest: 1 PLACE, rest PLACE");
      }
      auto named = named_place(household_, part);
      if (!named) return fail(named.error());
      if (units == 0) {
        if (rest) return fail(ErrorKind::kBadData, "'rest' is there twice", "write a number before the other places");
        rest = parts.size();
      }
      if (std::any_of(parts.begin(), parts.end(), [&](const auto& each) { return each.first == (*named)->key; })) {
        return fail(ErrorKind::kBadData, "'" + (*named)->name + "' is named twice", "name each place once");
      }
      parts.emplace_back((*named)->key, units);
      shared += units;
    }
    if (rest) parts[*rest].second = lot.units - shared;
    if (rest ? shared >= lot.units : shared != lot.units) {
      return fail(ErrorKind::kBadData, "that is " + std::to_string(shared) + " of " + std::to_string(lot.units) + (rest ? " units, and nothing is the rest" : " units"), "share out all " + std::to_string(lot.units));
    }
    lot.at = parts.front().first;
    lot.elsewhere.assign(parts.begin() + 1, parts.end());
    return {};
  }

  const ReceiveOptions& given_;
  Runtime& runtime_;
  LineInput& input_;
  Household household_;
  Asked asked_;
  std::size_t count_ = 0;
  bool person_ = false;
  bool stopped_ = false;
};

Result<int> run(const ReceiveOptions& given, Runtime& runtime) {
  auto input = LineInput::open(given.answers);
  if (!input) return fail(input.error());
  auto plan = runtime.read([&](const Household& household, Asked asked) { return make_plan(household, asked); });
  if (!plan) return fail(plan.error());
  Receiving receiving(given, runtime, *input);
  const ShopList list = shop_list(runtime.household(), plan->report, given.pantry);
  auto answered = receiving.ask(runtime.household(), list, runtime.asked());
  if (!answered) return fail(answered.error());
  if (receiving.asked_for() == 0) {
    runtime.note("nothing is on the replacement list");
    return 0;
  }
  if (receiving.lots.empty() && receiving.notes.empty()) {
    runtime.note("nothing was bought; nothing was written");
    return 0;
  }
  const auto things = [](std::size_t count, const std::string& word) { return std::to_string(count) + " " + plural(word, static_cast<std::int64_t>(count)); };
  if (!runtime.options.dry_run && input->terminal()) {
    auto yes = runtime.confirm("write down " + things(receiving.lots.size(), "lot") + " and " + things(receiving.notes.size(), "note"));
    if (!yes) return fail(yes.error());
    if (!*yes) {
      runtime.note("nothing was written");
      return 0;
    }
  }
  auto entered = runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<LotsEntered>> {
    auto outcome = enter_lots(household, receiving.lots, asked);
    if (!outcome) return outcome;
    outcome->changes.buy_notes = receiving.notes;
    return outcome;
  });
  if (!entered) return fail(entered.error());
  if (runtime.options.json) runtime.print_bytes(render_lots_entered_json(runtime.household(), entered->lots, runtime.asked().today));
  for (const LotAdded& each : entered->lots) tell_added(runtime, each);
  for (const BuyNote& each : receiving.notes) runtime.note("noted: " + find_food(runtime.household(), each.food)->name + " " + buy_note_words(runtime.household(), each));
  runtime.note("next, what goes where: larderloop plan");
  return 0;
}

}  // namespace

Action add_receive(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ReceiveOptions>();
  add_text(app, "--answers", given->answers, "FILE", "The answers, one a line (standard input if left out)");
  add_text(app, "--read-by", given->read_by, "NAME", "Who reads the labels (asked if left out)");
  app.add_flag("--pantry", given->pantry, "Also what is bought for the par levels of the pantry");
  set_help(app,
           {"larderloop receive\nlarderloop receive --read-by Mira\n"
            "larderloop receive --read-by Mira <answers.txt\n",
            "For each thing on the replacement list: how many came, the date off the package, whether its label was read and what it says, "
            "the price, and where it is put, also in several places: 3 bag-ada, rest pantry. A label that differs from the last one stops and says whom it concerns and from which bags they eat. "
            "What was not to be had, or bought instead, is noted and shown in shop and plan until it comes. "
            "Nothing is written before the end; without a terminal the answers are lines, and one that does not do leaves everything as it was.",
            {}});
  return [given, &runtime] { return run(*given, runtime); };
}

}  // namespace larderloop::cli
