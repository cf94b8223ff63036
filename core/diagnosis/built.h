// What is built, as the network wants it: a value for everything, and how far the wires may be off it.
// Private to this room.
#pragma once

#include "diagnosis/case.h"

namespace diagnosis {

const BuiltRun* built_run(const Built& built, circuit::OutletId outlet);  // nullptr: not listed

// For the physics only: what nobody told is stood in for by a usual wire and fuse. No words may name them.
network::Fitted fitted_of(const Case& the_case);
// Ohms of this outlet's run, and of its tail, over those that the network gives them when it is built with
// fitted_of(): one size, but for the runs whose size stands in the circuit.
struct WireFactors {
  double run, tail;
};
WireFactors wire_factors(const Case& the_case, circuit::OutletId outlet);
// How far the ohms of the wires may be off, as the spread of their logarithm; 0 where all are known.
double wire_spread(const Case& the_case);

}  // namespace diagnosis
