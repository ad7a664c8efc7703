// Rows of lots that are new: lots and their entries, with every check that a command makes.
#include "app/sheet_lots.h"

#include <iterator>
#include <tuple>

#include "larderloop/app/entering.h"
#include "larderloop/app/placing.h"
#include "larderloop/core/words.h"
#include "larderloop/intake/date_text.h"

namespace larderloop {
namespace {

class LotRows {
 public:
  explicit LotRows(SheetWork& work) : work_(work), reader_(work), known_(work, reader_), next_lot_(next_ids(work.household).lot.value()) {
    bare_.settings = work.household.settings;
    bare_.foods = work.household.foods;
  }

  [[nodiscard]] const std::optional<Error>& broken() const { return known_.broken(); }

  void row() {
    const auto row = reader_.read();
    if (row && !known_.settle(*row)) add(*row);
  }

  void finish() {
    for (const SheetLot& each : known_.finish()) add(each);
    for (const auto& [food, label] : known_.labels_read()) learn(food, label);
    work_.changes.foods = reader_.foods_with_labels();
    // Counts were numbered as they came, new entries follow on.
    std::int64_t entry = known_.next_entry();
    for (Entry& each : entries_) each.id = EntryId(entry++);
    work_.changes.entries.insert(work_.changes.entries.end(), std::make_move_iterator(entries_.begin()), std::make_move_iterator(entries_.end()));
    if (unread_ > 0) {
      work_.report.notes.push_back(std::to_string(unread_) + " of the new lots have no label that was read: nobody who avoids anything or keeps a diet gets those; next: larderloop lot label LOT --read-by NAME");
    }
    if (past_ > 0) work_.report.notes.push_back(std::to_string(past_) + " of the new lots have a date that is past already");
  }

 private:
  void add(const SheetLot& row) {
    if (!is_first(row) || !is_kept(row) || !agrees(row) || !may_lie(row)) return;
    const auto lot = lot_for(row);
    if (!lot) return;
    add_entries(row, *lot);
    ++work_.report.added;
    if (work_.report.news.size() < kMostRowNews) work_.news(row.line, RowDid::kAdded, words(row, *lot));
    if (row.label >= 0) learn(row.food->key, row.label);
    else ++unread_;
    if (gives_good_through(row.mark.kind) && *row.mark.day - Days(work_.household.settings.margin_days) < work_.when.today) ++past_;
  }

  // Two rows that say the same are one too many, or belong together.
  bool is_first(const SheetLot& row) {
    std::string identity = lot_identity(row.food->key, row.mark, row.lot_code);
    identity += '|' + row.place->key.str() + '|' + std::to_string(row.received.time_since_epoch().count()) + '|' + std::to_string(row.number);
    if (row.opened_on) identity += '|' + std::to_string(row.opened_on->time_since_epoch().count());
    const auto [line, fresh] = seen_.emplace(std::move(identity), row.line);
    if (!fresh) {
      work_.fault_at(row.line, row.opened_on ? Col::kServingsLeft : Col::kUnits, "", "the same food, date, code, day and place as in line " + std::to_string(line->second),
                     "if these are other units, add them up in one row; else leave one of the two out");
    }
    return fresh;
  }

  // What lot add asks before a unit is put anywhere. The answer is the same for all rows of a food, a label and a place, unless the lot is not
  // in order or its date is a safety date.
  bool may_lie(const SheetLot& row) {
    Lot lot;
    lot.food = row.food->key;
    lot.mark = row.mark;
    lot.received = row.received;
    lot.state = row.state.value_or(LotState::kOk);
    if (row.opened_on && *row.opened_on < row.received) {
      work_.fault_at(row.line, Col::kOpenedOn, iso_day(*row.opened_on), "it was opened before it came", "check the two days");
      return false;
    }
    const bool in_kit = is_in_kit(*row.place);
    bool usual = lot.state == LotState::kOk;
    LotFacts facts;
    if (in_kit || !usual) {
      facts = lot_facts(bare_, lot);
      usual = usual && !facts.safety;
    }
    const auto key = std::make_tuple(row.food, row.label, row.place);
    if (usual && allowed_.count(key) > 0) return true;
    if (!in_kit && usual) facts = lot_facts(bare_, lot);
    if (const Statement* label = reader_.label(row.label)) facts.label = *label;
    const Status put = may_put(work_.household, facts, row.place->key, work_.when.today);
    if (put) {
      if (usual) allowed_.insert(key);
      return true;
    }
    std::string remedy = put.error().next_step;
    if (remedy.rfind("read the label", 0) == 0) remedy = "read the label and write it into the columns contains, may_contain, suits, label_read_by and label_read_on";
    work_.fault_at(row.line, Col::kPlace, row.place->key.str(), put.error().what, std::move(remedy));
    return false;
  }

  bool is_in_kit(const Place& place) {
    const auto [answer, fresh] = in_kit_.try_emplace(&place, false);
    if (fresh) answer->second = !kit_of(work_.household, place.key).empty();
    return answer->second;
  }

  // Nothing new comes of what is retired, or to where nothing is kept.
  bool is_kept(const SheetLot& row) {
    if (row.food->retired) work_.fault_at(row.line, Col::kFood, row.food->key.str(), "this food is retired since " + iso_day(*row.food->retired), "name another one, or bring it back: larderloop food retire " + row.food->key.str() + " --back");
    if (row.place->retired) work_.fault_at(row.line, Col::kPlace, row.place->key.str(), "this place is retired since " + iso_day(*row.place->retired), "name another one, or bring it back: larderloop place retire " + row.place->key.str() + " --back");
    return !row.food->retired && !row.place->retired;
  }

  // The day that is told must be that of the printed text, where that can be read.
  bool agrees(const SheetLot& row) {
    if (!row.day_told || row.mark.text.empty()) return true;
    const auto printed = parse_printed_mark(row.mark.text, row.mark.kind, work_.when.today, {work_.household.settings.date_order, row.received});
    if (!printed) return true;
    const DateMark& mark = printed->mark;
    const bool kind = mark.kind == row.mark.kind;
    if (kind && mark.day == row.mark.day) return true;
    const std::string read = mark.day ? std::string(mark_kind_words(mark.kind)) + " " + iso_day(*mark.day) : "no date";
    work_.fault_at(row.line, kind ? Col::kDateDay : Col::kDateKind, row.mark.day ? iso_day(*row.mark.day) : "", "the printed text '" + row.mark.text + "' comes to " + read,
                   kind ? "write that day, or leave this cell empty" : "write " + std::string(mark_kind_name(mark.kind)) + ", or mend the text");
    return false;
  }

  // A new lot, or the one that another row of the file with this number began; nothing when the two rows do not tell the same of it.
  std::optional<LotId> lot_for(const SheetLot& row) {
    const Statement* label = reader_.label(row.label);
    const LotState state = row.state.value_or(LotState::kOk);
    if (row.number != 0) {
      const auto [begun, fresh] = numbered_.try_emplace(row.number, work_.changes.lots.size());
      if (!fresh) {
        const Lot& lot = work_.changes.lots[begun->second];
        const bool same = lot.food == row.food->key && lot.mark == row.mark && lot.lot_code == row.lot_code && lot.received == row.received && lot.state == state &&
                          (label == nullptr ? !lot.label : lot.label == *label);
        if (same) return lot.id;
        work_.fault_at(row.line, Col::kLot, std::to_string(row.number), "another row tells something else of this lot", "give all rows of one lot the same food, date, code, day, label and state");
        return std::nullopt;
      }
    }
    Lot& lot = work_.changes.lots.emplace_back();
    lot.id = LotId(next_lot_++);
    lot.food = row.food->key;
    lot.mark = row.mark;
    lot.lot_code = row.lot_code;
    lot.received = row.received;
    if (label != nullptr) lot.label = *label;
    lot.state = state;
    lot.note = row.note;
    return lot.id;
  }

  Entry& new_entry(EntryKind kind, Day on, StockKey at, HalfServings amount) {
    Entry& entry = entries_.emplace_back();
    entry.kind = kind;
    entry.on = on;
    entry.written_at = work_.when.now;
    entry.at = std::move(at);
    entry.amount = amount;
    return entry;
  }

  // What is open came sealed, was opened on its day, and is counted now when some of it is gone.
  void add_entries(const SheetLot& row, LotId lot) {
    const StockKey sealed{lot, row.place->key, std::nullopt};
    if (!row.opened_on) {
      new_entry(EntryKind::kReceived, row.received, sealed, row.amount).paid_cents = row.paid_cents;
      return;
    }
    const std::int64_t unit = HalfServings::units(1, row.food->servings).halves();
    const std::int64_t units = (row.amount.halves() + unit - 1) / unit;
    new_entry(EntryKind::kReceived, row.received, sealed, HalfServings(units * unit)).paid_cents = row.paid_cents;
    for (std::int64_t each = 0; each < units; ++each) new_entry(EntryKind::kOpened, *row.opened_on, sealed, HalfServings(unit));
    if (units * unit == row.amount.halves()) return;
    new_entry(EntryKind::kCounted, work_.when.today, {lot, row.place->key, row.opened_on}, row.amount).change = row.amount.halves() - units * unit;
  }

  std::string words(const SheetLot& row, LotId id) const {
    const Food& food = *row.food;
    std::string line = "lot " + std::to_string(id.value()) + ": " + units_words(food, row.amount) + " of " + food.name + ", ";
    line += row.mark.day ? std::string(mark_kind_words(row.mark.kind)) + " " + plain_day(*row.mark.day) : std::string("no date");
    if (!row.lot_code.empty()) line += ", lot code " + row.lot_code;
    line += row.opened_on ? ", open in " : ", into ";
    return line + row.place->name + (row.label < 0 ? "; label not read" : "");
  }

  // A label that says something new is held against everyone, once, whoever read it on whatever day.
  void learn(const FoodKey& key, int index) {
    if (!reader_.learn(key, index)) return;
    const Statement& label = *reader_.label(index);
    if (told_.insert({key, label.declared, label.suits}).second) tell(key, label);
  }

  void tell(const FoodKey& key, const Statement& label) {
    const Food& food = *find_food(work_.household, key);
    std::vector<PersonKey> everyone;
    for (const Person& person : work_.household.people) {
      if (!person.retired) everyone.push_back(person.key);
    }
    LabelNews news;
    news.label = label;
    for (PersonRefusal& each : refusals(work_.household, everyone, food, &label, work_.when.today)) {
      const bool by_label = each.reason.refusal == Refusal::kContains || each.reason.refusal == Refusal::kMayContain || each.reason.refusal == Refusal::kDiet;
      if (by_label) news.must_not.push_back(std::move(each));
    }
    for (const std::string& each : concerned_words(work_.household, news)) work_.report.first.push_back(food.name + ": " + each);
  }

  SheetWork& work_;
  LotReader reader_;
  KnownLots known_;
  Household bare_;  // settings and foods alone: new lots have no readings
  std::int64_t next_lot_;
  std::vector<Entry> entries_;
  std::unordered_map<std::string, std::size_t> seen_;
  std::unordered_map<std::int64_t, std::size_t> numbered_;
  std::set<std::tuple<const Food*, int, const Place*>> allowed_;
  std::map<const Place*, bool> in_kit_;
  std::set<std::tuple<FoodKey, std::map<std::string, Declared>, std::set<Diet>>> told_;
  std::size_t unread_ = 0, past_ = 0;
};

}  // namespace

void import_lots(SheetWork& work, CsvReader& reader) {
  LotRows rows(work);
  if (rows.broken()) {
    work.problems = rows.broken()->problems;
    return;
  }
  each_row(work, reader, work.report.columns.size(), [&] { rows.row(); });
  rows.finish();
}

}  // namespace larderloop
