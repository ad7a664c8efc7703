// feed_address.h - addresses under which the calendar is served: made, found, revoked. And the part of an address that people give: a base.
// Secret:   the word at the end of an address is 256 random bits in base64url (RFC 4648 section 5), told once. The book keeps its SHA-256
//           (FIPS 180-4), which cannot be turned back into the word. Random bits come in as an argument.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

using FeedTokenBits = std::array<unsigned char, 32>;

// 43 characters out of A-Z a-z 0-9 - and _.
[[nodiscard]] std::string feed_token(const FeedTokenBits& bits);
// 64 hexadecimal digits.
[[nodiscard]] std::string sha256_hex(std::string_view bytes);

// For whom. `detail` absent: the setting of the book.
struct NewFeedAddress {
  std::string name;
  std::optional<PersonKey> person;
  std::optional<FeedDetail> detail;
};
struct FeedAddressMade {
  FeedAddress address;
  std::string token;
};
// kBadData: no name, a name longer than 80 characters, or one that a valid address has; kNotFound: no such person.
[[nodiscard]] Result<Outcome<FeedAddressMade>> add_feed_address(const Household& household,
                                                                const NewFeedAddress& wanted,
                                                                const FeedTokenBits& bits,
                                                                Asked asked);

// From now on it is valid no more; it stays in the book. `text`: its number, "3" or "#3", or its name, which means the valid one.
// kNotFound: no such address; kBadData: it is revoked already.
[[nodiscard]] Result<Outcome<FeedAddress>> revoke_feed_address(const Household& household,
                                                               std::string_view text, Asked asked);

// The valid address that this word belongs to, or nothing. All of them are compared to their ends, so that the time tells nothing.
[[nodiscard]] const FeedAddress* feed_address_of(const std::vector<FeedAddress>& addresses,
                                                 std::string_view token);

// Where addresses begin, as phones see it: "https://kit.example/feed". The word follows after a "/".
struct FeedBase {
  bool secure = true;     // https
  std::string host;       // lower case; IPv6 in brackets
  std::string authority;  // host, and port when it is not the usual one
  std::string path;       // "/feed", or nothing
  [[nodiscard]] bool is_loopback() const;
  // "https://kit.example/feed/WORD.ics"; `subscribe`: the same as webcals: or webcal:, which opens the calendar instead of the browser.
  [[nodiscard]] std::string address(const std::string& token, bool subscribe) const;
};
// kUsage: not https://HOST[:PORT][/PATH], http://..., webcals://... or webcal://...
[[nodiscard]] Result<FeedBase> parse_feed_base(const std::string& text);

}  // namespace larderloop
