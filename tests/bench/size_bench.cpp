// How long a whole answer takes, and how that grows with the number of outlets. Printed as
// ratios to 6 outlets, since times on two machines do not compare. Judges nothing.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <vector>

#include "circuit/circuit.h"
#include "sizing/sizing.h"

namespace {

// A chain with side branches, mixed loads, a cap of half the total: the hard case.
circuit::Circuit comb(std::size_t outlets, bool capped) {
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.setting = circuit::Setting::fixed;
  made.outlets.clear();
  double total_a = 0.0;
  for (std::size_t i = 0; i < outlets; ++i) {
    circuit::Outlet outlet;
    outlet.id = circuit::OutletId{static_cast<std::uint32_t>(i + 1)};
    outlet.name = "Outlet";
    outlet.fed_from = circuit::OutletId{static_cast<std::uint32_t>(i % 5 == 4 ? i - 1 : i)};
    outlet.run.length = units::Metres(std::max(0.05, 6.0 / static_cast<double>(outlets)));
    outlet.devices.front().load.kind = static_cast<circuit::LoadKind>(i % 3);
    outlet.devices.front().load.rating = 12.0 / static_cast<double>(outlets) * (0.5 + 0.1 * static_cast<double>(i % 10));
    if (i % 4 == 0) outlet.devices.front().load.minimum_voltage = units::Volts(10.0);
    total_a += outlet.devices.front().load.rating;
    made.outlets.push_back(outlet);
  }
  made.next_outlet_id = static_cast<std::uint32_t>(outlets + 1);
  if (capped) made.at_most_at_once = units::Amperes(total_a / 2.0);
  return made;
}

double best_ms(const circuit::Circuit& circuit) {
  using Clock = std::chrono::steady_clock;
  double best = 1e300;
  const auto until = Clock::now() + std::chrono::milliseconds(600);
  int rounds = 0;
  if (sizing::size_circuit(circuit).verdict == sizing::Verdict::invalid) return 0.0;
  while (rounds < 3 || Clock::now() < until) {
    const auto start = Clock::now();
    [[maybe_unused]] const sizing::Answer answer = sizing::size_circuit(circuit);
    const auto end = Clock::now();
    best = std::min(best, std::chrono::duration<double, std::milli>(end - start).count());
    ++rounds;
  }
  return best;
}

}  // namespace

int main() {
  const std::vector<std::size_t> counts{1, 6, 30, 100, 300};
  for (const bool capped : {false, true}) {
    std::vector<double> ms;
    std::vector<std::size_t> solves;
    for (const std::size_t count : counts) {
      const circuit::Circuit circuit = comb(count, capped);
      ms.push_back(best_ms(circuit));
      solves.push_back(sizing::size_circuit(circuit).solves);
    }
    std::printf("Sizing, mixed loads in a tree, %s\n", capped ? "half of the load at once" : "all at once");
    std::printf("  outlets   ms      x 6 outlets   networks solved   growth exponent since the row above\n");
    for (std::size_t i = 0; i < counts.size(); ++i) {
      const double exponent =
          i == 0 ? 0.0
                 : std::log(ms[i] / ms[i - 1]) / std::log(static_cast<double>(counts[i]) / static_cast<double>(counts[i - 1]));
      std::printf("  %7zu   %-7.3f %-13.2f %-17zu %.2f\n", counts[i], ms[i], ms[i] / ms[1], solves[i], exponent);
    }
  }
  return 0;
}
