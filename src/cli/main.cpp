// main.cpp - the program: its arguments to run_program(), its result to the system.
#include "larderloop/cli/program.h"

#include <csignal>
#include <exception>
#include <string>
#include <vector>

int main(int argc, char** argv) {
  // A closed pipe is then a failed write, which is told apart from a full disk.
  if (std::signal(SIGPIPE, SIG_IGN) == SIG_ERR) return 70;
  try {
    return larderloop::cli::run_program(
        std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc));
  } catch (const std::exception&) {
    return 70;  // not even the message could be made: out of memory
  }
}
