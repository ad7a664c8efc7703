// sheet_cells_of.h - things as the cells of their row, in the order of sheet_columns(); texts as they are, without guard.
#pragma once

#include <string>
#include <vector>

#include "larderloop/core/household.h"

namespace larderloop {

[[nodiscard]] std::vector<std::string> cells_of(const Food& food);
[[nodiscard]] std::vector<std::string> cells_of(const Person& person);
[[nodiscard]] std::vector<std::string> cells_of(const MenuLine& line);

}  // namespace larderloop
