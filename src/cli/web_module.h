// web_module.h - opens the room that speaks HTTP, which lies beside the program or in
// ../lib/larderloop.
#pragma once

#include "larderloop/core/result.h"
#include "larderloop/web/module.h"

namespace larderloop::cli {

// Once a run; it stays open. kConfig when it is not there, not of this build, or lacks a library.
[[nodiscard]] Result<const WebModule*> web_module();

}  // namespace larderloop::cli
