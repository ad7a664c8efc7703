// What shopping found, and how columns of spreadsheets are read: into their tables and out of them.
#include "store/load.h"
#include "store/names.h"
#include "store/save.h"

#include <algorithm>

namespace larderloop::store {
namespace {

constexpr const char* kNotes =
    "SELECT id, food, kit, day, kind, instead, note FROM buy_note ORDER BY id";
constexpr const char* kAddNote =
    "INSERT INTO buy_note (id, food, kit, day, kind, instead, note) "
    "VALUES (:id, :food, :kit, :day, :kind, :instead, :note)";
constexpr const char* kMappings = "SELECT name, sheet FROM import_mapping ORDER BY name";
constexpr const char* kColumns = "SELECT mapping, header, field FROM import_column";
constexpr const char* kSaveMapping =
    "INSERT INTO import_mapping (name, sheet) VALUES (:name, :sheet) "
    "ON CONFLICT (name) DO UPDATE SET sheet = excluded.sheet";
constexpr const char* kDropColumns = "DELETE FROM import_column WHERE mapping = :name";
constexpr const char* kDropMapping = "DELETE FROM import_mapping WHERE name = :name";
constexpr const char* kAddColumn =
    "INSERT INTO import_column (mapping, header, field) VALUES (:name, :header, :field)";

}  // namespace

void load_buying(const Connection& connection, Household& household) {
  Query notes(connection, kNotes);
  while (notes.step()) {
    BuyNote& note = household.buy_notes.emplace_back();
    note.id = notes.id<BuyNoteId>(0);
    note.food = notes.key<FoodKey>(1);
    note.kit = notes.key<PlaceKey>(2);
    note.on = notes.day(3);
    note.kind = notes.named(4, parse_buy_note);
    note.instead = notes.key<FoodKey>(5);
    note.note = notes.text(6);
  }
  Query mappings(connection, kMappings);
  while (mappings.step())
    household.mappings.push_back({mappings.text(0), mappings.named(1, parse_sheet_kind), {}});
  Query columns(connection, kColumns);
  while (columns.step()) {
    const std::string name = columns.text(0);
    const auto found = std::find_if(household.mappings.begin(), household.mappings.end(),
                                    [&](const ImportMapping& each) { return each.name == name; });
    if (found == household.mappings.end()) no_owner("import_column");
    found->columns.emplace(columns.text(1), columns.text(2));
  }
}

void add_buy_notes(const Connection& connection, const std::vector<BuyNote>& notes) {
  Query add(connection, kAddNote);
  for (const BuyNote& note : notes) {
    add.set(":id", note.id)
        .set(":food", note.food)
        .set(":kit", note.kit)
        .set(":day", note.on)
        .set(":kind", buy_note_name(note.kind))
        .set(":instead", note.instead)
        .set(":note", note.note)
        .run();
  }
}

void save_mappings(const Connection& connection, const std::vector<ImportMapping>& mappings) {
  Query save(connection, kSaveMapping);
  Query drop(connection, kDropColumns);
  Query add(connection, kAddColumn);
  for (const ImportMapping& mapping : mappings) {
    save.set(":name", mapping.name).set(":sheet", sheet_kind_name(mapping.sheet)).run();
    drop.set(":name", mapping.name).run();
    for (const auto& [header, field] : mapping.columns)
      add.set(":name", mapping.name).set(":header", header).set(":field", field).run();
  }
}

void drop_mappings(const Connection& connection, const std::vector<std::string>& names) {
  Query columns(connection, kDropColumns);
  Query mapping(connection, kDropMapping);
  for (const std::string& name : names) {
    columns.set(":name", name).run();
    mapping.set(":name", name).run();
  }
}

}  // namespace larderloop::store
