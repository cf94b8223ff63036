// Private to this room: every citation by name, so that the tables can point at them.
// Others find a citation through the figure that carries it, or by id.
#pragma once

#include "tables/citation.h"

namespace tables {

extern const Citation kAwgConductors;
extern const Citation kMetricConductors;
extern const Citation kSaeConductors;
extern const Citation kTinnedCopper;
extern const Citation kTinnedMetricCopper;
extern const Citation kCopperClad;
extern const Citation kCopper;
extern const Citation kAdiabatic;
extern const Citation kMarineAmpacity;
extern const Citation kMarineHotSpace;
extern const Citation kMarineBundling;
extern const Citation kMarineTwoCoreCable;
extern const Citation kEnclosedPvc;
extern const Citation kEnclosedXlpe;
extern const Citation kClippedPvc;
extern const Citation kClippedXlpe;
extern const Citation kBritishPvc;
extern const Citation kBritishXlpe;
extern const Citation kIecAmpacity;
extern const Citation kBritishAmpacity;
extern const Citation kTypicalDevices;
extern const Citation kIecTwoCoreCable;
extern const Citation kAmbient;
extern const Citation kIecGrouping;
extern const Citation kFineStrands;
extern const Citation kRoadVehicleFuse;
extern const Citation kBladeFuse;
extern const Citation kMiniBladeFuse;
extern const Citation kLargeBladeFuse;
extern const Citation kBoltOnFuse;
extern const Citation kHighVoltageBladeFuse;
extern const Citation k80VoltBladeFuse;
extern const Citation k80VoltBoltOnFuse;
extern const Citation kMarineStripFuse;
extern const Citation kTerminalPostFuse;
extern const Citation kClassTFuse;
extern const Citation kBreaker;
extern const Citation kFuseResistance;
extern const Citation kClampPart;
extern const Citation kSplicePart;
extern const Citation kTerminalPart;
extern const Citation kTabByWire;
extern const Citation kOutletPart;
extern const Citation kInLinePart;
extern const Citation kLighterSocket;
extern const Citation kIso4165Socket;
extern const Citation kJointResistance;
extern const Citation kLeadFlooded;
extern const Citation kLeadAgm;
extern const Citation kLithiumIron;

// citations_workshop.cpp
extern const Citation kCrimpColour;
extern const Citation kStripLength;
extern const Citation kTabSize;
extern const Citation kRingHole;
extern const Citation kRingHoleMemory;
extern const Citation kFerruleColour;
extern const Citation kLargeFerruleColour;
extern const Citation kPullBoat;
extern const Citation kPullTerminal;
extern const Citation kFusePlaceRule;
extern const Citation kFusePlaceBattery;
extern const Citation kFusePlaceVehicle;
extern const Citation kFuseSizeRule;
extern const Citation kVehicleReturn;
extern const Citation kEuropeanVehicle;
extern const Citation kEuropeanPractice;
extern const Citation kSmallCraftRules;
extern const Citation kFuseNegative;
extern const Citation kDropThree;
extern const Citation kDropFive;
extern const Citation kDropTen;
extern const Citation kDropService;
extern const Citation kDropNominal;
extern const Citation kColourBoatUs;
extern const Citation kColourSmallCraft;
extern const Citation kColourVehicle;
extern const Citation kColourTrailer;
extern const Citation kColourEurope;
extern const Citation kColourIec;
extern const Citation kColourBonding;
extern const Citation kColourCode;
extern const Citation kMeterUse;
extern const Citation kMeterMemory;
extern const Citation kMeterLamp;
extern const Citation kMeterGhost;
extern const Citation kLighterForm;
extern const Citation kPolarityPractice;
extern const Citation kSafePractice;
extern const Citation kWorkshopPractice;
extern const Citation kHeatFormula;
extern const Citation kBatteryFault;
extern const Citation kRestFlooded;
extern const Citation kRestAgm;
extern const Citation kRestLithium;
extern const Citation kPeukertExponent;
extern const Citation kLithiumRate;

}  // namespace tables
