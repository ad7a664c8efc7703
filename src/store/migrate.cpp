#include "store/migrate.h"

#include "store/check_file.h"
#include "store/copy.h"
#include "store/failure.h"
#include "store/files.h"

namespace larderloop::store {
namespace {

constexpr const char* kVersion = "PRAGMA user_version";
constexpr const char* kApplication = "PRAGMA application_id";
// Rebuilding a table needs the checks off until all of it stands again (SQLite, "ALTER TABLE",
// section 7).
constexpr const char* kReferencesOff = "PRAGMA foreign_keys = OFF";
constexpr const char* kReferencesOn = "PRAGMA foreign_keys = ON";
constexpr const char* kBrokenReferences = "SELECT count(*) FROM pragma_foreign_key_check";

// A damaged book must not be rewritten: what could still be rescued would go with it.
void expect_sound(const Connection& copy, const Migrations& migrations) {
  const std::vector<std::string> findings = check_file(copy, migrations);
  if (findings.empty()) return;
  throw StoreFailure(ErrorKind::kStore,
                     "the book is damaged, so its form was not changed: " + findings.front(),
                     "keep a copy of it, then restore a backup");
}

class ReferencesOff {
 public:
  explicit ReferencesOff(const Connection& connection) : connection_(connection) {
    connection_.run(kReferencesOff);
  }
  ~ReferencesOff() { sqlite3_exec(connection_.handle(), kReferencesOn, nullptr, nullptr, nullptr); }
  ReferencesOff(const ReferencesOff&) = delete;
  ReferencesOff& operator=(const ReferencesOff&) = delete;
  ReferencesOff(ReferencesOff&&) = delete;
  ReferencesOff& operator=(ReferencesOff&&) = delete;

 private:
  const Connection& connection_;
};

void run_step(const Connection& connection, int version, std::string_view sql) {
  connection.run(std::string(sql).c_str());
  if (connection.number(kVersion) != version) {
    throw StoreFailure(ErrorKind::kDefect, "the step to schema " + std::to_string(version) +
                                               " does not say that it was taken");
  }
  if (connection.number(kBrokenReferences) != 0) {
    throw StoreFailure(ErrorKind::kDefect, "the step to schema " + std::to_string(version) +
                                               " leaves references to nothing");
  }
}

std::string free_backup_name(const Upgrade& upgrade, int version) {
  const std::string stem = ".before-schema-" + std::to_string(version) +
                           (upgrade.stamp.empty() ? "" : "-" + upgrade.stamp);
  std::string name = stem + ".backup";
  for (int number = 2; exists(upgrade.real_path + name); ++number)
    name = stem + "-" + std::to_string(number) + ".backup";
  return name;
}

}  // namespace

int newest_of(const Migrations& migrations) {
  return migrations.empty() ? 0 : migrations.back().first;
}

int known_version(const Connection& connection, const Migrations& migrations,
                  const std::string& shown_path) {
  if (connection.number(kApplication) != kApplicationId) {
    throw StoreFailure(ErrorKind::kStore, "'" + shown_path + "' is a database, but not a book",
                       "name the right file with --book");
  }
  const std::int64_t version = connection.number(kVersion);
  if (version > newest_of(migrations)) {
    throw StoreFailure(ErrorKind::kStore,
                       "'" + shown_path +
                           "' was written by a newer version of this program (schema " +
                           std::to_string(version) + ", this one knows " +
                           std::to_string(newest_of(migrations)) + ")",
                       "install the newer version; or go on with a backup from before, whose name "
                       "ends in .backup");
  }
  if (version < 1) {
    throw StoreFailure(ErrorKind::kStore,
                       "'" + shown_path + "' is damaged: it does not say which form it has",
                       "restore a backup of it");
  }
  return static_cast<int>(version);
}

void migrate_file(const Connection& connection, const Migrations& migrations,
                  const Upgrade& upgrade, std::vector<std::string>& notes) {
  const ReferencesOff references_off(connection);
  for (const auto& [version, sql] : migrations) {
    if (connection.number(kVersion) >= version) continue;
    Transaction transaction(connection, Transaction::Kind::kWrite);
    if (connection.number(kVersion) >= version) continue;  // another program was faster
    // The lock is ours, so the copy, made by a reader of its own, is what the step begins from.
    const std::string backup = free_backup_name(upgrade, version);
    {
      const Connection reader(upgrade.real_path, Access::kQuery, upgrade.busy_timeout_ms);
      copy_to_new_file(reader, upgrade.real_path + backup,
                       [&](const Connection& copy) { expect_sound(copy, migrations); });
    }
    run_step(connection, version, sql);
    transaction.commit();
    notes.push_back("brought '" + upgrade.shown_path + "' to schema " + std::to_string(version) +
                    "; as it was before: " + upgrade.shown_path + backup);
  }
}

void migrate_private(const Connection& connection, const Migrations& migrations) {
  const ReferencesOff references_off(connection);
  for (const auto& [version, sql] : migrations) {
    if (connection.number(kVersion) >= version) continue;
    Transaction transaction(connection, Transaction::Kind::kWrite);
    run_step(connection, version, sql);
    transaction.commit();
  }
}

}  // namespace larderloop::store
