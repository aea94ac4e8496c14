#include "geom/check/keep_memory.hpp"

#include <cstdlib>
#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace yardwright {

void keep_freed_memory() {
#ifdef __GLIBC__
  constexpr int largest_kept = 32 << 20, kept = 256 << 20;
  mallopt(M_MMAP_THRESHOLD, largest_kept);
  mallopt(M_TRIM_THRESHOLD, kept);
#endif
}

}  // namespace yardwright
