// lines.h - lines that people type, scan or pipe in, and single keys. No line editor stands
// between, so that the separator of a scan (byte 1D) arrives; bytes are read one by one, so that
// nothing behind a line is taken from whoever reads next.
#pragma once

#include "larderloop/core/result.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>

namespace larderloop::cli {

class LineInput {
 public:
  // "-" or empty: standard input.
  [[nodiscard]] static Result<LineInput> open(const std::string& file);
  LineInput(LineInput&& other) noexcept;
  LineInput(const LineInput&) = delete;
  LineInput& operator=(const LineInput&) = delete;
  LineInput& operator=(LineInput&&) = delete;
  ~LineInput();

  // The next line without its end; nothing at the end of the input. kNotFound when it cannot be
  // read.
  [[nodiscard]] std::optional<std::string> line();
  // All lines at once, at most `most` bytes of them.
  [[nodiscard]] Result<std::string> rest(std::size_t most);
  [[nodiscard]] bool terminal() const;
  [[nodiscard]] std::size_t number() const { return number_; }  // of the last line, from 1

  // One key as it is pressed, on a terminal; else the first character of the next line. Nothing at
  // the end of the input. `ask` prints the question: the terminal waits for single keys by then, so
  // that whoever answers at once, or interrupts, is understood.
  [[nodiscard]] std::optional<char> key(const std::function<void()>& ask);

 private:
  LineInput(int fd, bool own) : fd_(fd), own_(own) {}
  int fd_;
  bool own_;
  std::size_t number_ = 0;
};

}  // namespace larderloop::cli
