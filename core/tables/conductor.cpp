#include "tables/conductor.h"

#include <array>
#include <cmath>

#include "tables/citation_list.h"

namespace tables {
namespace {

// 92^(1/39), the step between neighbouring gauges (ASTM B258), by Newton's rule, so that the
// ladder is made when the program is built.
constexpr double power(double base, int exponent) {
  double product = 1.0;
  for (int i = 0; i < exponent; ++i) product *= base;
  return product;
}
constexpr double gauge_step() {
  double step = 1.12;
  for (int i = 0; i < 20; ++i) step -= (power(step, 39) - 92.0) / (39.0 * power(step, 38));
  return step;
}
constexpr double kGaugeStep = gauge_step();
constexpr double kGauge36Mm = 0.127;
constexpr double kPi = 3.14159265358979323846;

// IEC 60028: annealed copper at 20 degC, ohm mm2 / m.
constexpr double kCopperResistivity = 1.0 / 58.0;
// Strands lie in a helix, so each is longer than the wire, and the wire's resistance is above
// that of a solid wire of the same copper. NEC Chapter 9 Table 8 prints 1.8 to 2.5 % more;
// 2 % lies within 0.5 % of all its rows.
constexpr double kStrandLay = 1.02;

// `gauge`: the AWG number; 1/0 to 4/0 are 0 to -3.
constexpr Conductor awg(std::string_view id, std::string_view size, int gauge) {
  const double diameter_mm = kGauge36Mm * power(kGaugeStep, 36 - gauge);
  const double area_mm2 = kPi / 4.0 * diameter_mm * diameter_mm;
  return {.system = GaugeSystem::awg,
          .id = id,
          .size = size,
          .area = units::SquareMillimetres(area_mm2),
          .resistance_20c = units::OhmsPerMetre(kCopperResistivity / area_mm2 * kStrandLay),
          .citation = &kAwgConductors};
}

constexpr Conductor metric(std::string_view id, std::string_view size, double area_mm2, double milliohm_per_m) {
  return {.system = GaugeSystem::metric,
          .id = id,
          .size = size,
          .area = units::SquareMillimetres(area_mm2),
          .resistance_20c = units::OhmsPerMetre(milliohm_per_m / 1000.0),
          .citation = &kMetricConductors};
}

constexpr std::array kAwg{
    awg("18awg", "18", 18),   awg("16awg", "16", 16),   awg("14awg", "14", 14),    awg("12awg", "12", 12),
    awg("10awg", "10", 10),   awg("8awg", "8", 8),      awg("6awg", "6", 6),       awg("4awg", "4", 4),
    awg("3awg", "3", 3),      awg("2awg", "2", 2),      awg("1awg", "1", 1),       awg("1/0awg", "1/0", 0),
    awg("2/0awg", "2/0", -1), awg("3/0awg", "3/0", -2), awg("4/0awg", "4/0", -3),
};

// Maximum resistance at 20 degC of class 5 plain copper, mohm/m.
constexpr std::array kMetric{
    metric("0.75mm2", "0.75", 0.75, 26.0),  // from memory; the rest seen
    metric("1mm2", "1", 1.0, 19.5),         metric("1.5mm2", "1.5", 1.5, 13.3),
    metric("2.5mm2", "2.5", 2.5, 7.98),     metric("4mm2", "4", 4.0, 4.95),
    metric("6mm2", "6", 6.0, 3.30),         metric("10mm2", "10", 10.0, 1.91),
    metric("16mm2", "16", 16.0, 1.21),      metric("25mm2", "25", 25.0, 0.780),
    metric("35mm2", "35", 35.0, 0.554),     metric("50mm2", "50", 50.0, 0.386),
    metric("70mm2", "70", 70.0, 0.272),     metric("95mm2", "95", 95.0, 0.206),
    metric("120mm2", "120", 120.0, 0.161),
};

constexpr double kSquareMmPerCircularMil = kPi / 4.0 * 0.0254 * 0.0254;

// `circular_mils`: the least a cable sold by this SAE number holds.
constexpr Conductor sae(std::string_view id, std::string_view size, double circular_mils) {
  const double area_mm2 = circular_mils * kSquareMmPerCircularMil;
  return {.system = GaugeSystem::sae,
          .id = id,
          .size = size,
          .area = units::SquareMillimetres(area_mm2),
          .resistance_20c = units::OhmsPerMetre(kCopperResistivity / area_mm2 * kStrandLay),
          .citation = &kSaeConductors};
}

constexpr std::array kSae{
    sae("18sae", "18", 1537),      sae("16sae", "16", 2336),      sae("14sae", "14", 3702),
    sae("12sae", "12", 5833),      sae("10sae", "10", 9343),      sae("8sae", "8", 14810),
    sae("6sae", "6", 24538),       sae("4sae", "4", 37360),       sae("2sae", "2", 62450),
    sae("1sae", "1", 77790),       sae("1/0sae", "1/0", 98980),   sae("2/0sae", "2/0", 125100),
    sae("3/0sae", "3/0", 158600),  sae("4/0sae", "4/0", 205500),
};

constexpr std::array kSystems{GaugeSystem::awg, GaugeSystem::metric, GaugeSystem::sae};

}  // namespace

std::span<const GaugeSystem> gauge_systems() { return kSystems; }

std::span<const Conductor> conductors(GaugeSystem system) {
  switch (system) {
    case GaugeSystem::awg: return kAwg;
    case GaugeSystem::metric: return kMetric;
    case GaugeSystem::sae: return kSae;
  }
  return {};
}

const Conductor* conductor_by_id(std::string_view id) {
  for (const GaugeSystem system : kSystems) {
    for (const Conductor& conductor : conductors(system)) {
      if (conductor.id == id) return &conductor;
    }
  }
  return nullptr;
}

std::string_view gauge_system_suffix(GaugeSystem system) {
  switch (system) {
    case GaugeSystem::awg: return "AWG";
    case GaugeSystem::metric: return "mm²";
    case GaugeSystem::sae: return "SAE";
  }
  return {};
}

units::OhmsPerMetre resistance_at(units::OhmsPerMetre at_20c, units::Celsius conductor) {
  constexpr double kPerKelvin = 0.00393;
  const units::Kelvins above = conductor - units::Celsius(20.0);
  return at_20c * (1.0 + kPerKelvin * above.number());
}

units::Millimetres awg_diameter(double gauge) {
  return units::Millimetres(kGauge36Mm * std::pow(kGaugeStep, 36.0 - gauge));
}
double awg_of_diameter(units::Millimetres diameter) {
  return 36.0 - std::log(diameter.number() / kGauge36Mm) / std::log(kGaugeStep);
}
units::SquareMillimetres area_of_diameter(units::Millimetres diameter) {
  return units::SquareMillimetres(kPi / 4.0 * diameter.number() * diameter.number());
}
units::Millimetres diameter_of_area(units::SquareMillimetres area) {
  return units::Millimetres(std::sqrt(4.0 / kPi * area.number()));
}
units::OhmsPerMetre solid_copper_20c(units::SquareMillimetres area) {
  return units::OhmsPerMetre(kCopperResistivity / area.number());
}

double adiabatic_k(units::Celsius start, units::Celsius final) {
  if (!(final > start)) return 0.0;  // no room to heat: nothing is withstood
  constexpr double kZeroResistance = 234.5;  // degC below zero at which copper's line meets 0 ohm
  return 226.0 * std::sqrt(std::log(1.0 + (final - start).number() / (kZeroResistance + start.number())));
}

}  // namespace tables
