// exit_status.h - the exit codes of the program, in one table; a script must take any other
// non-zero value for a failure.
#pragma once

#include "larderloop/core/error.h"

#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::cli {

inline constexpr int kDone = 0;       // also for an empty list
inline constexpr int kSomething = 1;  // check, nudge --exit-code: yes, there is something
inline constexpr int kUsageExit = 2;  // the command line is wrong
inline constexpr int kDefectExit = 70;

[[nodiscard]] int exit_code(ErrorKind kind);
// "bad_data": for the error object under --json.
[[nodiscard]] std::string_view error_kind_name(ErrorKind kind);
// Every code with its meaning, ascending; help and manual show them.
[[nodiscard]] const std::vector<std::pair<int, std::string_view>>& exit_meanings();

}  // namespace larderloop::cli
