// feed_source.h - the calendars of the addresses, as the book has them at the time of asking.
// Reads:    the book only when its file or the household's day has changed, one at a time; what was
// shown and the stamps are kept in it,
//           as the calendar command does. Between, the answers are those of before.
// Trouble:  a book that cannot be read or is busy is told once and tried again a moment later;
// nothing is answered from old knowledge,
//           for an address might have been revoked.
#pragma once

#include "larderloop/app/feed.h"
#include "larderloop/cli/runtime.h"
#include "larderloop/web/module.h"

#include <chrono>
#include <functional>
#include <map>
#include <mutex>

namespace larderloop::cli {

class FeedSource {
 public:
  // `pack`: gzip. `say`: a line for people when the book cannot be used, and when it can be again;
  // called with no lock of the caller's.
  FeedSource(Environment environment, GlobalOptions options, std::string (*pack)(std::string_view),
             std::function<void(const std::string&)> say);
  // Reads the book now. The household as it is then.
  [[nodiscard]] Result<const Household*> start();
  // The calendar of the address that ends in this word. Any thread.
  [[nodiscard]] WebAnswer find(const std::string& word);

 private:
  [[nodiscard]] Status refresh();
  [[nodiscard]] Status work_out(Runtime& runtime, const std::string& before);
  [[nodiscard]] Result<std::shared_ptr<const WebDocument>> document(const FeedAddress& address);
  [[nodiscard]] Instant first_change() const;

  Environment environment_;
  GlobalOptions options_;
  std::string (*pack_)(std::string_view);
  std::function<void(const std::string&)> say_;

  std::mutex mutex_;  // of everything below
  std::string book_, fingerprint_;
  Asked asked_{};
  bool ready_ = false;
  Household household_;
  FeedReport feed_;
  std::map<FeedAddressId, std::shared_ptr<const WebDocument>> fresh_,
      before_;  // of this book; of the one before it
  std::string trouble_;
  std::chrono::steady_clock::time_point not_before_{};
};

}  // namespace larderloop::cli
