// id.h - identities that cannot be mixed up.
// Key<Tag>: a short text made once and never changed, [a-z0-9] and single '-' between, 1..48 characters ("lentil-pouch").
// Id<Tag>:  a positive whole number given by the book (lots, entries), never reused.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

namespace larderloop {

template <class Tag>
class Key {
 public:
  Key() = default;
  explicit Key(std::string text) : text_(std::move(text)) {}
  [[nodiscard]] const std::string& str() const { return text_; }
  [[nodiscard]] bool empty() const { return text_.empty(); }
  friend auto operator<=>(const Key&, const Key&) = default;
  friend bool operator==(const Key&, const Key&) = default;

 private:
  std::string text_;
};

template <class Tag>
class Id {
 public:
  Id() = default;
  explicit constexpr Id(std::int64_t value) : value_(value) {}
  [[nodiscard]] constexpr std::int64_t value() const { return value_; }
  [[nodiscard]] constexpr bool empty() const { return value_ == 0; }
  friend constexpr auto operator<=>(const Id&, const Id&) = default;
  friend constexpr bool operator==(const Id&, const Id&) = default;

 private:
  std::int64_t value_ = 0;
};

using PersonKey = Key<struct PersonTag>;
using FoodKey = Key<struct FoodTag>;
using PlaceKey = Key<struct PlaceTag>;
using LotId = Id<struct LotTag>;
using EntryId = Id<struct EntryTag>;
using ReadingId = Id<struct ReadingTag>;
using MenuLineId = Id<struct MenuLineTag>;
using ReviewEventId = Id<struct ReviewEventTag>;
using WishId = Id<struct WishTag>;
using MarkId = Id<struct MarkTag>;
using TrialId = Id<struct TrialTag>;
using BuyNoteId = Id<struct BuyNoteTag>;
using TrialNoteId = Id<struct TrialNoteTag>;
using FeedAddressId = Id<struct FeedAddressTag>;

// True when `text` has the form of a key. Pure.
[[nodiscard]] bool is_key(std::string_view text);
// A key made from a name: "Lentil pouch, 250 g" -> "lentil-pouch-250-g". Latin letters lose their accents; what is left
// empty becomes `fallback`.
[[nodiscard]] std::string key_from_name(std::string_view name, std::string_view fallback);

}  // namespace larderloop
