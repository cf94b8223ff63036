// Resistances the parts tables do not carry, each with its grounds. Shown on the reference
// pages as what they are: typical values, rules of thumb.
#pragma once

#include <span>
#include <string_view>

#include "circuit/circuit.h"
#include "units/quantity.h"

namespace network {

struct Assumed {
  std::string_view what;
  double value;             // in `unit`
  std::string_view unit;
  std::string_view grounds;
};
std::span<const Assumed> assumed_values();

units::Ohms feeder_lug();                      // one ring lug on its stud
units::Ohms bus_joint();                       // bus bar of the block with its stud, one side
units::Ohms fuse_clips();                      // both clips of one fuse
units::Ohms in_line_contact(circuit::InLineKind kind);  // closed contacts with their two joints, without a fuse's element
units::Ohms chassis_return();                  // the chassis of a road vehicle with a bond at each end
units::Ohms fuse_element(units::Amperes rating);  // where the fuse table lists none; 0: not chosen yet

}  // namespace network
