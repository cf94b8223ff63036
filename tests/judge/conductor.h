// Copper, typed anew from the published figures: size, resistance, ampacity.
#pragma once

#include "world.h"

namespace judge {

// lenient: the most that any published reading allows, so what it finds is sure.
// strict: the least, with every contact counted, so what passes is surely right.
enum class View { lenient, strict };

bool known(const Wire& wire);

// mm2 of metal that counts (metric: what the class 5 resistance amounts to).
double copper_area(const Wire& wire);

// Ohms for a metre. lenient: solid copper at 20 C; strict: stranded, at the temperature of its insulation.
double ohms_per_metre(const Wire& wire, View view);

// Amps that it may carry for ever there; 0 where the air is as hot as its insulation or the size is not in the table.
double ampacity(const Wire& wire, const Surround& around, Return back, View view);

// The US low-voltage trailer table's largest fuse; no limit above 10 AWG.
double trailer_ceiling(const Wire& wire);

// All sizes of a gauge, thinnest first.
const std::vector<std::string>& sizes(Gauge gauge);

}  // namespace judge
