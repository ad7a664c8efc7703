#include "plan/branch.h"

#include <CbcModel.hpp>
#include <CbcSolver.hpp>
#include <ClpSimplex.hpp>
#include <OsiClpSolverInterface.hpp>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace larderloop::plan {
namespace {

int carry_on(CbcModel*, int) {
  return 0;
}

}  // namespace

Branched branch_and_cut(const Mip& mip, Relaxation& relaxation, const MipLevel& level,
                        std::int64_t cutoff, std::int64_t nodes, std::optional<double> seconds) {
  ClpSimplex lp(relaxation.clp());
  lp.setLogLevel(0);
  lp.setMaximumSeconds(-1.0);
  // A search cut short must not pass its limit on: relaxations left half-way would count as solved.
  lp.setMaximumIterations(std::numeric_limits<int>::max());
  OsiClpSolverInterface solver(&lp);
  solver.messageHandler()->setLogLevel(0);
  for (std::size_t j = 0; j < mip.columns.size(); ++j) {
    if (!mip.columns[j].continuous) solver.setInteger(static_cast<int>(j));
  }
  CbcModel model(solver);
  CbcSolverUsefulData data;
  data.noPrinting_ = true;
  CbcMain0(model, data);
  // Every level is whole: what is less than one better is not better. Nothing depends on the clock
  // unless a time is given.
  std::vector<std::string> words = {
      "larderloop",
      "-log",
      "0",
      "-ratioGap",
      "0",
      "-allowableGap",
      "0.999",
      "-cutoff",
      std::to_string(static_cast<double>(cutoff - level.constant) + 0.5),
      "-randomSeed",
      "1",
      "-randomCbcSeed",
      "1",
      "-maxNodes",
      std::to_string(nodes)};
  if (seconds) {
    words.insert(words.end(), {"-seconds", std::to_string(*seconds)});
  }
  words.insert(words.end(), {"-solve", "-quit"});
  std::vector<const char*> arguments;
  for (const std::string& word : words) arguments.push_back(word.c_str());
  CbcMain1(static_cast<int>(arguments.size()), arguments.data(), model, carry_on, data);

  Branched result;
  const bool infeasible = model.isProvenInfeasible();
  result.finished =
      model.status() == 0 && !model.isNodeLimitReached() && !model.isSecondsLimitReached();
  if (!infeasible && model.bestSolution() != nullptr && model.getObjValue() < 1e40) {
    MipPoint point;
    for (std::size_t j = 0; j < mip.columns.size(); ++j)
      point.push_back(std::llround(model.bestSolution()[j]));
    result.point = std::move(point);
  }
  const double best = model.getBestPossibleObjValue() + static_cast<double>(level.constant);
  if (!result.finished && std::isfinite(best) && std::abs(best) < 9e15) {
    result.bound = static_cast<std::int64_t>(std::ceil(best - 1e-5));
  }
  return result;
}

}  // namespace larderloop::plan
