// Codings, conditions and dates, with the examples of RFC 9110.
#include "web/choice.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

TEST(AcceptEncoding, ExamplesOfSection12_5_3) {
  EXPECT_TRUE(accepts_gzip("compress, gzip"));
  EXPECT_FALSE(accepts_gzip(""));
  EXPECT_TRUE(accepts_gzip("*"));
  EXPECT_TRUE(accepts_gzip("compress;q=0.5, gzip;q=1.0"));
  EXPECT_TRUE(accepts_gzip("gzip;q=1.0, identity; q=0.5, *;q=0"));
}

TEST(AcceptEncoding, WhatIsNotAcceptable) {
  EXPECT_FALSE(accepts_gzip("gzip;q=0"));
  EXPECT_FALSE(accepts_gzip("GZIP ; Q=0.000"));
  EXPECT_FALSE(accepts_gzip("gzip;q=0, *;q=1")) << "what is named counts before the star";
  EXPECT_FALSE(accepts_gzip("br, deflate"));
  EXPECT_FALSE(accepts_gzip("*;q=0"));
  EXPECT_FALSE(accepts_gzip("gzipped, notgzip"));
  EXPECT_TRUE(accepts_gzip("gzip;q=0.001"));
  EXPECT_TRUE(accepts_gzip("X-GZIP"));
}

TEST(IfNoneMatch, ExamplesOfSection13_1_2) {
  const char* tag = "\"xyzzy\"";
  EXPECT_TRUE(names_tag("\"xyzzy\"", tag));
  EXPECT_TRUE(names_tag("W/\"xyzzy\"", tag));
  EXPECT_TRUE(names_tag("\"xyzzy\", \"r2d2xxxx\", \"c3piozzzz\"", tag));
  EXPECT_TRUE(names_tag("W/\"r2d2xxxx\", W/\"xyzzy\"", tag));
  EXPECT_TRUE(names_tag(" * ", tag));
  EXPECT_FALSE(names_tag("\"xyzz\"", tag));
  EXPECT_FALSE(names_tag("xyzzy", tag));
  EXPECT_FALSE(names_tag("\"a,xyzzy\"", tag));
  EXPECT_TRUE(names_tag("\"a, b\",\"xyzzy\"", tag));
  EXPECT_FALSE(names_tag("\"xyzzy", tag));
}

TEST(HttpDate, ExampleOfSection5_6_7) {
  EXPECT_EQ(http_date(*parse_iso_instant("1994-11-06T08:49:37Z")), "Sun, 06 Nov 1994 08:49:37 GMT");
  EXPECT_EQ(http_date(*parse_iso_instant("2028-02-29T00:00:00Z")), "Tue, 29 Feb 2028 00:00:00 GMT");
}

// RFC 1952 section 2.3: two fixed bytes, deflate, no flags, no time.
TEST(Packed, HasNoTimeInIt) {
  const std::string text(10000, 'a');
  const std::string zip = packed(text);
  EXPECT_LT(zip.size(), 100U);
  EXPECT_EQ(zip.substr(0, 8), std::string("\x1f\x8b\x08\0\0\0\0\0", 8));
  EXPECT_EQ(zip, packed(text));
  EXPECT_EQ(packed("").size(), 20U) << "head, an empty block, and a tail of eight bytes";
}

}  // namespace
}  // namespace larderloop
