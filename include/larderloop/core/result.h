// result.h - the one alias for "a value or an Error"; std::expected replaces tl::expected here alone, one day.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>

#include "larderloop/core/error.h"

namespace larderloop {

template <class T>
using Result = tl::expected<T, Error>;
using Status = Result<void>;

inline tl::unexpected<Error> fail(Error error) { return tl::unexpected<Error>(std::move(error)); }
inline tl::unexpected<Error> fail(ErrorKind kind, std::string what, std::string next_step = {}) {
  return tl::unexpected<Error>(make_error(kind, std::move(what), std::move(next_step)));
}

}  // namespace larderloop
