#include "diagnosis/scenario.h"

#include <array>

namespace diagnosis {
namespace {

using network::Element;
using network::Side;

struct Size {
  double ohm;
  double share;
};
// Log-uniform over each row's range, points a factor of about four apart. A joint that went bad far
// enough to be noticed, so none below the ohm or so that the usual load feels.
constexpr std::array<Size, 5> kPoorJoint{{{0.5, 0.2}, {2.0, 0.2}, {7.0, 0.2}, {25.0, 0.2}, {110.0, 0.2}}};
constexpr std::array<Size, 4> kLooseClamp{{{kOpenOhm, 0.4}, {2.0, 0.2}, {12.0, 0.2}, {80.0, 0.2}}};
constexpr std::array<Size, 4> kFeederJoint{{{0.15, 0.25}, {0.45, 0.25}, {1.3, 0.25}, {3.5, 0.25}}};
constexpr std::array<Size, 1> kOpen{{{kOpenOhm, 1.0}}};

Edit series(Element element, int outlet, Side side, double ohm) {
  return {.kind = EditKind::series, .element = element, .outlet = outlet, .side = side, .ohm = ohm};
}

template <class Sizes>
void add_sizes(std::vector<Sample>& into, const Sizes& sizes, Element element, int outlet, Side side, double share) {
  for (const Size& size : sizes) {
    Sample sample;
    sample.edits.add(series(element, outlet, side, size.ohm));
    sample.share = share * size.share;
    sample.spread = size.ohm < kOpenOhm;
    into.push_back(sample);
  }
}

// A splice has a port from the source, one to the tail, and one for each run that goes on. The wire in
// a port that fails is the start of what hangs on it.
template <class Sizes>
std::vector<Sample> splice_ports(const Plant& plant, const Fault& fault, const Sizes& sizes) {
  const int k = plant.outlet_index(fault.outlet);
  std::vector<int> onward;
  for (int o = 0; o < static_cast<int>(plant.outlets()); ++o) {
    if (plant.parent_outlet(o) == k) onward.push_back(o);
  }
  const double share = 1.0 / (2.0 + static_cast<double>(onward.size()));
  std::vector<Sample> samples;
  add_sizes(samples, sizes, Element::splice, k, fault.side, share);
  add_sizes(samples, sizes, Element::tail, k, fault.side, share);
  for (const int o : onward) add_sizes(samples, sizes, Element::wire, o, fault.side, share);
  return samples;
}

std::vector<Sample> one(const Edit& edit) {
  Sample sample;
  sample.edits.add(edit);
  return {sample};
}

std::vector<Sample> flat_source(const Plant& plant) {
  std::vector<Sample> samples;
  for (const double of_nominal : {0.73, 0.82, 0.90}) {
    Sample sample;
    sample.edits.add({.kind = EditKind::weak_source, .ohm = of_nominal * plant.nominal_v() / plant.emf_v(), .factor = 10.0});
    sample.share = 1.0 / 3.0;
    sample.spread = true;
    samples.push_back(sample);
  }
  return samples;
}

std::vector<Sample> thin_wire() {
  std::vector<Sample> samples;
  for (const double factor : {5.0, 9.0, 16.0}) {
    Sample sample;
    sample.edits.add({.kind = EditKind::thin_runs, .factor = factor});
    sample.share = 1.0 / 3.0;
    sample.spread = true;
    samples.push_back(sample);
  }
  return samples;
}

std::vector<Sample> sized(Element element, int outlet, Side side, std::span<const Size> sizes) {
  std::vector<Sample> samples;
  add_sizes(samples, sizes, element, outlet, side, 1.0);
  return samples;
}

}  // namespace

std::vector<Sample> samples_of(const Plant& plant, const Fault& fault) {
  const int k = plant.outlet_index(fault.outlet);
  switch (fault.kind) {
    case FaultKind::source_flat: return flat_source(plant);
    case FaultKind::main_open: return sized(Element::main_fuse, -1, Side::positive, kOpen);
    case FaultKind::feeder_resistive: return sized(Element::feeder, -1, fault.side, kFeederJoint);
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::overload: return sized(Element::fuse, -1, Side::positive, kOpen);
    case FaultKind::fuse_loose: return sized(Element::fuse_contact, -1, Side::positive, kLooseClamp);
    case FaultKind::clamp_loose: return sized(Element::clamp, -1, fault.side, kLooseClamp);
    case FaultKind::wire_open: return sized(Element::wire, k, fault.side, kOpen);
    case FaultKind::splice_open:
    case FaultKind::splice_on_insulation: return splice_ports(plant, fault, kOpen);
    case FaultKind::splice_resistive: return splice_ports(plant, fault, kPoorJoint);
    case FaultKind::pair_shorted: return one({.kind = EditKind::short_pair, .outlet = k});
    case FaultKind::tab_off: return sized(Element::terminal, k, fault.side, kOpen);
    case FaultKind::outlet_dead: return sized(Element::outlet_inside, k, fault.side, kOpen);
    case FaultKind::reversed_here: return one({.kind = EditKind::swap, .element = Element::terminal, .outlet = k});
    case FaultKind::reversed_from: return one({.kind = EditKind::swap, .element = Element::splice, .outlet = k});
    case FaultKind::wrong_branch:
    case FaultKind::wrong_branch_unfused:
      return one({.kind = EditKind::refeed, .outlet = k, .ohm = plant.line_ohm(k), .neighbour = fault.neighbour,
                  .live = fault.kind == FaultKind::wrong_branch});
    case FaultKind::wire_thin: return thin_wire();
    case FaultKind::device_dead:
    case FaultKind::opens_when_moved:
    case FaultKind::none_of_these: break;
  }
  return {Sample{}};   // the circuit is as it should be, seen from outside
}

}  // namespace diagnosis
