#include "cli/random_bytes.h"

#include <cerrno>
#include <sys/random.h>
#include <system_error>

namespace larderloop::cli {

Result<FeedTokenBits> random_token_bits() {
  FeedTokenBits bits{};
  std::size_t have = 0;
  while (have < bits.size()) {
    const ssize_t got = ::getrandom(bits.data() + have, bits.size() - have, 0);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) {
      return fail(ErrorKind::kConfig,
                  "the system gives no random numbers: " + std::generic_category().message(errno),
                  "try again; nothing was made");
    }
    have += static_cast<std::size_t>(got);
  }
  return bits;
}

}  // namespace larderloop::cli
