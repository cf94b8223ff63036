// What must hold unless the program itself is wrong. Checked in every build, the shipped app too:
// a figure worked out past a broken promise could put a wrong fuse into a wall.
#pragma once

namespace units {

// Told the file and line of a promise that did not hold. It must not return: it throws, or ends the
// program. Where none was set, or it does return, the program aborts.
using BugHandler = void (*)(const char* file, int line);
// Gives back the one before; nullptr: none.
BugHandler on_bug(BugHandler handler);

[[noreturn]] void bug_found(const char* file, int line);

}  // namespace units

// The name of the file alone: short in the shipped app, and no folder of the machine that built it.
#ifdef __FILE_NAME__
#define BRANCHLIGHT_FILE __FILE_NAME__
#else
#define BRANCHLIGHT_FILE __FILE__
#endif

// `condition` is always worked out, so keep it cheap.
#define BRANCHLIGHT_EXPECT(condition) \
  ((condition) ? static_cast<void>(0) : ::units::bug_found(BRANCHLIGHT_FILE, __LINE__))
