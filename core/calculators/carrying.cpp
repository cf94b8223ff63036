#include "calculators/carrying.h"

#include "sizing/protection.h"
#include "sizing/rules.h"

namespace calculators {

tables::AmpacityResult most_current(const tables::Conductor& wire, const Lie& lie) {
  return tables::ampacity(lie.table.value_or(tables::default_ampacity_table(wire.system)), wire, lie.around);
}

std::optional<Ceiling> fuse_ceiling(const tables::Conductor& wire, const Lie& lie) {
  const tables::AmpacityResult carries = most_current(wire, lie);
  if (!carries.value) return std::nullopt;
  Ceiling ceiling{carries.value->derated, carries.value->base_citation, false};
  const bool road = lie.setting == circuit::Setting::van || lie.setting == circuit::Setting::trailer;
  const std::optional<units::Amperes> printed = tables::road_vehicle_fuse_ceiling(wire);
  if (road && printed && *printed < ceiling.most) {
    ceiling = {*printed, &tables::road_vehicle_ceiling_citation(), true};
  }
  return ceiling;
}

FusePick fuse_for(const tables::Conductor& wire, units::Amperes load, const Lie& lie) {
  FusePick pick;
  pick.least = load * sizing::kFuseMargin;
  pick.ceiling = fuse_ceiling(wire, lie);
  const tables::FuseFamily& family = tables::fuse_family(lie.family);
  const std::optional<units::Amperes> smallest = sizing::standard_fuse(family, pick.least);
  pick.family_ends = !smallest;
  if (!pick.ceiling) return pick;
  if (smallest && *smallest <= pick.ceiling->most) pick.fuse = smallest;
  for (const double rating : family.ratings_a) {
    if (rating <= pick.ceiling->most.number()) pick.largest = units::Amperes(rating);
  }
  return pick;
}

}  // namespace calculators
