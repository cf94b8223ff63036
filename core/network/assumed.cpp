#include "network/assumed.h"

#include <array>
#include <cstddef>

namespace network {
namespace {

enum Row : std::size_t { lug, bus, clips, element_volts, element_unchosen, toggle, fuse_holder, breaker, relay, chassis, row_count };

constexpr std::array<Assumed, row_count> kRows{{
    {"Ring lug on a stud, good", 0.1e-3, "ohm", "typical, rule of thumb: 0.05 to 0.3 milliohm"},
    {"Bus bar of the block with its stud", 0.1e-3, "ohm", "typical, rule of thumb: as a ring lug on a stud"},
    {"Both clips of a fuse, good", 1.0e-3, "ohm", "typical, rule of thumb: 0.5 to 3 milliohm a fuse"},
    {"Cold fuse element: volts across it at its rating", 0.07, "V",
     "typical, rule of thumb: listed fuses lie between 0.05 V and 0.12 V; used where none is listed"},
    {"Fuse not chosen yet", 5.0e-3, "ohm", "typical, rule of thumb: about a 15 A blade fuse"},
    {"Closed switch with its two joints", 5.0e-3, "ohm", "typical, from memory: 2 to 20 milliohm new, more when worn"},
    {"In-line fuse holder with its two joints, without the fuse", 2.0e-3, "ohm", "typical, from memory: 1 to 4 milliohm"},
    {"Closed breaker with its two joints", 5.0e-3, "ohm", "typical, from memory: 2 to 10 milliohm at 10 to 30 A"},
    {"Closed relay contact with its two joints", 5.0e-3, "ohm", "typical, from memory: 50 to 100 mV at its rating allowed"},
    {"Chassis of a road vehicle with a bond at each end", 5.0e-3, "ohm",
     "typical, from memory: clean bolted bonds about 1 milliohm each, sheet steel the rest; rust makes it many times that"},
}};

}  // namespace

std::span<const Assumed> assumed_values() { return kRows; }
units::Ohms feeder_lug() { return units::Ohms(kRows[lug].value); }
units::Ohms bus_joint() { return units::Ohms(kRows[bus].value); }
units::Ohms fuse_clips() { return units::Ohms(kRows[clips].value); }

units::Ohms in_line_contact(circuit::InLineKind kind) {
  switch (kind) {
    case circuit::InLineKind::toggle: return units::Ohms(kRows[toggle].value);
    case circuit::InLineKind::fuse: return units::Ohms(kRows[fuse_holder].value);
    case circuit::InLineKind::breaker: return units::Ohms(kRows[breaker].value);
    case circuit::InLineKind::relay: break;
  }
  return units::Ohms(kRows[relay].value);
}
units::Ohms chassis_return() { return units::Ohms(kRows[chassis].value); }

units::Ohms fuse_element(units::Amperes rating) {
  if (!(rating.number() > 0.0)) return units::Ohms(kRows[element_unchosen].value);
  return units::Volts(kRows[element_volts].value) / rating;
}

}  // namespace network
