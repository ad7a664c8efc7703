// read_sections.h - one function a kind of record of the household document, and the parts that
// several of them share. Each reads one object and leaves its findings; whether the result makes
// sense is core's business (validate.h).
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/intake/reader.h"

#include <map>
#include <optional>

namespace larderloop::intake {

// Servings in a unit of each lot's food: what "units" of a lot means. A lot or food that is not
// there counts one serving a unit; core reports it.
using UnitSizes = std::map<LotId, std::int64_t>;
[[nodiscard]] UnitSizes unit_sizes(const Household& household);

// Shared parts (read_parts.cpp).
[[nodiscard]] std::optional<Statement> read_statement(Reader& in, std::string_view name);
[[nodiscard]] std::optional<DateMark> read_mark(Reader& in, std::string_view name, Need need);
void read_stock_key(Reader& in, StockKey& at);
void read_amount(Reader& in, const UnitSizes& sizes, LotId lot, Need need, HalfServings& out);

// People (read_people.cpp).
[[nodiscard]] Settings read_settings(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] OwnAllergen read_own_allergen(const JsonNode& node, const Path& path,
                                            Findings& findings);
[[nodiscard]] Person read_person(const JsonNode& node, const Path& path, Findings& findings);

// Foods (read_foods.cpp).
[[nodiscard]] Food read_food(const JsonNode& node, const Path& path, Findings& findings);

// Places, kit menus, the week (read_places.cpp).
[[nodiscard]] Place read_place(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] ReviewRule read_review_rule(const JsonNode& node, const Path& path,
                                          Findings& findings);
[[nodiscard]] MenuLine read_menu_line(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] TableSeat read_seat(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] TableException read_exception(const JsonNode& node, const Path& path,
                                            Findings& findings);
[[nodiscard]] Wish read_wish(const JsonNode& node, const Path& path, Findings& findings);

// Lots, readings, the record (read_record.cpp).
[[nodiscard]] Lot read_lot(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] Reading read_reading(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] Entry read_entry(const JsonNode& node, const Path& path, Findings& findings,
                               const UnitSizes& sizes);

// Reviews and what was shown (read_reviews.cpp).
[[nodiscard]] ReviewEvent read_review_event(const JsonNode& node, const Path& path,
                                            Findings& findings);
[[nodiscard]] ReviewMark read_review_mark(const JsonNode& node, const Path& path,
                                          Findings& findings, const UnitSizes& sizes);
[[nodiscard]] Trial read_trial(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] TrialNote read_trial_note(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] TrialEnd read_trial_end(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] BuyNote read_buy_note(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] ImportMapping read_mapping(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] ShownMeal read_shown_meal(const JsonNode& node, const Path& path, Findings& findings,
                                        const UnitSizes& sizes);
[[nodiscard]] FeedStamp read_feed_stamp(const JsonNode& node, const Path& path, Findings& findings);

// The calendar's settings and addresses, and what calendar servers were sent (feeds.cpp).
[[nodiscard]] FeedSettings read_feed_settings(const JsonNode& node, const Path& path,
                                              Findings& findings);
[[nodiscard]] FeedAddress read_feed_address(const JsonNode& node, const Path& path,
                                            Findings& findings);
[[nodiscard]] PushedItem read_pushed_item(const JsonNode& node, const Path& path,
                                          Findings& findings);
[[nodiscard]] TaskDone read_task_done(const JsonNode& node, const Path& path, Findings& findings);
[[nodiscard]] KeptPlan read_kept_plan(const JsonNode& node, const Path& path, Findings& findings);

}  // namespace larderloop::intake
