#pragma once

#include <malloc.h>

namespace dartwright::tools {

/// Keeps memory that was freed instead of giving it back to the system: an outline of thousands of edges is
/// copied several times in an operation, and to have the system clear the same pages each time costs ten
/// times the work (5 ms became 69 ms at 8,000 edges). The program ends soon and gives back all.
inline void keep_freed_memory() {
    constexpr int whole_mb = 1 << 20;
    mallopt(M_MMAP_THRESHOLD, 64 * whole_mb);
    mallopt(M_TRIM_THRESHOLD, 256 * whole_mb);
}

}  // namespace dartwright::tools
