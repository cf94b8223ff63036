// An everyday circuit as an installer wrote it down (circuits.json, its own words), turned into
// the app's circuit. Parts are bought to fit: the smallest of each kind that takes the wire and
// fuse of the installer's own answer, as an installer does who has the whole shop to choose from.
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "circuit/circuit.h"

namespace everyday {

struct Expected {
  bool fits = true;
  std::vector<std::string> wire;     // conductor ids, the preferred one first
  std::vector<double> fuse_a;
  std::string because;
};
struct EverydayCircuit {
  std::string id;
  std::string story;
  circuit::Circuit circuit;
  Expected expected;
};
// Throws nlohmann's exceptions or std::runtime_error on a file that is not as its README says.
std::vector<EverydayCircuit> read_everyday(const std::string& path);

}  // namespace everyday
