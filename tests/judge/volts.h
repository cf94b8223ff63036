// The circuit as a tree of loop resistances from the battery on, solved by plain sweeps, and short currents in it.
#pragma once

#include "judge/parts.h"

namespace judge {

// What is tried: one size for all that is to be chosen, the tails, the fuse.
struct Choice {
  std::string size;
  std::string tail;
  double fuse = 0;
};

struct Load {
  int node = 0;
  int outlet = 0;
  int device = 0;
  double amps = 0;  // at nominal volts
};

struct Net {
  std::vector<int> parent;   // below the node's own; -1: the battery's own volts
  std::vector<double> ohms;  // to the parent, both ways
  std::vector<Load> loads;   // a light of several is a load of its own
  std::vector<int> end;      // by outlet: where its volts are read and a short is worst
  int posts = 0, bus = 0;
};

// A start that takes a minute or more is a load.
bool starts_long(const Device& device);
double counted_amps(const Device& device);

Wire run_wire(const Circuit& circuit, int outlet, const std::string& size);
Wire tail_wire(const Circuit& circuit, int outlet, const Choice& choice);

Net build(const Circuit& circuit, const Choice& choice, double metal_c, View view);

struct Volts {
  bool settled = false;       // false: the loads ask for more than the wire brings
  std::vector<double> at;     // by node
  std::vector<double> drawn;  // by load, amperes
};
Volts solve(const Circuit& circuit, const Net& net, double battery_volts, const std::vector<double>& on);

// Which loads are on, and how far, when `worth` tells what each is worth by rated ampere and all together may take
// `at_most` (0: all are on).
std::vector<double> spend(const Net& net, double at_most, const std::vector<double>& worth);
// Ohms that each load's current shares with node `with`.
std::vector<double> shared_ohms(const Net& net, int with);
// A short at each outlet's end, the battery at `battery_volts`.
std::vector<double> short_amps(const Net& net, double battery_volts);

}  // namespace judge
