// Heads of requests. Sections are those of RFC 9112 where nothing else is said.
#include "web/head.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const std::string kHost = "Host: kit.example\r\n";

int fault_of(const std::string& text) {
  HeadFault fault;
  return read_head(text, fault) ? 0 : fault.status;
}

TEST(RequestHead, AGoodOne) {
  HeadFault fault;
  const std::string text =
      "GET /word.ics?x=1 HTTP/1.1\r\nHost: Kit.Example:8467\r\nAccept-Encoding: gzip\r\n"
      "If-None-Match:  \"a\" \r\nRange: bytes=0-5\r\nExpect: 100-continue\r\naccept-encoding: "
      "br\r\n\r\n";
  ASSERT_EQ(end_of_head(text + "more"), text.size());
  const auto head = read_head(text, fault);
  ASSERT_TRUE(head);
  EXPECT_EQ(head->method, "GET");
  EXPECT_EQ(head->target, "/word.ics?x=1");
  EXPECT_EQ(head->host, "kit.example");
  EXPECT_EQ(head->accept_encoding, "gzip, br");
  EXPECT_FALSE(head->old);
  EXPECT_FALSE(head->has_body);
  EXPECT_EQ(head->text(),
            "GET /word.ics?x=1 HTTP/1.1\r\nHost: Kit.Example:8467\r\nIf-None-Match: \"a\"\r\n\r\n");
}

TEST(RequestHead, FormsOfTheTarget) {
  HeadFault fault;
  const auto absolute =
      read_head("GET http://Other.example:80/a HTTP/1.1\r\n" + kHost + "\r\n", fault);
  ASSERT_TRUE(absolute);
  EXPECT_EQ(absolute->target, "/a");
  EXPECT_EQ(absolute->host, "other.example") << "section 3.2.2: the target's host, not the field's";
  const auto bare = read_head("GET http://other.example HTTP/1.1\r\n" + kHost + "\r\n", fault);
  ASSERT_TRUE(bare);
  EXPECT_EQ(bare->target, "/");
  EXPECT_EQ(fault_of("GET * HTTP/1.1\r\n" + kHost + "\r\n"), 400);
  EXPECT_EQ(fault_of("GET word.ics HTTP/1.1\r\n" + kHost + "\r\n"), 400);
}

TEST(RequestHead, ABodyIsSeenAndNotWaitedFor) {
  HeadFault fault;
  for (const char* field :
       {"Content-Length: 5\r\n", "Transfer-Encoding: chunked\r\n", "content-length: x\r\n"}) {
    const auto head = read_head("GET / HTTP/1.1\r\n" + kHost + field + "\r\n", fault);
    ASSERT_TRUE(head) << field;
    EXPECT_TRUE(head->has_body) << field;
    EXPECT_EQ(head->fields.size(), 1U) << "the library never hears of it";
  }
  EXPECT_FALSE(
      read_head("GET / HTTP/1.1\r\n" + kHost + "Content-Length: 0\r\n\r\n", fault)->has_body);
}

TEST(RequestHead, WhatIsRefused) {
  struct Case {
    std::string text;
    int status;
  };
  const std::string many = [] {
    std::string all;
    for (int each = 0; each < 101; ++each) all += "A: b\r\n";
    return all;
  }();
  for (const Case& each : {
           Case{"GET / HTTP/1.1\r\n\r\n", 400},  // 3.2: a Host field, exactly one
           Case{"GET / HTTP/1.1\r\n" + kHost + kHost + "\r\n", 400},
           Case{"GET / HTTP/1.1\r\nHost: a b\r\n\r\n", 400},
           Case{"GET / HTTP/1.1\r\nHost: kit.example:x\r\n\r\n", 400},
           Case{"GET / HTTP/1.1\r\nHost:\r\n\r\n", 400},
           Case{"GET / HTTP/1.1\r\n" + kHost + " folded: x\r\n\r\n", 400},  // 5.2: no folding
           Case{"GET / HTTP/1.1\r\n" + kHost + "Name : x\r\n\r\n",
                400},  // 5.1: no space before the colon
           Case{"GET / HTTP/1.1\r\n" + kHost + "nothing\r\n\r\n", 400},
           Case{"GET / HTTP/1.1\r\n" + kHost + "A: b\rc\r\n\r\n", 400},  // 2.2: no bare CR
           Case{"GET / HTTP/1.1\r\n" + kHost + "A: b\nc: d\r\n\r\n", 400},
           Case{std::string("GET /\0 HTTP/1.1\r\n", 18) + kHost + "\r\n", 400},
           Case{"GET /a b HTTP/1.1\r\n" + kHost + "\r\n", 400},  // 3: no white space in a target
           Case{"GET  / HTTP/1.1\r\n" + kHost + "\r\n", 400},
           Case{"GET /\r\n" + kHost + "\r\n", 400},  // HTTP/0.9
           Case{"G@T / HTTP/1.1\r\n" + kHost + "\r\n", 400},
           Case{"GET / HTTP/2.0\r\n" + kHost + "\r\n", 505},
           Case{"GET / FTP/1.1\r\n" + kHost + "\r\n", 400},
           Case{"POST / HTTP/1.1\r\n" + kHost + "\r\n", 405},
           Case{"OPTIONS * HTTP/1.1\r\n" + kHost + "\r\n", 405},
           Case{"PROPFIND / HTTP/1.1\r\n" + kHost + "\r\n", 405},
           Case{"get / HTTP/1.1\r\n" + kHost + "\r\n", 405},  // methods are case-sensitive
           Case{"GET /" + std::string(8000, 'a') + " HTTP/1.1\r\n" + kHost + "\r\n", 414},
           Case{"GET / HTTP/1.1\r\n" + kHost + many + "\r\n", 431},
           Case{"\r\n\r\n", 400},
       }) {
    EXPECT_EQ(fault_of(each.text), each.status) << each.text.substr(0, 80);
  }
  HeadFault fault;
  EXPECT_FALSE(read_head("PUT / HTTP/1.1\r\n" + kHost + "\r\n", fault));
  EXPECT_EQ(fault.fields, std::vector<std::string>{"Allow: GET, HEAD"});
  EXPECT_EQ(fault.method, "-") << "no word of the client gets into the log";
}

TEST(RequestHead, WhatNeedNotBeWaitedFor) {
  EXPECT_FALSE(hopeless("GET / HTTP/1.1\r\nHost: k"));
  EXPECT_EQ(hopeless("GET / HTTP/1.1\n\n")->status, 400);
  EXPECT_EQ(hopeless(std::string("G\0", 2))->status, 400);
  EXPECT_FALSE(hopeless(std::string(7000, 'a')));
  EXPECT_EQ(hopeless(std::string(9000, 'a'))->status, 414);
  EXPECT_FALSE(hopeless("GET / HTTP/1.1\r\nA: " + std::string(9000, 'a')));
  EXPECT_EQ(hopeless("GET / HTTP/1.1\r\nA: " + std::string(17000, 'a'))->status, 431);
}

TEST(OwnHost, NamesAndTheAddressThatWasReached) {
  const std::vector<std::string> names = {"kit.example"};
  for (const char* host : {"localhost", "127.0.0.1", "kit.example"})
    EXPECT_TRUE(is_own_host(host, "127.0.0.1", names)) << host;
  for (const char* host : {"evil.example", "kit.example.evil.example", "192.168.1.4", ""})
    EXPECT_FALSE(is_own_host(host, "127.0.0.1", names)) << host;
  EXPECT_TRUE(is_own_host("[fe80::1]", "fe80::1", {}));
  EXPECT_TRUE(is_own_host("192.168.1.4", "::ffff:192.168.1.4", {}));
  EXPECT_FALSE(is_own_host("192.168.1.5", "::ffff:192.168.1.4", {}));
}

}  // namespace
}  // namespace larderloop
