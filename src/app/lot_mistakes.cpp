#include "larderloop/app/lot_mistakes.h"

#include "larderloop/app/record.h"
#include "larderloop/core/lot.h"

#include <algorithm>
#include <set>

namespace larderloop {
namespace {

bool uses_up(EntryKind kind) {
  return kind == EntryKind::kEaten || kind == EntryKind::kGivenAway ||
         kind == EntryKind::kThrownOut || kind == EntryKind::kLost;
}

std::string number_of(LotId lot) {
  return std::to_string(lot.value());
}

}  // namespace

Result<Outcome<LotTakenBack>> take_lot_back(const Household& household, LotId lot,
                                            const std::string& note, Asked asked) {
  std::set<EntryId> corrected;
  for (const Entry& each : household.entries) {
    if (each.kind == EntryKind::kCorrected) corrected.insert(each.corrects);
  }
  std::vector<EntryId> which;
  for (auto each = household.entries.rbegin(); each != household.entries.rend(); ++each) {
    if (each->kind != EntryKind::kCorrected && each->at.lot == lot &&
        corrected.count(each->id) == 0)
      which.push_back(each->id);
  }
  if (which.empty()) {
    return fail(ErrorKind::kBadData,
                "everything that was recorded of lot " + number_of(lot) + " was taken back already",
                "see: larderloop lot show " + number_of(lot));
  }
  auto done = correct(household, which, note, asked);
  if (!done) return fail(done.error());
  Outcome<LotTakenBack> outcome;
  outcome.report.lot = lot;
  outcome.report.reversed = std::move(done->report.reversed);
  outcome.report.entries = std::move(done->report.entries);
  outcome.report.used = std::any_of(outcome.report.reversed.begin(), outcome.report.reversed.end(),
                                    [](const Entry& each) { return uses_up(each.kind); });
  outcome.changes = std::move(done->changes);
  return outcome;
}

Result<Outcome<LotEnteredAgain>> enter_lot_with_code(const Household& household, LotId lot,
                                                     const std::string& code, Asked asked) {
  const Lot& old = *find_lot(household, lot);
  if (old.lot_code == code) {
    return fail(ErrorKind::kBadData, "that is the code of lot " + number_of(lot) + " already",
                "see: larderloop lot show " + number_of(lot));
  }
  const NextIds next = next_ids(household);
  auto back = take_lot_back(
      household, lot, "its code was wrong; entered again as lot " + number_of(next.lot), asked);
  if (!back) return fail(back.error());
  Outcome<LotEnteredAgain> outcome;
  outcome.report.back = std::move(back->report);
  const LotFacts facts = lot_facts(household, old);
  Lot& fresh = outcome.report.lot;
  fresh = old;
  fresh.id = next.lot;
  fresh.lot_code = code;
  fresh.mark = facts.mark;
  fresh.label = facts.label;
  fresh.state = facts.state;
  std::int64_t id =
      next.entry.value() + static_cast<std::int64_t>(outcome.report.back.entries.size());
  const auto& reversed = outcome.report.back.reversed;
  for (auto each = reversed.rbegin(); each != reversed.rend(); ++each) {
    Entry entry = *each;
    entry.id = EntryId(id++);
    entry.at.lot = fresh.id;
    entry.written_at = asked.now;
    outcome.report.entries.push_back(std::move(entry));
  }
  outcome.changes = std::move(back->changes);
  outcome.changes.lots = {fresh};
  outcome.changes.entries.insert(outcome.changes.entries.end(), outcome.report.entries.begin(),
                                 outcome.report.entries.end());
  return outcome;
}

std::set<LotId> lots_taken_back(const Household& household) {
  std::set<EntryId> corrected;
  for (const Entry& each : household.entries) {
    if (each.kind == EntryKind::kCorrected) corrected.insert(each.corrects);
  }
  std::set<LotId> named;
  if (corrected.empty()) return named;
  const auto counts = [&](const Entry& each) { return corrected.count(each.id) == 0; };
  for (const Entry& each : household.entries) {
    if (each.kind != EntryKind::kCorrected && !counts(each)) named.insert(each.at.lot);
  }
  for (const Entry& each : household.entries) {
    if (each.kind != EntryKind::kCorrected && counts(each)) named.erase(each.at.lot);
  }
  return named;
}

}  // namespace larderloop
