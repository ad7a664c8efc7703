#include "cli/exit_status.h"

namespace larderloop::cli {
namespace {

struct Row {
  int code;
  std::string_view name;
};

// A switch without default: the compiler misses no kind.
Row row_of(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::kUsage:
      return {kUsageExit, "usage"};
    case ErrorKind::kBadData:
      return {3, "bad_data"};
    case ErrorKind::kNotFound:
      return {4, "not_found"};
    case ErrorKind::kNotProven:
      return {5, "not_proven"};
    case ErrorKind::kStore:
      return {6, "store"};
    case ErrorKind::kBusy:
      return {7, "busy"};
    case ErrorKind::kOutput:
      return {8, "output"};
    case ErrorKind::kConfig:
      return {9, "config"};
    case ErrorKind::kDefect:
      return {kDefectExit, "defect"};
  }
  return {kDefectExit, "defect"};
}

}  // namespace

int exit_code(ErrorKind kind) {
  return row_of(kind).code;
}

std::string_view error_kind_name(ErrorKind kind) {
  return row_of(kind).name;
}

const std::vector<std::pair<int, std::string_view>>& exit_meanings() {
  static const std::vector<std::pair<int, std::string_view>> meanings = {
      {0, "done (also for an empty list)"},
      {1, "there is something: a finding of check, a due nudge under --exit-code"},
      {2, "the command line is wrong"},
      {3, "an input is wrong; nothing was changed"},
      {4, "a named thing or input file was not found"},
      {5, "a proof was asked for and the plan is not proven best"},
      {6, "the book is unreadable, damaged, or from a newer version"},
      {7, "the book or a server is busy; the same command may be tried again"},
      {8, "the output could not be written"},
      {9, "a setting of the environment is wrong"},
      {70, "a defect in the program"},
      {130, "stopped by SIGINT"},
      {143, "stopped by SIGTERM"},
  };
  return meanings;
}

}  // namespace larderloop::cli
