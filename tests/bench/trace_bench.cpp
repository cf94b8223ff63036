// How long the next check takes to choose, for 6 and for 30 outlets: the first one, and each later one
// as answers come in. Printed, never judged: milliseconds are this machine's, the ratio to the sizing of the
// same circuit in the same run travels better. Aim: 20 ms natively.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "diagnosis/tracer.h"
#include "sizing/sizing.h"

namespace {

using Clock = std::chrono::steady_clock;

double ms_since(Clock::time_point start) { return std::chrono::duration<double, std::milli>(Clock::now() - start).count(); }

diagnosis::Case chain(std::size_t outlets) {
  diagnosis::Case made = diagnosis::generic_case(tables::GaugeSystem::awg);
  const circuit::Outlet pattern = made.circuit.outlets.back();
  made.circuit.outlets.clear();
  for (std::size_t i = 0; i < outlets; ++i) {
    circuit::Outlet outlet = pattern;
    outlet.id = circuit::OutletId{static_cast<std::uint32_t>(i + 1)};
    outlet.fed_from = circuit::OutletId{static_cast<std::uint32_t>(i)};
    outlet.run.length = units::Metres(0.5);
    outlet.devices.front().load.rating = 0.3;
    made.circuit.outlets.push_back(outlet);
  }
  made.circuit.next_outlet_id = static_cast<std::uint32_t>(outlets + 1);
  made.complaint = {diagnosis::Symptom::one_dead, {made.circuit.outlets.back().id}};
  made.tools = {true, true, true, true};
  return made;
}

struct Times {
  double first = 0.0;              // the model built, and the first check chosen
  std::vector<double> later;       // an answer taken, and the next check chosen
};

// The likeliest answer every time, or the least likely one: short traces and long ones.
Times follow(const diagnosis::Case& the_case, bool likely) {
  constexpr int kMostChecks = 12;
  Times times;
  auto start = Clock::now();
  diagnosis::Tracer tracer(the_case);
  diagnosis::Advice advice = tracer.next();
  times.first = ms_since(start);
  for (int step = 0; step < kMostChecks && advice.check; ++step) {
    const auto by_chance = [](const diagnosis::Outlook& a, const diagnosis::Outlook& b) { return a.probability < b.probability; };
    const auto picked = likely ? std::max_element(advice.outlooks.begin(), advice.outlooks.end(), by_chance)
                               : std::min_element(advice.outlooks.begin(), advice.outlooks.end(), by_chance);
    const diagnosis::Answer answer = diagnosis::word(picked->key);
    start = Clock::now();
    tracer.observe(advice.check->id, answer);
    advice = tracer.next();
    times.later.push_back(ms_since(start));
  }
  return times;
}

double at(std::vector<double> values, double part) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  return values[std::min(values.size() - 1, static_cast<std::size_t>(part * static_cast<double>(values.size())))];
}

double sizing_ms(const circuit::Circuit& circuit) {
  std::vector<double> all;
  for (int round = 0; round < 9; ++round) {
    const auto start = Clock::now();
    [[maybe_unused]] const sizing::Answer answer = sizing::size_circuit(circuit);
    all.push_back(ms_since(start));
  }
  return at(all, 0.5);
}

}  // namespace

int main() {
  constexpr int kRounds = 5;
  std::printf("Next check, every tool in hand, one outlet dead at the end of a chain\n");
  std::printf("  outlets   first ms   later ms: median   worst   x sizing (median)   checks timed\n");
  for (const std::size_t outlets : {std::size_t{3}, std::size_t{6}, std::size_t{30}}) {
    const diagnosis::Case the_case = chain(outlets);
    std::vector<double> first, later;
    for (int round = 0; round < kRounds; ++round) {
      const Times times = follow(the_case, round % 2 == 0);
      first.push_back(times.first);
      later.insert(later.end(), times.later.begin(), times.later.end());
    }
    std::printf("  %7zu   %-8.1f   %-16.1f   %-5.1f   %-17.1f   %zu\n", outlets, at(first, 0.5), at(later, 0.5), at(later, 1.0),
                at(later, 0.5) / sizing_ms(the_case.circuit), later.size());
  }
  return 0;
}
