#include "plan/refill_steps.h"

namespace larderloop::plan {
namespace {

constexpr int kSweeps = 4;
constexpr std::int64_t kMostTries = 60'000;

class NewUnits {
 public:
  explicit NewUnits(Shelf& shelf) : shelf_(shelf) {}

  void improve() {
    for (int sweep = 0; sweep < kSweeps; ++sweep) {
      bool better = false;
      for (std::size_t line = 0; line < shelf_.lines().size(); ++line)
        better = improve_line(line) || better;
      if (!better || tries_ > kMostTries) return;
    }
  }

 private:
  bool improve_line(std::size_t line) {
    bool better = false;
    const auto held = shelf_.on_line(line);
    for (const auto& [source, units] : held) {
      if (shelf_.stays(source, line)) continue;
      for (std::int64_t unit = 0; unit < units && shelf_.placed(source, line) > 0; ++unit) {
        if (tries_ > kMostTries) return better;
        if (!exchange(source, line)) break;
        better = true;
      }
    }
    return better;
  }

  // One unit on the line for the best other one, when that makes the levels better.
  bool exchange(std::size_t source, std::size_t line) {
    const RefillWorth before = shelf_.worth();
    RefillWorth best = before;
    std::size_t best_source = source;
    for (std::size_t other = 0; other < shelf_.sources().size(); ++other) {
      if (other == source || !shelf_.accepts(line, other)) continue;
      tries_ += 1;
      shelf_.put(source, line, -1);
      if (shelf_.available(other) > 0) {
        shelf_.put(other, line, 1);
        if (shelf_.within_limits() && shelf_.worth() < best) {
          best = shelf_.worth();
          best_source = other;
        }
        shelf_.put(other, line, -1);
      }
      shelf_.put(source, line, 1);
    }
    if (best_source == source) return false;
    shelf_.put(source, line, -1);
    shelf_.put(best_source, line, 1);
    return true;
  }

  Shelf& shelf_;
  std::int64_t tries_ = 0;
};

}  // namespace

void improve_new(Shelf& shelf) {
  NewUnits(shelf).improve();
}

}  // namespace larderloop::plan
