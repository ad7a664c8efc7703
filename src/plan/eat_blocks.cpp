#include "plan/eat_blocks.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop::plan {

EatBlocks::EatBlocks(const CompiledEat& c, const EatDownProblem& problem, Grain grain) {
  // Meals that some level looks at one by one stay by themselves, with their whole week, so that
  // blocks follow each other.
  std::set<std::size_t> alone;
  for (const MealServing& line : problem.wished) {
    const std::size_t meal = c.meal_of(line.meal);
    if (meal < c.meals.size()) alone.insert(c.meals[meal].week);
  }
  std::map<std::pair<std::size_t, unsigned>, std::size_t> of_week;
  block_of.resize(c.meals.size());
  for (std::size_t meal = 0; meal < c.meals.size(); ++meal) {
    const CompiledEat::Meal& at = c.meals[meal];
    const bool by_itself = grain == Grain::kMeals || alone.count(at.week) > 0 ||
                           at.source->day <= problem.published_until;
    std::size_t block = blocks.size();
    if (!by_itself) block = of_week.try_emplace({at.week, at.kind}, block).first->second;
    if (block == blocks.size()) {
      // Groups count on from the weeks, so that a meal by itself shares its with none.
      blocks.push_back({{}, at.week, by_itself ? c.weeks() + meal : at.week});
    }
    blocks[block].meals.push_back(meal);
    block_of[meal] = block;
  }
  std::vector<std::map<std::size_t, std::int64_t>> appetite(blocks.size());
  for (const CompiledEat::Seat& seat : c.seats) {
    std::int64_t& sum = appetite[block_of[seat.meal]][seat.eater];
    sum = std::min(CompiledEat::kMost, sum + seat.appetite);
  }
  std::map<std::pair<std::size_t, std::size_t>, std::size_t> index;
  for (std::size_t block = 0; block < blocks.size(); ++block) {
    for (const auto& [eater, servings] : appetite[block]) {
      index[{block, eater}] = seats.size();
      seats.push_back({block, eater, servings});
    }
  }
  for (const CompiledEat::Seat& seat : c.seats)
    seat_block.push_back(index.at({block_of[seat.meal], seat.eater}));
}

}  // namespace larderloop::plan
