#include "store/rows.h"

#include <algorithm>

namespace larderloop::store {
namespace {

constexpr std::size_t kAtOnce = 16;  // twice as many gain little more

}  // namespace

Rows::Rows(const Connection& connection, const char* sql, std::size_t total)
    : connection_(connection), sql_(sql), left_(total) {}

void Rows::prepare() {
  const std::size_t size = std::min(std::max<std::size_t>(left_, 1), kAtOnce);
  if (query_ && size == size_) return;
  if (values_ == 0) values_ = Query(connection_, sql_.c_str()).parameters();
  // Values without a name are numbered on from those of the first row.
  std::string one = ", (";
  for (int value = 0; value < values_; ++value) one += value == 0 ? "?" : ", ?";
  one += ')';
  std::string sql = sql_;
  for (std::size_t row = 1; row < size; ++row) sql += one;
  query_.emplace(connection_, sql.c_str());
  size_ = size;
}

Query& Rows::row() {
  if (at_ == 0) prepare();
  query_->set_row(static_cast<int>(at_) * values_);
  return *query_;
}

void Rows::done() {
  if (left_ > 0) --left_;
  if (++at_ < size_) return;
  query_->run();
  at_ = 0;
}

}  // namespace larderloop::store
