// answer_cache.h - an answer that was worked out before is given again while nothing it rests on has changed.
// Rests on: the program (its build id), the book's file (device, inode, size, times; no write under way beside it), the household's
//           day and the question. Anything else, and anything unreadable, means: work it out. Nothing is lost with the files.
// Safety:   a book that changed within the last moments is never trusted, since a file's times are only so fine.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "larderloop/core/date.h"

namespace larderloop::cli {

// `code`: what the answer means for the exit code. `zone`: the household's time zone, which decides what day it is.
struct KeptAnswer {
  std::string body;
  int code = 0;
  Day day{};
  std::string zone;
};

class AnswerCache {
 public:
  // `folder`: where the files lie; made on first use, mode 0700. Empty: nothing is kept or recalled.
  explicit AnswerCache(std::string folder) : folder_(std::move(folder)) {}
  // The answer to `question` about this book, when it still holds. `today_in`: the day it is now in a zone.
  [[nodiscard]] std::optional<KeptAnswer> recall(const std::string& book, const std::string& question,
                                                 const std::function<std::optional<Day>(const std::string&)>& today_in) const;
  // Failures are silent: the answer is worked out again next time.
  void keep(const std::string& book, const std::string& question, const KeptAnswer& answer) const;

 private:
  [[nodiscard]] std::string file_of(const std::string& book, const std::string& question) const;
  std::string folder_;
};

// What the book's file looks like from outside; empty when it cannot be trusted to tell of every change.
[[nodiscard]] std::string book_fingerprint(const std::string& book);

// The linker's build id of the running program in hex; empty when it has none.
[[nodiscard]] std::string build_id();

}  // namespace larderloop::cli
