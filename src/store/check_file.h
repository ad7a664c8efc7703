// check_file.h - what SQLite and the schema say is wrong with a file.
#pragma once

#include "store/migrate.h"
#include "store/sqlite_handle.h"

#include <string>
#include <vector>

namespace larderloop::store {

// Every finding in plain words; empty = sound. Damage is a finding; only a file in use or
// unwritable memory is a failure.
[[nodiscard]] std::vector<std::string> check_file(const Connection& connection,
                                                  const Migrations& migrations);

}  // namespace larderloop::store
