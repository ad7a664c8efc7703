// require.h - what must hold for every input; the fuzzer keeps the input when it does not.
#pragma once

#include <cstdio>
#include <cstdlib>

namespace larderloop {

inline void require(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", what);
  std::abort();
}

}  // namespace larderloop
