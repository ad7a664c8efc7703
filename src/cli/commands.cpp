// commands.cpp - the table of commands; help, completions and manual follow it.
#include "cli/command.h"

namespace larderloop::cli {

Action add_backup(CLI::App& app, Runtime& runtime);
Action add_check(CLI::App& app, Runtime& runtime);
Action add_export(CLI::App& app, Runtime& runtime);
Action add_food_add(CLI::App& app, Runtime& runtime);
Action add_food_change(CLI::App& app, Runtime& runtime);
Action add_food_list(CLI::App& app, Runtime& runtime);
Action add_food_show(CLI::App& app, Runtime& runtime);
Action add_kit_check(CLI::App& app, Runtime& runtime);
Action add_kit_propose(CLI::App& app, Runtime& runtime);
Action add_lot_add(CLI::App& app, Runtime& runtime);
Action add_lot_code(CLI::App& app, Runtime& runtime);
Action add_lot_date(CLI::App& app, Runtime& runtime);
Action add_lot_label(CLI::App& app, Runtime& runtime);
Action add_lot_list(CLI::App& app, Runtime& runtime);
Action add_lot_retire(CLI::App& app, Runtime& runtime);
Action add_lot_show(CLI::App& app, Runtime& runtime);
Action add_lot_state(CLI::App& app, Runtime& runtime);
Action add_new(CLI::App& app, Runtime& runtime);
Action add_person_add(CLI::App& app, Runtime& runtime);
Action add_person_change(CLI::App& app, Runtime& runtime);
Action add_person_list(CLI::App& app, Runtime& runtime);
Action add_person_show(CLI::App& app, Runtime& runtime);
Action add_place_add(CLI::App& app, Runtime& runtime);
Action add_place_change(CLI::App& app, Runtime& runtime);
Action add_place_list(CLI::App& app, Runtime& runtime);
Action add_place_show(CLI::App& app, Runtime& runtime);
Action add_record_corrected(CLI::App& app, Runtime& runtime);
Action add_record_counted(CLI::App& app, Runtime& runtime);
Action add_record_eaten(CLI::App& app, Runtime& runtime);
Action add_record_found(CLI::App& app, Runtime& runtime);
Action add_record_given_away(CLI::App& app, Runtime& runtime);
Action add_record_list(CLI::App& app, Runtime& runtime);
Action add_record_lost(CLI::App& app, Runtime& runtime);
Action add_record_moved(CLI::App& app, Runtime& runtime);
Action add_record_opened(CLI::App& app, Runtime& runtime);
Action add_record_received(CLI::App& app, Runtime& runtime);
Action add_record_thrown_out(CLI::App& app, Runtime& runtime);

Action add_quick(CLI::App& app, Runtime& runtime);
Action add_scan(CLI::App& app, Runtime& runtime);
Action add_receive(CLI::App& app, Runtime& runtime);
Action add_review_walk(CLI::App& app, Runtime& runtime);

Action add_plan(CLI::App& app, Runtime& runtime);
Action add_why(CLI::App& app, Runtime& runtime);
Action add_print(CLI::App& app, Runtime& runtime);
Action add_shop(CLI::App& app, Runtime& runtime);
Action add_calendar(CLI::App& app, Runtime& runtime);
Action add_push(CLI::App& app, Runtime& runtime);
Action add_pull(CLI::App& app, Runtime& runtime);
Action add_nudge(CLI::App& app, Runtime& runtime);
Action add_history(CLI::App& app, Runtime& runtime);
Action add_picture(CLI::App& app, Runtime& runtime);
Action add_lot_change(CLI::App& app, Runtime& runtime);
Action add_import(CLI::App& app, Runtime& runtime);
Action add_template(CLI::App& app, Runtime& runtime);
Action add_mapping_list(CLI::App& app, Runtime& runtime);
Action add_mapping_remove(CLI::App& app, Runtime& runtime);
Action add_kit_add(CLI::App& app, Runtime& runtime);
Action add_kit_change(CLI::App& app, Runtime& runtime);
Action add_kit_list(CLI::App& app, Runtime& runtime);
Action add_kit_remove(CLI::App& app, Runtime& runtime);
Action add_meals_away(CLI::App& app, Runtime& runtime);
Action add_meals_guests(CLI::App& app, Runtime& runtime);
Action add_meals_none(CLI::App& app, Runtime& runtime);
Action add_meals_remove(CLI::App& app, Runtime& runtime);
Action add_meals_set(CLI::App& app, Runtime& runtime);
Action add_meals_show(CLI::App& app, Runtime& runtime);
Action add_settings_set(CLI::App& app, Runtime& runtime);
Action add_settings_show(CLI::App& app, Runtime& runtime);
Action add_review_rule(CLI::App& app, Runtime& runtime);
Action add_person_retire(CLI::App& app, Runtime& runtime);
Action add_food_retire(CLI::App& app, Runtime& runtime);
Action add_place_retire(CLI::App& app, Runtime& runtime);
Action add_wish_add(CLI::App& app, Runtime& runtime);
Action add_wish_list(CLI::App& app, Runtime& runtime);
Action add_wish_remove(CLI::App& app, Runtime& runtime);
Action add_trial_start(CLI::App& app, Runtime& runtime);
Action add_trial_note(CLI::App& app, Runtime& runtime);
Action add_trial_finish(CLI::App& app, Runtime& runtime);
Action add_trial_show(CLI::App& app, Runtime& runtime);
Action add_what_if(CLI::App& app, Runtime& runtime);
Action add_feed_add(CLI::App& app, Runtime& runtime);
Action add_feed_list(CLI::App& app, Runtime& runtime);
Action add_feed_revoke(CLI::App& app, Runtime& runtime);
Action add_serve(CLI::App& app, Runtime& runtime);
Action add_review_dates(CLI::App& app, Runtime& runtime);
Action add_review_start(CLI::App& app, Runtime& runtime);
Action add_review_sheet(CLI::App& app, Runtime& runtime);
Action add_review_mark(CLI::App& app, Runtime& runtime);
Action add_review_finish(CLI::App& app, Runtime& runtime);
Action add_review_skip(CLI::App& app, Runtime& runtime);
Action add_review_move(CLI::App& app, Runtime& runtime);

const std::vector<Command>& commands() {
  constexpr std::string_view kBook = "The book";
  constexpr std::string_view kReview = "The review";
  constexpr std::string_view kKit = "The kit";
  constexpr std::string_view kWeek = "The plan and the week";
  constexpr std::string_view kServe = "Serving the calendar";
  constexpr std::string_view kMenu = "Kit menus and meals";
  constexpr std::string_view kThings = "People, foods and places";
  constexpr std::string_view kLots = "Lots";
  constexpr std::string_view kRecord = "The record";
  static const std::vector<Command> all = {
      {"new", kBook, "Make a book, empty or from a household document", add_new},
      {"export", kBook, "Write the book as a household document, or a list as a spreadsheet", add_export},
      {"template", kBook, "Write an empty spreadsheet to fill in", add_template},
      {"import", kBook, "Read foods, lots, people or a kit menu from a spreadsheet", add_import},
      {"mapping list", kBook, "List what the columns of kept spreadsheets mean", add_mapping_list},
      {"mapping remove", kBook, "Forget what the columns of a spreadsheet mean", add_mapping_remove},
      {"check", kBook, "See whether the book is in order", add_check},
      {"backup", kBook, "Copy the book, whole and checked", add_backup},
      {"settings show", kBook, "Show the settings of the household", add_settings_show},
      {"settings set", kBook, "Change one setting", add_settings_set},
      {"review dates", kReview, "Say when the reviews of the kits are", add_review_dates},
      {"review start", kReview, "Begin the walk through a kit", add_review_start},
      {"review sheet", kReview, "Show what should lie in each bag and box", add_review_sheet},
      {"review walk", kReview, "Walk through a kit bag by bag, one key a lot", add_review_walk},
      {"review mark", kReview, "Mark something as there, missing, damaged or redated",
       add_review_mark},
      {"review finish", kReview, "Take out what will not last, and say what goes in",
       add_review_finish},
      {"review skip", kReview, "Leave one review out", add_review_skip},
      {"review move", kReview, "Move one review to another day", add_review_move},
      {"review rule", kReview, "Show or set how often a kit is reviewed", add_review_rule},
      {"kit check", kKit, "Say whether a kit is ready, and if not, what exactly to put right", add_kit_check},
      {"kit propose", kKit, "Propose a kit menu out of the foods that the book knows", add_kit_propose},
      {"what-if", kKit, "Say what a change would make wrong, before anything is written", add_what_if},
      {"trial start", kKit, "Begin to live from a kit for some days", add_trial_start},
      {"trial note", kKit, "Say what somebody found of a food in the trial", add_trial_note},
      {"trial finish", kKit, "End the trial; ratings follow what was said", add_trial_finish},
      {"trial show", kKit, "Show what a trial came to", add_trial_show},
      {"plan", kWeek, "Show what comes out, goes in, is bought, and who eats what when", add_plan},
      {"why", kWeek, "Say why something is eaten, kept or bought, or a meal is as it is", add_why},
      {"shop", kWeek, "Show what to buy: the replacement list", add_shop},
      {"print", kWeek, "Print labels, cards, sheets and lists for the box", add_print},
      {"receive", kWeek, "Enter what was bought of the replacement list, thing by thing", add_receive},
      {"nudge", kWeek, "Say in twelve lines what this week asks for", add_nudge},
      {"calendar", kWeek, "Write the calendar for the phone", add_calendar},
      {"push", kWeek, "Bring a calendar on a server up to date", add_push},
      {"pull", kWeek, "Take in what was ticked off on a calendar server", add_pull},
      {"wish add", kWeek, "Note a food that the family wants at a meal, or does not want", add_wish_add},
      {"wish list", kWeek, "List the wishes", add_wish_list},
      {"wish remove", kWeek, "Take wishes back", add_wish_remove},
      {"history", kWeek, "Say what was eaten, given away and thrown out", add_history},
      {"picture", kWeek, "Draw the kit by date, the stock by bag, or the years", add_picture},
      {"feed add", kServe, "Make an address of the calendar for one phone", add_feed_add},
      {"feed list", kServe, "List the addresses of the calendar", add_feed_list},
      {"feed revoke", kServe, "Make an address invalid", add_feed_revoke},
      {"serve", kServe, "Serve the calendar to phones over HTTP", add_serve},
      {"kit add", kMenu, "Add a line to the menu of a kit", add_kit_add},
      {"kit change", kMenu, "Change a line of a kit's menu", add_kit_change},
      {"kit list", kMenu, "List the menu lines of the kits", add_kit_list},
      {"kit remove", kMenu, "Take lines out of the menu", add_kit_remove},
      {"meals show", kMenu, "Show who is at the table when", add_meals_show},
      {"meals set", kMenu, "Say who is usually at the table", add_meals_set},
      {"meals away", kMenu, "Note who is away for a while", add_meals_away},
      {"meals guests", kMenu, "Note guests", add_meals_guests},
      {"meals none", kMenu, "Note when nobody eats at home: holidays", add_meals_none},
      {"meals remove", kMenu, "Take such a note back", add_meals_remove},
      {"person add", kThings, "Add a person, or a pet", add_person_add},
      {"person change", kThings, "Change what is said of a person", add_person_change},
      {"person list", kThings, "List the people", add_person_list},
      {"person show", kThings, "Show what is known of a person", add_person_show},
      {"person retire", kThings, "Retire a person, or bring them back", add_person_retire},
      {"food add", kThings, "Add a food", add_food_add},
      {"food change", kThings, "Change what is said of a food", add_food_change},
      {"food list", kThings, "List the foods", add_food_list},
      {"food show", kThings, "Show what is known of a food", add_food_show},
      {"food retire", kThings, "Retire a food, or bring it back", add_food_retire},
      {"place add", kThings, "Add a kit, box, bag, pantry or shelf", add_place_add},
      {"place change", kThings, "Change what is said of a place", add_place_change},
      {"place list", kThings, "List the places", add_place_list},
      {"place show", kThings, "Show what lies in a place, and who eats from it", add_place_show},
      {"place retire", kThings, "Retire a place, or bring it back", add_place_retire},
      {"lot add", kLots, "Add units that were bought together, with their date and label",
       add_lot_add},
      {"quick", kLots, "Enter a day's shopping, one line a lot", add_quick},
      {"scan", kLots, "Read a bar code, or enter lots by scanning", add_scan},
      {"lot list", kLots, "List the lots on hand, soonest date first", add_lot_list},
      {"lot show", kLots, "Show what is known of a lot", add_lot_show},
      {"lot change", kLots, "Write down date, label and state of a lot at once", add_lot_change},
      {"lot label", kLots, "Write down what the label of a lot says", add_lot_label},
      {"lot state", kLots, "Say that a lot is ok, doubtful or recalled", add_lot_state},
      {"lot date", kLots, "Write down the date that is really printed on a lot", add_lot_date},
      {"lot code", kLots, "Write down the code that is really printed on a lot", add_lot_code},
      {"lot retire", kLots, "Take back a lot that was entered by mistake", add_lot_retire},
      {"record eaten", kRecord, "Record what was eaten", add_record_eaten},
      {"record given-away", kRecord, "Record what was given away", add_record_given_away},
      {"record thrown-out", kRecord, "Record what was thrown out", add_record_thrown_out},
      {"record lost", kRecord, "Record what is gone and nobody knows how", add_record_lost},
      {"record moved", kRecord, "Record what was put elsewhere", add_record_moved},
      {"record opened", kRecord, "Record what was opened", add_record_opened},
      {"record received", kRecord, "Record more of the very same lot", add_record_received},
      {"record found", kRecord, "Record what turned up", add_record_found},
      {"record counted", kRecord, "Record what is really there", add_record_counted},
      {"record corrected", kRecord, "Take entries back by further entries", add_record_corrected},
      {"record list", kRecord, "List the entries, newest first", add_record_list},
  };
  return all;
}

}  // namespace larderloop::cli
