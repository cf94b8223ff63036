#include "calculators/gauge.h"

namespace calculators {
namespace {

const tables::Conductor* not_thinner(tables::GaugeSystem system, units::SquareMillimetres area) {
  constexpr double kRounding = 1e-6;   // 6 mm2 typed is 6 mm2 listed
  for (const tables::Conductor& size : tables::conductors(system)) {
    if (size.area.number() >= area.number() * (1.0 - kRounding)) return &size;
  }
  return nullptr;
}

}  // namespace

Gauge from_diameter(units::Millimetres diameter, units::Celsius metal) {
  Gauge gauge;
  gauge.diameter = diameter;
  gauge.awg = tables::awg_of_diameter(diameter);
  gauge.area = tables::area_of_diameter(diameter);
  gauge.solid = tables::resistance_at(tables::solid_copper_20c(gauge.area), metal);
  gauge.not_thinner_awg = not_thinner(tables::GaugeSystem::awg, gauge.area);
  gauge.not_thinner_metric = not_thinner(tables::GaugeSystem::metric, gauge.area);
  return gauge;
}
Gauge from_awg(double awg, units::Celsius metal) { return from_diameter(tables::awg_diameter(awg), metal); }
Gauge from_area(units::SquareMillimetres area, units::Celsius metal) {
  return from_diameter(tables::diameter_of_area(area), metal);
}

}  // namespace calculators
