// Private to this room: every citation by name, so that the tables can point at them.
// Others find a citation through the figure that carries it, or by id.
#pragma once

#include "tables/citation.h"

namespace tables {

extern const Citation kAwgConductors;
extern const Citation kMetricConductors;
extern const Citation kCopper;
extern const Citation kAdiabatic;
extern const Citation kMarineAmpacity;
extern const Citation kMarineHotSpace;
extern const Citation kMarineBundling;
extern const Citation kEnclosedPvc;
extern const Citation kEnclosedXlpe;
extern const Citation kClippedPvc;
extern const Citation kClippedXlpe;
extern const Citation kIecAmpacity;
extern const Citation kAmbient;
extern const Citation kIecGrouping;
extern const Citation kFineStrands;
extern const Citation kRoadVehicleFuse;
extern const Citation kBladeFuse;
extern const Citation kMiniBladeFuse;
extern const Citation kLargeBladeFuse;
extern const Citation kBoltOnFuse;
extern const Citation kHighVoltageBladeFuse;
extern const Citation kFuseResistance;
extern const Citation kClampPart;
extern const Citation kSplicePart;
extern const Citation kTerminalPart;
extern const Citation kTabByWire;
extern const Citation kOutletPart;
extern const Citation kLighterSocket;
extern const Citation kIso4165Socket;
extern const Citation kJointResistance;
extern const Citation kLeadFlooded;
extern const Citation kLeadAgm;
extern const Citation kLithiumIron;

}  // namespace tables
