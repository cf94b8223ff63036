#include "guards.h"

#include <algorithm>
#include <array>

namespace judge {
namespace {

struct Gate {
  double percent, longest_s;
};

bool is_blade(GuardKind kind) { return kind == GuardKind::blade; }

// ISO 8820-3 type C and E, ISO 8820-5 bolted: longest times (the pack's gates; type E seen, bolted from memory, LOW).
const std::array<Gate, 5>& gates(GuardKind kind) {
  static const std::array<Gate, 5> blade{{{135, 600}, {160, 50}, {200, 5}, {350, 0.5}, {600, 0.15}}};
  static const std::array<Gate, 5> large{{{135, 1800}, {200, 60}, {350, 7}, {600, 1}, {600, 1}}};
  static const std::array<Gate, 5> bolted{{{135, 1800}, {200, 15}, {350, 5}, {600, 1}, {600, 1}}};
  if (is_blade(kind)) return blade;
  return kind == GuardKind::large_blade ? large : bolted;
}

}  // namespace

const std::vector<double>& ratings(GuardKind kind) {
  static const std::vector<double> blade{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40};
  static const std::vector<double> large{20, 25, 30, 35, 40, 50, 60, 70, 80, 100};
  static const std::vector<double> bolted{30,  35,  40,  50,  60,  70,  80,  90,  100, 125,
                                          150, 175, 200, 225, 250, 300, 350, 400};
  static const std::vector<double> breaker{5,  7.5, 10, 15, 20, 25,  30,  35,  40,
                                           50, 60,  70, 80, 90, 100, 120, 150, 200};
  if (kind == GuardKind::blade) return blade;
  if (kind == GuardKind::large_blade) return large;
  return kind == GuardKind::breaker ? breaker : bolted;
}

double guard_ohms(const Guard& guard, View view) {
  if (view == View::lenient || guard.amps <= 0) return 0;
  // Drop at rating: blades 84 to 176 mV typical, +-20 %; clips to 3 milliohm. Bolted some 80 to 100 mV. (Memory.)
  if (is_blade(guard.kind)) return 1.2 * (guard.amps <= 3 ? 0.176 : 0.133) / guard.amps + 0.003;
  return 0.120 / guard.amps + 0.0003;
}

double next_smaller(GuardKind kind, double amps) {
  double best = 0;
  for (const double rating : ratings(kind))
    if (rating < amps - 1e-9) best = rating;
  return best;
}

bool surely_opens(const Guard& guard, double amps, double seconds) {
  return std::ranges::any_of(gates(guard.kind), [&](const Gate& gate) {
    return amps >= guard.amps * gate.percent / 100.0 && seconds >= gate.longest_s;
  });
}

double fault_amps(const Battery& battery, View view) {
  // For 100 Ah, from memory: flooded 1500 to 3000 A, AGM 2500 to 4500, lithium 3000 to 8000; more Ah, more amps.
  const bool low = view == View::lenient;
  double each = low ? 1500 : 3000;
  if (battery.kind == Chemistry::agm || battery.kind == Chemistry::gel) each = low ? 2500 : 4500;
  if (battery.kind == Chemistry::lithium) each = low ? 3000 : 8000;
  return each * battery.amp_hours / 100.0;
}

double breaks(const Guard& guard, View view) {
  if (guard.breaking_amps > 0) return guard.breaking_amps;
  const bool best = view == View::lenient;  // by kind: from memory
  switch (guard.kind) {
    case GuardKind::blade:
    case GuardKind::large_blade: return 1000;
    case GuardKind::bolt_on: return best ? 6000 : 1000;
    case GuardKind::terminal_post: return best ? 10000 : 2000;
    case GuardKind::class_t: return 20000;
    case GuardKind::breaker: return best ? 10000 : 750;
  }
  return 0;
}

double highest_volts(double nominal_volts) {
  // Charging: 14.6 V for 12 V, so twice and four times that (ISO 16750-2 has 16 and 32 V as extremes).
  return nominal_volts / 12.0 * 14.6;
}

}  // namespace judge
