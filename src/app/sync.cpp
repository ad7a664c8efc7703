#include "larderloop/app/sync.h"

#include <algorithm>
#include <map>
#include <optional>

namespace larderloop {
namespace {

struct There {
  const RemoteItem* item = nullptr;
  ReadObject object;
};

class Planner {
 public:
  Planner(const std::vector<PushedItem>& pushed, const std::vector<RemoteItem>& remote,
          const std::vector<TaskDone>& done, bool take_over)
      : take_over_(take_over) {
    for (const PushedItem& each : pushed) pushed_.emplace(each.uid, &each);
    for (const TaskDone& each : done) done_.insert(each.uid);
    for (const RemoteItem& each : remote) {
      auto object = read_object(each.bytes);
      if (object)
        there_.emplace(object->uid, There{&each, *object});
      else
        plan_.others += 1;
    }
  }

  SyncPlan plan(const std::vector<CalendarObject>& wanted) {
    std::set<std::string> uids;
    for (const CalendarObject& each : wanted) {
      uids.insert(each.uid);
      want(each);
    }
    for (const auto& [uid, item] : pushed_) {
      if (uids.insert(uid).second) withdraw(*item);
    }
    for (const auto& [uid, there] : there_) {
      if (uids.count(uid) == 0) plan_.others += 1;
    }
    std::sort(plan_.steps.begin(), plan_.steps.end(),
              [](const SyncStep& a, const SyncStep& b) { return a.uid < b.uid; });
    return std::move(plan_);
  }

 private:
  SyncStep step(SyncDeed deed, const std::string& uid, const std::string& summary,
                const There* there, const std::string& bytes) const {
    SyncStep made;
    made.deed = deed;
    made.uid = uid;
    made.summary = summary;
    made.bytes = bytes;
    if (there != nullptr) {
      made.href = there->item->href;
      made.etag = there->item->etag;
    }
    return made;
  }

  void add(SyncStep made, KeptWhy why = KeptWhy::kNone) {
    made.kept = why;
    plan_.steps.push_back(std::move(made));
  }

  const There* there(const std::string& uid) const {
    const auto found = there_.find(uid);
    return found == there_.end() ? nullptr : &found->second;
  }

  bool is_ticked(const There& item) const {
    return item.object.state == TickState::kDone && done_.count(item.object.uid) == 0;
  }

  // Is it there as this book sent it? The same version, or another that says the same.
  static bool as_sent(const PushedItem& sent, const There& item) {
    if (!sent.etag.empty() && sent.etag == item.item->etag) return true;
    const auto before = read_object(sent.sent);
    return before && before->content == item.object.content &&
           item.object.state == TickState::kOpen;
  }

  void want(const CalendarObject& object) {
    const There* item = there(object.uid);
    const auto sent = pushed_.find(object.uid);
    const bool known = sent != pushed_.end();
    if (item == nullptr) {
      if (known && !take_over_)
        return add(step(SyncDeed::kKeep, object.uid, object.summary, nullptr, {}),
                   KeptWhy::kTakenAway);
      return add(step(SyncDeed::kCreate, object.uid, object.summary, nullptr, object.bytes));
    }
    if (is_ticked(*item))
      return add(step(SyncDeed::kKeep, object.uid, object.summary, item, {}), KeptWhy::kTicked);
    if (known && as_sent(*sent->second, *item)) {
      if (sent->second->sent == object.bytes && sent->second->etag == item->item->etag &&
          sent->second->href == item->item->href) {
        plan_.same += 1;
      } else if (sent->second->sent == object.bytes) {
        add(step(SyncDeed::kAdopt, object.uid, object.summary, item, object.bytes));
      } else {
        add(step(SyncDeed::kReplace, object.uid, object.summary, item, object.bytes));
      }
      return;
    }
    const auto wanted = read_object(object.bytes);
    if (wanted && wanted->content == item->object.content && wanted->mark == item->object.mark &&
        item->object.state == TickState::kOpen) {
      return add(step(SyncDeed::kAdopt, object.uid, object.summary, item, object.bytes));
    }
    if (take_over_)
      return add(step(SyncDeed::kReplace, object.uid, object.summary, item, object.bytes));
    add(step(SyncDeed::kKeep, object.uid, item->object.summary, item, {}),
        known ? KeptWhy::kEdited : KeptWhy::kUnknown);
  }

  void withdraw(const PushedItem& sent) {
    const There* item = there(sent.uid);
    const auto before = read_object(sent.sent);
    const std::string summary = before ? before->summary : std::string();
    if (item == nullptr) return add(step(SyncDeed::kForget, sent.uid, summary, nullptr, {}));
    if (is_ticked(*item))
      return add(step(SyncDeed::kKeep, sent.uid, summary, item, {}), KeptWhy::kTicked);
    // Ticked off and taken in: it is done and goes, whatever else was written on it.
    const bool done = item->object.state == TickState::kDone;
    if (done || take_over_ || as_sent(sent, *item))
      return add(step(SyncDeed::kRemove, sent.uid, summary, item, {}));
    add(step(SyncDeed::kKeep, sent.uid, item->object.summary, item, {}), KeptWhy::kEdited);
  }

  bool take_over_;
  std::map<std::string, const PushedItem*> pushed_;
  std::map<std::string, There> there_;
  std::set<std::string> done_;
  SyncPlan plan_;
};

}  // namespace

SyncPlan plan_sync(const std::vector<CalendarObject>& wanted, const std::vector<PushedItem>& pushed,
                   const std::vector<RemoteItem>& remote, const std::vector<TaskDone>& done,
                   bool take_over) {
  return Planner(pushed, remote, done, take_over).plan(wanted);
}

bool SyncReport::open_ends() const {
  return std::any_of(lines.begin(), lines.end(),
                     [](const SyncLine& line) { return line.result != SyncResult::kDone; });
}

std::string_view sync_deed_name(SyncDeed deed) {
  switch (deed) {
    case SyncDeed::kCreate:
      return "create";
    case SyncDeed::kReplace:
      return "replace";
    case SyncDeed::kRemove:
      return "remove";
    case SyncDeed::kAdopt:
      return "adopt";
    case SyncDeed::kForget:
      return "forget";
    case SyncDeed::kKeep:
      return "keep";
  }
  return "";
}

std::string_view kept_why_name(KeptWhy why) {
  switch (why) {
    case KeptWhy::kNone:
      return "";
    case KeptWhy::kEdited:
      return "edited";
    case KeptWhy::kUnknown:
      return "unknown";
    case KeptWhy::kTakenAway:
      return "taken_away";
    case KeptWhy::kTicked:
      return "ticked";
  }
  return "";
}

}  // namespace larderloop
