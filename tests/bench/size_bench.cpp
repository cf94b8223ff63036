// How long a whole answer takes, how that grows with the number of outlets, and how much memory it wants at
// most. Times on two machines do not compare: the growth does, fitted over the larger half of the counts.
// Prints the aims beside; judges nothing.
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <malloc.h>
#include <new>
#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "sizing/sizing.h"

// ---- memory: what is held now and at most, counted where it is asked for

namespace {
std::size_t held = 0, most_held = 0;

void* counted(std::size_t size) {
  void* memory = std::malloc(size);
  if (memory == nullptr) throw std::bad_alloc();
  held += malloc_usable_size(memory);
  most_held = std::max(most_held, held);
  return memory;
}
void released(void* memory) noexcept {
  if (memory == nullptr) return;
  held -= malloc_usable_size(memory);
  std::free(memory);
}
}  // namespace

void* operator new(std::size_t size) { return counted(size); }
void* operator new[](std::size_t size) { return counted(size); }
void operator delete(void* memory) noexcept { released(memory); }
void operator delete[](void* memory) noexcept { released(memory); }
void operator delete(void* memory, std::size_t) noexcept { released(memory); }
void operator delete[](void* memory, std::size_t) noexcept { released(memory); }

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t kCounts[] = {1, 3, 6, 12, 30, 60, 100, 200, 300};
constexpr std::size_t kFirstFitted = std::size(kCounts) / 2;   // the larger half
constexpr double kTotalA = 12.0;                               // shared out, so that every count has an answer
constexpr double kLengthM = 6.0;

struct Kind {
  const char* name;
  bool mixed;      // loads of every kind and size on a tree; else equal currents on a chain
  bool capped;     // half of the load at once
};
constexpr Kind kKinds[] = {
    {"equal loads on a chain, all at once", false, false},
    {"mixed loads on a tree, all at once", true, false},
    {"mixed loads on a tree, half of the load at once", true, true},   // the dear one
};

// ---- what is sized

void fit(circuit::Outlet& outlet, double run_m, circuit::LoadKind kind, double rating) {
  outlet.run.length = units::Metres(run_m);
  outlet.devices.front().load.kind = kind;
  outlet.devices.front().load.rating = rating;
}
void ask_minimum(circuit::Outlet& outlet, units::Volts least) { outlet.devices.front().load.minimum_voltage = least; }

circuit::Circuit made_of(std::size_t outlets, const Kind& kind) {
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.setting = circuit::Setting::fixed;
  made.outlets.clear();
  const double share = kTotalA / static_cast<double>(outlets);
  double total_a = 0.0;
  for (std::size_t i = 0; i < outlets; ++i) {
    circuit::Outlet outlet;
    outlet.id = circuit::OutletId{static_cast<std::uint32_t>(i + 1)};
    outlet.name = "Outlet";
    outlet.fed_from = circuit::OutletId{static_cast<std::uint32_t>(kind.mixed && i % 5 == 4 ? i - 1 : i)};
    const double rating = kind.mixed ? share * (0.5 + 0.1 * static_cast<double>(i % 10)) : share;
    fit(outlet, std::max(0.05, kLengthM / static_cast<double>(outlets)),
        kind.mixed ? static_cast<circuit::LoadKind>(i % 3) : circuit::LoadKind::constant_current, rating);
    if (kind.mixed && i % 4 == 0) ask_minimum(outlet, units::Volts(10.0));
    total_a += rating;
    made.outlets.push_back(outlet);
  }
  made.next_outlet_id = static_cast<std::uint32_t>(outlets + 1);
  if (kind.capped) made.at_most_at_once = units::Amperes(total_a / 2.0);
  return made;
}

// ---- how long, and how much

struct Cost {
  double ms = 0.0, megabytes = 0.0;
  std::size_t solves = 0;
  bool valid = false;
};

// The best of as many as a fifth of a second holds: what disturbs only adds. One is enough of what takes long.
Cost cost_of(const circuit::Circuit& circuit) {
  Cost cost;
  cost.ms = 1e300;
  const auto until = Clock::now() + std::chrono::milliseconds(200);
  const std::size_t before = held;
  most_held = held;
  do {
    const auto start = Clock::now();
    const sizing::Answer answer = sizing::size_circuit(circuit);
    cost.ms = std::min(cost.ms, std::chrono::duration<double, std::milli>(Clock::now() - start).count());
    cost.solves = answer.solves;
    cost.valid = answer.verdict != sizing::Verdict::invalid;
  } while (Clock::now() < until);
  cost.megabytes = static_cast<double>(most_held - before) / 1e6;
  return cost;
}

// Slope of log(value) over log(outlets), least squares.
double exponent(std::span<const std::size_t> outlets, std::span<const double> values) {
  double x_mean = 0.0, y_mean = 0.0, xy = 0.0, xx = 0.0;
  const double n = static_cast<double>(outlets.size());
  for (std::size_t i = 0; i < outlets.size(); ++i) {
    x_mean += std::log(static_cast<double>(outlets[i])) / n;
    y_mean += std::log(values[i]) / n;
  }
  for (std::size_t i = 0; i < outlets.size(); ++i) {
    const double x = std::log(static_cast<double>(outlets[i])) - x_mean;
    xy += x * (std::log(values[i]) - y_mean);
    xx += x * x;
  }
  return xy / xx;
}

double fitted(const std::vector<double>& values) {
  return exponent(std::span(kCounts).subspan(kFirstFitted), std::span(values).subspan(kFirstFitted));
}
double n_log_n() {
  std::vector<double> values;
  for (const std::size_t n : kCounts) values.push_back(static_cast<double>(n) * std::log2(static_cast<double>(n) + 1.0));
  return fitted(values);
}

bool print(const Kind& kind) {
  std::printf("Sizing, %s\n", kind.name);
  std::printf("  outlets   ms         x 6 outlets   networks solved   memory at most\n");
  std::vector<double> ms, megabytes;
  std::vector<std::size_t> solves;
  for (const std::size_t count : kCounts) {
    const Cost cost = cost_of(made_of(count, kind));
    if (!cost.valid) {
      std::printf("  %7zu   is no valid circuit: nothing was measured\n", count);
      return false;
    }
    ms.push_back(cost.ms);
    megabytes.push_back(cost.megabytes);
    solves.push_back(cost.solves);
  }
  const double six = ms[static_cast<std::size_t>(std::find(std::begin(kCounts), std::end(kCounts), 6u) - std::begin(kCounts))];
  for (std::size_t i = 0; i < ms.size(); ++i) {
    std::printf("  %7zu   %-10.3f %-13.2f %-17zu %.2f MB\n", kCounts[i], ms[i], ms[i] / six, solves[i], megabytes[i]);
  }
  std::printf("  growth from %zu outlets: time n^%.2f, memory n^%.2f (n log n would be n^%.2f)\n", kCounts[kFirstFitted], fitted(ms),
              fitted(megabytes), n_log_n());
  return true;
}

}  // namespace

int main() {
  std::printf("Aims: 6 outlets within 1 ms; 300 mixed outlets, half at once, within 60 ms and 12 MB; at most n log n\n");
  bool all = true;
  for (const Kind& kind : kKinds) all = print(kind) && all;
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf("The whole program held %.1f MB at most, code and all\n", static_cast<double>(used.ru_maxrss) / 1000.0);
  return all ? 0 : 1;
}
