// embedded.h - the published tables of data/tables, compiled into the program.
#pragma once

#include <string_view>

namespace larderloop {

// The whole text of data/tables/<name>.csv, byte for byte. Lives as long as the program. Threads:
// safe. Precondition: the table exists; another name is a defect in the program and throws
// std::out_of_range.
std::string_view embedded_table(std::string_view name);

}  // namespace larderloop
