#include "tables/citation_list.h"

#include <array>

namespace tables {

// Conductors ---------------------------------------------------------------------------------

constinit const Citation kAwgConductors{
    .id = "awg-conductors",
    .document = "ASTM B258 (sizes of round wire) with IEC 60028 (resistance of copper)",
    .edition = "",
    .where = "diameter 0.127 mm x 92^((36-n)/39); 1/58 ohm mm²/m at 20 °C",
    .note = "2 % is added for the lay of the strands: NEC Chapter 9 Table 8 prints stranded wire "
            "1.8 to 2.5 % above solid. Vehicle cable sold by SAE number holds less copper: it has its own list.",
    .standing = Standing::computed};

constinit const Citation kMetricConductors{
    .id = "iec-60228-class-5",
    .document = "IEC 60228 Conductors of insulated cables",
    .edition = "2004",
    .where = "Table 3, class 5, plain copper, maximum resistance at 20 °C",
    .note = "Seen as one cable maker's copy; the 0.75 mm² figure is from memory. The maximum "
            "defines the size: the copper inside may be less than the number printed on the wire.",
    .standing = Standing::seen};

constinit const Citation kSaeConductors{
    .id = "sae-conductors",
    .document = "SAE J1127 and J1128 (vehicle cable), least copper by size, with IEC 60028",
    .edition = "",
    .where = "least area in circular mils; 1/58 ohm mm²/m at 20 °C and 2 % for the lay",
    .note = "Size 12 (5833 circular mils) was seen on one marine supplier's page; the others are from memory, "
            "and of two remembered figures for size 6 (24538 and 25910) the smaller is used.",
    .standing = Standing::memory};

constinit const Citation kTinnedCopper{
    .id = "tinned-copper",
    .document = "NFPA 70 National Electrical Code, Chapter 9 Table 8, coated copper",
    .edition = "",
    .where = "stranded, coated over uncoated, 75 °C: 3 to 6 % more",
    .note = "The coated column is from memory. Where a size is not in it, 4 % is added.",
    .standing = Standing::memory};

constinit const Citation kTinnedMetricCopper{
    .id = "iec-60228-class-5-tinned",
    .document = "IEC 60228 Conductors of insulated cables",
    .edition = "2004",
    .where = "Table 3, class 5, metal-coated copper, maximum resistance at 20 °C",
    .note = "Seen as one cable maker's copy; the 0.75 mm² figure is from memory.",
    .standing = Standing::seen};

constinit const Citation kCopperClad{
    .id = "copper-clad-aluminium",
    .document = "Aluminium of conductor grade, 61 % of copper's conductivity, as the worst that such a wire can be",
    .edition = "",
    .where = "resistance 1/0.61; current 1/sqrt(1.64); withstand by IEC 60364-5-54 Annex A",
    .note = "The 61 % and aluminium's constants are from memory; ASTM B566 class 10A (from memory 0.02743 "
            "ohm mm²/m, 1.59 times copper) lies below.",
    .standing = Standing::memory};

constinit const Citation kCopper{
    .id = "iec-60028",
    .document = "IEC 60028 International standard of resistance for copper",
    .edition = "",
    .where = "58 MS/m at 20 °C; 0.00393 per kelvin",
    .note = "The resistivity was seen in two places; the coefficient is 1/(234.5 + 20).",
    .standing = Standing::seen_twice};

constinit const Citation kAdiabatic{
    .id = "iec-60364-5-54-annex-a",
    .document = "IEC 60364-5-54 Low-voltage installations: earthing and protective conductors",
    .edition = "",
    .where = "Annex A, k = 226 sqrt(ln(1 + (Tf - Ti)/(234.5 + Ti))) for copper",
    .note = "For times up to about 5 s, when no heat leaves the wire. The rounded k values that "
            "standards print (115, 143) are from memory; the formula gives them.",
    .standing = Standing::computed};

// Ampacity -----------------------------------------------------------------------------------

constinit const Citation kMarineAmpacity{
    .id = "cfr-183-425-table-5",
    .document = "33 CFR 183.425 Conductors: general (US federal rule for boats)",
    .edition = "",
    .where = "Table 5, outside engine spaces",
    .note = "Insulated stranded copper, single wires in free air at 30 °C. Higher than building "
            "figures: not for wire buried in insulation. The rule lets a fuse be 150 % of this; "
            "here it may not be above it.",
    .standing = Standing::seen};

constinit const Citation kMarineHotSpace{
    .id = "cfr-183-425-engine-space",
    .document = "33 CFR 183.425 Conductors: general (US federal rule for boats)",
    .edition = "",
    .where = "Table 5 note 1, engine spaces at 50 °C",
    .note = "The 105 °C factor was seen, the others are from memory. The lower of the printed "
            "factor and the one computed for the real ambient is used.",
    .standing = Standing::memory};

constinit const Citation kMarineBundling{
    .id = "cfr-183-425-bundling",
    .document = "33 CFR 183.425 Conductors: general (US federal rule for boats)",
    .edition = "",
    .where = "Table 5 note 2, by current-carrying conductors; a circuit has two",
    .note = "0.7, 0.6 and 0.5 were seen twice, 0.4 once. Sources disagree under 50 V: the rule "
            "itself binds from 50 V up, a marine handbook sets no limit below, other marine "
            "editions do. Always applied here, the safe side.",
    .standing = Standing::seen_twice};

constinit const Citation kMarineTwoCoreCable{
    .id = "two-core-free-air",
    .document = "IEC 60364-5-52, methods E and F, for a two-core cable under 33 CFR 183.425",
    .edition = "",
    .where = "two-core cable in free air against two single cores",
    .note = "The boat rule makes no difference for two conductors together. The ratio 0.91 is from memory; 0.9 is used.",
    .standing = Standing::memory};

constinit const Citation kIecAmpacity{
    .id = "iec-60364-5-52",
    .document = "IEC 60364-5-52 Low-voltage installations: wiring systems",
    .edition = "2009",
    .where = "Tables B.52.2 and B.52.3, two loaded copper conductors, 30 °C air, methods B and C",
    .note = "Method B at 90 °C was seen as a distributor's copy of its British twin; the rest is from memory. "
            "Written for buildings; the wire here is finer, see the fine strand factor.",
    .standing = Standing::memory};

constinit const Citation kTypicalDevices{
    .id = "typical-devices",
    .document = "Typical of devices as they are sold",
    .edition = "",
    .where = "labels and manuals of each kind",
    .note = "From memory, to start with: the label on the device goes first, and devices of one kind differ by half.",
    .standing = Standing::memory};

constinit const Citation kBritishAmpacity{
    .id = "bs-7671-appendix-4",
    .document = "BS 7671 Requirements for electrical installations, Appendix 4",
    .edition = "",
    .where = "Tables 4D1A and 4E1A, two single-core copper conductors, 30 °C air, clipped direct",
    .note = "The 90 °C column was seen as a distributor's copy, the 70 °C column is from memory but for its "
            "25 mm² row. Up to 9 % more than IEC 60364-5-52 prints.",
    .standing = Standing::memory};

constinit const Citation kEnclosedPvc{
    .id = "iec-60364-5-52-b-70",
    .document = "IEC 60364-5-52 Table B.52.2; BS 7671 Table 4D1A",
    .edition = "2009",
    .where = "70 °C thermoplastic, method B1, two loaded conductors",
    .note = "From memory; the 25 mm² row was seen quoted. 1 mm² stands only in the British table; 0.75 mm² "
            "is IEC 60204-1 Table 6, for air of 40 °C.",
    .standing = Standing::memory};

constinit const Citation kEnclosedXlpe{
    .id = "iec-60364-5-52-b-90",
    .document = "IEC 60364-5-52 Table B.52.3; BS 7671 Table 4E1A",
    .edition = "2009",
    .where = "90 °C thermosetting, method B, two loaded conductors",
    .note = "Seen as a cable distributor's copy of the British table, which agrees.",
    .standing = Standing::seen};

constinit const Citation kClippedPvc{
    .id = "iec-60364-5-52-c-70",
    .document = "IEC 60364-5-52 Table B.52.2",
    .edition = "2009",
    .where = "70 °C thermoplastic, method C, two loaded conductors",
    .note = "From memory; 1 mm², which is not in it, by BS 7671 Table 4D2A. Nowhere above the British figures.",
    .standing = Standing::memory};

constinit const Citation kClippedXlpe{
    .id = "iec-60364-5-52-c-90",
    .document = "IEC 60364-5-52 Table B.52.3",
    .edition = "2009",
    .where = "90 °C thermosetting, method C, two loaded conductors",
    .note = "From memory; 1 mm², which is not in it, is our choice. Nowhere above the British figures, which were seen.",
    .standing = Standing::memory};

constinit const Citation kBritishPvc{
    .id = "bs-7671-4d1a-c",
    .document = "BS 7671 Table 4D1A",
    .edition = "",
    .where = "70 °C thermoplastic, method C, two single-core conductors",
    .note = "From memory; the 25 mm² row was seen quoted.",
    .standing = Standing::memory};

constinit const Citation kBritishXlpe{
    .id = "bs-7671-4e1a-c",
    .document = "BS 7671 Table 4E1A",
    .edition = "",
    .where = "90 °C thermosetting, method C, two single-core conductors",
    .note = "Seen as a cable distributor's copy.",
    .standing = Standing::seen};

constinit const Citation kIecTwoCoreCable{
    .id = "iec-60364-5-52-two-core",
    .document = "IEC 60364-5-52 Tables B.52.2 and B.52.3; BS 7671 Tables 4D2A and 4E2A",
    .edition = "2009",
    .where = "two loaded conductors in one sheath: method B2 in conduit, method C clipped",
    .note = "From memory. Three loaded cores of method B2 and C were seen in a machine maker's manual and lie below, as they must.",
    .standing = Standing::memory};

constinit const Citation kAmbient{
    .id = "ambient-correction",
    .document = "Heat balance of a wire in air",
    .edition = "",
    .where = "sqrt((T - Ta)/(T - 30)), T the table's insulation temperature, never above 1",
    .note = "Within 0.01 of the ambient factors of IEC 60364-5-52 (from memory).",
    .standing = Standing::computed};

constinit const Citation kIecGrouping{
    .id = "iec-60364-5-52-grouping",
    .document = "IEC 60364-5-52; BS 7671 Table 4C1",
    .edition = "2009",
    .where = "circuits bunched or enclosed; between printed counts the next higher count",
    .note = "From memory. Counts circuits, all loaded alike. Always applied here.",
    .standing = Standing::memory};

constinit const Citation kFineStrands{
    .id = "fine-strands",
    .document = "Heat balance of a wire in air, with IEC 60228 classes 2 and 5",
    .edition = "2004",
    .where = "sqrt(class 2 resistance of the row / resistance of the wire), never above 1",
    .note = "Building tables are for class 2 wire; fine-stranded wire holds less copper and heats "
            "more. BS 7671 Appendix 4 gives 0.95 up to 16 mm² and 0.97 above (from memory).",
    .standing = Standing::computed};

// Fuses --------------------------------------------------------------------------------------

constinit const Citation kRoadVehicleFuse{
    .id = "nec-552-10-e-1",
    .document = "NFPA 70 National Electrical Code, Article 552.10(E)(1) (park trailers)",
    .edition = "",
    .where = "low-voltage overcurrent table, 18 to 10 AWG",
    .note = "The five figures are from memory. A metric size takes the figure of the largest AWG "
            "that has no more copper: our choice; 0.75 mm², thinner than 18 AWG, takes 5 A.",
    .standing = Standing::memory};

constinit const Citation kBladeFuse{
    .id = "blade-fuse",
    .document = "Blade fuses of medium size (ISO 8820-3 type C, SAE J1284); the standards' text not seen",
    .edition = "",
    .where = "opening times at multiples of the rating",
    .note = "The slowest of the figures known, partly from one maker's sheet, partly from memory. "
            "Editions differ: 120, 600 or 1800 s at 135 %. Check the fuse's own curve. Breaks "
            "1000 A at 32 V, which may be less than the battery delivers: the main fuse must break that.",
    .standing = Standing::memory};

constinit const Citation kMiniBladeFuse{
    .id = "mini-blade-fuse",
    .document = "Small blade fuses (ISO 8820-3 type F); the standard's text not seen",
    .edition = "",
    .where = "opening times at multiples of the rating",
    .note = "From memory, the slowest of the figures known. Check the fuse's own curve.",
    .standing = Standing::memory};

constinit const Citation kLargeBladeFuse{
    .id = "large-blade-fuse",
    .document = "Large blade fuses (ISO 8820-3 type E, SAE J1888); one maker's sheet seen",
    .edition = "",
    .where = "opening times at multiples of the rating",
    .note = "The slowest of the figures known: at 200 % 60 s from memory against 50 s seen. Check "
            "the fuse's own curve.",
    .standing = Standing::seen};

constinit const Citation kBoltOnFuse{
    .id = "bolt-on-fuse",
    .document = "Bolted strip fuses as commonly sold",
    .edition = "",
    .where = "opening times at multiples of the rating; forms SF30 (M5, 30 to 200 A) and SF51 (M8, to 500 A)",
    .note = "From memory and not checked anywhere; only the names of the forms are those of ISO 8820-5. Read the curve of the fuse you buy before you "
            "count on its opening time; check the voltage and breaking capacity marked on it.",
    .standing = Standing::memory};

constinit const Citation kHighVoltageBladeFuse{
    .id = "high-voltage-blade-fuse",
    .document = "Blade fuses of medium size marked 58 V",
    .edition = "",
    .where = "ratings and opening times, as for the 32 V body",
    .note = "From memory. Fits the same holder as a 32 V fuse: check that 58 V is marked on it.",
    .standing = Standing::memory};

constinit const Citation k80VoltBladeFuse{
    .id = "80-volt-blade-fuse",
    .document = "Blade fuses of medium size marked 80 V",
    .edition = "",
    .where = "ratings and opening times, as for the 32 V body",
    .note = "From memory. Made for electric trucks; a full lithium battery of 48 V reaches 58.4 V, more than a 58 V "
            "fuse is marked for. Check that 80 V is marked on it.",
    .standing = Standing::memory};

constinit const Citation k80VoltBoltOnFuse{
    .id = "80-volt-bolt-on-fuse",
    .document = "Bolted strip fuses marked 80 V",
    .edition = "",
    .where = "ratings and opening times, as for the 32 V body; 1000 A at 80 V",
    .note = "From memory and not checked anywhere. For inverters on 48 V, where 32 V and 58 V fuses are marked too low. "
            "Check that 80 V is marked on it, and what it breaks.",
    .standing = Standing::memory};

constinit const Citation kMarineStripFuse{
    .id = "marine-strip-fuse",
    .document = "Bolted strip fuses for boats as commonly sold",
    .edition = "",
    .where = "ratings; opening times; 6000 A at 32 V",
    .note = "From memory and not checked anywhere. What is marked on the fuse goes first.",
    .standing = Standing::memory};

constinit const Citation kTerminalPostFuse{
    .id = "terminal-post-fuse",
    .document = "Single-bolt fuses on a battery post as commonly sold",
    .edition = "",
    .where = "ratings; opening times; 10000 A at 14 V, 5000 A at 32 V, 2000 A at 58 V",
    .note = "From memory and not checked anywhere; ISO 8820-6 is about such fuses. What is marked on the fuse goes first.",
    .standing = Standing::memory};

constinit const Citation kClassTFuse{
    .id = "class-t-fuse",
    .document = "UL 248-15 Class T fuses",
    .edition = "",
    .where = "20 kA d.c. at 125 V; 135 % within 2 h, 200 % within 12 min; faster gates typical",
    .note = "From memory; 160 V is remembered too, the lower is used.",
    .standing = Standing::memory};

constinit const Citation kBreaker{
    .id = "dc-breaker",
    .document = "Thermal d.c. circuit breakers for vehicles and boats as commonly sold",
    .edition = "",
    .where = "ratings; opening times; 3000 A at 16 V, 1500 A at 32 V",
    .note = "From memory; makers print 1500 to 5000 A. Read the marking: a breaker that breaks less than the battery "
            "gives needs a fuse before it.",
    .standing = Standing::memory};

constinit const Citation kFuseResistance{
    .id = "fuse-cold-resistance",
    .document = "Typical resistance of fuses, cold and at their rating",
    .edition = "",
    .where = "by type and rating; contacts by kind",
    .note = "Typical, about 20 % either way. From memory except type C 40 A and type E 30, 35 and "
            "40 A, seen in one maker's sheet. Warm it is about 1.45 times cold; contacts are a rule of thumb.",
    .standing = Standing::memory};

// Parts --------------------------------------------------------------------------------------

constinit const Citation kClampPart{
    .id = "typical-clamp",
    .document = "Typical fuse block positions",
    .edition = "",
    .where = "wire range and current",
    .note = "A typical part: check the marking on yours. Strands spread under a clamp, a ferrule "
            "does not, so the same clamp takes less wire with one.",
    .standing = Standing::our_choice};

constinit const Citation kSplicePart{
    .id = "typical-splice",
    .document = "Typical splices",
    .edition = "",
    .where = "wire range and current",
    .note = "A typical part: check the marking on yours. Blue crimp 1.5 to 2.5 mm² and yellow 4 to "
            "6 mm² are seen twice; some makers print 2.5 to 6 mm² for yellow.",
    .standing = Standing::our_choice};

constinit const Citation kTerminalPart{
    .id = "typical-terminal",
    .document = "Typical terminals of outlets",
    .edition = "",
    .where = "wire range and current",
    .note = "A typical part: check the marking on yours.",
    .standing = Standing::our_choice};

constinit const Citation kTabByWire{
    .id = "ul-310-tab-current",
    .document = "UL 310 Quick-connect terminals",
    .edition = "",
    .where = "6.3 mm (1/4 in) and 4.8 mm tabs, current by the wire crimped to it",
    .note = "From memory; where a range is remembered (7 to 10 A, 24 to 30 A), its lower end. The narrow tab by the "
            "same wires, and never above 10 A.",
    .standing = Standing::memory};

constinit const Citation kOutletPart{
    .id = "typical-outlet",
    .document = "Typical 12 V outlets and fixed loads",
    .edition = "",
    .where = "current",
    .note = "A typical part: check the marking on yours.",
    .standing = Standing::our_choice};

constinit const Citation kInLinePart{
    .id = "typical-in-line",
    .document = "Typical switches, relays, breakers, fuse holders and battery switches",
    .edition = "",
    .where = "wire range, current, current for long, resistance",
    .note = "Typical, from memory: check the marking on yours. Contacts carry less for long than their marking says, "
            "about 80 % of it, a relay or a fuse holder about two thirds.",
    .standing = Standing::memory};

constinit const Citation kLighterSocket{
    .id = "lighter-socket",
    .document = "Lighter-form outlets (SAE J563)",
    .edition = "",
    .where = "current; centre contact positive",
    .note = "15 A is the middle of the fuses these sockets are usually given (10, 15, 20 A; from "
            "memory). Friction contacts get hot: hold a load that runs for long to 10 A, and check "
            "the marking on yours.",
    .standing = Standing::our_choice};

constinit const Citation kIso4165Socket{
    .id = "iso-4165-socket",
    .document = "ISO 4165 Road vehicles: electrical connections, double-pole connector",
    .edition = "",
    .where = "current; centre contact positive",
    .note = "12 A seen on one reference page, 16 A quoted elsewhere (from memory): the lower is used. Hold lasting "
            "loads to 10 A: our choice.",
    .standing = Standing::seen};

constinit const Citation kJointResistance{
    .id = "joint-resistance",
    .document = "Resistance of good, new joints",
    .edition = "",
    .where = "crimp, ring, lever, tab, clips",
    .note = "A rule of thumb from memory: good below 2 mOhm, doubtful above 5, bad above 20.",
    .standing = Standing::common_practice};

// Batteries ----------------------------------------------------------------------------------

constinit const Citation kLeadFlooded{
    .id = "lead-flooded",
    .document = "Handbook figures of flooded lead batteries",
    .edition = "",
    .where = "rested voltage full, half; highest charging voltage; internal resistance",
    .note = "From memory. 12.65 V full (12.66 V seen); 12.1 V as the daily floor. 4 to 8 mOhm for "
            "100 Ah; 8 is used.",
    .standing = Standing::memory};

constinit const Citation kLeadAgm{
    .id = "lead-agm",
    .document = "Handbook figures of AGM lead batteries",
    .edition = "",
    .where = "rested voltage full, half; highest charging voltage; internal resistance",
    .note = "From memory; makers differ by 0.1 V. 3 to 5 mOhm for 100 Ah; 5 is used.",
    .standing = Standing::memory};

constinit const Citation kLithiumIron{
    .id = "lithium-iron-phosphate",
    .document = "Common practice with lithium iron phosphate batteries of four cells",
    .edition = "",
    .where = "rested voltage; controller cut-off; highest charging voltage; internal resistance",
    .note = "From memory and uncertain. 13.2 V lies on the plateau, low is the upper cut-off. 1.5 "
            "to 4 mOhm for 100 Ah; 4 is used.",
    .standing = Standing::memory};

// All of them --------------------------------------------------------------------------------

namespace {
constinit const std::array kAll{
    &kAwgConductors,  &kMetricConductors, &kSaeConductors, &kTinnedCopper, &kTinnedMetricCopper, &kCopperClad,
    &kCopper,         &kAdiabatic,      &kMarineAmpacity,
    &kMarineHotSpace, &kMarineBundling, &kMarineTwoCoreCable, &kIecAmpacity, &kBritishAmpacity, &kTypicalDevices, &kBritishPvc, &kBritishXlpe,
    &kIecTwoCoreCable,    &kEnclosedPvc,    &kEnclosedXlpe,
    &kClippedPvc,     &kClippedXlpe,      &kAmbient,        &kIecGrouping,    &kFineStrands,
    &kRoadVehicleFuse, &kBladeFuse,       &kMiniBladeFuse,  &kLargeBladeFuse, &kBoltOnFuse,
    &kHighVoltageBladeFuse, &k80VoltBladeFuse, &k80VoltBoltOnFuse, &kMarineStripFuse, &kTerminalPostFuse, &kClassTFuse, &kBreaker,
    &kFuseResistance, &kClampPart,  &kSplicePart,     &kTerminalPart,
    &kTabByWire,      &kOutletPart, &kInLinePart,       &kLighterSocket,  &kIso4165Socket,  &kJointResistance,
    &kLeadFlooded,    &kLeadAgm,          &kLithiumIron,
    &kCrimpColour, &kStripLength, &kTabSize, &kRingHole, &kRingHoleMemory, &kFerruleColour,
    &kLargeFerruleColour, &kPullBoat, &kPullTerminal, &kFusePlaceRule, &kFusePlaceBattery,
    &kFusePlaceVehicle, &kFuseSizeRule, &kFuseNegative, &kDropThree, &kDropFive, &kDropTen, &kDropService,
    &kDropNominal, &kColourBoatUs, &kColourSmallCraft, &kColourVehicle, &kColourIec, &kColourBonding, &kColourTrailer, &kColourEurope, &kVehicleReturn, &kEuropeanVehicle,
    &kEuropeanPractice, &kSmallCraftRules,
    &kColourCode, &kMeterUse, &kMeterMemory, &kMeterLamp, &kMeterGhost, &kLighterForm, &kPolarityPractice,
    &kSafePractice, &kWorkshopPractice, &kHeatFormula, &kBatteryFault, &kRestFlooded, &kRestAgm,
    &kRestLithium, &kPeukertExponent, &kLithiumRate};
}  // namespace

std::string_view standing_text(Standing standing) {
  switch (standing) {
    case Standing::computed: return "computed";
    case Standing::seen: return "seen once";
    case Standing::seen_twice: return "seen in two places";
    case Standing::memory: return "from memory";
    case Standing::common_practice: return "common practice, no source";
    case Standing::our_choice: return "our choice";
  }
  return "from memory";  // the least sure word, should a value ever be out of range
}

std::span<const Citation* const> all_citations() { return kAll; }

const Citation* citation_by_id(std::string_view id) {
  for (const Citation* citation : kAll) {
    if (citation->id == id) return citation;
  }
  return nullptr;
}

}  // namespace tables
