// What is sent, decided from three lists: each row of the table in docs/calendar-clients.md.
#include "larderloop/app/sync.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

std::string bytes(const std::string& uid, const std::string& title,
                  const std::string& more = "STATUS:NEEDS-ACTION") {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//x//EN\r\nBEGIN:VTODO\r\nUID:" + uid +
         "\r\nDTSTAMP:20270401T000000Z\r\nDUE;VALUE=DATE:20270405\r\nSUMMARY:" + title + "\r\n" +
         more + "\r\nEND:VTODO\r\nEND:VCALENDAR\r\n";
}
CalendarObject want(const std::string& title) {
  return {"a", title, bytes("a", title)};
}
PushedItem sent(const std::string& title) {
  return {"https://x/", "a", "/a.ics", "\"1\"", bytes("a", title)};
}
RemoteItem there(const std::string& text, const std::string& etag = "\"1\"") {
  return {"/a.ics", etag, text};
}

SyncStep only(const SyncPlan& plan) {
  EXPECT_EQ(plan.steps.size(), 1U);
  return plan.steps.empty() ? SyncStep{} : plan.steps.front();
}

TEST(Sync, NewOnesAreCreated) {
  const SyncStep step = only(plan_sync({want("Soup")}, {}, {}, {}, false));
  EXPECT_EQ(step.deed, SyncDeed::kCreate);
  EXPECT_EQ(step.etag, "");
}

TEST(Sync, NothingChangedIsNothingToDo) {
  const SyncPlan plan =
      plan_sync({want("Soup")}, {sent("Soup")}, {there(bytes("a", "Soup"))}, {}, false);
  EXPECT_TRUE(plan.steps.empty());
  EXPECT_EQ(plan.same, 1U);
}

TEST(Sync, ChangedHereReplacesTheVersionThatWasSent) {
  const SyncStep step =
      only(plan_sync({want("Stew")}, {sent("Soup")}, {there(bytes("a", "Soup"))}, {}, false));
  EXPECT_EQ(step.deed, SyncDeed::kReplace);
  EXPECT_EQ(step.etag, "\"1\"");
}

TEST(Sync, AnotherVersionThatSaysTheSameIsOurs) {
  const SyncStep step =
      only(plan_sync({want("Stew")}, {sent("Soup")},
                     {there(bytes("a", "Soup", "SEQUENCE:3\r\nX-SORT:1"), "\"2\"")}, {}, false));
  EXPECT_EQ(step.deed, SyncDeed::kReplace);
  EXPECT_EQ(step.etag, "\"2\"");
  EXPECT_EQ(only(plan_sync({want("Soup")}, {sent("Soup")}, {there(bytes("a", "Soup"), "\"2\"")}, {},
                           false))
                .deed,
            SyncDeed::kAdopt);
}

TEST(Sync, ChangedThereIsKeptUnlessTakenOver) {
  const std::vector<RemoteItem> remote{there(bytes("a", "Jon's soup"), "\"2\"")};
  for (const char* title : {"Soup", "Stew"}) {
    const SyncStep step = only(plan_sync({want(title)}, {sent("Soup")}, remote, {}, false));
    EXPECT_EQ(step.deed, SyncDeed::kKeep);
    EXPECT_EQ(step.kept, KeptWhy::kEdited);
  }
  EXPECT_EQ(only(plan_sync({}, {sent("Soup")}, remote, {}, false)).kept, KeptWhy::kEdited);
  const SyncStep over = only(plan_sync({want("Stew")}, {sent("Soup")}, remote, {}, true));
  EXPECT_EQ(over.deed, SyncDeed::kReplace);
  EXPECT_EQ(over.etag, "\"2\"");
  EXPECT_EQ(only(plan_sync({}, {sent("Soup")}, remote, {}, true)).deed, SyncDeed::kRemove);
}

TEST(Sync, TakenAwayThereStaysAway) {
  const SyncStep step = only(plan_sync({want("Soup")}, {sent("Soup")}, {}, {}, false));
  EXPECT_EQ(step.kept, KeptWhy::kTakenAway);
  EXPECT_EQ(only(plan_sync({want("Soup")}, {sent("Soup")}, {}, {}, true)).deed, SyncDeed::kCreate);
  EXPECT_EQ(only(plan_sync({}, {sent("Soup")}, {}, {}, false)).deed, SyncDeed::kForget);
}

TEST(Sync, WhatWasNeverSentIsKnownOnlyWhenItSaysTheSame) {
  EXPECT_EQ(only(plan_sync({want("Soup")}, {}, {there(bytes("a", "Soup"))}, {}, false)).deed,
            SyncDeed::kAdopt);
  EXPECT_EQ(only(plan_sync({want("Soup")}, {}, {there(bytes("a", "Tea"))}, {}, false)).kept,
            KeptWhy::kUnknown);
}

TEST(Sync, ATickIsNeverOverwrittenBeforeItIsTakenIn) {
  const std::vector<RemoteItem> remote{there(bytes("a", "Soup", "STATUS:COMPLETED"), "\"2\"")};
  for (const bool take_over : {false, true}) {
    EXPECT_EQ(only(plan_sync({want("Stew")}, {sent("Soup")}, remote, {}, take_over)).kept,
              KeptWhy::kTicked);
    EXPECT_EQ(only(plan_sync({}, {sent("Soup")}, remote, {}, take_over)).kept, KeptWhy::kTicked);
  }
  const SyncStep done = only(plan_sync({}, {sent("Soup")}, remote, {{"a", Day{}, "Soup"}}, false));
  EXPECT_EQ(done.deed, SyncDeed::kRemove);
  EXPECT_EQ(done.etag, "\"2\"");
}

TEST(Sync, OthersAreCountedAndLeftAlone) {
  const SyncPlan plan =
      plan_sync({}, {}, {there(bytes("guest", "Tea")), there("no calendar")}, {}, true);
  EXPECT_TRUE(plan.steps.empty());
  EXPECT_EQ(plan.others, 2U);
}

}  // namespace
}  // namespace larderloop
