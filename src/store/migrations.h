// migrations.h - the SQL files of src/store/sql, compiled into the program in order of their
// number.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

namespace larderloop {

// Pairs of (schema version reached, SQL text) in ascending order: 1, 2, 3, ... without gaps (the
// build checks it). Each text is run in one transaction of its own. Lives as long as the program.
// Threads: safe.
const std::vector<std::pair<int, std::string_view>>& embedded_migrations();

}  // namespace larderloop
