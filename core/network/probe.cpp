#include "network/probe.h"

namespace network {

Reading probe(const Netlist& netlist, NodeId red, NodeId black, Instrument instrument, units::Volts nominal) {
  const units::Ohms inside =
      instrument == Instrument::lamp ? lamp_hot_resistance(nominal) : units::Ohms(kMeterInputOhm);
  Netlist with_instrument = netlist;
  const BranchId leads = with_instrument.bridge(red, black, inside);
  const Solution solution = solve(with_instrument);
  Reading reading;
  reading.outcome = solution.outcome;
  if (solution.outcome == Outcome::invalid) return reading;
  reading.current = solution.through(leads);
  reading.voltage = solution.between(red, black);
  return reading;
}

// A 5 W lamp made for the system's voltage: twice the voltage, four times the resistance.
units::Ohms lamp_hot_resistance(units::Volts nominal) {
  const double blocks = nominal.number() / 12.0;
  return units::Ohms(kLampHotOhmPer12V * blocks * blocks);
}

}  // namespace network
