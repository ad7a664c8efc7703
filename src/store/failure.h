// failure.h - failures inside the store and how they become the one Error at its edge.
#pragma once

#include "larderloop/core/result.h"

#include <exception>
#include <string>
#include <type_traits>
#include <utility>

namespace larderloop::store {

// What SQLite said: its (extended) result code and words.
struct SqliteFailure : std::exception {
  SqliteFailure(int result_code, std::string words)
      : code(result_code), message(std::move(words)) {}
  [[nodiscard]] const char* what() const noexcept override { return message.c_str(); }
  int code;
  std::string message;
};

// What the store itself found.
struct StoreFailure : std::exception {
  explicit StoreFailure(Error found) : error(std::move(found)) {}
  StoreFailure(ErrorKind kind, std::string what_is_wrong, std::string next_step = {})
      : error(make_error(kind, std::move(what_is_wrong), std::move(next_step))) {}
  [[nodiscard]] const char* what() const noexcept override { return error.what.c_str(); }
  Error error;
};

// SQLite's code in the words and kinds of the project; `path` is the book as the caller named it.
[[nodiscard]] Error error_of(const SqliteFailure& failure, const std::string& path);

// Runs `work` and turns the two failures into an Error; everything else passes.
template <class Work>
[[nodiscard]] auto guarded(const std::string& path, Work work)
    -> Result<std::invoke_result_t<Work>> {
  try {
    if constexpr (std::is_void_v<std::invoke_result_t<Work>>) {
      work();
      return {};
    } else {
      return work();
    }
  } catch (const SqliteFailure& failure) {
    return fail(error_of(failure, path));
  } catch (const StoreFailure& failure) {
    return fail(failure.error);
  }
}

}  // namespace larderloop::store
