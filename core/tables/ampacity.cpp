#include "tables/ampacity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "tables/citation_list.h"

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

// IEC 60364-5-52, two loaded single cores, A at 30 degC --------------------------------------

enum IecColumn : std::size_t { kPvc70, kXlpe90, kIecColumnCount };
constexpr std::array<double, kIecColumnCount> kIecInsulationC{70.0, 90.0};

struct IecRow {
  std::string_view size;
  double class2_milliohm_per_m;  // IEC 60228 Table 2, plain: the wire the table was made for
  std::array<double, kIecColumnCount> enclosed;  // method B1 (PVC), B (XLPE)
  std::array<double, kIecColumnCount> clipped;   // method C
};
constexpr std::array<IecRow, 11> kIecRows{{
    {"1mm2", 18.1, {13.5, 17}, {15.5, 19}},
    {"1.5mm2", 12.1, {17.5, 23}, {20, 25}},
    {"2.5mm2", 7.41, {24, 31}, {27, 34}},
    {"4mm2", 4.61, {32, 42}, {37, 46}},
    {"6mm2", 3.08, {41, 54}, {47, 59}},
    {"10mm2", 1.83, {57, 75}, {65, 81}},
    {"16mm2", 1.15, {76, 100}, {87, 109}},
    {"25mm2", 0.727, {101, 133}, {114, 143}},
    {"35mm2", 0.524, {125, 164}, {141, 176}},
    {"50mm2", 0.387, {151, 198}, {182, 228}},
    {"70mm2", 0.268, {192, 253}, {234, 293}},
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

constinit const std::array<AmpacityTable, 3> kTables{{
    {AmpacityTableId::marine_us, "marine-us", "Boat wire in free air (US)",
     "Single wires in free air at 30 °C, as US boats are wired. Not for wire buried in insulation.",
     &kMarineAmpacity},
    {AmpacityTableId::enclosed_iec, "enclosed-iec", "In conduit or trunking (IEC)",
     "Wires in conduit or trunking at 30 °C air. Not for wire buried in insulation.", &kIecAmpacity},
    {AmpacityTableId::clipped_iec, "clipped-iec", "Clipped to a surface (IEC)",
     "Wires clipped to a surface in 30 °C air. Not for wire buried in insulation.", &kIecAmpacity},
}};

constexpr std::array<double, 8> kInsulationRatings{60, 70, 75, 80, 90, 105, 125, 200};

// Where the table is read: which row, which column, what stands there.
struct Reading {
  const Conductor* row_size = nullptr;
  double amperes = 0.0;
  double column_c = 0.0;
  double engine_space_factor = 1.0;
  double strand_factor = 1.0;
  const Citation* citation = nullptr;
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
                 .citation = &kMarineAmpacity};
}

const Citation& iec_citation(AmpacityTableId table, IecColumn column) {
  if (table == AmpacityTableId::enclosed_iec) return column == kPvc70 ? kEnclosedPvc : kEnclosedXlpe;
  return column == kPvc70 ? kClippedPvc : kClippedXlpe;
}

std::optional<Reading> read_iec(AmpacityTableId table, const Conductor& wire, double insulation_c) {
  const IecRow* row = row_for(kIecRows, wire);
  if (row == nullptr || !(insulation_c >= kIecInsulationC[kPvc70])) return std::nullopt;
  const IecColumn column = insulation_c >= kIecInsulationC[kXlpe90] ? kXlpe90 : kPvc70;
  const auto& amperes = table == AmpacityTableId::enclosed_iec ? row->enclosed : row->clipped;
  const double class2 = row->class2_milliohm_per_m / 1000.0;
  return Reading{.row_size = conductor_by_id(row->size),
                 .amperes = amperes[column],
                 .column_c = kIecInsulationC[column],
                 .engine_space_factor = 1.0,
                 .strand_factor = std::min(1.0, std::sqrt(class2 / wire.resistance_20c.number())),
                 .citation = &iec_citation(table, column)};
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

const AmpacityTable* ampacity_table_by_key(std::string_view key) {
  for (const AmpacityTable& table : kTables) {
    if (table.key == key) return &table;
  }
  return nullptr;
}

AmpacityTableId default_ampacity_table(GaugeSystem system) {
  return system == GaugeSystem::awg ? AmpacityTableId::marine_us : AmpacityTableId::enclosed_iec;
}

std::span<const double> insulation_ratings_c() { return kInsulationRatings; }

AmpacityResult ampacity(AmpacityTableId table, const Conductor& size, const Surroundings& around) {
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
  result.strand_factor = reading->strand_factor;
  result.ambient_factor = *warmed;
  result.bundling_factor = *bundled;
  result.derated = result.base * reading->strand_factor * *warmed * *bundled;
  result.row = row_text(*reading);
  result.base_citation = reading->citation;
  result.strand_citation = marine ? &kMarineAmpacity : &kFineStrands;
  result.ambient_citation = marine && around.hot_space ? &kMarineHotSpace : &kAmbient;
  result.bundling_citation = marine ? &kMarineBundling : &kIecGrouping;
  return {result, NoAmpacity::table_ends};
}

std::optional<units::Amperes> road_vehicle_fuse_ceiling(const Conductor& size) {
  const Conductor* largest_metric = conductor_by_id("6mm2");
  const Conductor* largest_awg = conductor_by_id("10awg");
  const Conductor* largest = size.system == GaugeSystem::awg ? largest_awg : largest_metric;
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
