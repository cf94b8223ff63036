// Judges a vehicle with its chosen wires and fuses, from the published figures alone.
// In the lenient view each finding is surely a fault; in the strict view a circuit without a finding is surely right.
// What lies between is a matter of reading, and nobody is accused of it.
#pragma once

#include "volts.h"

namespace judge {

enum class What {
  unprotected_wire,          // more current can reach it than it bears, and no guard near that end stops it
  wire_overloaded,           // its own load is above its ampacity
  guard_too_small,           // the circuit's or an inline guard opens in use
  main_guard_too_small,      // one on the way from the battery does
  guard_opens_on_start,      // an inrush outlasts its gates
  drop_too_large,
  device_volts_too_low,
  no_operating_point,
  part_too_small,
  point_too_small,
  block_too_small,
  guard_volts_too_low,
  guard_cannot_break,
  hull_return,
  clad_wire_in_new_work,
  too_thin_for_a_boat,
  size_not_known,
  smaller_wire_is_legal,
  smaller_fuse_is_legal,
  something_fits             // the program said that nothing does
};

struct Finding {
  What what;
  std::string where;
  double value = 0;
  double limit = 0;
};

const char* words(What what);

// Everything but what `beaten` finds: each conductor of the vehicle from either end, then each answered circuit.
std::vector<Finding> judge(const World& world, View view);

// One circuit with all that carries it, from the battery on.
std::vector<Finding> judge_circuit(const World& world, const Net& net, int circuit, View view);

// Amps that the circuit's fuse has to carry: 1.25 x lasting and 1.0 x short loads (NEC 210.20 and fuse makers' notes).
double amps_for_fuse(const World& world, const Circuit& circuit, View view);

// Whether a smaller choice is surely legal: a thinner wire of the shelf with no larger fuse, or a smaller fuse on the
// same wire; or, where the program says that nothing fits, any choice. `shelf`: sizes on sale, thinnest first.
std::vector<Finding> beaten(const World& world, int circuit, const std::vector<std::string>& shelf);

}  // namespace judge
