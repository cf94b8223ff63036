#include "network/load_law.h"

#include <algorithm>
#include <cmath>

namespace network {

double LoadLaw::content_w(double a_v, double b_v) const {
  if (a_v > b_v) return -content_w(b_v, a_v);
  double sum = 0.0;
  const double low = std::max(a_v, 0.0);
  const double knee = std::min(b_v, fold_v);
  if (knee > low) sum += 0.5 * folded_siemens() * (knee - low) * (knee + low);
  const double start = std::max(a_v, fold_v);
  if (b_v > start) {
    sum += law == Law::constant_power ? value * std::log1p((b_v - start) / start) : value * (b_v - start);
  }
  return sum;
}

double LoadLaw::volts_behind(double emf_v, double ohm) const {
  if (law == Law::resistance) return emf_v * value / (ohm + value);
  if (!constant() || !(value > 0.0)) return emf_v;
  double above_fold_v = emf_v - value * ohm;
  if (law == Law::constant_power) {
    const double root = emf_v * emf_v - 4.0 * value * ohm;
    above_fold_v = root >= 0.0 ? 0.5 * (emf_v + std::sqrt(root)) : 0.0;
  }
  return above_fold_v >= fold_v ? above_fold_v : emf_v / (1.0 + ohm * folded_siemens());
}

LoadLaw load_law(const circuit::Load& load, units::Volts nominal) {
  const double rated_a = circuit::rated_current(load, nominal).number();
  const double fold_v = fold_voltage(load, nominal).number();
  if (!(rated_a > 0.0)) return {Law::open, 0.0, fold_v};
  switch (load.kind) {
    case circuit::LoadKind::constant_current: return {Law::constant_current, rated_a, fold_v};
    case circuit::LoadKind::constant_power: return {Law::constant_power, rated_a * nominal.number(), fold_v};
    case circuit::LoadKind::resistive: return {Law::resistance, nominal.number() / rated_a, fold_v};
  }
  return {Law::open, 0.0, fold_v};
}

units::Volts fold_voltage(const circuit::Load& load, units::Volts nominal) {
  return load.minimum_voltage ? *load.minimum_voltage : nominal * kFoldsBelow;
}

}  // namespace network
