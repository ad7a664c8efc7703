// write_sections.h - records of a household as JSON objects, the counterpart of read_sections.h.
// What equals its default is left out.
#pragma once

#include "intake/json_write.h"
#include "intake/read_sections.h"
#include "larderloop/core/household.h"

namespace larderloop::intake {

// Shared parts (write_parts.cpp).
[[nodiscard]] JsonNode mark_node(const DateMark& mark);
[[nodiscard]] std::optional<JsonNode> statement_node(const std::optional<Statement>& label);
void write_stock_key(ObjectWriter& out, const StockKey& at);
void write_amount(ObjectWriter& out, const UnitSizes& sizes, LotId lot, HalfServings amount);

// What the household is (write_people.cpp, write_foods.cpp, write_places.cpp).
[[nodiscard]] JsonNode settings_node(const Settings& settings);
[[nodiscard]] JsonNode own_allergen_node(const OwnAllergen& own);
[[nodiscard]] JsonNode person_node(const Person& person);
[[nodiscard]] JsonNode food_node(const Food& food);
[[nodiscard]] JsonNode place_node(const Place& place);
[[nodiscard]] JsonNode review_rule_node(const ReviewRule& rule);
[[nodiscard]] JsonNode menu_line_node(const MenuLine& line);
[[nodiscard]] JsonNode seat_node(const TableSeat& seat);
[[nodiscard]] JsonNode exception_node(const TableException& exception);
[[nodiscard]] JsonNode wish_node(const Wish& wish);

// What happened (write_record.cpp).
[[nodiscard]] JsonNode lot_node(const Lot& lot);
[[nodiscard]] JsonNode reading_node(const Reading& reading);
[[nodiscard]] JsonNode entry_node(const Entry& entry, const UnitSizes& sizes);
[[nodiscard]] JsonNode review_event_node(const ReviewEvent& event);
[[nodiscard]] JsonNode review_mark_node(const ReviewMark& mark, const UnitSizes& sizes);
[[nodiscard]] JsonNode trial_node(const Trial& trial);
[[nodiscard]] JsonNode trial_note_node(const TrialNote& note);
[[nodiscard]] JsonNode trial_end_node(const TrialEnd& end);
[[nodiscard]] JsonNode buy_note_node(const BuyNote& note);
[[nodiscard]] JsonNode mapping_node(const ImportMapping& mapping);
[[nodiscard]] JsonNode shown_meal_node(const ShownMeal& meal, const UnitSizes& sizes);
[[nodiscard]] JsonNode feed_stamp_node(const FeedStamp& stamp);
[[nodiscard]] JsonNode kept_plan_node(const KeptPlan& plan);

// The calendar (feeds.cpp).
[[nodiscard]] std::optional<JsonNode> feed_settings_node(const FeedSettings& feed);
[[nodiscard]] JsonNode feed_address_node(const FeedAddress& address);
[[nodiscard]] JsonNode pushed_item_node(const PushedItem& item);
[[nodiscard]] JsonNode task_done_node(const TaskDone& task);

}  // namespace larderloop::intake
