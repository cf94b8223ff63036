// Wire, typed anew from the published figures: area, resistance, permitted current, heat withstood.
#pragma once

#include <optional>

#include "judge/description.h"

namespace judge {

// sure_fault: the kindest that a published figure can be read, so that a fault found is one.
// surely_right: the harshest, so that what passes is right. Between the two nobody is accused.
enum class View { sure_fault, surely_right };

const std::vector<std::string>& sizes(Gauge gauge);  // thinnest first
double nominal_mm2(const Wire& wire);
double ohms_per_metre(const Wire& wire, double metal_c, View view);
// 0 where the table has no figure, or the air is as hot as the column's insulation.
double carries(const Wire& wire, const Place& place, View view);
// The US trailer code's largest fuse for that wire; nullopt above its table.
std::optional<double> trailer_fuse(const Wire& wire, View view);
// A2s from the insulation's rating to its short-time limit.
double withstands(const Wire& wire, double insulation_c, View view);
// Thinnest single wire there.
double least_mm2(Vehicle vehicle, Gauge gauge, View view);

}  // namespace judge
