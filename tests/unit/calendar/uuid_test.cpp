#include "larderloop/calendar/ics.h"

#include <gtest/gtest.h>

#include <set>

namespace larderloop {
namespace {

constexpr std::string_view kDnsSpace =
    "6ba7b810-9dad-11d1-80b4-00c04fd430c8";  // RFC 4122 appendix C

// RFC 9562 appendix A.4.
TEST(Uuid, Version5IsThePublishedExample) {
  EXPECT_EQ(uuid_v5(kDnsSpace, "www.example.com"), "2ed6657d-e927-568b-95e1-2665a8aea6a2");
}

TEST(Uuid, Version5TakesTheSpaceInCapitalsAndEveryByteOfTheName) {
  EXPECT_EQ(uuid_v5("6BA7B810-9DAD-11D1-80B4-00C04FD430C8", "www.example.com"),
            "2ed6657d-e927-568b-95e1-2665a8aea6a2");
  EXPECT_NE(uuid_v5(kDnsSpace, std::string_view("a\0b", 3)),
            uuid_v5(kDnsSpace, std::string_view("a\0c", 3)));
}

TEST(Uuid, Version5IsEmptyWithoutASpace) {
  EXPECT_EQ(uuid_v5("", "x"), "");
  EXPECT_EQ(uuid_v5("6ba7b810-9dad-11d1-80b4-00c04fd430c", "x"), "");
  EXPECT_EQ(uuid_v5("6ba7b810-9dad-11d1-80b4-00c04fd430c8 ", "x"), "");
}

// RFC 9562 sections 4.1 and 5.4: version 4 in the seventh octet, variant 10 in the ninth.
TEST(Uuid, RandomOnesAreVersion4AndDiffer) {
  std::set<std::string> seen;
  for (int i = 0; i < 1000; ++i) {
    const std::string id = random_uuid();
    ASSERT_TRUE(is_uuid(id)) << id;
    EXPECT_EQ(id[14], '4') << id;
    EXPECT_NE(std::string("89ab").find(id[19]), std::string::npos) << id;
    EXPECT_EQ(id.find_first_not_of("0123456789abcdef-"), std::string::npos) << id;
    seen.insert(id);
  }
  EXPECT_EQ(seen.size(), 1000U);
}

TEST(Uuid, IsUuidWantsTheWholeForm) {
  EXPECT_TRUE(is_uuid(kDnsSpace));
  EXPECT_FALSE(is_uuid(""));
  EXPECT_FALSE(is_uuid("6ba7b8109dad11d180b400c04fd430c8"));
  EXPECT_FALSE(is_uuid("6ba7b810-9dad-11d1-80b4-00c04fd430cg"));
  EXPECT_FALSE(is_uuid("6ba7b810-9dad-11d1-80b4-00c04fd430c8x"));
}

}  // namespace
}  // namespace larderloop
