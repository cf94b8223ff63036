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

double wire_ohm(const tables::Conductor& size, units::Metres length, units::Celsius temperature) {
  return at_least_smallest((tables::resistance_at(size.resistance_20c, temperature) * length).number());
}

double part_ohm(std::string_view key) {
  const tables::Part* part = tables::part_by_key(key);
  BRANCHLIGHT_EXPECT(part != nullptr);  // validate() has seen to it
  return at_least_smallest(part != nullptr ? part->typical_resistance.number() : 0.0);
}

double fuse_ohm(tables::FuseFamilyId family, units::Amperes rating) {
  const auto listed = tables::fuse_cold_resistance(family, rating);
  return at_least_smallest((listed ? *listed : fuse_element(rating)).number());
}

double emf_of(const circuit::Supply& supply, const tables::BatteryKind& kind, BatteryState state) {
  const double in_series = tables::blocks_in_series(supply.nominal);
  switch (state) {
    case BatteryState::resting: return supply.resting ? supply.resting->number() : kind.resting.number() * in_series;
    case BatteryState::low: return supply.low ? supply.low->number() : kind.low.number() * in_series;
    case BatteryState::charging: break;
  }
  return kind.charging.number() * in_series;
}

void set_supply(ElementOhms& ohms, const circuit::Supply& supply, units::Celsius temperature, BatteryState state) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  BRANCHLIGHT_EXPECT(kind != nullptr && feeder != nullptr);  // validate() has seen to it
  if (kind != nullptr) {
    ohms.emf_v = emf_of(supply, *kind, state);
    ohms.battery = at_least_smallest(kind->internal_resistance.number() * tables::blocks_in_series(supply.nominal));
  }
  if (supply.main_fuse.number() > 0.0) ohms.main_fuse = fuse_ohm(tables::FuseFamilyId::bolt_on, supply.main_fuse);
  const double metal = feeder != nullptr ? wire_ohm(*feeder, supply.feeder_run, temperature) : kSmallestOhm;
  ohms.feeder = metal + 2.0 * feeder_lug().number();
  ohms.bus = bus_joint().number();
}

}  // namespace

ElementOhms element_ohms(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery) {
  BRANCHLIGHT_EXPECT(fitted.size != nullptr);
  const circuit::Wiring& wiring = circuit.wiring;
  ElementOhms ohms;
  set_supply(ohms, circuit.supply, wiring.wire_temperature, battery);
  ohms.fuse_contact = fuse_clips().number();
  ohms.fuse = fuse_ohm(wiring.fuse_family, fitted.fuse);
  ohms.clamp = part_ohm(wiring.clamp_part);

  const tables::Conductor& tail = fitted.tail != nullptr ? *fitted.tail : *fitted.size;
  const double tail_ohm = wire_ohm(tail, wiring.tail, wiring.wire_temperature);
  const double splice_ohm = part_ohm(wiring.splice_part);
  ohms.outlets.reserve(circuit.outlets.size());
  for (const circuit::Outlet& outlet : circuit.outlets) {
    ohms.outlets.push_back({wire_ohm(*fitted.size, outlet.run, wiring.wire_temperature), splice_ohm, tail_ohm,
                            part_ohm(outlet.terminal_part), part_ohm(outlet.outlet_part)});
  }
  return ohms;
}

DeviceLaw device_law(const circuit::Load& load, units::Volts nominal) {
  const double nominal_v = nominal.number();
  const double rated_a = load.rating_in_watts ? load.rating / nominal_v : load.rating;
  if (!(rated_a > 0.0)) return {};
  switch (load.kind) {
    case circuit::LoadKind::constant_current: return {Law::constant_current, rated_a, rated_a};
    case circuit::LoadKind::constant_power: return {Law::constant_power, rated_a * nominal_v, rated_a};
    case circuit::LoadKind::resistive: return {Law::resistance, nominal_v / rated_a, rated_a};
  }
  return {};
}

}  // namespace network::detail
