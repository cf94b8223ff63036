#include "circuit/circuit.h"

#include <algorithm>

#include "tables/supply.h"
#include "units/expect.h"

namespace circuit {
namespace {

Outlet outlet(std::uint32_t id, std::string name, std::uint32_t fed_from, double run_m, Load load) {
  Outlet made;
  made.id = OutletId{id};
  made.name = std::move(name);
  made.fed_from = OutletId{fed_from};
  made.run.length = units::Metres(run_m);
  made.devices.front().load = load;
  return made;
}

}  // namespace

tables::Practice practice_of(const Circuit& circuit) {
  if (circuit.practice) return *circuit.practice;
  const tables::Ground ground = circuit.setting == Setting::boat    ? tables::Ground::water
                                : circuit.setting == Setting::fixed ? tables::Ground::fixed
                                                                    : tables::Ground::road;
  return tables::usual_practice(ground, circuit.wiring.gauge);
}

const tables::ConductorColours& colours_of(const Circuit& circuit) {
  const tables::ConductorColours* told = tables::conductor_colours_by_key(circuit.colours);
  if (told != nullptr) return *told;
  return circuit.practice ? tables::conductor_colours_of(*circuit.practice) : tables::conductor_colours_untold();
}

units::Volts highest_voltage(const Supply& supply) {
  if (supply.highest) return *supply.highest;
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  BRANCHLIGHT_EXPECT(kind != nullptr);
  return kind->charging * static_cast<double>(tables::blocks_in_series(supply.nominal));
}

const Outlet* find_outlet(const Circuit& circuit, OutletId id) {
  const auto found = std::find_if(circuit.outlets.begin(), circuit.outlets.end(),
                                  [id](const Outlet& o) { return o.id == id; });
  return found == circuit.outlets.end() ? nullptr : &*found;
}

std::string outlet_letter(std::size_t index) {
  std::string letters;
  for (std::size_t left = index + 1; left > 0; left = (left - 1) / 26) {
    letters.insert(letters.begin(), static_cast<char>('A' + (left - 1) % 26));
  }
  return letters;
}

units::Amperes rated_current(const Load& load, units::Volts nominal) {
  return load.rating_in_watts ? units::Watts(load.rating) / nominal : units::Amperes(load.rating);
}

units::Amperes rated_current(const Outlet& outlet, units::Volts nominal) {
  units::Amperes sum;
  for (const Device& device : outlet.devices) sum += rated_current(device.load, nominal);
  return sum;
}

bool is_overcurrent_protection(const InLine& in_line) {
  return in_line.kind == InLineKind::fuse || in_line.kind == InLineKind::breaker;
}

bool has_load(const Outlet& outlet) {
  return std::any_of(outlet.devices.begin(), outlet.devices.end(),
                     [](const Device& device) { return device.load.rating > 0.0; });
}

units::Metres distance_from_block(const Circuit& circuit, OutletId id) {
  units::Metres sum;
  const Outlet* at = find_outlet(circuit, id);
  // No chain is longer than the list, so a loop in unchecked data ends here too.
  for (std::size_t steps = 0; at != nullptr && steps < circuit.outlets.size(); ++steps) {
    sum += at->run.length;
    at = find_outlet(circuit, at->fed_from);
  }
  return sum;
}

std::vector<std::size_t> fed_by(const Circuit& circuit, OutletId id) {
  std::vector<std::size_t> fed;
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    if (circuit.outlets[i].fed_from == id) fed.push_back(i);
  }
  return fed;
}

Circuit new_circuit(tables::GaugeSystem gauge) {
  Circuit circuit;
  circuit.name = "New circuit";
  circuit.setting = Setting::van;
  circuit.wiring.gauge = gauge;
  circuit.wiring.ampacity_table = tables::default_ampacity_table(gauge);
  circuit.supply.feeder_size = gauge == tables::GaugeSystem::metric ? "16mm2" : "6awg";
  circuit.outlets.push_back(outlet(1, "Outlet A", 0, 1.0, {}));
  circuit.next_outlet_id = 2;
  return circuit;
}

// Demo data, invented: the bench of a mobile bicycle-repair trailer.
Circuit demo_circuit() {
  Circuit circuit;
  circuit.name = "Bench outlets";
  circuit.place = "Repair trailer";
  circuit.fuse_position = 4;
  circuit.setting = Setting::trailer;
  circuit.supply.battery = "lead-agm";
  circuit.drop_limit = 0.05;
  circuit.at_most_at_once = units::Amperes(10.0);
  circuit.outlets = {
      outlet(1, "Truing-stand light", 0, 2.9, {LoadKind::constant_current, false, 2.0, std::nullopt}),
      outlet(2, "Tablet charger", 1, 1.2, {LoadKind::constant_power, true, 36.0, units::Volts(11.0)}),
      outlet(3, "Tyre inflator", 2, 1.0, {LoadKind::constant_current, false, 8.0, std::nullopt}),
  };
  circuit.next_outlet_id = 4;
  return circuit;
}

}  // namespace circuit
