// server.h - the calendar over HTTP.
#pragma once

#include "larderloop/web/module.h"

namespace larderloop {

[[nodiscard]] Result<std::unique_ptr<WebServer>> open_server(const WebSettings& settings,
                                                             const WebCallbacks& callbacks);

}  // namespace larderloop
