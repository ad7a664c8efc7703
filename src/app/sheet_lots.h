// sheet_lots.h - rows of lots on their way into the book.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "app/sheet_work.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/stock.h"

namespace larderloop {

// One row as it was understood. `label`: its place in LotReader::labels, -1: not read. `number`: of the file's own column; 0: none. `at`: without
// its lot.
struct SheetLot {
  std::size_t line = 0;
  std::int64_t number = 0;
  const Food* food = nullptr;
  const Place* place = nullptr;
  std::optional<Day> opened_on;
  HalfServings amount;
  DateMark mark;
  bool day_told = false;  // beside the printed text, which was not read
  std::string lot_code;
  Day received{};
  bool received_said = false;
  int label = -1;
  std::optional<LotState> state;
  std::optional<std::int64_t> paid_cents;
  std::string note;
};

// Cells to rows. What was read once is remembered: the same foods, places, dates and labels come again and again.
class LotReader {
 public:
  explicit LotReader(SheetWork& work);
  // Nothing after a fault.
  [[nodiscard]] std::optional<SheetLot> read();
  [[nodiscard]] const Statement* label(int index) const { return index < 0 ? nullptr : &labels_[static_cast<std::size_t>(index)]; }
  // A lot of this food came with this label: what "same" means from here on. True when it differs from the last one in what it says.
  bool learn(const FoodKey& food, int label);
  // Foods whose last read label is another one now.
  [[nodiscard]] std::vector<Food> foods_with_labels() const;

 private:
  void read_amount(SheetLot& row);
  void read_mark(SheetLot& row);
  void read_label(SheetLot& row);
  [[nodiscard]] std::optional<DateMark> told_mark(MarkKind kind, bool kind_said);
  [[nodiscard]] std::optional<DateMark> printed_mark(SheetLot& row, MarkKind kind);
  [[nodiscard]] int last_label(const Food& food);
  SheetWork& work_;
  std::unordered_map<std::string, const Food*> foods_;
  std::unordered_map<std::string, const Place*> places_;
  struct Mark {
    DateMark mark;
    std::string lot_code;
  };
  std::unordered_map<std::string, Mark> marks_;
  std::unordered_map<std::string, int> label_cells_;
  std::vector<Statement> labels_;
  std::map<FoodKey, int> last_;  // -1: none was ever read
  std::set<FoodKey> learnt_;
};

// What the book has of them already.
class KnownLots {
 public:
  KnownLots(SheetWork& work, const LotReader& reader);
  [[nodiscard]] const std::optional<Error>& broken() const { return broken_; }
  // True when the row is settled: known, changed, counted, wrong, or put off until all rows were seen.
  bool settle(const SheetLot& row);
  // The rows that were put off; those that are new after all.
  [[nodiscard]] std::vector<SheetLot> finish();
  [[nodiscard]] std::int64_t next_entry() const { return next_entry_; }
  // Labels of lots of the book that the file told, by food.
  [[nodiscard]] const std::vector<std::pair<FoodKey, int>>& labels_read() const { return labels_read_; }

 private:
  [[nodiscard]] std::vector<const LotFacts*> like(const SheetLot& row) const;
  [[nodiscard]] bool take(const SheetLot& row, const LotFacts& facts);
  void settle_numbered(const SheetLot& row, const Lot& lot, const LotFacts& facts);
  [[nodiscard]] bool settle_label(const SheetLot& row, const LotFacts& facts);  // true: changed
  [[nodiscard]] bool settle_state(const SheetLot& row, const LotFacts& facts);
  void tell_wrong_places(const LotFacts& facts, const Statement& label);
  void refuse(const SheetLot& row, Col col, std::string value, std::string what, std::string remedy) { work_.fault_at(row.line, col, std::move(value), std::move(what), std::move(remedy)); }
  SheetWork& work_;
  const LotReader& reader_;
  std::vector<LotFacts> facts_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_identity_;
  std::optional<Ledger> ledger_;
  std::optional<Error> broken_;
  std::set<StockKey> taken_;
  std::set<LotId> taken_lots_;
  std::map<LotId, int> told_labels_;  // what the rows of a lot said so far
  std::map<LotId, LotState> told_states_;
  std::vector<std::pair<FoodKey, int>> labels_read_;
  std::vector<SheetLot> put_off_;
  std::int64_t next_entry_ = 1;
  std::int64_t next_reading_ = 1;
};

// "lentil-stew|best_before|2027-08-31|L6074"
[[nodiscard]] std::string lot_identity(const FoodKey& food, const DateMark& mark, const std::string& lot_code);

}  // namespace larderloop
