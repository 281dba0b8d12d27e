// How the program keeps memory it has freed.
#pragma once

namespace base {

/// Keeps up to 64 MB of freed memory instead of handing it back to the system at once. A lesson is
/// planned with hundreds of models, each made and dropped within milliseconds; on some machines
/// getting the same pages again costs more than the work on them. Once, at the start of main();
/// does nothing where the C library has no such setting.
void keep_freed_memory();

}  // namespace base
