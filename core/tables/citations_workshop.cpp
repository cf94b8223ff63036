// Sources of what is done with hands and meter: terminals, colours, fuse places, batteries at
// rest, joints. Mostly from memory, and said so.
#include "tables/citation_list.h"

namespace tables {

constinit const Citation kCrimpColour{
    "crimp-colours", "Colour code of pre-insulated crimp terminals (DIN 46245), as terminal makers print it", "",
    "red, blue, yellow by wire range", "Red ends at 18 AWG in some US lists; yellow begins at 2.5 mm2 in some.",
    Standing::seen_twice};
constinit const Citation kStripLength{
    "strip-length", "Strip lengths as terminal and splice makers usually give them", "", "by kind of terminal",
    "From memory. What the part or its bag says goes first: the barrel's length and up to 1 mm more; the "
    "insulation goes up to the wire barrel, not under it.", Standing::memory};
constinit const Citation kTabSize{
    "tab-sizes", "IEC 61210 Flat quick-connect terminations", "", "tab width x thickness",
    "From memory.", Standing::memory};
constinit const Citation kRingHole{
    "ring-holes", "Holes of ring terminals as terminal makers print them", "", "by stud", "M5 and M6 were seen.", Standing::seen};
constinit const Citation kRingHoleMemory{
    "ring-holes-memory", "Holes of ring terminals, usual sizes", "", "by stud", "From memory.", Standing::memory};
constinit const Citation kFerruleColour{
    "ferrule-colours", "DIN 46228-4 Insulated ferrules", "", "colour by wire",
    "Two other colour sets are sold, and one copy differs at 10 and 16 mm2. Grey stands for 0.75 and for "
    "4 mm2: go by the marking.", Standing::seen_twice};
constinit const Citation kLargeFerruleColour{
    "ferrule-colours-large", "DIN 46228-4 Insulated ferrules", "", "colour by wire, 35 and 50 mm2",
    "Seen in one copy.", Standing::seen};
constinit const Citation kPullBoat{
    "pull-boat", "ABYC E-11, tensile test of terminals", "", "by AWG, held for one minute",
    "From memory. Tables for other uses ask two to six times as much.", Standing::memory};
constinit const Citation kPullTerminal{
    "pull-terminal", "Specification sheets of one maker of crimp terminals", "", "by AWG",
    "Two sheets, equal where they overlap. That these are the figures of UL 486A is from memory.", Standing::seen};
constinit const Citation kFusePlaceRule{
    "cfr-183-455", "33 CFR 183.455 Overcurrent protection: general (US federal rule for boats)", "", "(a), (b), (d)",
    "Good practice elsewhere too; your local rule goes first.", Standing::seen};
constinit const Citation kFusePlaceBattery{
    "abyc-72-inches", "ABYC E-11", "", "conductor from a battery terminal, in a sheath",
    "From memory; not in 33 CFR.", Standing::memory};
constinit const Citation kFusePlaceVehicle{
    "nec-552-10-e-4", "NFPA 70 National Electrical Code, Article 552.10(E)(4)", "", "place of the fuse",
    "Seen in one place.", Standing::seen};
constinit const Citation kFuseSizeRule{
    "fuse-size", "Fuse makers' application notes; IEC 60364-4-43 (Ib <= In <= Iz)", "", "125 % of the lasting current",
    "The 125 % was seen; the IEC clause is from memory.", Standing::memory};
constinit const Citation kVehicleReturn{
    "nec-552-10-b", "NFPA 70 National Electrical Code, Article 552.10(B)(1) and (C)(4)", "", "return and ground points",
    "Seen in two places.", Standing::seen_twice};
constinit const Citation kEuropeanVehicle{
    "en-1648", "EN 1648-1 and EN 1648-2, 12 V systems of caravans and motor caravans", "2018", "scope",
    "Only the scope was seen, in two places; no figure of it is used.", Standing::seen_twice};
constinit const Citation kEuropeanPractice{
    "european-vehicle-practice", "Practice of European camper builders", "", "fuses and wire",
    "From memory, and under no standard's name.", Standing::memory};
constinit const Citation kSmallCraftRules{
    "iso-10133-rules", "ISO 10133 Small craft: extra-low-voltage d.c. installations", "2012", "7.3, 7.4, 7.7",
    "These clauses were seen as an extract; ISO 13297 has followed it since.", Standing::seen};
constinit const Citation kFuseNegative{
    "fuse-negative", "46 CFR 183.380(b), ABYC E-11", "", "grounded conductor", "Seen for breakers and switches.",
    Standing::seen};
constinit const Citation kDropThree{
    "drop-3", "ABYC E-11; ISO 10133 4.7, 4.8", "2012", "3 % circuits", "Of nominal voltage.", Standing::seen_twice};
constinit const Citation kDropFive{
    "drop-5", "NFPA 70 National Electrical Code, 210.19(A) and 215.2(A) notes", "", "5 % in all; advice",
    "From memory. That this app starts there is its own choice.", Standing::memory};
constinit const Citation kDropTen{
    "drop-10", "ABYC E-11", "", "10 % circuits", "ISO small-craft standards say the same, from memory.",
    Standing::seen_twice};
constinit const Citation kDropService{
    "drop-service", "Vehicle service practice", "", "drop by piece", "From memory.", Standing::common_practice};
constinit const Citation kDropNominal{
    "drop-nominal", "Arithmetic", "", "limit x nominal voltage", "0.03 x 12 V = 0.36 V.", Standing::computed};
constinit const Citation kColourBoatUs{
    "colour-boat-us", "ABYC E-11, d.c. conductors", "", "colours", "From memory. Yellow avoids taking a black a.c. "
    "wire for a negative.", Standing::memory};
constinit const Citation kColourSmallCraft{
    "colour-small-craft", "ISO 10133", "", "colours", "From memory.", Standing::memory};
constinit const Citation kColourVehicle{
    "colour-vehicle", "Road vehicle practice", "", "colours", "From memory.", Standing::common_practice};
constinit const Citation kColourTrailer{
    "colour-trailer-us", "Practice of trailer and camper builders in North America", "", "house wiring, 12 V",
    "From memory. Builders differ.", Standing::memory};
constinit const Citation kColourEurope{
    "colour-vehicle-europe", "DIN 72551 and practice of European vehicle makers", "", "brown for minus",
    "From memory. What was added later is often red and black.", Standing::memory};
constinit const Citation kColourIec{
    "colour-iec", "IEC 60445", "2017", "d.c. conductors", "From memory. Older wiring differs: label both ends.",
    Standing::memory};
constinit const Citation kColourBonding{
    "colour-bonding", "IEC 60445, ABYC E-11", "", "bonding conductors", "From memory.", Standing::memory};
constinit const Citation kColourCode{
    "iec-60757", "IEC 60757 Code for designation of colours", "", "letters", "From memory.", Standing::memory};
constinit const Citation kMeterUse{
    "meter-use", "Common practice with a digital meter", "", "leads, dial, what is read",
    "Your meter's own instructions go first.", Standing::common_practice};
constinit const Citation kMeterMemory{
    "meter-data", "Usual data of hand-held digital meters", "", "by item", "From memory; see your meter's sheet.",
    Standing::memory};
constinit const Citation kMeterLamp{
    "meter-lamp", "Power formula", "", "I = P / V at 12 V", "The lamp's 3 to 5 W is from memory.", Standing::memory};
constinit const Citation kMeterGhost{
    "meter-ghost", "Voltage divider", "", "12 V x 100 kohm / (10 Mohm + 100 kohm)",
    "The meter's 10 Mohm is from memory.", Standing::memory};
constinit const Citation kLighterForm{
    "lighter-form", "Lighter-form outlets (SAE J563)", "", "polarity and bore",
    "Polarity and bore were seen. Hold lasting loads to 10 A: our choice, friction contacts get hot.",
    Standing::our_choice};
constinit const Citation kPolarityPractice{
    "polarity", "Common practice", "", "red is positive, black is negative", "The marking on the device goes first.", Standing::common_practice};
constinit const Citation kSafePractice{
    "safe-practice", "Common practice", "", "work on battery systems",
    "Local rules, makers' instructions and licensed practice come first.", Standing::common_practice};
constinit const Citation kWorkshopPractice{
    "workshop-practice", "Common practice of the trade, told in our words", "", "handling of wire and terminals",
    "The maker's instructions for tool and terminal go first.", Standing::common_practice};
constinit const Citation kHeatFormula{
    "joule-heat", "Joule's law", "", "P = I^2 R", "All of it turns to heat in the joint.", Standing::computed};
constinit const Citation kBatteryFault{
    "battery-fault", "Ohm's law, I = E / R", "", "inside resistance of a 100 Ah battery",
    "The resistance, and so the current, is from memory.", Standing::memory};
constinit const Citation kRestFlooded{
    "rest-flooded", "Handbook figures of flooded lead batteries", "", "rested voltage by charge",
    "From memory; another list (seen) has 12.30 V at half and 12.15 V at a quarter. Rested 4 to 24 hours.",
    Standing::memory};
constinit const Citation kRestAgm{
    "rest-agm", "Handbook figures of AGM lead batteries", "", "rested voltage by charge",
    "From memory; makers differ by 0.1 V. Rested 4 to 24 hours.", Standing::memory};
constinit const Citation kRestLithium{
    "rest-lithium", "Recollected figures of four cells of lithium iron phosphate", "", "rested voltage by charge",
    "From memory and uncertain, under no standard's name: the spread is beside it. Tell no more from it than "
    "full, middle, low or empty. Many charts show charging voltages.", Standing::memory};
constinit const Citation kPeukertExponent{
    "peukert-exponent", "Peukert's rule, t = H (C / (I H))^n", "", "n of lead batteries",
    "The exponents are from memory: 1.1 to 1.4 flooded, 1.05 to 1.2 AGM; it rises with age and cold.",
    Standing::memory};
constinit const Citation kLithiumRate{
    "lithium-rate", "Common practice with lithium iron phosphate", "", "no rate effect counted",
    "From memory: within a few per cent up to the current it is rated for.", Standing::memory};

}  // namespace tables
