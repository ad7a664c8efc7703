// workshop.h - folders that go away, children that may crash or be someone else, raw access to a
// book, bytes of files.
#pragma once

#include "larderloop/store/book.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <grp.h>
#include <iterator>
#include <memory>
#include <set>
#include <string>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace larderloop::testing {

// How much the long tests do; 1 in the everyday run.
inline int scale() {
  const char* text = std::getenv("LARDERLOOP_TEST_SCALE");
  return text == nullptr ? 1 : std::max(1, std::atoi(text));
}

class Folder {
 public:
  Folder() {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "larderloop-store-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = pattern;
    chmod(path_.c_str(), 0777);
  }
  ~Folder() {
    chmod(path_.c_str(), 0700);
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  Folder(Folder&&) = delete;
  Folder& operator=(Folder&&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string file(const std::string& name) const { return path_ + "/" + name; }
  [[nodiscard]] std::set<std::string> names() const {
    std::set<std::string> found;
    for (const auto& each : std::filesystem::directory_iterator(path_))
      found.insert(each.path().filename().string());
    return found;
  }

 private:
  std::string path_;
};

inline std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

inline void put_bytes(const std::string& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

// Runs SQL with nothing but SQLite's own defaults, as its shell would. Empty, or SQLite's words.
inline std::string raw_sql(const std::string& path, const std::string& sql) {
  sqlite3* handle = nullptr;
  std::string said;
  if (sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr) ==
      SQLITE_OK) {
    sqlite3_exec(handle, "PRAGMA foreign_keys = ON", nullptr, nullptr, nullptr);
    char* words = nullptr;
    sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &words);
    if (words != nullptr) said = words;
    sqlite3_free(words);
  } else {
    said = sqlite3_errmsg(handle);
  }
  sqlite3_close(handle);
  return said;
}

// What a child process says, or how it ended when it did not end by itself. `as_nobody`: without
// any privilege.
inline std::string in_child(const std::function<std::string()>& work, bool as_nobody = false) {
  int ends[2];
  if (pipe(ends) != 0) return "no pipe";
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    if (as_nobody && geteuid() == 0 &&
        (setgroups(0, nullptr) != 0 || setgid(65534) != 0 || setuid(65534) != 0))
      _exit(3);
    const std::string said = work();
    const bool written =
        write(ends[1], said.data(), said.size()) == static_cast<ssize_t>(said.size());
    _exit(written ? 0 : 4);
  }
  close(ends[1]);
  std::string said;
  char buffer[4096];
  for (ssize_t got = 0; (got = read(ends[0], buffer, sizeof buffer)) > 0;)
    said.append(buffer, static_cast<std::size_t>(got));
  close(ends[0]);
  int state = 0;
  waitpid(child, &state, 0);
  if (WIFSIGNALED(state)) return "signal " + std::to_string(WTERMSIG(state));
  if (WEXITSTATUS(state) != 0) return "exit " + std::to_string(WEXITSTATUS(state));
  return said;
}

inline std::string kind_word(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::kBadData:
      return "bad data";
    case ErrorKind::kNotFound:
      return "not found";
    case ErrorKind::kStore:
      return "store";
    case ErrorKind::kBusy:
      return "busy";
    case ErrorKind::kOutput:
      return "output";
    case ErrorKind::kDefect:
      return "defect";
    case ErrorKind::kUsage:
    case ErrorKind::kNotProven:
    case ErrorKind::kConfig:
      break;
  }
  return "other";
}

template <class Value>
std::string said(const Result<Value>& result) {
  return result ? "done" : kind_word(result.error().kind) + ": " + result.error().what;
}

template <class Value>
::testing::AssertionResult is_done(const Result<Value>& result) {
  if (result) return ::testing::AssertionSuccess();
  return ::testing::AssertionFailure() << said(result);
}

// Every failure of the store names its subject and a next step.
template <class Value>
::testing::AssertionResult failed_as(const Result<Value>& result, ErrorKind kind) {
  if (result) return ::testing::AssertionFailure() << "it was done";
  if (result.error().kind != kind) return ::testing::AssertionFailure() << said(result);
  if (result.error().what.find('\'') == std::string::npos)
    return ::testing::AssertionFailure() << "names nothing: " << said(result);
  if (result.error().next_step.empty())
    return ::testing::AssertionFailure() << "no next step: " << said(result);
  return ::testing::AssertionSuccess();
}

inline Result<Household> load_from(const std::string& path) {
  auto book = Book::open_read_only(path, {});
  if (!book) return fail(book.error());
  return book->load();
}

inline Result<std::vector<std::string>> check_of(const std::string& path) {
  auto book = Book::open_read_only(path, {});
  if (!book) return fail(book.error());
  return book->check();
}

inline Status write_to(const std::string& path, const Changes& changes) {
  auto book = Book::open(path, {});
  if (!book) return fail(book.error());
  auto write = book->begin_write();
  if (!write) return fail(write.error());
  if (Status applied = write->apply(changes); !applied) return applied;
  return write->commit();
}

}  // namespace larderloop::testing
