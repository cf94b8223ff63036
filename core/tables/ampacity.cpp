#include "tables/ampacity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

constexpr double kTableAmbientC = 30.0;
constexpr double kHotSpaceC = 50.0;
// A wire past a table's last row whose resistance is within 5 % of that row's (120 mm2 beside
// 4/0: 0.161 and 0.164 mohm/m) is practically that size and reads that row. Our choice.
constexpr double kPracticallySame = 0.95;

// 33 CFR 183.425 Table 5, outside engine spaces, A at 30 degC --------------------------------

struct MarineColumn {
  double insulation_c;
  double engine_space_factor;  // printed, at 50 degC; 105 degC seen, the others from memory
};
constexpr std::array<MarineColumn, 7> kMarineColumns{
    {{60, 0.58}, {75, 0.75}, {80, 0.78}, {90, 0.82}, {105, 0.85}, {125, 0.89}, {200, 1.00}}};

struct MarineRow {
  std::string_view size;
  std::array<double, kMarineColumns.size()> amperes;
};
constexpr std::array<MarineRow, 15> kMarineRows{{
    {"18awg", {10, 10, 15, 20, 20, 25, 25}},
    {"16awg", {15, 15, 20, 25, 25, 30, 35}},
    {"14awg", {20, 20, 25, 30, 35, 40, 45}},
    {"12awg", {25, 25, 35, 40, 45, 50, 55}},
    {"10awg", {40, 40, 50, 55, 60, 70, 70}},
    {"8awg", {55, 65, 70, 70, 80, 90, 100}},
    {"6awg", {80, 95, 100, 100, 120, 125, 135}},
    {"4awg", {105, 125, 130, 135, 160, 170, 180}},
    {"3awg", {120, 145, 150, 155, 180, 195, 210}},
    {"2awg", {140, 170, 175, 180, 210, 225, 240}},
    {"1awg", {165, 195, 210, 210, 245, 265, 280}},
    {"1/0awg", {195, 230, 245, 245, 285, 305, 325}},
    {"2/0awg", {225, 265, 285, 285, 330, 355, 370}},
    {"3/0awg", {260, 310, 330, 330, 385, 410, 430}},
    {"4/0awg", {300, 360, 385, 385, 445, 475, 510}},
}};

// Note 2: by current-carrying conductors in the bundle.
struct BundlingStep {
  int up_to;  // this count included
  double factor;
};
constexpr std::array<BundlingStep, 5> kMarineBundlingSteps{{{2, 1.0}, {3, 0.7}, {6, 0.6}, {24, 0.5}, {1000, 0.4}}};
constexpr int kConductorsPerCircuit = 2;  // red and black
// The rule's figures hold for two conductors together. IEC 60364-5-52 prints 0.91 of two single
// cores in free air for a two-core cable (methods E and F, from memory): the lower is taken.
constexpr double kMarineTwoCore = 0.9;

// Buildings, two loaded conductors, A at 30 degC --------------------------------------------
// IEC 60364-5-52 Tables B.52.2 and B.52.3 for methods B1 (single cores in conduit), B2 (a
// two-core cable in conduit) and C (clipped, single or two-core alike); BS 7671 Tables 4D1A and
// 4E1A print more for single cores clipped. The IEC lists begin at 1.5 mm2: for 1 mm2 stands what
// BS 7671 prints, or less where only its neighbours are remembered. For 0.75 mm2 stands what IEC
// 60204-1 Table 6 prints for machines, PVC at 70 degC in air of 40 degC (B1, B2, C; from memory): less
// than holds at 30 degC, and for both insulations.

enum IecColumn : std::size_t { kPvc70, kXlpe90, kIecColumnCount };
constexpr std::array<double, kIecColumnCount> kIecInsulationC{70.0, 90.0};
using ByInsulation = std::array<double, kIecColumnCount>;

struct IecRow {
  std::string_view size;
  double class2_milliohm_per_m;  // IEC 60228 Table 2, plain: the wire the table was made for
  ByInsulation enclosed;         // method B1; BS 7671 method B
  ByInsulation enclosed_two_core;  // method B2
  ByInsulation clipped;          // IEC method C; also BS 7671 for two-core (4D2A, 4E2A)
  ByInsulation clipped_bs;       // BS 7671 method C, single cores
};
constexpr std::array<IecRow, 12> kIecRows{{
    {"0.75mm2", 24.5, {8.6, 8.6}, {8.5, 8.5}, {9.8, 9.8}, {9.8, 9.8}},
    {"1mm2", 18.1, {13.5, 17}, {13, 16}, {15, 18}, {15.5, 19}},
    {"1.5mm2", 12.1, {17.5, 23}, {16.5, 22}, {19.5, 24}, {20, 25}},
    {"2.5mm2", 7.41, {24, 31}, {23, 30}, {27, 33}, {27, 34}},
    {"4mm2", 4.61, {32, 42}, {30, 40}, {36, 45}, {37, 46}},
    {"6mm2", 3.08, {41, 54}, {38, 51}, {46, 58}, {47, 59}},
    {"10mm2", 1.83, {57, 75}, {52, 69}, {63, 80}, {65, 81}},
    {"16mm2", 1.15, {76, 100}, {69, 91}, {85, 107}, {87, 109}},
    {"25mm2", 0.727, {101, 133}, {90, 119}, {112, 138}, {114, 143}},
    {"35mm2", 0.524, {125, 164}, {111, 146}, {138, 171}, {141, 176}},
    {"50mm2", 0.387, {151, 198}, {133, 175}, {168, 209}, {182, 228}},
    {"70mm2", 0.268, {192, 253}, {168, 221}, {213, 269}, {234, 293}},
}};

// By circuits bunched or enclosed; a count between two rows takes the next row's factor.
constexpr std::array<BundlingStep, 12> kIecGroupingSteps{{{1, 1.0}, {2, 0.80}, {3, 0.70}, {4, 0.65}, {5, 0.60},
                                                          {6, 0.57}, {7, 0.54}, {8, 0.52}, {9, 0.50}, {12, 0.45},
                                                          {16, 0.41}, {20, 0.38}}};

// NEC 552.10(E)(1), from memory; the first line is our own, for wire thinner than the table's.
struct FuseCeiling {
  std::string_view size;
  double amperes;
};
constexpr std::array<FuseCeiling, 6> kRoadVehicleCeilings{
    {{"0.75mm2", 5}, {"18awg", 6}, {"16awg", 8}, {"14awg", 15}, {"12awg", 20}, {"10awg", 30}}};

constinit const std::array<AmpacityTable, 4> kTables{{
    {AmpacityTableId::marine_us, "marine-us", "Boat wire in free air (US)",
     "Single wires in free air at 30 °C, as US boats are wired. Not for wire buried in insulation.",
     &kMarineAmpacity},
    {AmpacityTableId::enclosed_iec, "enclosed-iec", "In conduit or trunking (IEC)",
     "Wires in conduit or trunking at 30 °C air. Not for wire buried in insulation.", &kIecAmpacity},
    {AmpacityTableId::clipped_iec, "clipped-iec", "Clipped to a surface (IEC)",
     "Wires clipped to a surface in 30 °C air. Not for wire buried in insulation.", &kIecAmpacity},
    {AmpacityTableId::clipped_bs, "clipped-bs", "Clipped to a surface (British)",
     "Single wires clipped to a surface in 30 °C air, as British buildings are wired: more than IEC prints. "
     "Not for wire buried in insulation.", &kBritishAmpacity},
}};

constexpr std::array<double, 8> kInsulationRatings{60, 70, 75, 80, 90, 105, 125, 200};

// Where the table is read: which row, which column, what stands there.
struct Reading {
  const Conductor* row_size = nullptr;
  double amperes = 0.0;
  double column_c = 0.0;
  double engine_space_factor = 1.0;
  double strand_factor = 1.0;
  double two_core_factor = 1.0;
  const Citation* citation = nullptr;
  const Citation* two_core_citation = nullptr;
};

// The row for a wire: its own, or the largest row whose wire has no less resistance, so that
// the same current heats this wire no more than the row's. Nothing when the wire lies before
// the first row or clearly past the last one. `Rows` ascend in size.
template <class Rows>
const typename Rows::value_type* row_for(const Rows& rows, const Conductor& wire) {
  const typename Rows::value_type* found = nullptr;
  for (const auto& row : rows) {
    if (row.size == wire.id) return &row;
    const Conductor* size = conductor_by_id(row.size);
    if (size != nullptr && size->resistance_20c >= wire.resistance_20c) found = &row;
  }
  if (found != &rows.back()) return found;
  // Thicker than the table's thickest: it ends there, unless it is practically that size.
  const Conductor* last = conductor_by_id(rows.back().size);
  return wire.resistance_20c >= last->resistance_20c * kPracticallySame ? found : nullptr;
}

std::optional<std::size_t> marine_column(double insulation_c) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < kMarineColumns.size(); ++i) {
    if (kMarineColumns[i].insulation_c <= insulation_c) found = i;
  }
  return found;
}

std::optional<Reading> read_marine(const Conductor& wire, double insulation_c) {
  const MarineRow* row = row_for(kMarineRows, wire);
  const std::optional<std::size_t> column = marine_column(insulation_c);
  if (row == nullptr || !column) return std::nullopt;
  return Reading{.row_size = conductor_by_id(row->size),
                 .amperes = row->amperes[*column],
                 .column_c = kMarineColumns[*column].insulation_c,
                 .engine_space_factor = kMarineColumns[*column].engine_space_factor,
                 .strand_factor = 1.0,  // the rule is for stranded wire
                 .two_core_factor = kMarineTwoCore,
                 .citation = &kMarineAmpacity,
                 .two_core_citation = &kMarineTwoCoreCable};
}

// The columns a building table is read from, for single wires and for a two-core cable.
struct IecColumns {
  const ByInsulation& single;
  const ByInsulation& two_core;
  std::array<const Citation*, kIecColumnCount> citations;
};
IecColumns iec_columns(AmpacityTableId table, const IecRow& row) {
  switch (table) {
    case AmpacityTableId::clipped_iec: return {row.clipped, row.clipped, {&kClippedPvc, &kClippedXlpe}};
    case AmpacityTableId::clipped_bs: return {row.clipped_bs, row.clipped, {&kBritishPvc, &kBritishXlpe}};
    case AmpacityTableId::enclosed_iec:
    case AmpacityTableId::marine_us: break;
  }
  return {row.enclosed, row.enclosed_two_core, {&kEnclosedPvc, &kEnclosedXlpe}};
}

std::optional<Reading> read_iec(AmpacityTableId table, const Conductor& wire, double insulation_c) {
  const IecRow* row = row_for(kIecRows, wire);
  if (row == nullptr || !(insulation_c >= kIecInsulationC[kPvc70])) return std::nullopt;
  const IecColumn column = insulation_c >= kIecInsulationC[kXlpe90] ? kXlpe90 : kPvc70;
  const IecColumns columns = iec_columns(table, *row);
  const double class2 = row->class2_milliohm_per_m / 1000.0;
  return Reading{.row_size = conductor_by_id(row->size),
                 .amperes = columns.single[column],
                 .column_c = kIecInsulationC[column],
                 .engine_space_factor = 1.0,
                 .strand_factor = std::min(1.0, std::sqrt(class2 / wire.resistance_20c.number())),
                 .two_core_factor = columns.two_core[column] / columns.single[column],
                 .citation = columns.citations[column],
                 .two_core_citation = &kIecTwoCoreCable};
}

double lowest_insulation_c(AmpacityTableId table) {
  return table == AmpacityTableId::marine_us ? kMarineColumns.front().insulation_c : kIecInsulationC[kPvc70];
}

// The share of a table's 30 degC figure that is left; nullopt at or above the column's rating.
std::optional<double> ambient_factor(const Reading& reading, const Surroundings& around) {
  double ambient_c = around.ambient.number();
  if (std::isnan(ambient_c)) return std::nullopt;
  if (around.hot_space) ambient_c = std::max(ambient_c, kHotSpaceC);
  if (ambient_c >= reading.column_c) return std::nullopt;
  const double heat_left = (reading.column_c - ambient_c) / (reading.column_c - kTableAmbientC);
  const double factor = std::min(1.0, std::sqrt(heat_left));
  return around.hot_space ? std::min(factor, reading.engine_space_factor) : factor;
}

template <class Steps>
std::optional<double> bundling_factor(const Steps& steps, int count) {
  for (const BundlingStep& step : steps) {
    if (count <= step.up_to) return step.factor;
  }
  return std::nullopt;
}

std::string row_text(const Reading& reading) {
  std::string text(reading.row_size->size);
  text += ' ';
  text += gauge_system_suffix(reading.row_size->system);
  text += ", ";
  text += std::to_string(static_cast<int>(reading.column_c));
  text += " °C";
  return text;
}

}  // namespace

std::span<const AmpacityTable> ampacity_tables() { return kTables; }

const AmpacityTable& ampacity_table(AmpacityTableId id) {
  for (const AmpacityTable& table : kTables) {
    if (table.id == id) return table;
  }
  return kTables.front();
}

const AmpacityTable* ampacity_table_by_key(std::string_view key) { return row_by_key(kTables, key); }

AmpacityTableId default_ampacity_table(GaugeSystem system) {
  return system == GaugeSystem::metric ? AmpacityTableId::enclosed_iec : AmpacityTableId::marine_us;
}

std::span<const double> insulation_ratings_c() { return kInsulationRatings; }

AmpacityResult ampacity(AmpacityTableId table, const Conductor& size, const Surroundings& around, WireBuild build) {
  const bool marine = table == AmpacityTableId::marine_us;
  const double insulation_c = around.insulation.number();
  if (!(insulation_c >= lowest_insulation_c(table))) return {std::nullopt, NoAmpacity::insulation_below_table};

  const std::optional<Reading> reading =
      marine ? read_marine(size, insulation_c) : read_iec(table, size, insulation_c);
  const int circuits = std::clamp(around.circuits_bundled, 1, 1000);
  const std::optional<double> bundled = marine
                                            ? bundling_factor(kMarineBundlingSteps, circuits * kConductorsPerCircuit)
                                            : bundling_factor(kIecGroupingSteps, circuits);
  if (!reading || !bundled) return {std::nullopt, NoAmpacity::table_ends};

  const std::optional<double> warmed = ambient_factor(*reading, around);
  if (!warmed) return {std::nullopt, NoAmpacity::too_hot};

  DeratedAmpacity result;
  result.base = units::Amperes(reading->amperes);
  result.metal_factor = ampacity_factor(build.metal);
  result.sheath_factor = build.two_core ? reading->two_core_factor : 1.0;
  result.strand_factor = reading->strand_factor;
  result.ambient_factor = *warmed;
  result.bundling_factor = *bundled;
  result.derated =
      result.base * result.metal_factor * result.sheath_factor * reading->strand_factor * *warmed * *bundled;
  result.row = row_text(*reading);
  result.base_citation = reading->citation;
  result.metal_citation = wire_metal(build.metal).citation;
  result.sheath_citation = reading->two_core_citation;
  result.strand_citation = marine ? &kMarineAmpacity : &kFineStrands;
  result.ambient_citation = marine && around.hot_space ? &kMarineHotSpace : &kAmbient;
  result.bundling_citation = marine ? &kMarineBundling : &kIecGrouping;
  return {result, NoAmpacity::table_ends};
}

std::optional<units::Amperes> road_vehicle_fuse_ceiling(const Conductor& size) {
  // 10 SAE has less copper than 10 AWG, 8 SAE more: one end serves both.
  const Conductor* largest = conductor_by_id(size.system == GaugeSystem::metric ? "6mm2" : "10awg");
  if (size.area > largest->area) return std::nullopt;
  std::optional<units::Amperes> ceiling;
  for (const FuseCeiling& row : kRoadVehicleCeilings) {
    const Conductor* row_size = conductor_by_id(row.size);
    if (row_size->area <= size.area) ceiling = units::Amperes(row.amperes);
  }
  return ceiling;
}

const Citation& road_vehicle_ceiling_citation() { return kRoadVehicleFuse; }

}  // namespace tables
