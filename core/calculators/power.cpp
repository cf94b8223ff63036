#include "calculators/power.h"

namespace calculators {

Power from_volts_amperes(units::Volts v, units::Amperes i) { return {v, i, v * i, v / i}; }
Power from_volts_watts(units::Volts v, units::Watts p) { return from_volts_amperes(v, p / v); }
Power from_amperes_watts(units::Amperes i, units::Watts p) {
  return from_volts_amperes(units::Volts(p.number() / i.number()), i);
}

units::Ohms resistance_of(units::Watts rated, units::Volts at) { return at / (rated / at); }

Combined combine(std::span<const units::Ohms> loads, units::Volts supply, Joined joined) {
  Combined all;
  double sum_ohm = 0.0, sum_siemens = 0.0;
  for (const units::Ohms load : loads) {
    sum_ohm += load.number();
    sum_siemens += 1.0 / load.number();
  }
  all.resistance = units::Ohms(joined == Joined::in_series ? sum_ohm : 1.0 / sum_siemens);
  all.current = supply / all.resistance;
  all.power = supply * all.current;
  for (const units::Ohms load : loads) {
    const units::Volts across = joined == Joined::in_series ? all.current * load : supply;
    all.across.push_back(across);
    all.each.push_back(across * (across / load));
  }
  return all;
}

}  // namespace calculators
