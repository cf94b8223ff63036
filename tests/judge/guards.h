// Fuses and breakers: their ratings, what they drop, when they must open.
#pragma once

#include "conductor.h"

namespace judge {

// What is sold, smallest first.
const std::vector<double>& ratings(GuardKind kind);

// Ohms of a guard with its contacts. lenient: nothing counts.
double guard_ohms(const Guard& guard, View view);

// The next rating below; 0 when there is none.
double next_smaller(GuardKind kind, double amps);

// True when the standard's gates say that this guard has opened for sure after so long at so many amps.
bool surely_opens(const Guard& guard, double amps, double seconds);

// Fault current that such a battery may deliver (amps).
double fault_amps(const Battery& battery, View view);

// What it breaks; by its kind where the maker's figure is not known. lenient: the best of that kind.
double breaks(const Guard& guard, View view);

// The highest volts that the fuses of a battery of so many nominal volts see.
double highest_volts(double nominal_volts);

}  // namespace judge
