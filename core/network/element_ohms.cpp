#include "network/element_ohms.h"

#include <algorithm>
#include <string_view>

#include "network/assumed.h"
#include "tables/fuse.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "units/expect.h"

namespace network::detail {
namespace {

// No element is smaller than what a network takes (netlist.h): a bare run of no length still is metal.
double at_least_smallest(double ohm) { return std::max(ohm, kSmallestOhm); }

double wire_ohm(const tables::Conductor& size, tables::WireMetal metal, units::Metres length,
                units::Celsius temperature) {
  return at_least_smallest((tables::resistance_at(tables::resistance_20c(size, metal), temperature) * length).number());
}

double part_ohm(std::string_view key) {
  const tables::Part* part = tables::part_by_key(key);
  BRANCHLIGHT_EXPECT(part != nullptr);  // validate() has seen to it
  return at_least_smallest(part != nullptr ? part->typical_resistance.number() : 0.0);
}

// The element warm with 80 % of its rated current, the most that it is chosen to carry for hours.
constexpr double kCarriedShare = 0.8;
double element_ohm(const tables::FuseFamily& family, units::Amperes rating) {
  if (!(rating > units::Amperes(0.0))) return at_least_smallest(fuse_element(rating).number());
  return at_least_smallest(tables::fuse_resistance(family, rating, rating * kCarriedShare).number());
}

double emf_of(const circuit::Supply& supply, const tables::BatteryKind& kind, BatteryState state) {
  const double in_series = tables::blocks_in_series(supply.nominal);
  switch (state) {
    case BatteryState::resting: return supply.resting ? supply.resting->number() : kind.resting.number() * in_series;
    case BatteryState::low: return supply.low ? supply.low->number() : kind.low.number() * in_series;
    case BatteryState::charging: break;
  }
  if (supply.highest) return supply.highest->number();
  return kind.charging.number() * in_series;
}

void set_supply(ElementOhms& ohms, const circuit::Supply& supply, units::Celsius temperature, BatteryState state) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  BRANCHLIGHT_EXPECT(kind != nullptr && feeder != nullptr);  // validate() has seen to it
  if (kind != nullptr) {
    ohms.emf_v = emf_of(supply, *kind, state);
    const double typical = kind->internal_resistance.number() * tables::blocks_in_series(supply.nominal);
    ohms.battery = at_least_smallest(supply.internal_resistance ? supply.internal_resistance->number() : typical);
  }
  const tables::FuseFamily& main = tables::fuse_family(supply.main_fuse_kind);
  if (supply.main_fuse.number() > 0.0) {
    ohms.main_fuse = element_ohm(main, supply.main_fuse) + main.contact_resistance.number();
  }
  if (supply.disconnect) ohms.disconnect = in_line_contact(circuit::InLineKind::toggle).number();
  const double metal =
      feeder != nullptr ? wire_ohm(*feeder, supply.feeder_metal, supply.feeder_run, temperature) : kSmallestOhm;
  ohms.feeder = metal + 2.0 * feeder_lug().number();
  ohms.bus = bus_joint().number();
}

// Whatever is fitted to the runs whose wire is not told.
const tables::Conductor& wire_of(const circuit::Run& run, const Fitted& fitted) {
  const tables::Conductor* own = run.size ? tables::conductor_by_id(*run.size) : nullptr;
  return own != nullptr ? *own : *fitted.size;
}

OutletOhms outlet_ohms(const circuit::Circuit& circuit, const circuit::Outlet& outlet, const Fitted& fitted) {
  const circuit::Wiring& wiring = circuit.wiring;
  const circuit::Run& run = outlet.run;
  const tables::Conductor& size = wire_of(run, fitted);
  OutletOhms own;
  for (const circuit::InLine& part : run.in_line) {
    const bool fused = part.kind == circuit::InLineKind::fuse;
    const double element = fused ? element_ohm(tables::fuse_family(wiring.fuse_family), part.rating) : 0.0;
    own.in_line.push_back(in_line_contact(part.kind).number() + element);
  }
  own.wire = wire_ohm(size, run.metal, run.length, wiring.wire_temperature);
  own.back = run.back == circuit::ReturnPath::chassis ? chassis_return().number() : own.wire;
  own.spliced = outlet.joint == circuit::Joint::splice || outlet.point != circuit::PointKind::outlet;
  own.splice = part_ohm(wiring.splice_part);
  if (outlet.point != circuit::PointKind::outlet) return own;
  // Where the wire in the wall is thinner than what is fitted, so are its tails.
  const tables::Conductor& tail = run.size ? size : fitted.tail != nullptr ? *fitted.tail : *fitted.size;
  own.tail = wire_ohm(tail, tables::WireMetal::copper, wiring.tail, wiring.wire_temperature);
  own.terminal = part_ohm(outlet.terminal_part);
  own.inside = part_ohm(outlet.outlet_part);
  return own;
}

}  // namespace

ElementOhms element_ohms(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery) {
  BRANCHLIGHT_EXPECT(fitted.size != nullptr);
  const circuit::Wiring& wiring = circuit.wiring;
  ElementOhms ohms;
  set_supply(ohms, circuit.supply, wiring.wire_temperature, battery);
  const tables::FuseFamily& family = tables::fuse_family(wiring.fuse_family);
  ohms.fuse_contact = at_least_smallest(family.contact_resistance.number());
  ohms.fuse = element_ohm(family, fitted.fuse);
  ohms.clamp = part_ohm(wiring.clamp_part);

  ohms.outlets.reserve(circuit.outlets.size());
  for (const circuit::Outlet& outlet : circuit.outlets) ohms.outlets.push_back(outlet_ohms(circuit, outlet, fitted));
  return ohms;
}

}  // namespace network::detail
