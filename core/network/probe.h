// The single answer to 'what would a meter or a lamp show between these two points': solved
// with the instrument in place, since it loads the circuit.
#pragma once

#include "network/netlist.h"
#include "network/solve.h"

namespace network {

enum class Instrument { meter_volts, lamp };
inline constexpr double kMeterInputOhm = 10e6;     // common digital meter, from memory
inline constexpr double kLampHotOhmPer12V = 28.8;  // a 5 W, 12 V filament lamp when lit: V^2 / P; cold it is
                                                   // about a tenth, which is not modelled

struct Reading {
  Outcome outcome = Outcome::invalid;
  units::Volts voltage;     // red lead's voltage over the black lead's, signed
  units::Amperes current;   // through the instrument
};
units::Ohms lamp_hot_resistance(units::Volts nominal);  // 5 W at 12, 24 or 48 V
Reading probe(const Netlist& netlist, NodeId red, NodeId black, Instrument instrument, units::Volts nominal);

}  // namespace network
