// Fuses, breakers and joints, typed anew from the published figures.
#pragma once

#include "judge/copper.h"

namespace judge {

const std::vector<double>& ratings(FuseKind kind);  // smallest first
double made_for_volts(FuseKind kind);
double main_volts(FuseKind kind, View view);
double breaks_amps(FuseKind kind, double volts, View view);
// Element, warm, with its contacts.
double fuse_ohms(FuseKind kind, double amps, View view);
double element_ohms(FuseKind kind, double amps, View view);
// Slowest that it may be at so many amperes; below 0: it need not open.
double opens_within_s(FuseKind kind, double rating, double amps, View view);
// What it is sure to bear; 0: nothing is.
double holds_s(FuseKind kind, double rating, double amps);
// Most heat that it lets through over all shorts from `least` amperes up, A2s; below 0: no end.
double lets_through(FuseKind kind, double rating, double least, View view);

double part_amps(const Part& part, double wire_mm2);
bool takes(const Part& part, double wire_mm2, bool ferrule);
// The planning figure of a good new joint lies within the published band of its kind.
bool ohms_believable(const Part& part);
bool in_line_believable(const InLine& part);

}  // namespace judge
