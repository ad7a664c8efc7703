// program.h - the whole program as a function, so that tests run what users run.
#pragma once

#include <string>
#include <vector>

namespace larderloop::cli {

// Runs one command line, without the program's name. Returns the exit code; everything else goes to
// the standard streams.
[[nodiscard]] int run_program(std::vector<std::string> arguments);

}  // namespace larderloop::cli
