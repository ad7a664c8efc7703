// advice.h - the foods thrown out most, and for each the one change that would have avoided the
// most of it, by replaying the record. Replay:   what everybody ate, gave away and lost stays as it
// was, lot by lot, to the half serving; only what was thrown out unopened may
//           change. Looked at are lots that came in on one day and of which nothing was found or
//           counted up later: then each unit that was thrown out surely came with that purchase.
//           All others count as wasted and as not avoidable.
// Pack:     of a purchase of m packs of p units at least (m-1) p + 1 were wanted, or a pack less
// would have done. With packs of q < p, as
//           many were bought as cover both these and all that was not thrown out. p: the largest
//           pack in the book that divides the purchase. Units that lay in a kit had their use
//           there: of a lot, only what was thrown out beyond all that ever lay in a kit is
//           avoidable.
// Par:      of lots that never lay in a kit. On each day of purchase no more was bought than brings
// these lots up to the level. A level that
//           leaves less than was eaten, given away, lost or is still there is not possible. Of the
//           levels that avoid the most, the highest.
// Food:     of what was thrown out past its date. The other food would have kept its shortest life
// at receipt in the record (else the short
//           end of its storage time) from the day of purchase. From the day of throwing out to that
//           date it is eaten in the place of units of the other food that came in later still,
//           which are then not bought. Everybody who may have the one, or was written down as
//           having eaten it, may have the other (why_not(), as of today); it shares a role, or a
//           meal where there are no roles, and asks for no more preparation.
// Review:   of lots of which everything lay in one kit, left it at one finished review and was
// thrown out past its date. Had every review of
//           the kit been N weeks earlier, then what would have left it (good through before the
//           next review + slack, N weeks earlier) and was there by then had N more weeks to be
//           eaten. In each of these weeks (seven days back from the review) everybody who may have
//           all of these lots (why_not()) has room for what the weekly tolerance and the limit for
//           one food leave beside what they ate that week; helpings of nobody in particular take
//           from the room of all. Where the household had a week or more before the date, no more
//           is counted than the pace at which it ate these lots then. That the refill comes N weeks
//           earlier is not priced.
// Money:    avoided cents are the avoided part of what these lots' thrown-out units cost (waste.h),
// rounded down; not prices of other packs.
#pragma once

#include "larderloop/app/waste.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace larderloop {

inline constexpr std::size_t kMostAdvised = 3;
inline constexpr int kMostWeeksEarlier = 26;

enum class RemedyKind { kPack, kPar, kFood, kReview };
[[nodiscard]] std::string_view remedy_kind_name(RemedyKind kind);  // "pack"

// `avoided`: in half servings. Beside it what the change is, by its kind:
//   pack     `units` at once in the place of `units_before`; `known`: the book has such a pack
//   par      `units`; `units_before`: the level now, absent = none
//   food     `food`, for `people`
//   review   of `kit`, `weeks` earlier
struct Remedy {
  RemedyKind kind = RemedyKind::kPack;
  std::int64_t avoided = 0;
  std::int64_t cents = 0;
  std::int64_t units = 0;
  std::optional<std::int64_t> units_before;
  bool known = false;
  FoodKey food;
  std::vector<PersonKey> people;
  PlaceKey kit;
  int weeks = 0;
};

// `best`: avoids the most money, then the most servings; absent: no single change helps.
struct Advice {
  FoodKey food;
  Worth wasted;
  std::optional<Remedy> best;
};

// At most three foods: by money thrown out, then, of those without, by servings. `year`: only what
// was thrown out in it. avoided <= wasted for every one, in money and in amount.
[[nodiscard]] Result<std::vector<Advice>> make_advice(const Household& household,
                                                      std::optional<int> year,
                                                      const std::optional<FoodKey>& food,
                                                      Day today);

}  // namespace larderloop
