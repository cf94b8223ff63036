#include "network/assumed.h"

#include <array>
#include <cstddef>

namespace network {
namespace {

enum Row : std::size_t { lug, bus, clips, element_volts, element_unchosen, row_count };

constexpr std::array<Assumed, row_count> kRows{{
    {"Ring lug on a stud, good", 0.1e-3, "ohm", "typical, rule of thumb: 0.05 to 0.3 milliohm"},
    {"Bus bar of the block with its stud", 0.1e-3, "ohm", "typical, rule of thumb: as a ring lug on a stud"},
    {"Both clips of a fuse, good", 1.0e-3, "ohm", "typical, rule of thumb: 0.5 to 3 milliohm a fuse"},
    {"Cold fuse element: volts across it at its rating", 0.07, "V",
     "typical, rule of thumb: listed fuses lie between 0.05 V and 0.12 V; used where none is listed"},
    {"Fuse not chosen yet", 5.0e-3, "ohm", "typical, rule of thumb: about a 15 A blade fuse"},
}};

}  // namespace

std::span<const Assumed> assumed_values() { return kRows; }
units::Ohms feeder_lug() { return units::Ohms(kRows[lug].value); }
units::Ohms bus_joint() { return units::Ohms(kRows[bus].value); }
units::Ohms fuse_clips() { return units::Ohms(kRows[clips].value); }

units::Ohms fuse_element(units::Amperes rating) {
  if (!(rating.number() > 0.0)) return units::Ohms(kRows[element_unchosen].value);
  return units::Volts(kRows[element_volts].value) / rating;
}

}  // namespace network
