// paper_module.h - opens the drawing room, which lies beside the program or in ../lib/larderloop.
#pragma once

#include "larderloop/core/result.h"
#include "larderloop/paper/module.h"

namespace larderloop::cli {

// Once a run; it stays open. kConfig when it is not there, not of this build, or lacks a library.
[[nodiscard]] Result<const PaperModule*> paper_module();

}  // namespace larderloop::cli
