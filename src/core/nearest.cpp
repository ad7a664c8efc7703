#include <algorithm>

#include "larderloop/core/validate.h"

namespace larderloop {
namespace {

// Levenshtein distance, with a swap of neighbours as one slip.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
      }
    }
  }
  return cost[a.size()][b.size()];
}

}  // namespace

std::string nearest(std::string_view text, const std::vector<std::string>& known) {
  constexpr std::size_t kLongest = 64;
  if (text.empty() || text.size() > kLongest) return {};
  std::string best;
  std::size_t best_distance = std::max<std::size_t>(1, text.size() / 3) + 1;
  for (const std::string& each : known) {
    if (each.size() > kLongest) continue;
    const std::size_t slips = distance(text, each);
    if (slips < best_distance) {
      best = each;
      best_distance = slips;
    }
  }
  return best;
}

}  // namespace larderloop
