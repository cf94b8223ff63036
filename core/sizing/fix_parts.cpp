// Another clamp, splice, terminal or outlet, where the part is what stands in the way.
#include <algorithm>

#include "sizing/fixes_kit.h"
#include "sizing/judge.h"
#include "sizing/rules.h"
#include "sizing/words.h"

namespace sizing {
namespace {

using circuit::Circuit;
using tables::Part;
using tables::PartKind;

struct Need {
  const tables::Conductor& size;
  units::Amperes fuse;
  bool moves;
};

bool carries(const Part& part, const Need& need, bool ferrule, bool takes_wire) {
  if (part.kind == PartKind::splice && need.moves && !part.stands_vibration) return false;
  if (tables::part_rating_with(part, need.size.area) < need.fuse) return false;
  return !takes_wire || tables::part_accepts(part, need.size.area, ferrule);
}

// Only parts of the same sort replace an outlet: a socket for a socket.
bool same_sort(std::string_view a, std::string_view b) { return a.substr(0, a.find('-')) == b.substr(0, b.find('-')); }

const Part* smallest_that_carries(PartKind kind, const Need& need, bool ferrule, std::string_view like = {}) {
  for (const Part& part : tables::parts(kind)) {
    if (!like.empty() && !same_sort(part.key, like)) continue;
    if (carries(part, need, ferrule, kind != PartKind::outlet)) return &part;
  }
  return nullptr;
}

struct Change {
  Circuit circuit;
  std::string names;   // "Screw clamp, up to 16 mm²"
};
void name(Change& change, const Part& part) {
  if (change.names.find(part.name) != std::string::npos) return;
  if (!change.names.empty()) change.names += "; ";
  change.names += part.name;
}

void change_clamp(Change& change, const Need& need) {
  circuit::Wiring& wiring = change.circuit.wiring;
  const Part* now = tables::part_by_key(wiring.clamp_part);
  const bool rated = !wiring.clamp_rating || *wiring.clamp_rating >= need.fuse;
  if (rated && carries(*now, need, wiring.ferrule, true)) return;
  const Part* other = smallest_that_carries(PartKind::clamp, need, wiring.ferrule);
  if (other == nullptr) return;
  wiring.clamp_part = std::string(other->key);
  wiring.clamp_rating = std::nullopt;   // that was marked on the part taken out
  name(change, *other);
}

void change_splice(Change& change, const Need& need) {
  const Part* now = tables::part_by_key(change.circuit.wiring.splice_part);
  if (carries(*now, need, false, true)) return;
  const Part* other = smallest_that_carries(PartKind::splice, need, false);
  if (other == nullptr) return;
  change.circuit.wiring.splice_part = std::string(other->key);
  name(change, *other);
}

void change_terminals(Change& change, const Need& need) {
  for (circuit::Outlet& outlet : change.circuit.outlets) {
    const Part* now = tables::part_by_key(outlet.terminal_part);
    if (carries(*now, need, false, true)) continue;
    const Part* other = smallest_that_carries(PartKind::terminal, need, false);
    if (other == nullptr) continue;
    outlet.terminal_part = std::string(other->key);
    name(change, *other);
  }
}

void change_outlets(Change& change, const Need& need) {
  for (circuit::Outlet& outlet : change.circuit.outlets) {
    const Part* now = tables::part_by_key(outlet.outlet_part);
    if (outlet.rating.value_or(now->rated) >= need.fuse) continue;
    const Part* other = smallest_that_carries(PartKind::outlet, need, false, now->key);
    if (other == nullptr) continue;
    outlet.outlet_part = std::string(other->key);
    outlet.rating = std::nullopt;
    name(change, *other);
  }
}

std::optional<Fix> told(const Change& change, const tables::Conductor& size) {
  if (change.names.empty() || !serves(change.circuit, size)) return std::nullopt;
  Fix fix;
  fix.kind = FixKind::other_part;
  fix.measure = Measure::none;
  fix.title = "Other part";
  fix.detail = change.names + ".";
  fix.result = {change.circuit};
  return fix;
}

}  // namespace

std::optional<Fix> other_part_fix(const circuit::Circuit& circuit, const tables::Conductor& size,
                                  const Candidate& failing) {
  if (circuit.wiring.ferrule) {
    Circuit bare = circuit;
    bare.wiring.ferrule = false;
    if (serves(bare, size)) {
      Fix fix;
      fix.kind = FixKind::other_part;
      fix.measure = Measure::none;
      fix.title = "No ferrule";
      fix.detail = "Bare strands, all under the clamp.";
      fix.result = {std::move(bare)};
      return fix;
    }
  }
  const tables::FuseFamily& family = tables::fuse_family(circuit.wiring.fuse_family);
  const auto fuse = standard_fuse(family, failing.fuse_need * (1.0 - kRatingRounding));
  if (!fuse) return std::nullopt;
  const Need need{size, *fuse, circuit.setting != circuit::Setting::fixed};
  using ChangeOne = void (*)(Change&, const Need&);
  constexpr ChangeOne kinds[] = {change_clamp, change_splice, change_terminals, change_outlets};
  for (const ChangeOne change_one : kinds) {
    Change change{circuit, ""};
    change_one(change, need);
    if (auto fix = told(change, size)) return fix;
  }
  Change all{circuit, ""};
  for (const ChangeOne change_one : kinds) change_one(all, need);
  return told(all, size);
}

}  // namespace sizing
