// Addresses of the calendar: made once, compared by their hash, revoked for ever; and what may
// stand before them.
#include "larderloop/app/feed_address.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

FeedTokenBits bits_of(unsigned char byte) {
  FeedTokenBits bits{};
  bits.fill(byte);
  return bits;
}

Asked at(const char* instant) {
  const Instant now = *parse_iso_instant(instant);
  return {day_of(now), now};
}

Household with_address(const char* name, unsigned char byte) {
  Household household;
  auto made =
      add_feed_address(household, {name, {}, {}}, bits_of(byte), at("2027-04-03T08:00:00Z"));
  EXPECT_TRUE(made);
  apply_changes(household, made->changes);
  return household;
}

TEST(FeedAddressApp, OnlyTheHashIsKept) {
  Household household;
  household.settings.feed.detail = FeedDetail::kPrivate;
  const auto made =
      add_feed_address(household, {"Mira's phone", {}, {}}, bits_of(7), at("2027-04-03T08:00:00Z"));
  ASSERT_TRUE(made);
  EXPECT_EQ(made->report.token.size(), 43U);
  EXPECT_EQ(made->report.address.token_sha256, sha256_hex(made->report.token));
  EXPECT_EQ(made->report.address.detail, FeedDetail::kPrivate) << "as the book has it";
  ASSERT_EQ(made->changes.feed_addresses.size(), 1U);
  EXPECT_EQ(made->changes.feed_addresses.front(), made->report.address);
}

TEST(FeedAddressApp, AWordIsValidUntilItIsRevoked) {
  Household household = with_address("Hall", 1);
  const std::string token = feed_token(bits_of(1));
  ASSERT_NE(feed_address_of(household.feed_addresses, token), nullptr);
  EXPECT_EQ(feed_address_of(household.feed_addresses, token + "A"), nullptr);
  EXPECT_EQ(feed_address_of(household.feed_addresses, ""), nullptr);
  EXPECT_EQ(feed_address_of(household.feed_addresses, household.feed_addresses[0].token_sha256),
            nullptr)
      << "what the book keeps opens nothing";
  const auto revoked = revoke_feed_address(household, "Hall", at("2027-04-04T08:00:00Z"));
  ASSERT_TRUE(revoked);
  apply_changes(household, revoked->changes);
  EXPECT_EQ(feed_address_of(household.feed_addresses, token), nullptr);
  ASSERT_EQ(household.feed_addresses.size(), 1U) << "it stays in the book";
  const auto again = revoke_feed_address(household, "#1", at("2027-04-05T08:00:00Z"));
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().kind, ErrorKind::kBadData);
}

TEST(FeedAddressApp, ANameMayBeGivenAgainOnceItIsFree) {
  Household household = with_address("Hall", 1);
  const auto twice =
      add_feed_address(household, {"Hall", {}, {}}, bits_of(2), at("2027-04-04T08:00:00Z"));
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().kind, ErrorKind::kBadData);
  auto revoked = revoke_feed_address(household, "1", at("2027-04-04T08:00:00Z"));
  ASSERT_TRUE(revoked);
  apply_changes(household, revoked->changes);
  auto second =
      add_feed_address(household, {"Hall", {}, {}}, bits_of(2), at("2027-04-04T08:00:00Z"));
  ASSERT_TRUE(second);
  EXPECT_EQ(second->report.address.id.value(), 2);
  apply_changes(household, second->changes);
  revoked = revoke_feed_address(household, "Hall", at("2027-04-05T08:00:00Z"));
  ASSERT_TRUE(revoked);
  EXPECT_EQ(revoked->report.id.value(), 2) << "the name means the valid one";
}

TEST(FeedAddressApp, BadNamesAndUnknownPeople) {
  const Household household;
  for (const std::string& name :
       {std::string(), std::string("  "), std::string(81, 'x'), std::string("a\nb")}) {
    const auto made =
        add_feed_address(household, {name, {}, {}}, bits_of(1), at("2027-04-03T08:00:00Z"));
    ASSERT_FALSE(made) << name;
    EXPECT_EQ(made.error().kind, ErrorKind::kBadData);
  }
  const auto made = add_feed_address(household, {"Hall", PersonKey("nobody"), {}}, bits_of(1),
                                     at("2027-04-03T08:00:00Z"));
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().kind, ErrorKind::kNotFound);
  EXPECT_EQ(revoke_feed_address(household, "3", at("2027-04-03T08:00:00Z")).error().kind,
            ErrorKind::kNotFound);
}

TEST(FeedBase, WhatPeopleGive) {
  struct Case {
    const char* given;
    const char* plain;
    const char* subscribe;
    bool loopback;
  };
  for (const Case& each : {
           Case{"https://kit.example", "https://kit.example/W.ics", "webcals://kit.example/W.ics",
                false},
           Case{"HTTPS://Kit.Example:443/Feed/", "https://kit.example/Feed/W.ics",
                "webcals://kit.example/Feed/W.ics", false},
           Case{"webcals://kit.example:8443/a/b", "https://kit.example:8443/a/b/W.ics",
                "webcals://kit.example:8443/a/b/W.ics", false},
           Case{"http://192.168.1.4:8467", "http://192.168.1.4:8467/W.ics",
                "webcal://192.168.1.4:8467/W.ics", false},
           Case{"http://127.0.0.1:8467", "http://127.0.0.1:8467/W.ics",
                "webcal://127.0.0.1:8467/W.ics", true},
           Case{"http://[::1]:80", "http://[::1]/W.ics", "webcal://[::1]/W.ics", true},
       }) {
    const auto base = parse_feed_base(each.given);
    ASSERT_TRUE(base) << each.given;
    EXPECT_EQ(base->address("W", false), each.plain);
    EXPECT_EQ(base->address("W", true), each.subscribe);
    EXPECT_EQ(base->is_loopback(), each.loopback) << each.given;
  }
  for (const char* wrong :
       {"", "kit.example", "ftp://kit.example", "https://", "https:///feed",
        "https://kit.example:0", "https://kit.example:99999", "https://user@kit.example",
        "https://kit.example/a?b", "https://kit.example/a/../b", "https://kit.example//b",
        "https://kit exam.ple"}) {
    const auto base = parse_feed_base(wrong);
    ASSERT_FALSE(base) << wrong;
    EXPECT_EQ(base.error().kind, ErrorKind::kUsage);
  }
}

}  // namespace
}  // namespace larderloop
