#include "base/memory.h"

#if defined(__GLIBC__)
#include <malloc.h>
#endif

namespace base {

void keep_freed_memory() {
#if defined(__GLIBC__)
  constexpr int kKept = 64 << 20;  // bytes
  constexpr int kAtOnce = 4 << 20;
  // Of no effect where the library refuses a value; nothing depends on it.
  (void)mallopt(M_TRIM_THRESHOLD, kKept);
  (void)mallopt(M_MMAP_THRESHOLD, kKept);
  (void)mallopt(M_TOP_PAD, kAtOnce);
#endif
}

}  // namespace base
