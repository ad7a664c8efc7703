#include "cli/heap.h"

#include <cstddef>
#include <cstdint>
#include <cstdlib>  // tells which C library this is

#ifdef __GLIBC__
#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>
#endif

namespace larderloop::cli {

#if defined(__GLIBC__) && defined(MADV_POPULATE_WRITE)
void fetch_heap_at_once() {
  constexpr int kAhead = 3 << 20;           // bytes; what the weekly commands touch of a family's book
  constexpr int kOwnMapping = 8 << 20;      // smaller pieces come from the heap too, growing lists above all
  constexpr std::size_t kMoreThanIsThere = 256 << 10;  // so that the heap has to grow now
  if (mallopt(M_TOP_PAD, kAhead) == 0 || mallopt(M_MMAP_THRESHOLD, kOwnMapping) == 0) return;
  const auto begin = reinterpret_cast<std::uintptr_t>(sbrk(0));
  void* volatile piece = std::malloc(kMoreThanIsThere);  // volatile: a piece that nobody looks at would not be asked for
  std::free(piece);
  const auto end = reinterpret_cast<std::uintptr_t>(sbrk(0));
  const auto page = static_cast<std::uintptr_t>(sysconf(_SC_PAGESIZE));
  const std::uintptr_t first = (begin + page - 1) / page * page;
  if (end <= first) return;  // another allocator serves this program: a sanitizer's, for example
  (void)madvise(reinterpret_cast<void*>(first), end - first, MADV_POPULATE_WRITE);
}
#else
void fetch_heap_at_once() {}
#endif

}  // namespace larderloop::cli
