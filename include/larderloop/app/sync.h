// sync.h - what to send to a calendar server, decided from three lists: what the household wants
// there, what it sent last, what is there now. Rules:    only what changed is sent. What somebody
// else made, changed or took away there is told and left as it is, unless asked otherwise.
//           Pure: nothing is sent here.
#pragma once

#include "larderloop/calendar/object.h"
#include "larderloop/core/household.h"

#include <set>
#include <string>
#include <vector>

namespace larderloop {

// An item on the server: where, which version, and its bytes.
struct RemoteItem {
  std::string href;
  std::string etag;
  std::string bytes;
};

// kCreate, kReplace, kRemove: to be sent. kAdopt: it is there already as wanted; only to be
// remembered. kForget: it is gone on both sides. kKeep: left as it is there, for the reason in
// `kept`.
enum class SyncDeed { kCreate, kReplace, kRemove, kAdopt, kForget, kKeep };
// kEdited: somebody changed it there. kUnknown: something with this UID that this book did not
// send. kTakenAway: somebody removed it there. kTicked: ticked off there, and not yet taken in.
enum class KeptWhy { kNone, kEdited, kUnknown, kTakenAway, kTicked };

struct SyncStep {
  SyncDeed deed = SyncDeed::kKeep;
  KeptWhy kept = KeptWhy::kNone;
  std::string uid;
  std::string summary;
  std::string href;   // empty: a new place
  std::string etag;   // of the version there; empty: there is none
  std::string bytes;  // to be sent or remembered
};
struct SyncPlan {
  std::vector<SyncStep> steps;  // by uid
  std::size_t same = 0;         // there as sent, and as wanted
  std::size_t others = 0;       // items there that are none of this book's
};

// `pushed`: what was sent to this collection. `take_over`: what others changed, made or took away
// is replaced by what is wanted after all; a tick that was not taken in stays even so.
[[nodiscard]] SyncPlan plan_sync(const std::vector<CalendarObject>& wanted,
                                 const std::vector<PushedItem>& pushed,
                                 const std::vector<RemoteItem>& remote,
                                 const std::vector<TaskDone>& done, bool take_over);

// ---- what became of it ----

enum class SyncResult { kDone, kKept, kChanged, kRefused };
struct SyncLine {
  SyncStep step;
  SyncResult result = SyncResult::kDone;
  std::string why;  // kRefused: what the server answered
};
struct SyncReport {
  std::string collection;
  bool dry_run = false;
  std::vector<SyncLine> lines;
  std::size_t same = 0;
  std::size_t others = 0;
  std::string stopped;  // why the rest was not tried; empty: it was
  // Something waits for a decision.
  [[nodiscard]] bool open_ends() const;
};
[[nodiscard]] std::string_view sync_deed_name(SyncDeed deed);  // "create"
[[nodiscard]] std::string_view kept_why_name(KeptWhy why);     // "edited"; empty for kNone

}  // namespace larderloop
