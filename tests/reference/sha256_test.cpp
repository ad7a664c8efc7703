// SHA-256 and base64url against published examples.
//   NIST, "Cryptographic Standards and Guidelines: Examples with Intermediate Values", SHA-256 (for
//   FIPS 180-4): messages of one and of two blocks. NIST CAVP, SHA test vectors for hashing
//   byte-oriented messages, SHA256ShortMsg: Len = 0, 8 and 32. RFC 4648 section 5: 62 is '-', 63 is
//   '_'; section 3.2: without padding where the length is known.
#include "larderloop/app/feed_address.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

TEST(Sha256Reference, ExamplesOfNist) {
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(sha256_hex("\xd3"), "28969cdfa74a12c82f3bad960b0b000aca2ac329deea5c2328ebc6f2ba9802c1");
}

// FIPS 180-2, appendix B.3: one million times the letter a.
TEST(Sha256Reference, ALongMessage) {
  EXPECT_EQ(sha256_hex(std::string(1'000'000, 'a')),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST(Base64UrlReference, TheAlphabetOfTheRfc) {
  FeedTokenBits bits{};
  EXPECT_EQ(feed_token(bits), std::string(43, 'A'));
  bits.fill(0xFF);
  EXPECT_EQ(feed_token(bits), std::string(42, '_') + "8");
  // 0 1 2 ... 63 as six bits each, as far as they go: the order of the alphabet.
  unsigned buffer = 0, have = 0;
  std::size_t at = 0;
  for (unsigned value = 21; at < bits.size(); ++value) {
    buffer = buffer << 6U | (value & 63U);
    have += 6;
    if (have >= 8) {
      have -= 8;
      bits[at++] = static_cast<unsigned char>(buffer >> have & 0xFFU);
    }
  }
  EXPECT_EQ(feed_token(bits).substr(0, 42), "VWXYZabcdefghijklmnopqrstuvwxyz0123456789-");
}

}  // namespace
}  // namespace larderloop
