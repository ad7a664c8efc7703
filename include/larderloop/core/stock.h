// stock.h - stock is derived from the record, never stored: replay the entries and see what lies where.
// Rule:     for every lot at every time: received + found + count corrections
//           = eaten + given away + thrown out + lost + on hand (in half servings).
#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

// Only positions with something on them.
using Stock = std::map<StockKey, HalfServings>;

// Totals of one lot over the record, in half servings; `counted` may be negative. Corrected entries do not count.
struct LotTotals {
  std::int64_t received = 0, found = 0, counted = 0, eaten = 0, given_away = 0, thrown_out = 0, lost = 0;
  [[nodiscard]] std::int64_t in() const { return received + found + counted; }
  [[nodiscard]] std::int64_t out() const { return eaten + given_away + thrown_out + lost; }
  friend bool operator==(const LotTotals&, const LotTotals&) = default;
};

// Replays a record entry by entry. An entry that cannot be (overdraws a position, names no lot, corrects what is not there,
// corrects twice, opens more than one unit, ...) is refused with a Problem and leaves the ledger as it was.
class Ledger {
 public:
  // The household must outlive the ledger; its own entries are not replayed by construction.
  explicit Ledger(const Household& household) : household_(&household) {}
  // Applies one entry. For counted, `entry.change` must be set (see counted_change).
  [[nodiscard]] Status apply(const Entry& entry);
  // What `change` a count at this position would record.
  [[nodiscard]] std::int64_t counted_change(const StockKey& at, HalfServings amount) const;
  [[nodiscard]] HalfServings on_hand(const StockKey& at) const;
  [[nodiscard]] const Stock& stock() const { return stock_; }
  [[nodiscard]] const std::map<LotId, LotTotals>& totals() const { return totals_; }

 private:
  // What is needed of an entry to undo it.
  struct Deed {
    EntryId id;
    EntryKind kind = EntryKind::kReceived;
    Day on{};
    StockKey at;
    PlaceKey to;
    HalfServings amount;
    std::int64_t change = 0;
    bool corrected = false;
  };
  [[nodiscard]] static Deed deed_of(const Entry& entry);
  [[nodiscard]] Deed* find_deed(EntryId id);
  [[nodiscard]] Status check_form(const Entry& entry);
  // Where the things of a lot were in the household's lists when they were last asked for.
  struct Known {
    std::size_t food = 0, place = 0;
  };
  [[nodiscard]] Known& known_of(const Lot& lot);
  [[nodiscard]] const Food& food_of(const Lot& lot);
  [[nodiscard]] bool is_place(const PlaceKey& key, const Lot& lot);
  [[nodiscard]] Status apply_change(const Deed& deed, int sign);
  void remember(Deed deed);
  const Household* household_;
  Stock stock_;
  std::map<LotId, LotTotals> totals_;
  std::vector<Deed> done_;  // by id
  std::vector<Known> known_;  // by the lot's place in the list
};

// The whole record. Fails with every impossible entry as a problem (where = "/entries/N").
[[nodiscard]] Result<Ledger> replay(const Household& household);
// Stock on the evening of `day` (entries of later days left out).
[[nodiscard]] Result<Ledger> replay_through(const Household& household, Day day);

}  // namespace larderloop
