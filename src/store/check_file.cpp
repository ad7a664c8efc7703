#include "store/check_file.h"

#include "store/failure.h"

#include <map>
#include <utility>

namespace larderloop::store {
namespace {

constexpr const char* kIntegrity = "PRAGMA integrity_check";
constexpr const char* kReferences =
    "SELECT \"table\", \"parent\", count(*) FROM pragma_foreign_key_check GROUP BY 1, 2 ORDER BY "
    "1, 2";
constexpr const char* kApplication = "PRAGMA application_id";
constexpr const char* kVersion = "PRAGMA user_version";
// Without the tables and indexes that SQLite keeps for itself.
constexpr const char* kSchema =
    "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'";

// By type and name: the text that made it, with every run of white space as one blank.
using Schema = std::map<std::pair<std::string, std::string>, std::string>;

std::string squeezed(std::string_view text) {
  std::string out;
  for (const char each : text) {
    const bool blank = each == ' ' || each == '\n' || each == '\t' || each == '\r';
    if (!blank)
      out += each;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

Schema schema_of(const Connection& connection) {
  Schema schema;
  Query rows(connection, kSchema);
  while (rows.step()) schema[{rows.text(0), rows.text(1)}] = squeezed(rows.view(2));
  return schema;
}

// Against a fresh book of the same version, made by `steps`.
void compare_schema(const Connection& connection, const Migrations& steps,
                    std::vector<std::string>& findings) {
  const Connection model("", Access::kMemory, 0);
  migrate_private(model, steps);
  const Schema found = schema_of(connection);
  const Schema wanted = schema_of(model);
  for (const auto& [name, sql] : wanted) {
    const auto here = found.find(name);
    if (here == found.end()) {
      findings.push_back("the " + name.first + " '" + name.second + "' is missing");
    } else if (here->second != sql) {
      findings.push_back("the " + name.first + " '" + name.second + "' was changed");
    }
  }
  // Views and indexes of the owner do no harm; a trigger may.
  for (const auto& each : found) {
    if (each.first.first == "trigger" && wanted.count(each.first) == 0) {
      findings.push_back("the trigger '" + each.first.second + "' does not belong here");
    }
  }
}

void check_identity(const Connection& connection, const Migrations& migrations,
                    std::vector<std::string>& findings) {
  if (connection.number(kApplication) != kApplicationId)
    findings.emplace_back("the file does not say that it is a book");
  const std::int64_t version = connection.number(kVersion);
  if (version < 1 || version > newest_of(migrations)) {
    findings.push_back("the file says that it has schema " + std::to_string(version) +
                       ", which is not known");
    return;
  }
  compare_schema(connection, Migrations(migrations.begin(), migrations.begin() + version),
                 findings);
}

void check_pages(const Connection& connection, std::vector<std::string>& findings) {
  Query rows(connection, kIntegrity);
  while (rows.step()) {
    if (rows.view(0) != "ok") findings.push_back("the file is damaged: " + squeezed(rows.view(0)));
  }
}

void check_references(const Connection& connection, std::vector<std::string>& findings) {
  Query rows(connection, kReferences);
  while (rows.step()) {
    findings.push_back(std::to_string(rows.integer(2)) + " in '" + rows.text(0) +
                       "' name something that is not in '" + rows.text(1) + "'");
  }
}

// Damage found on the way is what is looked for; that the file cannot be looked at is a failure.
template <class Check>
void collect(Check check, std::vector<std::string>& findings) {
  try {
    check();
  } catch (const SqliteFailure& failure) {
    const int kind = failure.code & 0xff;
    if (kind != SQLITE_CORRUPT && kind != SQLITE_NOTADB && kind != SQLITE_ERROR &&
        kind != SQLITE_SCHEMA)
      throw;
    findings.push_back("the file is damaged: " + failure.message);
  }
}

}  // namespace

std::vector<std::string> check_file(const Connection& connection, const Migrations& migrations) {
  std::vector<std::string> findings;
  collect([&] { check_pages(connection, findings); }, findings);
  collect([&] { check_references(connection, findings); }, findings);
  collect([&] { check_identity(connection, migrations, findings); }, findings);
  return findings;
}

}  // namespace larderloop::store
