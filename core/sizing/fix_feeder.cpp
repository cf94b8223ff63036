// A thicker feeder, a larger main fuse, or both, where the way from the battery to the block is
// what stands in the way.
#include <algorithm>

#include "sizing/fixes_kit.h"
#include "sizing/words.h"
#include "tables/fuse.h"
#include "units/format.h"

namespace sizing {
namespace {

using circuit::Circuit;

// Sizes thicker than the feeder that is there, of its own list.
std::vector<const tables::Conductor*> thicker_feeders(const Circuit& circuit) {
  std::vector<const tables::Conductor*> sizes;
  const tables::Conductor* now = tables::conductor_by_id(circuit.supply.feeder_size);
  if (now == nullptr || circuit.supply.feeder_run <= units::Metres(0.0)) return sizes;
  for (const tables::Conductor& size : tables::conductors(circuit.wiring.gauge)) {
    if (size.area > now->area) sizes.push_back(&size);
  }
  return sizes;
}

Fix made(const Circuit& circuit, const Candidate& candidate, std::string title) {
  Fix fix;
  fix.kind = FixKind::feeder;
  fix.value = circuit.supply.main_fuse.number();
  fix.measure = Measure::amperes;
  fix.title = std::move(title);
  fix.detail = "Battery to block, one way " + units::length_text(circuit.supply.feeder_run, units::Preference::metric) +
               "; for every circuit of this block. Here fit a " + fuse_text(*candidate.fuse) + ".";
  fix.result = {circuit};
  return fix;
}

std::optional<Fix> with_main_fuse(Circuit circuit, const tables::Conductor& size, const std::string& title) {
  const tables::FuseFamily& family = tables::fuse_family(circuit.supply.main_fuse_kind);
  const units::Amperes now = circuit.supply.main_fuse;
  for (const double rating : family.ratings_a) {
    if (rating <= now.number()) continue;
    circuit.supply.main_fuse = units::Amperes(rating);
    if (const auto candidate = serves(circuit, size)) {
      return made(circuit, *candidate, title + units::amperes_text(circuit.supply.main_fuse));
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Fix> feeder_fix(const Circuit& circuit, const tables::Conductor& size, const Candidate& failing) {
  const bool in_the_way = std::any_of(failing.judgements.begin(), failing.judgements.end(), [](const Judgement& j) {
    return !j.passes && (j.criterion == Criterion::feeder || j.criterion == Criterion::feeder_drop ||
                         j.criterion == Criterion::drop || j.criterion == Criterion::device_minimum);
  });
  if (!in_the_way) return std::nullopt;
  const auto feeders = thicker_feeders(circuit);
  const auto with_feeder = [&](const tables::Conductor& feeder) {
    Circuit changed = circuit;
    changed.supply.feeder_size = std::string(feeder.id);
    changed.supply.feeder_metal = tables::WireMetal::copper;
    return changed;
  };
  for (const tables::Conductor* feeder : feeders) {
    const Circuit changed = with_feeder(*feeder);
    if (const auto candidate = serves(changed, size)) return made(changed, *candidate, "Thicker feeder: " + size_text(*feeder));
  }
  if (circuit.supply.main_fuse <= units::Amperes(0.0)) return std::nullopt;
  if (auto fix = with_main_fuse(circuit, size, "Main fuse of ")) return fix;
  for (const tables::Conductor* feeder : feeders) {
    const std::string title = "Feeder of " + size_text(*feeder) + ", main fuse of ";
    if (auto fix = with_main_fuse(with_feeder(*feeder), size, title)) return fix;
  }
  return std::nullopt;
}

}  // namespace sizing
