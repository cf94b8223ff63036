// Circuits for every verdict and size, and the scenes that show each screen with them.
#pragma once

#include <string>
#include <vector>

#include "app_walker.h"
#include "circuit/circuit.h"
#include "platform/platform.h"

namespace screens_test {

circuit::Circuit demo();
circuit::Circuit long_run();          // nothing fits
circuit::Circuit not_on_shelf();      // the shop lacks what fits
circuit::Circuit no_load();
circuit::Circuit thirty();            // thirty outlets
circuit::Circuit longest_names();     // 40 wide letters everywhere
circuit::Circuit tree();              // branches
circuit::Circuit metric_24v();

// Vehicle 2 with this circuit, its number 2, open on block 1; and vehicle 1 with the tree.
std::vector<platform::StoredRecord> two_vehicles(const circuit::Circuit& open);

struct Scene {
  std::string name;
  circuit::Circuit (*circuit)() = nullptr;   // nullptr: first start
  std::string route;
  bool whole = false;                        // in a window tall enough for all of it
  float tall = 2400;
};
std::vector<Scene> scenes();
// Starts the app with the scene's circuit at its address.
void arrange(AppWalker& walker, const Scene& scene);

}  // namespace screens_test
