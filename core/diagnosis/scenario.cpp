#include "diagnosis/scenario.h"

#include "diagnosis/judgement_constants.h"

namespace diagnosis {
namespace {

using network::Element;
using network::Side;

Edit series(Element element, int outlet, Side side, double ohm) {
  return {.kind = EditKind::series, .element = element, .outlet = outlet, .side = side, .ohm = ohm};
}

void add_sizes(std::vector<Sample>& into, std::span<const Size> sizes, Element element, int outlet, Side side,
               double share) {
  for (const Size& size : sizes) {
    Sample sample;
    sample.edits.add(series(element, outlet, side, size.value));
    sample.share = share * size.share;
    sample.spread = size.value < kOpenOhm;
    into.push_back(sample);
  }
}

// A splice has a port from the source, one to the tail, and one for each run that goes on. The wire in
// a port that fails is the start of what hangs on it.
std::vector<Sample> splice_ports(const Plant& plant, const Fault& fault, std::span<const Size> sizes) {
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

// A size that is no ohms in one element: `edit_of` makes the edit of it.
template <class EditOf>
std::vector<Sample> by_size(std::span<const Size> sizes, EditOf edit_of) {
  std::vector<Sample> samples;
  for (const Size& size : sizes) {
    Sample sample;
    sample.edits.add(edit_of(size.value));
    sample.share = size.share;
    sample.spread = true;
    samples.push_back(sample);
  }
  return samples;
}

}  // namespace

std::vector<Sample> samples_of(const Plant& plant, const Fault& fault) {
  const DamageRow& does = fault_row(fault.kind).does;
  const int k = plant.outlet_index(fault.outlet);
  const bool live = does.damage == Damage::fed_from_neighbour;
  std::vector<Sample> samples;
  switch (does.damage) {
    case Damage::nothing: return {Sample{}};
    case Damage::series: add_sizes(samples, does.sizes, does.element, k, fault.side, 1.0); return samples;
    case Damage::splice_ports: return splice_ports(plant, fault, does.sizes);
    case Damage::swapped: return one({.kind = EditKind::swap, .element = does.element, .outlet = k});
    case Damage::shorted: return one({.kind = EditKind::short_pair, .outlet = k});
    case Damage::fed_from_neighbour:
    case Damage::fed_from_dead_neighbour:
      return one({.kind = EditKind::refeed,
                  .outlet = k,
                  .ohm = plant.line_ohm(k),
                  .neighbour = fault.neighbour,
                  .live = live});
    case Damage::weak_source:
      return by_size(does.sizes, [&](double of_nominal) {
        return Edit{.kind = EditKind::weak_source,
                    .factor = judged(Judged::flat_source_ohms),
                    .emf_factor = of_nominal * plant.nominal_v() / plant.emf_v()};
      });
    case Damage::thin_runs:
      return by_size(does.sizes, [](double factor) { return Edit{.kind = EditKind::thin_runs, .factor = factor}; });
  }
  return {Sample{}};
}

}  // namespace diagnosis
