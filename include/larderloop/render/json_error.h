// json_error.h - a failure as one JSON object, for programs that called with --json.
#pragma once

#include "larderloop/core/error.h"

#include <string>
#include <string_view>

namespace larderloop {

// {"schema":"larderloop.error/1","kind":..,"exit_code":..,"message":..,"hint":..,"problems":[{"where","value","message","hint"}]}
// and a line end. Every problem is there. Bytes that are no UTF-8 are replaced (U+FFFD).
[[nodiscard]] std::string render_error_json(const Error& error, std::string_view kind,
                                            int exit_code);

}  // namespace larderloop
