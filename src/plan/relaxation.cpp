#include "plan/relaxation.h"

#include <ClpSimplex.hpp>
#include <CoinPackedMatrix.hpp>
#include <algorithm>
#include <cmath>

namespace larderloop::plan {
namespace {

constexpr double kRoundUp = 1e-6;  // a bound this little above a whole number counts as that number
constexpr int kAlwaysPerturbed = 50, kPerturbedWhenStuck = 100;  // as Clp counts
constexpr double kLargest = 9.0e15;  // whole numbers beyond are no longer exact

double limit(std::int64_t value, double none) {
  return value == MipRow::kNone ? none : static_cast<double>(value);
}

}  // namespace

Relaxation::Relaxation(const Mip& mip) : mip_(mip), clp_(std::make_unique<ClpSimplex>()) {
  clp_->setLogLevel(0);
  const int columns = static_cast<int>(mip.columns.size());
  const int rows = static_cast<int>(mip.rows.size());
  std::vector<double> lower, upper, row_lower, row_upper;
  for (const MipColumn& column : mip.columns) {
    lower.push_back(static_cast<double>(column.lower));
    upper.push_back(static_cast<double>(column.upper));
  }
  std::vector<CoinBigIndex> starts{0};
  std::vector<int> indexes;
  std::vector<double> elements;
  std::vector<int> seen(mip.columns.size(), -1);
  for (const MipRow& row : mip.rows) {
    row_lower.push_back(limit(row.lower, -COIN_DBL_MAX));
    row_upper.push_back(limit(row.upper, COIN_DBL_MAX));
    const auto first = static_cast<std::size_t>(starts.back());
    for (const MipTerm& term :
         row.terms) {  // a column named twice in a row counts once, with the sum
      const auto column = static_cast<std::size_t>(term.column);
      if (seen[column] >= static_cast<int>(first)) {
        elements[static_cast<std::size_t>(seen[column])] += static_cast<double>(term.factor);
        continue;
      }
      seen[column] = static_cast<int>(indexes.size());
      indexes.push_back(term.column);
      elements.push_back(static_cast<double>(term.factor));
    }
    starts.push_back(static_cast<CoinBigIndex>(indexes.size()));
  }
  CoinPackedMatrix matrix(false, columns, rows, static_cast<CoinBigIndex>(indexes.size()),
                          elements.data(), indexes.data(), starts.data(), nullptr);
  clp_->loadProblem(matrix, lower.data(), upper.data(), nullptr, row_lower.data(),
                    row_upper.data());
}

Relaxation::~Relaxation() = default;

void Relaxation::minimise(const MipLevel& level) {
  double* objective = clp_->objective();
  std::fill(objective, objective + clp_->numberColumns(), 0.0);
  for (const MipTerm& term : level.terms)
    objective[term.column] += static_cast<double>(term.factor);
  constant_ = static_cast<double>(level.constant);
}

void Relaxation::minimise_too(const MipLevel& level, double weight) {
  double* objective = clp_->objective();
  for (const MipTerm& term : level.terms)
    objective[term.column] += weight * static_cast<double>(term.factor);
}

bool Relaxation::solve(std::int64_t iterations) {
  clp_->setMaximumIterations(
      static_cast<int>(std::clamp<std::int64_t>(iterations, 0, 1'000'000'000)));
  // These models are highly degenerate: from a cold start, with perturbed costs the dual simplex
  // needs a tenth of the steps. The bounds do not depend on it, they are worked out from the prices
  // with the true costs.
  clp_->setPerturbation(iterations_ == 0 ? kAlwaysPerturbed : kPerturbedWhenStuck);
  if (deadline_) {
    const std::chrono::duration<double> left = *deadline_ - Clock::now();
    if (left.count() <= 0) return false;
    clp_->setMaximumSeconds(left.count());
  }
  clp_->dual();
  iterations_ += clp_->numberIterations();
  return clp_->isProvenOptimal();
}

bool Relaxation::solve_from_other_side(std::int64_t iterations) {
  clp_->setMaximumIterations(
      static_cast<int>(std::clamp<std::int64_t>(iterations, 0, 1'000'000'000)));
  clp_->primal(1);
  iterations_ += clp_->numberIterations();
  return clp_->isProvenOptimal();
}

const double* Relaxation::values() const {
  return clp_->primalColumnSolution();
}
const double* Relaxation::reduced_costs() const {
  return clp_->dualColumnSolution();
}

double Relaxation::bound_value() const {
  const double* prices = clp_->dualRowSolution();
  const double* row_lower = clp_->rowLower();
  const double* row_upper = clp_->rowUpper();
  std::vector<double> reduced(clp_->objective(), clp_->objective() + clp_->numberColumns());
  double sum = constant_;
  std::vector<double> used(static_cast<std::size_t>(clp_->numberRows()), 0.0);
  for (int row = 0; row < clp_->numberRows(); ++row) {
    const double price = prices[row];
    const double side = price > 0 ? row_lower[row] : row_upper[row];
    if (price == 0 || std::abs(side) > kLargest)
      continue;  // a price on a side without a limit says nothing
    used[static_cast<std::size_t>(row)] = price;
    sum += price * side;
  }
  const CoinPackedMatrix& matrix = *clp_->matrix();
  const double* elements = matrix.getElements();
  const int* rows = matrix.getIndices();
  const CoinBigIndex* starts = matrix.getVectorStarts();
  const int* lengths = matrix.getVectorLengths();
  for (int column = 0; column < clp_->numberColumns(); ++column) {
    double cost = reduced[static_cast<std::size_t>(column)];
    for (CoinBigIndex at = starts[column]; at < starts[column] + lengths[column]; ++at)
      cost -= elements[at] * used[static_cast<std::size_t>(rows[at])];
    sum += cost * (cost > 0 ? clp_->columnLower()[column] : clp_->columnUpper()[column]);
  }
  return sum;
}

std::optional<std::int64_t> Relaxation::bound() const {
  const double value = bound_value();
  if (!std::isfinite(value) || std::abs(value) > kLargest) return std::nullopt;
  // Rounding errors grow with the size of the sum.
  return static_cast<std::int64_t>(std::ceil(value - kRoundUp - 1e-11 * std::abs(value)));
}

void Relaxation::hold(const MipLevel& level, std::int64_t value) {
  std::vector<double> dense(mip_.columns.size(), 0.0);
  for (const MipTerm& term : level.terms)
    dense[static_cast<std::size_t>(term.column)] += static_cast<double>(term.factor);
  std::vector<int> indexes;
  std::vector<double> elements;
  for (std::size_t column = 0; column < dense.size(); ++column) {
    if (dense[column] == 0) continue;
    indexes.push_back(static_cast<int>(column));
    elements.push_back(dense[column]);
  }
  if (indexes.empty()) return;
  clp_->addRow(static_cast<int>(indexes.size()), indexes.data(), elements.data(), -COIN_DBL_MAX,
               static_cast<double>(value - level.constant));
}

void Relaxation::fix(int column, std::int64_t lower, std::int64_t upper) {
  clp_->setColumnBounds(column, static_cast<double>(lower), static_cast<double>(upper));
}
std::int64_t Relaxation::lower(int column) const {
  return static_cast<std::int64_t>(clp_->columnLower()[column]);
}
std::int64_t Relaxation::upper(int column) const {
  return static_cast<std::int64_t>(clp_->columnUpper()[column]);
}

}  // namespace larderloop::plan
