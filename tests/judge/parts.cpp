#include "judge/parts.h"

#include <algorithm>
#include <array>
#include <map>
#include <span>

namespace judge {
namespace {

struct Gate {
  double times, holds_s, fast_s, slow_s;  // opens within: as most copies print it, and the slowest copy
};
constexpr double kNever = 1e9;
constexpr double kDays = 360000, kHours = 14400;

// ISO 8820-3 types C, F, E as transcribed from makers' sheets (2.0 seen twice); SF30 and SF51 strips, marine strip,
// post, class T (UL 248-15) and breakers from memory. `slow_s` keeps the slowest copy.
constexpr std::array<Gate, 6> kBlade{{{1.0, kDays, kNever, kNever},
                                      {1.35, 0.75, 600, 1800},
                                      {1.6, 0.25, 50, 50},
                                      {2.0, 0.15, 5, 5},
                                      {3.5, 0.04, 0.25, 0.5},
                                      {6.0, 0, 0.1, 0.15}}};
constexpr std::array<Gate, 5> kLarge{
    {{1.0, kDays, kNever, kNever}, {1.35, 60, 1800, 1800}, {2.0, 2, 50, 60}, {3.5, 0.2, 7, 7}, {6.0, 0.04, 1, 1}}};
constexpr std::array<Gate, 5> kBolted{
    {{1.0, kHours, kNever, kNever}, {1.35, 120, 1800, 1800}, {2.0, 1, 15, 15}, {3.5, 0.3, 5, 5}, {6.0, 0.1, 1, 1}}};
constexpr std::array<Gate, 6> kBreaker{{{1.0, kHours, kNever, kNever},
                                        {1.35, 60, 1800, 3600},
                                        {2.0, 8, 60, 120},
                                        {4.0, 1, 10, 20},
                                        {6.0, 0.4, 5, 8},
                                        {10, 0, 1, 2}}};
std::span<const Gate> gates(FuseKind kind) {
  if (kind == FuseKind::breaker) return kBreaker;
  if (kind == FuseKind::bolted || kind == FuseKind::bolted_80v) return kBolted;
  return kind == FuseKind::large_blade ? std::span<const Gate>(kLarge) : kBlade;
}

double cold_milliohms(double amps) {  // type C, makers' lists
  static const std::map<double, double> rows{{1, 123},  {2, 53.5}, {3, 31.1},  {4, 22.8},  {5, 17.85}, {7.5, 10.91},
                                             {10, 7.7}, {15, 4.8}, {20, 3.38}, {25, 2.52}, {30, 1.97}, {40, 1.44}};
  const auto row = rows.find(amps);
  return row == rows.end() ? 0 : row->second;
}
double drop_millivolts(double amps) {
  static const std::map<double, double> rows{{1, 176},  {2, 141},  {3, 137}, {4, 133}, {5, 128}, {7.5, 116},
                                             {10, 109}, {15, 102}, {20, 98}, {25, 92}, {30, 84}, {40, 96}};
  const auto row = rows.find(amps);
  return row == rows.end() ? 0 : row->second;
}

}  // namespace

const std::vector<double>& ratings(FuseKind kind) {
  static const std::vector<double> c{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40};
  static const std::vector<double> f{2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30};
  static const std::vector<double> e{20, 25, 30, 35, 40, 50, 60, 70, 80, 100};
  static const std::vector<double> strip{30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200};
  static const std::vector<double> v80{3, 4, 5, 7.5, 10, 15, 20, 25, 30};
  static const std::vector<double> none;
  switch (kind) {
    case FuseKind::blade: return c;
    case FuseKind::small_blade:
    case FuseKind::blade_58v: return f;
    case FuseKind::large_blade: return e;
    case FuseKind::bolted:
    case FuseKind::bolted_80v: return strip;
    case FuseKind::blade_80v: return v80;
    default: return none;
  }
}

double made_for_volts(FuseKind kind) {
  switch (kind) {
    case FuseKind::blade_58v: return 58;
    case FuseKind::blade_80v:
    case FuseKind::bolted_80v: return 80;
    default: return 32;
  }
}

double main_volts(FuseKind kind, View view) {
  switch (kind) {  // strips and breakers: 32 V, or 58 V by some makers
    case FuseKind::class_t: return 125;
    case FuseKind::terminal_post: return 58;
    case FuseKind::bolted:
    case FuseKind::large_bolted:
    case FuseKind::marine_bolted:
    case FuseKind::breaker: return view == View::sure_fault ? 58 : 32;
    default: return made_for_volts(kind);
  }
}

double breaks_amps(FuseKind kind, double volts, View view) {
  const bool kindly = view == View::sure_fault;  // makers' best
  switch (kind) {
    case FuseKind::bolted:
    case FuseKind::large_bolted: return volts <= 58 ? (kindly ? 2000 : 1000) : 0;
    case FuseKind::marine_bolted: return volts <= (kindly ? 58 : 32) ? 6000 : 0;
    case FuseKind::terminal_post:
      return volts <= 14.6 && kindly ? 10000 : volts <= 14 ? 10000 : volts <= 32 ? 5000 : volts <= 58 ? 2000 : 0;
    case FuseKind::class_t: return 20000;
    case FuseKind::breaker: return kindly ? 10000 : 1500;
    default: return kindly ? 2000 : 1000;
  }
}

double element_ohms(FuseKind kind, double amps, View view) {
  const bool kindly = view == View::sure_fault;
  if (amps <= 0) return 0;
  if (kind == FuseKind::blade && cold_milliohms(amps) > 0) {
    // Warm with 80 % of its rating for hours, the most it is chosen for: between cold and the drop at its rating.
    const double cold = cold_milliohms(amps) / 1000, hot = drop_millivolts(amps) / 1000 / amps;
    return (cold + (hot - cold) * 0.64) * (kindly ? 0.97 : 1.03);
  }
  if (kind == FuseKind::breaker) return (kindly ? 0.05 : 0.25) / amps;
  // Not listed: between the least and the most that listed ones lose at their rating (75 to 176 mV, cold 50).
  return (kindly ? 0.045 : 0.13) / amps;
}

double fuse_ohms(FuseKind kind, double amps, View view) {
  const bool kindly = view == View::sure_fault;
  double contacts = kindly ? 0.5e-3 : 1.6e-3;  // clips, 0.5 to 3 milliohm a fuse
  if (kind == FuseKind::large_blade) contacts = kindly ? 0.4e-3 : 0.8e-3;
  if (kind == FuseKind::blade) contacts = kindly ? 0.9e-3 : 1.1e-3;
  const bool clips = kind == FuseKind::blade || kind == FuseKind::small_blade || kind == FuseKind::large_blade ||
                     kind == FuseKind::blade_58v || kind == FuseKind::blade_80v;
  if (!clips) contacts = kindly ? 0.1e-3 : 0.3e-3;  // two rings, 0.05 to 0.3 each
  return contacts + element_ohms(kind, amps, view);
}

double opens_within_s(FuseKind kind, double rating, double amps, View view) {
  double slowest = -1;
  for (const Gate& gate : gates(kind)) {
    const double s = view == View::sure_fault ? gate.fast_s : gate.slow_s;
    if (amps >= gate.times * rating && s < kNever) slowest = s;
  }
  return slowest;
}

double holds_s(FuseKind kind, double rating, double amps) {
  for (const Gate& gate : gates(kind)) {
    if (amps * (1 + 1e-6) <= gate.times * rating) return gate.holds_s;  // on the very gate it may be either side
  }
  return 0;
}

double lets_through(FuseKind kind, double rating, double least, View view) {
  const auto all = gates(kind);
  const auto slow = [&](const Gate& gate) { return view == View::sure_fault ? gate.fast_s : gate.slow_s; };
  std::size_t at = all.size();  // the last gate that the least short passes
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (slow(all[i]) < kNever && all[i].times * rating <= least) at = i;
  }
  if (at == all.size()) return -1;
  const auto heat = [&](double times, const Gate& gate) { return times * rating * times * rating * slow(gate); };
  double most = heat(all.back().times, all.back());  // above it the melting energy stays
  for (; at + 1 < all.size(); ++at) most = std::max(most, heat(all[at + 1].times, all[at]));  // just below the next
  return most;
}

double part_amps(const Part& part, double wire_mm2) {
  if (!part.amps_by_wire) return part.amps;
  // UL 310, 6.3 mm tab: 18 AWG 7, 16 AWG 10, 14 AWG 15, 12 AWG 20, 10 AWG 24 A (from memory); 5 A below.
  constexpr std::array<std::pair<double, double>, 5> rows{
      {{0.822, 7}, {1.308, 10}, {2.08, 15}, {3.30, 20}, {5.25, 24}}};
  double most = 5;
  for (const auto& [mm2, amps] : rows) {
    if (wire_mm2 >= mm2) most = amps;
  }
  return std::min(part.amps, most);
}

bool takes(const Part& part, double wire_mm2, bool ferrule) {
  const double most = ferrule ? part.most_with_ferrule_mm2 : part.most_mm2;
  return wire_mm2 >= part.least_mm2 - 1e-6 && wire_mm2 <= most + 1e-6;
}

bool ohms_believable(const Part& part) {
  // Bands of good new joints, milliohm (reference 13, mostly from memory); sockets: friction contacts of a 30 A class
  // 0.55 seen, lighter forms more; what is wired in has only its own joint.
  double low = 0, high = 0;
  switch (part.kind) {
    case JointKind::screw: low = 0.05, high = 0.65; break;  // IEC 60999: 15 mV new at the test current
    case JointKind::tab: low = 0.3, high = 2; break;
    case JointKind::lever: low = 0.3, high = 1.5; break;
    case JointKind::twisted: low = 0.3, high = 1.5; break;
    case JointKind::crimp: low = 0.05, high = 0.5; break;
    case JointKind::ring: low = 0.05, high = 0.3; break;
    case JointKind::socket: low = 0.3, high = 3; break;
    case JointKind::connector: low = 0.1, high = 0.6; break;
    case JointKind::fixed_device: low = 0.05, high = 0.3; break;
  }
  return part.ohms >= low / 1000 * 0.999 && part.ohms <= high / 1000 * 1.001;
}

bool in_line_believable(const InLine& part) {
  // New switches 2 to 20 milliohm, holders 1 to 4, breakers 2 to 10 (from memory).
  const double most = part.kind == InLineKind::contact ? 20 : part.kind == InLineKind::fuse ? 4 : 10;
  return part.ohms >= 1e-3 && part.ohms <= most / 1000;
}

}  // namespace judge
