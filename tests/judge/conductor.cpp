#include "conductor.h"

#include <array>
#include <cmath>
#include <map>
#include <numbers>

namespace judge {
namespace {

// Annealed copper at 20 C, IEC 60028: 1/58 ohm mm2/m, 0.00393 per kelvin.
constexpr double kCopper = 1.0 / 58.0;
constexpr double kPerKelvin = 0.00393;
// Strand lay: NEC chapter 9 table 8 stands 1.8 to 2.5 % above a solid wire of the same area.
constexpr double kLay = 1.025;
// NEC table 8 coated against uncoated: up to 6 %.
constexpr double kTinLenient = 1.0;
constexpr double kTinStrict = 1.065;
// Copper-clad aluminium, a tenth copper by area: some 62 to 66 % of copper's conductance. From memory.
constexpr double kCladLenient = 0.66;
constexpr double kCladStrict = 0.60;
// SAE J1128 wire has 88 to 95 % of the AWG copper (reference notes on J1128).
constexpr double kSaeLenient = 0.95;
constexpr double kSaeStrict = 0.88;

// 33 CFR 183.425 table 5, outside engine spaces, 30 C; columns 60, 75, 80, 90, 105, 125, 200 C.
constexpr std::array<double, 7> kColumns{60, 75, 80, 90, 105, 125, 200};
const std::map<std::string, std::array<double, 7>>& table5() {
  static const std::map<std::string, std::array<double, 7>> rows{
      {"18", {10, 10, 15, 20, 20, 25, 25}},
      {"16", {15, 15, 20, 25, 25, 30, 35}},
      {"14", {20, 20, 25, 30, 35, 40, 45}},
      {"12", {25, 25, 35, 40, 45, 50, 55}},
      {"10", {40, 40, 50, 55, 60, 70, 70}},
      {"8", {55, 65, 70, 70, 80, 90, 100}},
      {"6", {80, 95, 100, 100, 120, 125, 135}},
      {"4", {105, 125, 130, 135, 160, 170, 180}},
      {"3", {120, 145, 150, 155, 180, 195, 210}},
      {"2", {140, 170, 175, 180, 210, 225, 240}},
      {"1", {165, 195, 210, 210, 245, 265, 280}},
      {"1/0", {195, 230, 245, 245, 285, 305, 325}},
      {"2/0", {225, 265, 285, 285, 330, 355, 370}},
      {"3/0", {260, 310, 330, 330, 385, 410, 430}},
      {"4/0", {300, 360, 385, 385, 445, 475, 510}}};
  return rows;
}

// Metric: IEC 60228 class 5 plain and tinned at 20 C, ohm/km; two loaded single cores, PVC 70 C and XLPE 90 C, in a
// pipe (B) and on a surface (C), IEC 60364-5-52 / BS 7671 tables 4D1A and 4E1A. The 95 and 120 mm2 ampacities are from
// memory; 0.5 and 0.75 mm2 are 1 mm2's scaled by area to the 0.625 (computed).
struct MetricRow {
  double plain, tinned, pvc_b, pvc_c, xlpe_b, xlpe_c;
};
const std::map<std::string, MetricRow>& metric() {
  static const std::map<std::string, MetricRow> rows{
      {"0.5", {39.0, 40.1, 8.7, 10.0, 11.0, 12.3}},    {"0.75", {26.0, 26.7, 11.3, 12.9, 14.2, 15.9}},
      {"1", {19.5, 20.0, 13.5, 15.5, 17, 19}},         {"1.5", {13.3, 13.7, 17.5, 20, 23, 25}},
      {"2.5", {7.98, 8.21, 24, 27, 31, 34}},           {"4", {4.95, 5.09, 32, 37, 42, 46}},
      {"6", {3.30, 3.39, 41, 47, 54, 59}},             {"10", {1.91, 1.95, 57, 65, 75, 81}},
      {"16", {1.21, 1.24, 76, 87, 100, 109}},          {"25", {0.780, 0.795, 101, 114, 133, 143}},
      {"35", {0.554, 0.565, 125, 141, 164, 176}},      {"50", {0.386, 0.393, 151, 182, 198, 228}},
      {"70", {0.272, 0.277, 192, 234, 253, 293}},      {"95", {0.206, 0.210, 232, 284, 306, 355}},
      {"120", {0.161, 0.164, 269, 330, 354, 413}}};
  return rows;
}

// ASTM B258: 0.127 mm x 92^((36-n)/39); 1/0 is 0, 2/0 is -1.
int gauge_number(const std::string& size) {
  if (size.size() == 3 && size[1] == '/') return 1 - (size[0] - '0');
  return std::stoi(size);
}

double awg_area(const std::string& size) {
  const double d = 0.127 * std::pow(92.0, (36.0 - gauge_number(size)) / 39.0);
  return std::numbers::pi / 4.0 * d * d;
}

double heat_factor(double insulation_c, double ambient_c) {
  return ambient_c >= insulation_c ? 0.0 : std::sqrt((insulation_c - ambient_c) / (insulation_c - 30.0));
}

// 33 CFR 183.425 note 2, by current-carrying conductors.
double bundle_by_conductors(int conductors) {
  if (conductors <= 2) return 1.0;
  if (conductors == 3) return 0.7;
  if (conductors <= 6) return 0.6;
  return conductors <= 24 ? 0.5 : 0.4;
}

// IEC 60364-5-52 table B.52.17, by circuits (from memory, HIGH); between the rows the next more severe one.
double bundle_by_circuits(int circuits) {
  static const std::map<int, double> rows{{1, 1.0},  {2, 0.8},  {3, 0.7},  {4, 0.65},  {5, 0.6},   {6, 0.57},
                                          {7, 0.54}, {8, 0.52}, {9, 0.5},  {12, 0.45}, {16, 0.41}, {20, 0.38}};
  const auto row = rows.lower_bound(circuits);
  return row == rows.end() ? 0.38 : row->second;
}

double metal_ampacity(const Wire& wire, View view) {
  if (wire.metal != Metal::copper_clad_aluminium) return 1.0;
  return std::sqrt(view == View::lenient ? kCladLenient : kCladStrict);
}

double awg_ampacity(const Wire& wire, const Surround& around, Return back, View view) {
  std::size_t column = kColumns.size();
  for (std::size_t i = 0; i < kColumns.size(); ++i)
    if (kColumns[i] <= wire.insulation_c) column = i;
  if (column == kColumns.size()) return 0;
  double base = table5().at(wire.size)[column];
  if (wire.gauge == Gauge::sae) base *= std::sqrt(view == View::lenient ? kSaeLenient : kSaeStrict);
  const int each = back == Return::chassis && view == View::lenient ? 1 : 2;
  return base * heat_factor(kColumns[column], around.ambient_c) * bundle_by_conductors(each * around.bundled_circuits);
}

double metric_ampacity(const Wire& wire, const Surround& around, View view) {
  const MetricRow& row = metric().at(wire.size);
  const bool hot = wire.insulation_c >= 90;
  const double column = hot ? 90 : 70;
  double base = view == View::lenient ? (hot ? row.xlpe_c : row.pvc_c) : (hot ? row.xlpe_b : row.pvc_b);
  double rated = column;
  if (wire.insulation_c < 70) {  // not in the table: the same wire at its own lower temperature
    base *= std::sqrt((wire.insulation_c - 30.0) / 40.0);
    rated = wire.insulation_c;
  }
  return base * heat_factor(rated, around.ambient_c) * bundle_by_circuits(around.bundled_circuits);
}

}  // namespace

bool known(const Wire& wire) {
  return wire.gauge == Gauge::metric ? metric().contains(wire.size) : table5().contains(wire.size);
}

double copper_area(const Wire& wire) {
  if (wire.gauge == Gauge::metric) return 1000.0 * kCopper / metric().at(wire.size).plain;
  return awg_area(wire.size) * (wire.gauge == Gauge::sae ? kSaeStrict : 1.0);
}

double ohms_per_metre(const Wire& wire, View view) {
  const bool lenient = view == View::lenient;
  double ohms = 0;
  if (wire.gauge == Gauge::metric) {
    const MetricRow& row = metric().at(wire.size);
    // The standard's figure is the maximum; the copper bought may be some better.
    ohms = (wire.metal == Metal::tinned ? row.tinned : row.plain) / 1000.0 * (lenient ? 0.97 : 1.0);
  } else {
    const double share = wire.gauge == Gauge::sae ? (lenient ? kSaeLenient : kSaeStrict) : 1.0;
    ohms = kCopper / (awg_area(wire.size) * share) * (lenient ? 1.0 : kLay);
    if (wire.metal == Metal::tinned) ohms *= lenient ? kTinLenient : kTinStrict;
  }
  if (wire.metal == Metal::copper_clad_aluminium) ohms /= lenient ? kCladLenient : kCladStrict;
  return lenient ? ohms : ohms * (1.0 + kPerKelvin * (std::min(wire.insulation_c, 105.0) - 20.0));
}

double ampacity(const Wire& wire, const Surround& around, Return back, View view) {
  if (!known(wire)) return 0;
  const double amps = wire.gauge == Gauge::metric ? metric_ampacity(wire, around, view)
                                                  : awg_ampacity(wire, around, back, view);
  return amps * metal_ampacity(wire, view);
}

double trailer_ceiling(const Wire& wire) {
  // NEC 552.10(E)(1), formerly 551.10: from memory (HIGH).
  static const std::map<std::string, double> rows{{"18", 6}, {"16", 8}, {"14", 15}, {"12", 20}, {"10", 30}};
  if (wire.gauge == Gauge::metric) return kNoLimit;
  const auto row = rows.find(wire.size);
  return row == rows.end() ? kNoLimit : row->second;
}

const std::vector<std::string>& sizes(Gauge gauge) {
  static const std::vector<std::string> american{"18", "16", "14", "12", "10",  "8",   "6",
                                                 "4",  "3",  "2",  "1",  "1/0", "2/0", "3/0", "4/0"};
  static const std::vector<std::string> square{"0.5", "0.75", "1",  "1.5", "2.5", "4",  "6",  "10",
                                               "16",  "25",   "35", "50",  "70",  "95", "120"};
  return gauge == Gauge::metric ? square : american;
}

}  // namespace judge
