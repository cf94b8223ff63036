// What is told to be built of a circuit: asked, and changed as a person tells it.
#pragma once

#include <optional>
#include <string>

#include "sizing/answer.h"
#include "vehicle/vehicle.h"

namespace app {

// Is the wire of every run read off it?
bool all_wire_known(const vehicle::Built& built);
// Does the fuse that is there protect the wires that are there, by the rules of Size? False where one
// of them is not known. `seen`: vehicle::as_built().
bool fuse_protects(const circuit::Circuit& seen, const vehicle::Built& built);

// Nothing told yet: the circuit as planned, its wires and its fuse unknown, its lengths guessed.
vehicle::Built nothing_told(const circuit::Circuit& plan);
// Built as Size chose it, all known: every run of that wire, or of the size that the plan gives it.
vehicle::Built as_chosen(const circuit::Circuit& plan, const sizing::Candidate& choice);

// An empty size: nobody knows.
void tell_size(vehicle::Built& built, circuit::OutletId run, const std::string& size, vehicle::Knowledge how);
void tell_size_throughout(vehicle::Built& built, const std::string& size, vehicle::Knowledge how);
void tell_length(vehicle::Built& built, circuit::OutletId run, units::Metres length, vehicle::Knowledge how);
// 0 A: nobody knows.
void tell_fuse(vehicle::Built& built, units::Amperes fuse, vehicle::Knowledge how);

// The one size of every run; nullptr: they differ, or one is not told.
const tables::Conductor* one_size(const vehicle::Built& built);
// "2.5 mm² throughout, 15 A": what is told, in a line; "not told" where nothing is.
std::string built_words(const std::optional<vehicle::Built>& built);

// Are they told of the outlets that the plan has?
bool same_outlets(const vehicle::Built& built, const circuit::Circuit& plan);
// The plan's outlets with what is told of those that were there before; the others are not known.
vehicle::Built with_outlets_of(const vehicle::Built& built, const circuit::Circuit& plan);
// The plan with the wire that is known to be there fixed in it: Size then sizes only what is new.
circuit::Circuit with_known_wire(circuit::Circuit plan, const vehicle::Built& built);

}  // namespace app
