// exact.h - whole numbers that know when they no longer fit: the checker's arithmetic.
// A sum that left 64 bits stays marked, so that a comparison with a limit fails and a level can be
// refused.
#pragma once

#include <cstdint>
#include <limits>

namespace larderloop::plan {

class Exact {
 public:
  Exact() = default;
  Exact(std::int64_t value) : value_(value) {}  // NOLINT(google-explicit-constructor)

  [[nodiscard]] std::int64_t value() const { return value_; }
  [[nodiscard]] bool fits() const { return fits_; }
  [[nodiscard]] bool at_most(Exact limit) const {
    return fits_ && limit.fits_ && value_ <= limit.value_;
  }
  [[nodiscard]] bool is(Exact other) const {
    return fits_ && other.fits_ && value_ == other.value_;
  }

  Exact& operator+=(Exact other) {
    const bool left = __builtin_add_overflow(value_, other.value_, &value_);
    fits_ = fits_ && other.fits_ && !left;
    return *this;
  }
  Exact& operator-=(Exact other) {
    const bool left = __builtin_sub_overflow(value_, other.value_, &value_);
    fits_ = fits_ && other.fits_ && !left;
    return *this;
  }
  Exact& operator*=(Exact other) {
    const bool left = __builtin_mul_overflow(value_, other.value_, &value_);
    fits_ = fits_ && other.fits_ && !left;
    return *this;
  }
  friend Exact operator+(Exact a, Exact b) { return a += b; }
  friend Exact operator-(Exact a, Exact b) { return a -= b; }
  friend Exact operator*(Exact a, Exact b) { return a *= b; }

  // Rounded down, also below zero. Pre: by > 0.
  [[nodiscard]] Exact floor_div(std::int64_t by) const {
    Exact result = *this;
    result.value_ = value_ / by - (value_ % by < 0 ? 1 : 0);
    return result;
  }
  [[nodiscard]] Exact or_zero() const { return fits_ && value_ < 0 ? Exact(0) : *this; }

 private:
  std::int64_t value_ = 0;
  bool fits_ = true;
};

}  // namespace larderloop::plan
