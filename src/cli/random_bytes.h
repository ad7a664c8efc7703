// random_bytes.h - bits that nobody can guess, from the system.
#pragma once

#include "larderloop/app/feed_address.h"

namespace larderloop::cli {

// 256 bits of getrandom(2). kConfig when the system has none.
[[nodiscard]] Result<FeedTokenBits> random_token_bits();

}  // namespace larderloop::cli
