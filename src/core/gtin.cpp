// Check digits of trade item numbers (GS1 General Specifications, section 7.9).
#include "larderloop/core/validate.h"

namespace larderloop {

char gtin_check_digit(std::string_view digits) {
  int sum = 0;
  int weight = 3;
  for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit) {
    sum += weight * (*digit - '0');
    weight = 4 - weight;
  }
  return static_cast<char>('0' + (10 - sum % 10) % 10);
}

std::string normal_gtin(std::string_view digits) {
  const bool length = digits.size() == 8 || (digits.size() >= 12 && digits.size() <= 14);
  if (!length || digits.find_first_not_of("0123456789") != std::string_view::npos) return {};
  if (gtin_check_digit(digits.substr(0, digits.size() - 1)) != digits.back()) return {};
  return std::string(14 - digits.size(), '0') + std::string(digits);
}

}  // namespace larderloop
