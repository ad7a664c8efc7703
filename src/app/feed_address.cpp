#include "larderloop/app/feed_address.h"

#include "larderloop/core/validate.h"

#include <algorithm>
#include <charconv>
#include <nettle/base64.h>
#include <nettle/sha2.h>

namespace larderloop {
namespace {

constexpr std::size_t kLongestName = 80;
constexpr const char* kSeeThem = "see them all: larderloop feed list";

// Both are hashes of one length, so nothing is learnt from it.
bool same_hash(const std::string& one, const std::string& other) {
  unsigned difference = one.size() == other.size() ? 0U : 1U;
  for (std::size_t index = 0; index < std::min(one.size(), other.size()); ++index) {
    difference |= static_cast<unsigned>(static_cast<unsigned char>(one[index]) ^
                                        static_cast<unsigned char>(other[index]));
  }
  return difference == 0;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char each) {
    return (static_cast<unsigned char>(each) & 0xC0U) != 0x80U;
  }));
}

}  // namespace

std::string feed_token(const FeedTokenBits& bits) {
  std::array<char, BASE64_ENCODE_RAW_LENGTH(std::tuple_size_v<FeedTokenBits>)> text{};
  base64_encode_ctx coder{};
  nettle_base64url_encode_init(&coder);
  std::size_t length = nettle_base64_encode_update(&coder, text.data(), bits.size(), bits.data());
  length += nettle_base64_encode_final(&coder, text.data() + length);
  std::string token(text.data(), length);
  token.erase(token.find_last_not_of('=') +
              1);  // the length is known, so nothing has to be filled up
  return token;
}

std::string sha256_hex(std::string_view bytes) {
  sha256_ctx hasher{};
  nettle_sha256_init(&hasher);
  nettle_sha256_update(&hasher, bytes.size(), reinterpret_cast<const unsigned char*>(bytes.data()));
  std::array<unsigned char, SHA256_DIGEST_SIZE> digest{};
  nettle_sha256_digest(&hasher, digest.size(), digest.data());
  std::string text;
  for (const unsigned char byte : digest) {
    text += "0123456789abcdef"[byte >> 4U];
    text += "0123456789abcdef"[byte & 15U];
  }
  return text;
}

Result<Outcome<FeedAddressMade>> add_feed_address(const Household& household,
                                                  const NewFeedAddress& wanted,
                                                  const FeedTokenBits& bits, Asked asked) {
  if (wanted.name.find_first_not_of(' ') == std::string::npos)
    return fail(ErrorKind::kBadData, "the address has no name",
                "say for whom or what it is: larderloop feed add \"Mira's phone\"");
  if (characters(wanted.name) > kLongestName)
    return fail(ErrorKind::kBadData, "the name is longer than 80 characters",
                "give a shorter one, as \"Mira's phone\"");
  if (std::any_of(wanted.name.begin(), wanted.name.end(),
                  [](char each) { return static_cast<unsigned char>(each) < ' ' || each == 0x7F; }))
    return fail(ErrorKind::kBadData, "the name has characters that cannot be shown",
                "give a plain one, as \"Mira's phone\"");
  for (const FeedAddress& each : household.feed_addresses) {
    if (each.name == wanted.name && !each.revoked_at)
      return fail(ErrorKind::kBadData, "there is an address '" + wanted.name + "' already",
                  "give another name, or revoke the old one: larderloop feed revoke " +
                      std::to_string(each.id.value()));
  }
  if (wanted.person && find_person(household, *wanted.person) == nullptr)
    return fail(ErrorKind::kNotFound, "there is no person '" + wanted.person->str() + "'",
                "see them all: larderloop person list");
  Outcome<FeedAddressMade> outcome;
  outcome.report.token = feed_token(bits);
  FeedAddress& made = outcome.report.address;
  made.id = next_ids(household).feed_address;
  made.name = wanted.name;
  made.token_sha256 = sha256_hex(outcome.report.token);
  made.person = wanted.person;
  made.detail = wanted.detail.value_or(household.settings.feed.detail);
  made.created_at = asked.now;
  outcome.changes.feed_addresses = {made};
  return outcome;
}

Result<Outcome<FeedAddress>> revoke_feed_address(const Household& household, std::string_view text,
                                                 Asked asked) {
  std::string_view digits = text;
  if (!digits.empty() && digits.front() == '#') digits.remove_prefix(1);
  std::int64_t number = 0;
  const auto [end, wrong] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  const bool is_number = wrong == std::errc() && end == digits.data() + digits.size();
  const FeedAddress* found = nullptr;
  for (const FeedAddress& each : household.feed_addresses) {
    if (each.name == text && (found == nullptr || !each.revoked_at)) found = &each;
  }
  for (const FeedAddress& each : household.feed_addresses) {
    if (found == nullptr && is_number && each.id.value() == number) found = &each;
  }
  if (found == nullptr) {
    std::vector<std::string> names;
    for (const FeedAddress& each : household.feed_addresses) {
      if (!each.revoked_at) names.push_back(each.name);
    }
    const std::string near = nearest(std::string(text), names);
    return fail(ErrorKind::kNotFound, "there is no address '" + std::string(text) + "'",
                near.empty() ? kSeeThem : "did you mean '" + near + "'?");
  }
  if (found->revoked_at)
    return fail(ErrorKind::kBadData, "'" + found->name + "' is revoked already", kSeeThem);
  Outcome<FeedAddress> outcome;
  outcome.report = *found;
  outcome.report.revoked_at = std::max(asked.now, found->created_at);
  outcome.changes.feed_addresses = {outcome.report};
  return outcome;
}

const FeedAddress* feed_address_of(const std::vector<FeedAddress>& addresses,
                                   std::string_view token) {
  const std::string hash = sha256_hex(token);
  const FeedAddress* found = nullptr;
  for (const FeedAddress& each : addresses) {
    if (same_hash(each.token_sha256, hash)) found = &each;
  }
  return found == nullptr || found->revoked_at ? nullptr : found;
}

}  // namespace larderloop
