#include "intake/write_sections.h"
#include "larderloop/intake/document.h"

namespace larderloop {
namespace {

template <class T, class Write, class... More>
void write_list(intake::ObjectWriter& out, std::string_view name, const std::vector<T>& list,
                Write write, const More&... more) {
  std::vector<intake::JsonNode> nodes;
  nodes.reserve(list.size());
  for (const T& each : list) nodes.push_back(write(each, more...));
  out.list(name, std::move(nodes));
}

}  // namespace

std::string render_document(const Household& household) {
  const intake::UnitSizes sizes = intake::unit_sizes(household);
  intake::ObjectWriter out;
  out.add("format", "larderloop.household")
      .add("version", std::int64_t{1})
      .add("book_id", std::string_view(household.book_id));
  if (household.settings != Settings{}) {
    out.add("settings", intake::settings_node(household.settings));
  }
  write_list(out, "own_allergens", household.own_allergens, intake::own_allergen_node);
  write_list(out, "people", household.people, intake::person_node);
  write_list(out, "foods", household.foods, intake::food_node);
  write_list(out, "places", household.places, intake::place_node);
  write_list(out, "review_rules", household.review_rules, intake::review_rule_node);
  write_list(out, "menu", household.menu, intake::menu_line_node);
  write_list(out, "table", household.table, intake::seat_node);
  write_list(out, "exceptions", household.exceptions, intake::exception_node);
  write_list(out, "wishes", household.wishes, intake::wish_node);
  write_list(out, "lots", household.lots, intake::lot_node);
  write_list(out, "readings", household.readings, intake::reading_node);
  write_list(out, "entries", household.entries, intake::entry_node, sizes);
  write_list(out, "review_events", household.review_events, intake::review_event_node);
  write_list(out, "review_marks", household.review_marks, intake::review_mark_node, sizes);
  write_list(out, "trials", household.trials, intake::trial_node);
  write_list(out, "trial_notes", household.trial_notes, intake::trial_note_node);
  write_list(out, "trial_ends", household.trial_ends, intake::trial_end_node);
  write_list(out, "buy_notes", household.buy_notes, intake::buy_note_node);
  write_list(out, "mappings", household.mappings, intake::mapping_node);
  write_list(out, "shown_meals", household.shown_meals, intake::shown_meal_node, sizes);
  write_list(out, "feed", household.feed, intake::feed_stamp_node);
  write_list(out, "kept_plans", household.kept_plans, intake::kept_plan_node);
  write_list(out, "feed_addresses", household.feed_addresses, intake::feed_address_node);
  write_list(out, "pushed", household.pushed, intake::pushed_item_node);
  write_list(out, "tasks_done", household.tasks_done, intake::task_done_node);
  return intake::write_canonical(out.done());
}

}  // namespace larderloop
