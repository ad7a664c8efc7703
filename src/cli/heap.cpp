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
namespace {

constexpr std::size_t kLargePage = 2 << 20;  // bytes; of x86-64, and of arm64 with its usual pages
constexpr std::size_t kLargePages = 2 * kLargePage;
constexpr std::size_t kAhead = 3 << 20;  // what the weekly commands touch of a family's book
constexpr std::size_t kMoreThanIsThere = 256 << 10;  // so that the heap has to grow now
constexpr int kOwnMapping =
    8 << 20;  // smaller pieces come from the heap too, growing lists above all
// Wherever the heap ends now, whole large pages come with this.
constexpr int kGrowth = static_cast<int>(kLargePage + kLargePages + 2 * kMoreThanIsThere);

std::uintptr_t address_of(const void* piece) {
  return reinterpret_cast<std::uintptr_t>(piece);
}

bool fetch() {
  if (mallopt(M_TOP_PAD, kGrowth) == 0 || mallopt(M_MMAP_THRESHOLD, kOwnMapping) == 0) return false;
  // Behind the first piece, where the allocator writes something down: a large page comes only
  // where nothing was touched yet.
  const std::uintptr_t behind = address_of(sbrk(0)) + kMoreThanIsThere;
  const std::uintptr_t begin = (behind + kLargePage - 1) / kLargePage * kLargePage;
  // Volatile: a piece that nobody looks at would not be asked for.
  void* volatile piece = std::malloc(kMoreThanIsThere);
  const std::uintptr_t used = address_of(piece);
  std::free(piece);
  // Another allocator serves this program otherwise: a sanitizer's, for example.
  if (used == 0 || used >= begin || begin + kLargePages > address_of(sbrk(0))) return false;
  auto* const pages = reinterpret_cast<void*>(begin);
  static_cast<void>(madvise(pages, kLargePages, MADV_HUGEPAGE));
  piece = std::malloc(begin - used);  // kept and never touched: addresses, not memory
  return madvise(pages, kAhead, MADV_POPULATE_WRITE) == 0;
}

}  // namespace

void fetch_heap_at_once() {
  static const bool once = fetch();
  static_cast<void>(once);
}
#else
void fetch_heap_at_once() {}
#endif

}  // namespace larderloop::cli
