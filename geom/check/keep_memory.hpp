// For programs in which a yard is dragged about: the grids of a large yard come and go with every step, and fetching
// their memory from the system anew each time takes longer than some answers.
#pragma once

namespace yardwright {

/// Has the process keep up to 256 MB of what it has freed, from now on. Does nothing where the C library has no such choice.
void keep_freed_memory();

}  // namespace yardwright
