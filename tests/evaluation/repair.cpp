// What a remedy puts right when it is carried out as told, and when an installation is sound.
#include <algorithm>
#include <cmath>

#include "evaluation/world.h"
#include "network/probe.h"

namespace evaluation {
namespace {

using diagnosis::FaultKind;
using diagnosis::SpotKind;
using network::Law;

constexpr double kWholeFuseHolds = 1.15;   // times its rating, for as long as one waits

}  // namespace

bool puts_right(const diagnosis::Remedy& remedy, const TrueFault& fault) {
  using R = diagnosis::RemedyKind;
  using enum FaultKind;
  const FaultKind kind = fault.kind;
  const bool same_outlet = remedy.fault.outlet == fault.outlet;
  const bool same_side = same_outlet && remedy.fault.side == fault.side;
  switch (remedy.kind) {
    case R::charge_source: return kind == source_flat;
    case R::restore_main: return kind == main_open;
    case R::remake_feeder_joint: return kind == feeder_resistive && same_side;
    // A good fuse pushed home in our position cures whatever ailed the old one there.
    case R::fit_fuse: return kind == fuse_blown || kind == fuse_missing || kind == fuse_elsewhere || kind == fuse_loose;
    case R::move_fuse: return kind == fuse_elsewhere;
    case R::seat_fuse: return kind == fuse_loose;
    case R::remake_clamp: return kind == clamp_loose && same_side;
    case R::replace_run: return kind == wire_open && same_side;
    case R::remake_splice:
      return same_side && (kind == splice_open || kind == splice_resistive || kind == splice_on_insulation ||
                           kind == opens_when_moved);
    case R::clear_short: return kind == pair_shorted && same_outlet;
    case R::shed_load: return kind == overload;
    case R::refit_tab: return kind == tab_off && same_side;
    case R::replace_outlet: return kind == outlet_dead && same_outlet;
    case R::replace_device: return kind == device_dead;
    case R::swap_at_tabs: return kind == reversed_here && same_outlet;
    case R::swap_at_splice: return kind == reversed_from && same_outlet;
    case R::reconnect_pair:
      return (kind == wrong_branch || kind == wrong_branch_unfused) && same_outlet &&
             remedy.fault.neighbour == fault.neighbour;
    case R::thicker_wire: return kind == wire_thin;
    case R::look_further: return false;
  }
  return false;
}

bool World::repair(const diagnosis::Remedy& remedy) {
  using R = diagnosis::RemedyKind;
  const auto leaf = [&](OutletId outlet) { return circuit::fed_by(case_.circuit, outlet).empty(); };
  const auto cured = [&](const TrueFault& fault) {
    if (puts_right(remedy, fault)) return true;
    // At the last outlet of a chain, tabs and splices are as good as each other to change over.
    const bool swapped = remedy.kind == R::swap_at_tabs || remedy.kind == R::swap_at_splice;
    const bool reversed = fault.kind == FaultKind::reversed_here || fault.kind == FaultKind::reversed_from;
    return swapped && reversed && remedy.fault.outlet == fault.outlet && leaf(fault.outlet);
  };
  const std::size_t before = faults_.size();
  std::erase_if(faults_, cured);
  return faults_.size() < before;
}

bool World::sound() const {
  if (device_is_dead()) return false;
  World healthy = *this;
  healthy.faults_.clear();
  Setup usual;
  usual.all_usual_loads = true;
  if (fuse_current_a(usual) > std::max(kWholeFuseHolds * fuse_a(), 1.05 * healthy.fuse_current_a(usual))) {
    return false;
  }
  Device test;
  test.law = {{}, {}, Law::resistance, nominal_v() / 2.0, 0.0, 0.0};   // 2 A
  for (const circuit::Outlet& outlet : case_.circuit.outlets) {
    for (const bool moved : {false, true}) {
      Setup setup;
      setup.moved = moved;
      setup.load_at = outlet.id;
      setup.load = test.law;
      const diagnosis::Spot red{SpotKind::contact, outlet.id, Side::positive};
      const diagnosis::Spot black{SpotKind::contact, outlet.id, Side::negative};
      const double volts = across(setup, red, black, network::kMeterInputOhm);
      if (volts < 0.97 * healthy.across(setup, red, black, network::kMeterInputOhm)) return false;
      setup.fuse_in = false;   // nothing may come from elsewhere
      if (std::abs(across(setup, red, black, network::kMeterInputOhm)) > 0.5) return false;
    }
  }
  return true;
}

}  // namespace evaluation
