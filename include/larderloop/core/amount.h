// amount.h - how much of a food: whole numbers of half servings, so that a child's half portion and an opened jar are exact.
// Units:    1 serving = 2 half servings; 1 unit = servings_per_unit servings; never a floating number.
// Range:    0 .. 2'000'000'000 half servings; larger amounts are refused on input as absurd (see kMaxUnits).
#pragma once

#include <compare>
#include <cstdint>

namespace larderloop {

inline constexpr std::int64_t kMaxUnits = 100'000;          // of one lot at once; more is taken for a typing error
inline constexpr std::int64_t kMaxServingsPerUnit = 1'000;  // one package feeds at most so many

class HalfServings {
 public:
  constexpr HalfServings() = default;
  explicit constexpr HalfServings(std::int64_t halves) : halves_(halves) {}
  [[nodiscard]] static constexpr HalfServings servings(std::int64_t n) { return HalfServings(2 * n); }
  [[nodiscard]] static constexpr HalfServings units(std::int64_t n, std::int64_t servings_per_unit) {
    return HalfServings(2 * n * servings_per_unit);
  }
  [[nodiscard]] constexpr std::int64_t halves() const { return halves_; }
  // Whole units in this amount, rounded down.
  [[nodiscard]] constexpr std::int64_t whole_units(std::int64_t servings_per_unit) const {
    return halves_ / (2 * servings_per_unit);
  }
  friend constexpr auto operator<=>(const HalfServings&, const HalfServings&) = default;
  friend constexpr bool operator==(const HalfServings&, const HalfServings&) = default;
  constexpr HalfServings& operator+=(HalfServings other) {
    halves_ += other.halves_;
    return *this;
  }
  constexpr HalfServings& operator-=(HalfServings other) {
    halves_ -= other.halves_;
    return *this;
  }
  friend constexpr HalfServings operator+(HalfServings a, HalfServings b) { return HalfServings(a.halves_ + b.halves_); }
  friend constexpr HalfServings operator-(HalfServings a, HalfServings b) { return HalfServings(a.halves_ - b.halves_); }

 private:
  std::int64_t halves_ = 0;
};

}  // namespace larderloop
