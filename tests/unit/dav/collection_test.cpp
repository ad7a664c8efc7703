// Addresses that a password may be sent to. What goes over the wire is tested against a real server
// in tests/e2e/dav_push.py.
#include "larderloop/dav/collection.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

TEST(DavAddress, Parts) {
  const auto address = parse_dav_address("HTTPS://Calendar.Example:8443/dav/kit");
  ASSERT_TRUE(address.has_value());
  EXPECT_EQ(address->scheme, "https");
  EXPECT_EQ(address->authority, "calendar.example:8443");
  EXPECT_EQ(address->host, "calendar.example");
  EXPECT_EQ(address->path, "/dav/kit/");
}

TEST(DavAddress, NoAddress) {
  for (const char* url :
       {"", "calendar.example/kit", "ftp://host/kit/", "https://", "https:///kit/",
        "https://me:pw@host/kit/", "https://host/kit/?a=b", "https://host/kit/#a",
        "https://host:x/", "https://host:999999/", "https://ho st/", "https://host/a\r\nX: y",
        "https://[::1/", "https://[::1]x/"}) {
    EXPECT_FALSE(parse_dav_address(url).has_value()) << url;
  }
}

TEST(DavAddress, OnlyThisVeryMachineIsLoopback) {
  for (const char* url : {"http://localhost:5232/", "http://127.0.0.1/", "http://127.3.2.1:80/a/",
                          "http://[::1]:5232/a/"}) {
    EXPECT_TRUE(parse_dav_address(url)->is_loopback()) << url;
  }
  for (const char* url : {"http://127.0.0.1.example/", "http://localhost.example/",
                          "http://10.0.0.1/", "http://127.example.a.b/"}) {
    EXPECT_FALSE(parse_dav_address(url)->is_loopback()) << url;
  }
}

TEST(DavCollection, PlainHttpIsForThisMachineOrATrustedHome) {
  DavAccess access;
  access.url = "http://box.example/kit/";
  EXPECT_EQ(DavCollection::open(access).error().kind, ErrorKind::kUsage);
  access.allow_plain = true;
  EXPECT_TRUE(DavCollection::open(access).has_value());
  access.allow_plain = false;
  access.url = "http://localhost/kit";
  auto collection = DavCollection::open(access);
  ASSERT_TRUE(collection.has_value());
  EXPECT_EQ(collection->url(), "http://localhost/kit/");
  EXPECT_EQ(collection->href_for("0a-1"), "/kit/0a-1.ics");
}

TEST(DavCollection, ItemsOutsideTheServerAreNeverTouched) {
  DavAccess access;
  access.url = "http://localhost:1/kit/";
  auto collection = DavCollection::open(access);
  for (const char* href :
       {"http://other.example/kit/a.ics", "http://localhost:1@other.example/a.ics", "a.ics",
        "/kit/../b.ics", "/kit/a b"}) {
    const auto done = collection->put(href, "x", "");
    ASSERT_TRUE(done.has_value()) << href;
    EXPECT_EQ(done->result, DavResult::kRefused) << href;
  }
  EXPECT_EQ(collection->remove("/kit/a.ics", "")->result, DavResult::kRefused);
}

}  // namespace
}  // namespace larderloop
