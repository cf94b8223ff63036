// Two circuits instead of one: a branch of the tree leaves from a fuse of its own.
#include <algorithm>

#include "circuit/limits.h"
#include "sizing/fixes_kit.h"
#include "sizing/words.h"
#include "units/format.h"

namespace sizing {
namespace {

using circuit::Circuit;
using circuit::Outlet;

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

// By outlet: what feeds it (kNone: the block) and what is rated there.
struct Shape {
  explicit Shape(const Circuit& circuit) {
    for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
      const auto feeds = [&](const Outlet& other) { return other.id == circuit.outlets[i].fed_from; };
      const auto at = std::find_if(circuit.outlets.begin(), circuit.outlets.end(), feeds);
      parent.push_back(at == circuit.outlets.end() ? kNone : static_cast<std::size_t>(at - circuit.outlets.begin()));
      rated_a.push_back(circuit::rated_current(circuit.outlets[i], circuit.supply.nominal).number());
    }
  }
  std::vector<std::size_t> parent;
  std::vector<double> rated_a;
};

// The part of a circuit whose outlets are wanted. An outlet whose feeder is not among them is
// fed straight from the block, over the whole way its wire had.
Circuit part_of(const Circuit& circuit, const std::vector<bool>& wanted, const Shape& shape) {
  Circuit part = circuit;
  part.outlets.clear();
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    if (!wanted[i]) continue;
    Outlet outlet = circuit.outlets[i];
    std::size_t above = shape.parent[i];
    while (above != kNone && !wanted[above]) {
      outlet.run.length += circuit.outlets[above].run.length;
      above = shape.parent[above];
    }
    outlet.fed_from = above == kNone ? circuit::kBlock : circuit.outlets[above].id;
    part.outlets.push_back(std::move(outlet));
  }
  return part;
}

// Both leave the same block, so they lie in the same bundle unless kept apart.
void count_bundle(Circuit& circuit) {
  const int most = static_cast<int>(circuit::limit(circuit::Field::circuits_bundled).high);
  circuit.wiring.around.circuits_bundled = std::min(most, circuit.wiring.around.circuits_bundled + 1);
}

std::string second_name(const std::string& name) {
  std::string shown = name;
  std::size_t characters = 0;
  std::size_t cut = 0;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    if ((static_cast<unsigned char>(shown[i]) & 0xC0U) == 0x80U) continue;  // inside a UTF-8 character
    if (characters == circuit::kMaxNameCharacters - 2) cut = i;
    ++characters;
  }
  if (characters > circuit::kMaxNameCharacters - 2) shown.resize(cut);
  return shown + " 2";
}

struct Cut {
  std::vector<bool> second;   // the outlets of the second circuit
  std::size_t named_after;
  bool alone;                 // that outlet and nothing else
};

std::vector<Cut> cuts(const Circuit& circuit, const Shape& shape) {
  const std::size_t count = circuit.outlets.size();
  std::vector<Cut> made;
  if (count < 2) return made;
  const auto heaviest = static_cast<std::size_t>(
      std::max_element(shape.rated_a.begin(), shape.rated_a.end()) - shape.rated_a.begin());
  Cut alone{std::vector<bool>(count, false), heaviest, true};
  alone.second[heaviest] = true;
  made.push_back(std::move(alone));
  for (std::size_t top = 0; top < count; ++top) {
    Cut cut{std::vector<bool>(count, false), top, false};
    cut.second[top] = true;
    std::size_t taken = 1;
    for (std::size_t i = top + 1; i < count; ++i) {
      cut.second[i] = shape.parent[i] != kNone && cut.second[shape.parent[i]];
      taken += cut.second[i] ? std::size_t{1} : std::size_t{0};
    }
    if (taken == count || (taken == 1 && top == heaviest)) continue;
    cut.alone = taken == 1;
    made.push_back(std::move(cut));
  }
  return made;
}

bool has_load(const Circuit& circuit) {
  return std::any_of(circuit.outlets.begin(), circuit.outlets.end(),
                     [](const Outlet& outlet) { return circuit::has_load(outlet); });
}

struct Split {
  Circuit first;
  Circuit second;
};
Split apart(const Circuit& circuit, const Shape& shape, const Cut& cut, bool bundled) {
  std::vector<bool> rest(cut.second.size());
  for (std::size_t i = 0; i < rest.size(); ++i) rest[i] = !cut.second[i];
  Split split{part_of(circuit, rest, shape), part_of(circuit, cut.second, shape)};
  const int last_position = static_cast<int>(circuit::limit(circuit::Field::fuse_position).high);
  split.second.name = second_name(circuit.name);
  split.second.fuse_position = circuit.fuse_position < last_position ? circuit.fuse_position + 1 : 1;
  if (bundled) {
    count_bundle(split.first);
    count_bundle(split.second);
  }
  return split;
}

Fix told(Split split, const Cut& cut, bool bundled, const Candidate& first, const Candidate& second) {
  Fix fix;
  fix.kind = FixKind::split;
  fix.measure = Measure::none;
  fix.title = "Split into two circuits";
  fix.detail = outlet_text(cut.named_after) + (cut.alone ? " on its own fuse: " : " and what it feeds on their own fuse: ") +
               units::amperes_text(*second.fuse) + ", the rest " + units::amperes_text(*first.fuse) + ".";
  fix.detail += bundled ? " Both fit, tied together." : " Both fit, if the two runs are kept apart.";
  fix.result = {std::move(split.first), std::move(split.second)};
  return fix;
}

}  // namespace

std::optional<Fix> split_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const Shape shape(circuit);
  const std::vector<Cut> all = cuts(circuit, shape);
  for (const bool bundled : {true, false}) {
    std::optional<Fix> best;
    double best_drop = 0.0;
    for (const Cut& cut : all) {
      Split split = apart(circuit, shape, cut, bundled);
      if (!has_load(split.first) || !has_load(split.second)) continue;
      const auto second = serves(split.second, size);
      if (!second) continue;
      const auto first = serves(split.first, size);
      if (!first) continue;
      const double drop = std::max(first->worst_drop_fraction, second->worst_drop_fraction);
      if (best && drop >= best_drop) continue;
      best_drop = drop;
      best = told(std::move(split), cut, bundled, *first, *second);
      if (&cut == &all.front()) break;   // one outlet moved is the least work
    }
    if (best) return best;
  }
  return std::nullopt;
}

}  // namespace sizing
