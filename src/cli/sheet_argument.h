// sheet_argument.h - foods, lots, people or menu.
#pragma once

#include "larderloop/core/result.h"
#include "larderloop/core/sheet.h"

#include <string>

namespace larderloop::cli {

[[nodiscard]] Result<SheetKind> read_sheet(const std::string& what, const std::string& text);

}  // namespace larderloop::cli
