// error.h - what can go wrong, in one closed set of kinds; the only failure type that crosses a room's edge.
// To add a kind: add it here, in kAllErrorKinds, in cli/exit_status.cpp, and a reproducer in tests/e2e/.
#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>


namespace larderloop {

enum class ErrorKind {
  kUsage,        // the command line is wrong
  kBadData,      // an input is wrong; nothing was changed
  kNotFound,     // a named thing or input file does not exist
  kNotProven,    // a proof was asked for and the plan is not proven best
  kStore,        // the book is unreadable, damaged, or from a newer version
  kBusy,         // the book is in use; the same command may be tried again
  kOutput,       // a result could not be written
  kConfig,       // a setting of the environment is wrong (time zone, book path)
  kDefect,       // a broken promise inside the program
};

inline constexpr std::array kAllErrorKinds{
    ErrorKind::kUsage, ErrorKind::kBadData, ErrorKind::kNotFound, ErrorKind::kNotProven, ErrorKind::kStore,
    ErrorKind::kBusy,  ErrorKind::kOutput,  ErrorKind::kConfig,   ErrorKind::kDefect};

// One thing that is wrong with an input. `where` is a JSON pointer, a FILE:LINE, an option name or empty.
// `value` is the offending text as it was read. `remedy` is the next step, in plain words; may be empty.
struct Problem {
  std::string where;
  std::string value;
  std::string what;
  std::string remedy;
};

// `what`: what is wrong, lower case, no full stop, the subject in single quotes. `next_step`: at most one hint with a
// command or spelling that works. `problems`: all findings of a document, in document order; may be empty.
struct Error {
  ErrorKind kind = ErrorKind::kDefect;
  std::string what;
  std::string next_step;
  std::vector<Problem> problems;
};

inline Error make_error(ErrorKind kind, std::string what, std::string next_step = {}) {
  return Error{kind, std::move(what), std::move(next_step), {}};
}

}  // namespace larderloop
