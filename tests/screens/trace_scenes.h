// Traces in the middle, for every kind of page that Trace can show: reached by pressing, as a
// person does. Each is walked by the layout tests and drawn by test_screens_look.
#pragma once

#include <string>
#include <vector>

#include "app_walker.h"
#include "circuit/circuit.h"

namespace screens_test {

struct TraceScene {
  std::string name;
  circuit::Circuit (*circuit)() = nullptr;   // nullptr: no circuit is saved
  std::string tools;                         // as stored: "meter lamp"
  // Buttons in order. "a|b|c": the first of them that is there, as often as there is one, until
  // what follows '>' is there: "Blown|Not sure>It works now".
  std::vector<std::string> presses;
  bool whole = false;                        // drawn in a window tall enough for all of it
};
std::vector<TraceScene> trace_scenes();
// False: a press on the way was not to be had.
bool arrange(AppWalker& walker, const TraceScene& scene);

}  // namespace screens_test
