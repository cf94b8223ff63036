#include "volts.h"

#include <cmath>

namespace judge {
namespace {

constexpr int kRounds = 20000;

double drawn(const Draw& draw, double nominal, double volts) {
  switch (draw.law) {
    case Law::current: return draw.amps;
    case Law::power: return draw.amps * nominal / volts;
    case Law::resistive: return draw.amps * volts / nominal;
  }
  return 0;
}

}  // namespace

Volts solve(const Net& net, const std::vector<Draw>& draws, double nominal, double supply, View view) {
  const std::size_t count = net.legs.size();
  std::vector<double> ohms(count, 0);
  for (std::size_t n = 1; n < count; ++n) ohms[n] = leg_ohms(net.legs[n], view);
  Volts result;
  result.at.assign(count, supply);
  for (int round = 0; round < kRounds; ++round) {
    result.through.assign(count, 0);
    for (const Draw& draw : draws) {
      const auto node = static_cast<std::size_t>(draw.node);
      if (result.at[node] <= 0) return result;
      result.through[node] += drawn(draw, nominal, result.at[node]);
    }
    // A child's index is above its parent's: one pass inwards for the amps, one outwards for the volts.
    for (std::size_t n = count; n-- > 1;) result.through[static_cast<std::size_t>(net.legs[n].parent)] += result.through[n];
    double moved = 0;
    for (std::size_t n = 1; n < count; ++n) {
      const double volts = result.at[static_cast<std::size_t>(net.legs[n].parent)] - ohms[n] * result.through[n];
      moved = std::max(moved, std::abs(volts - result.at[n]));
      result.at[n] = volts;
    }
    if (moved < 1e-10 * supply) {
      result.settled = true;
      return result;
    }
  }
  return result;
}

}  // namespace judge
