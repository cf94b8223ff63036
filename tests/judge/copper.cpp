#include "judge/copper.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <unordered_map>

namespace judge {
namespace {

// Annealed copper, IEC 60028: 1/58 ohm mm2/m at 20 C, 0.00393 per kelvin.
constexpr double kCopper = 1.0 / 58.0;
constexpr double kPerKelvin = 0.00393;
// Strand lay: NEC chapter 9 table 8 stands 1.8 to 2.5 % above solid wire of the same copper.
constexpr double kLayKind = 1.018, kLayHarsh = 1.025;
// NEC table 8, coated over uncoated: 1.03 to 1.063 (from memory).
constexpr double kTinKind = 1.03, kTinHarsh = 1.065;
// Copper-clad aluminium: 10 % copper 1.59 times copper's resistance, bare aluminium 1.64 (ASTM B566, from memory).
constexpr double kCladKind = 1.59, kCladHarsh = 1.64;
// Of copper's current, rounded down as tables of both metals stand to each other (IEC 60364-5-52, from memory).
constexpr double kCladCarries = 0.78;

struct AwgRow {
  const char* size;
  int number;                       // 1/0 is 0, 4/0 is -3
  double sae_circular_mils;         // SAE J1127 and J1128, least copper; 0: not made
  std::array<double, 7> boat_amps;  // 33 CFR 183.425 table 5 outside engine spaces: 60 75 80 90 105 125 200 C
};
constexpr std::array<AwgRow, 15> kAwg{{{"18", 18, 1537, {10, 10, 15, 20, 20, 25, 25}},
                                       {"16", 16, 2336, {15, 15, 20, 25, 25, 30, 35}},
                                       {"14", 14, 3702, {20, 20, 25, 30, 35, 40, 45}},
                                       {"12", 12, 5833, {25, 25, 35, 40, 45, 50, 55}},
                                       {"10", 10, 9343, {40, 40, 50, 55, 60, 70, 70}},
                                       {"8", 8, 14810, {55, 65, 70, 70, 80, 90, 100}},
                                       {"6", 6, 24538, {80, 95, 100, 100, 120, 125, 135}},
                                       {"4", 4, 37360, {105, 125, 130, 135, 160, 170, 180}},
                                       {"3", 3, 0, {120, 145, 150, 155, 180, 195, 210}},
                                       {"2", 2, 62450, {140, 170, 175, 180, 210, 225, 240}},
                                       {"1", 1, 77790, {165, 195, 210, 210, 245, 265, 280}},
                                       {"1/0", 0, 98980, {195, 230, 245, 245, 285, 305, 325}},
                                       {"2/0", -1, 125100, {225, 265, 285, 285, 330, 355, 370}},
                                       {"3/0", -2, 158600, {260, 310, 330, 330, 385, 410, 430}},
                                       {"4/0", -3, 205500, {300, 360, 385, 385, 445, 475, 510}}}};
constexpr std::array<double, 7> kBoatColumns{60, 75, 80, 90, 105, 125, 200};
// Table 5 inside engine spaces over outside: 105 C seen, the rest from memory.
constexpr std::array<double, 7> kEngine{0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.0};

struct MetricRow {
  const char* size;
  double mm2, plain, tinned;                   // IEC 60228 class 5, ohm/km at 20 C
  double class2;                               // what the building tables are made for; 0: not in them
  std::array<double, 2> b1, b2, c, c_british;  // IEC 60364-5-52, BS 7671; PVC 70 C and XLPE 90 C, two loaded
};
constexpr std::array<MetricRow, 14> kMetric{
    {{"0.75", 0.75, 26.0, 26.7, 0, {}, {}, {}, {}},
     {"1", 1, 19.5, 20.0, 18.1, {13.5, 17}, {13, 16}, {15, 18}, {15.5, 19}},
     {"1.5", 1.5, 13.3, 13.7, 12.1, {17.5, 23}, {16.5, 22}, {19.5, 24}, {20, 25}},
     {"2.5", 2.5, 7.98, 8.21, 7.41, {24, 31}, {23, 30}, {27, 33}, {27, 34}},
     {"4", 4, 4.95, 5.09, 4.61, {32, 42}, {30, 40}, {36, 45}, {37, 46}},
     {"6", 6, 3.30, 3.39, 3.08, {41, 54}, {38, 51}, {46, 58}, {47, 59}},
     {"10", 10, 1.91, 1.95, 1.83, {57, 75}, {52, 69}, {63, 80}, {65, 81}},
     {"16", 16, 1.21, 1.24, 1.15, {76, 100}, {69, 91}, {85, 107}, {87, 109}},
     {"25", 25, 0.780, 0.795, 0.727, {101, 133}, {90, 119}, {112, 138}, {114, 143}},
     {"35", 35, 0.554, 0.565, 0.524, {125, 164}, {111, 146}, {138, 171}, {141, 176}},
     {"50", 50, 0.386, 0.393, 0.387, {151, 198}, {133, 175}, {168, 209}, {182, 228}},
     {"70", 70, 0.272, 0.277, 0.268, {192, 253}, {168, 221}, {213, 269}, {234, 293}},
     {"95", 95, 0.206, 0.210, 0, {}, {}, {}, {}},
     {"120", 120, 0.161, 0.164, 0, {}, {}, {}, {}}}};

template <class Rows>
auto by_size(const Rows& rows) {
  std::unordered_map<std::string, decltype(rows.data())> map;
  for (const auto& row : rows) map[row.size] = &row;
  return map;
}
const AwgRow& american(const std::string& size) {
  static const auto rows = by_size(kAwg);
  return *rows.at(size);
}
const MetricRow& metric(const std::string& size) {
  static const auto rows = by_size(kMetric);
  return *rows.at(size);
}

double awg_mm2(int number) {  // ASTM B258
  const double d = 0.127 * std::pow(92.0, (36.0 - number) / 39.0);
  return std::numbers::pi / 4.0 * d * d;
}
double awg_mm2(const AwgRow& row) {
  static const auto areas = [] {
    std::array<double, kAwg.size()> made{};
    for (std::size_t i = 0; i < made.size(); ++i) made[i] = awg_mm2(kAwg[i].number);
    return made;
  }();
  return areas[static_cast<std::size_t>(&row - kAwg.data())];
}
double sae_mm2(const AwgRow& row) { return row.sae_circular_mils * std::numbers::pi / 4.0 * 0.0254 * 0.0254; }

// Ohm/km at 20 C of plain copper.
double plain_ohms(const Wire& wire, View view) {
  if (wire.gauge == Gauge::metric) return metric(wire.size).plain;
  return 1000.0 * kCopper / nominal_mm2(wire) * (view == View::sure_fault ? kLayKind : kLayHarsh);
}

struct Column {
  double amps = 0;  // of the wire asked for, at 30 C
  double rated_c = 0;
  double engine = 1;
  double two_core = 1;
  double strands = 1;
};

// The current of a wire between two rows: by heat it goes with the resistance to about -0.6; the kind view reads it so,
// the harsh one takes the row below. `ohms` and `amps` by row, thinnest first.
template <class Rows, class Ohms, class Amps>
double between_rows(const Rows& rows, double ohms, Ohms row_ohms, Amps row_amps, View view) {
  const auto* below = static_cast<decltype(&rows[0])>(nullptr);
  for (const auto& row : rows) {
    if (row_ohms(row) <= 0) continue;
    if (row_ohms(row) >= ohms * (1 - 1e-9)) {
      below = &row;
      continue;
    }
    if (below == nullptr || view == View::surely_right) break;
    const double part = std::log(row_ohms(*below) / ohms) / std::log(row_ohms(*below) / row_ohms(row));
    return row_amps(*below) * std::pow(row_amps(row) / row_amps(*below), part);
  }
  return below == nullptr ? 0.0 : row_amps(*below);
}

std::optional<Column> boat_column(const Wire& wire, double insulation_c, View view) {
  std::optional<std::size_t> c;
  for (std::size_t i = 0; i < kBoatColumns.size(); ++i) {
    if (kBoatColumns[i] <= insulation_c) c = i;
  }
  if (!c) return std::nullopt;
  Column read{.amps = 0, .rated_c = kBoatColumns[*c], .engine = kEngine[*c], .two_core = 0.9, .strands = 1};
  if (wire.gauge == Gauge::awg) {
    read.amps = american(wire.size).boat_amps[*c];
  } else {
    const auto ohms = [](const AwgRow& row) { return 1000.0 * kCopper / awg_mm2(row) * 1.02; };
    read.amps = between_rows(
        kAwg, plain_ohms(wire, View::sure_fault) * (wire.gauge == Gauge::sae ? 1.02 / kLayKind : 1), ohms,
        [&](const AwgRow& row) { return row.boat_amps[*c]; }, view);
  }
  return read;
}

std::optional<Column> building_column(const Wire& wire, const Place& place, View view) {
  if (place.insulation_c < 70) return std::nullopt;
  const std::size_t c = place.insulation_c >= 90 ? 1 : 0;
  const auto single = [&](const MetricRow& row) {
    return place.laying == Laying::conduit ? row.b1[c] : place.laying == Laying::clipped ? row.c[c] : row.c_british[c];
  };
  const auto pair = [&](const MetricRow& row) { return place.laying == Laying::conduit ? row.b2[c] : row.c[c]; };
  const double ohms = plain_ohms(wire, View::sure_fault) * (wire.gauge == Gauge::metric ? 1 : 1.02 / kLayKind);
  const auto row_ohms = [](const MetricRow& row) { return row.class2 > 0 ? row.plain : 0.0; };
  Column read{.amps = 0, .rated_c = c == 1 ? 90.0 : 70.0, .engine = 1, .two_core = 1, .strands = 1};
  const auto amps = [&](const MetricRow& row) { return wire.two_core ? pair(row) : single(row); };
  // IEC 60204-1 table 6, from memory: 0.75 mm2, PVC, air of 40 C; B1 8.6, B2 8.5, C 9.8 A. The kind view has it at
  // 30 C.
  const auto thinnest = [&] {
    const double printed = place.laying != Laying::conduit ? 9.8 : wire.two_core ? 8.5 : 8.6;
    return view == View::sure_fault ? printed * std::sqrt((70.0 - 30.0) / (70.0 - 40.0)) : printed;
  };
  if (wire.gauge == Gauge::metric && wire.size == "0.75") {
    read.amps = thinnest();
    if (view == View::surely_right) read.strands = std::sqrt(24.5 / 26.0);  // IEC 60228 class 2 and class 5
    return read;
  }
  if (wire.gauge == Gauge::metric && metric(wire.size).class2 > 0) {
    read.amps = amps(metric(wire.size));
    // The tables are for stiffer wire; fine strands of that name hold less copper, and warm as their resistance.
    read.strands = std::min(1.0, std::sqrt(metric(wire.size).class2 / metric(wire.size).plain));
    return read;
  }
  read.amps = between_rows(kMetric, ohms, row_ohms, amps, view);
  if (read.amps <= 0 && nominal_mm2(wire) >= 0.75) read.amps = thinnest();
  return read;
}

double bundle(const Place& place) {
  if (place.laying == Laying::boat_air) {  // 33 CFR 183.425 note 2, two conductors a circuit
    const int conductors = 2 * place.circuits_bundled;
    return conductors <= 2 ? 1.0 : conductors == 3 ? 0.7 : conductors <= 6 ? 0.6 : conductors <= 24 ? 0.5 : 0.4;
  }
  // IEC 60364-5-52 table B.52.17; between its rows the next more severe.
  constexpr std::array<std::pair<int, double>, 12> rows{{{1, 1.0},
                                                         {2, 0.8},
                                                         {3, 0.7},
                                                         {4, 0.65},
                                                         {5, 0.6},
                                                         {6, 0.57},
                                                         {7, 0.54},
                                                         {8, 0.52},
                                                         {9, 0.5},
                                                         {12, 0.45},
                                                         {16, 0.41},
                                                         {20, 0.38}}};
  for (const auto& [circuits, factor] : rows) {
    if (place.circuits_bundled <= circuits) return factor;
  }
  return 0;
}

}  // namespace

const std::vector<std::string>& sizes(Gauge gauge) {
  static const auto american_list = [](bool sae) {
    std::vector<std::string> list;
    for (const AwgRow& row : kAwg) {
      if (!sae || row.sae_circular_mils > 0) list.emplace_back(row.size);
    }
    return list;
  };
  static const std::vector<std::string> awg = american_list(false), sae = american_list(true);
  static const std::vector<std::string> square = [] {
    std::vector<std::string> list;
    for (const MetricRow& row : kMetric) list.emplace_back(row.size);
    return list;
  }();
  return gauge == Gauge::metric ? square : gauge == Gauge::sae ? sae : awg;
}

double nominal_mm2(const Wire& wire) {
  if (wire.gauge == Gauge::metric) return metric(wire.size).mm2;
  return wire.gauge == Gauge::sae ? sae_mm2(american(wire.size)) : awg_mm2(american(wire.size));
}

double ohms_per_metre(const Wire& wire, double metal_c, View view) {
  const bool kind = view == View::sure_fault;
  double ohms = plain_ohms(wire, view);
  if (wire.metal == Metal::clad) ohms *= kind ? kCladKind : kCladHarsh;
  if (wire.metal == Metal::tinned) {
    if (wire.gauge == Gauge::metric) ohms = metric(wire.size).tinned;
    else ohms *= kind ? kTinKind : kTinHarsh;
  }
  return ohms / 1000.0 * (1.0 + kPerKelvin * (metal_c - 20.0));
}

double carries(const Wire& wire, const Place& place, View view) {
  const auto column = place.laying == Laying::boat_air ? boat_column(wire, place.insulation_c, view)
                                                       : building_column(wire, place, view);
  if (!column) return 0;
  const double air = place.engine_space ? std::max(50.0, place.air_c) : place.air_c;  // the rule's engine space: 50 C
  if (air >= column->rated_c) return 0;
  // A cold place earns nothing: the kind view gives what the formula would.
  double warm = std::sqrt((column->rated_c - air) / (column->rated_c - 30.0));
  if (view == View::surely_right) warm = std::min(warm, 1.0);
  if (place.engine_space && view == View::surely_right) warm = std::min(warm, column->engine);
  const double kind_of_clad = view == View::sure_fault ? kCladKind : kCladHarsh;
  const double clad = view == View::surely_right ? kCladCarries : 1.0 / std::sqrt(kind_of_clad);
  const double metal = wire.metal == Metal::clad ? clad : 1.0;
  const double sheath = wire.two_core ? column->two_core : 1.0;
  return column->amps * warm * metal * sheath * column->strands * bundle(place);
}

std::optional<double> trailer_fuse(const Wire& wire, View view) {
  // NEC 552.10(E)(1), from memory (HIGH); for other gauges by area, and 5 A below 18 AWG (harsh view).
  constexpr std::array<std::pair<int, double>, 5> rows{{{18, 6}, {16, 8}, {14, 15}, {12, 20}, {10, 30}}};
  if (wire.gauge == Gauge::metric && view == View::sure_fault) return std::nullopt;  // the code has no metric sizes
  if (wire.gauge != Gauge::metric && american(wire.size).number < 10) return std::nullopt;
  if (wire.gauge != Gauge::metric && (wire.gauge == Gauge::awg || view == View::sure_fault)) {
    for (const auto& [number, amps] : rows) {
      if (number == american(wire.size).number) return amps;
    }
  }
  if (nominal_mm2(wire) > 6.0) return std::nullopt;
  double most = 5;
  for (const auto& [number, amps] : rows) {
    if (awg_mm2(number) <= nominal_mm2(wire)) most = amps;
  }
  return most;
}

double withstands(const Wire& wire, double insulation_c, View view) {
  // IEC 60364-5-54 annex A, copper: k = 226 sqrt(ln((234.5 + Tf) / (234.5 + Ti))); 160 C for PVC, 250 C for
  // cross-linked, which above 105 C it must be. Clad wire: aluminium's 148 and 228.
  const double end_c = insulation_c > 105 || (view == View::sure_fault && insulation_c >= 90) ? 250 : 160;
  const double zero = wire.metal == Metal::clad ? 228.0 : 234.5;
  const double k =
      (wire.metal == Metal::clad ? 148.0 : 226.0) * std::sqrt(std::log((zero + end_c) / (zero + insulation_c)));
  const double mm2 = nominal_mm2(wire);
  return k * k * mm2 * mm2;
}

double least_mm2(Vehicle vehicle, Gauge gauge, View view) {
  // 33 CFR 183.425: 16 AWG. ISO 10133 7.7: 1 mm2. NEC 552.10(B)(2): from 18 AWG, SAE types by their own 18.
  if (vehicle == Vehicle::boat) return gauge == Gauge::metric ? 0.999 : view == View::sure_fault ? 1.15 : 1.30;
  return gauge == Gauge::metric ? 0.749 : 0.77;
}

}  // namespace judge
