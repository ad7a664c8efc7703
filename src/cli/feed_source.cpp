#include "cli/feed_source.h"

#include "cli/answer_cache.h"
#include "cli/publish.h"
#include "larderloop/app/feed_address.h"
#include "larderloop/render/plan_json.h"

#include <algorithm>
#include <exception>
#include <sys/stat.h>

namespace larderloop::cli {
namespace {

constexpr std::chrono::seconds kRest{1};  // after a failure
constexpr std::size_t kMarkDigits = 32;

Instant clock_now() {
  return Instant(std::chrono::duration_cast<std::chrono::seconds>(
      std::chrono::system_clock::now().time_since_epoch()));
}

}  // namespace

FeedSource::FeedSource(Environment environment, GlobalOptions options,
                       std::string (*pack)(std::string_view),
                       std::function<void(const std::string&)> say)
    : environment_(std::move(environment)),
      options_(std::move(options)),
      pack_(pack),
      say_(std::move(say)) {
  options_.json = false;
  options_.verbose = false;
}

Result<const Household*> FeedSource::start() {
  const std::lock_guard lock(mutex_);
  if (Status done = refresh(); !done) return fail(done.error());
  options_.quiet = true;  // what is to be said of the book was said
  return &household_;
}

Status FeedSource::refresh() {
  environment_.clock = clock_now();
  Runtime runtime(environment_);
  runtime.options = options_;
  auto path = runtime.book_path();
  if (!path) return fail(path.error());
  book_ = *path;
  const std::string before = book_fingerprint(book_);
  if (ready_ && !before.empty() && before == fingerprint_) {
    auto asked = runtime.ask(household_.settings);
    if (!asked) return fail(asked.error());
    if (asked->today == asked_.today) return {};
  }
  return work_out(runtime, before);
}

Status FeedSource::work_out(Runtime& runtime, const std::string& before) {
  ready_ = false;
  auto feed = publish(runtime);
  if (!feed) return fail(feed.error());
  feed_ = std::move(*feed);
  household_ = runtime.household();
  asked_ = runtime.asked();
  // A book that was written meanwhile, by us or by others, is read once more at the next question.
  fingerprint_ = before == book_fingerprint(book_) ? before : std::string();
  for (auto& [id, each] : fresh_) before_[id] = std::move(each);
  fresh_.clear();
  ready_ = true;
  return {};
}

// When a calendar was first seen by this run it may have changed as late as its newest stamp or as
// the last write to the book.
Instant FeedSource::first_change() const {
  Instant latest{};
  for (const FeedStamp& each : household_.feed) latest = std::max(latest, each.changed_at);
  struct stat file {};
  if (::stat(book_.c_str(), &file) == 0)
    latest = std::max(latest, Instant(std::chrono::seconds(file.st_mtim.tv_sec)));
  return latest;
}

Result<std::shared_ptr<const WebDocument>> FeedSource::document(const FeedAddress& address) {
  auto& fresh = fresh_[address.id];
  if (fresh) return fresh;
  FeedView view = usual_view(household_.settings.feed);
  view.person = address.person;
  view.detail = address.detail;
  auto bytes = render_feed_ics(feed_view(household_, feed_, view));
  if (!bytes) return fail(bytes.error());
  const std::string mark = sha256_hex(*bytes).substr(0, kMarkDigits);
  const auto old = before_[address.id];
  if (old && old->mark == mark) {
    fresh = old;
    return fresh;
  }
  auto made = std::make_shared<WebDocument>();
  made->changed_at =
      old ? std::max(asked_.now, old->changed_at + std::chrono::seconds(1)) : first_change();
  made->packed = pack_(*bytes);
  made->bytes = std::move(*bytes);
  made->mark = mark;
  fresh = std::move(made);
  return fresh;
}

WebAnswer FeedSource::find(const std::string& word) {
  const std::lock_guard lock(mutex_);
  const WebAnswer not_now{WebFound::kNotNow, nullptr, {}};
  if (!trouble_.empty() && std::chrono::steady_clock::now() < not_before_) return not_now;
  const auto troubled = [&](const std::string& what) {
    not_before_ = std::chrono::steady_clock::now() + kRest;
    if (trouble_ != what) say_("the calendar cannot be given: " + what);
    trouble_ = what;
    ready_ = false;
    return not_now;
  };
  try {
    if (const Status done = refresh(); !done) return troubled(done.error().what);
    const FeedAddress* address = feed_address_of(household_.feed_addresses, word);
    WebAnswer answer;
    if (address != nullptr) {
      auto made = document(*address);
      if (!made) return troubled(made.error().what);
      answer = {WebFound::kYes, *made, address->name};
    }
    if (!trouble_.empty()) say_("the calendar can be given again");
    trouble_.clear();
    return answer;
  } catch (const std::exception& error) {  // the caller is a thread of another room
    return troubled(error.what());
  }
}

}  // namespace larderloop::cli
