#include "sizing/random_circuit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "circuit/validate.h"
#include "network/branch_network.h"
#include "tables/part.h"
#include "tables/supply.h"

namespace random_circuits {
namespace {

using circuit::Circuit;
using circuit::Outlet;

std::size_t index(Engine& engine, std::size_t size) {
  return std::uniform_int_distribution<std::size_t>(0, size - 1)(engine);
}
double log_uniform(Engine& engine, double low, double high) {
  return std::exp(uniform(engine, std::log(low), std::log(high)));
}
template <class Range>
const auto& one_of(Engine& engine, const Range& range) {
  return range[index(engine, range.size())];
}
std::string part(Engine& engine, tables::PartKind kind) {
  return std::string(one_of(engine, tables::parts(kind)).key);
}

circuit::Load load(Engine& engine, double most_a, double nominal_v) {
  circuit::Load made;
  made.kind = static_cast<circuit::LoadKind>(index(engine, 3));
  made.rating_in_watts = chance(engine, 0.4);
  const double amperes = log_uniform(engine, 0.05, most_a);
  made.rating = made.rating_in_watts ? std::fmax(0.1, amperes * nominal_v) : amperes;
  if (chance(engine, 0.05)) made.rating = 0.0;
  if (chance(engine, 0.2)) made.minimum_voltage = units::Volts(nominal_v * uniform(engine, 0.7, 1.0));
  return made;
}

circuit::Device device(Engine& engine, double most_a, double nominal_v) {
  circuit::Device made;
  made.load = load(engine, most_a, nominal_v);
  made.use = chance(engine, 0.5) ? circuit::Use::continuous : static_cast<circuit::Use>(index(engine, 3));
  if (chance(engine, 0.05)) {
    made.inrush = circuit::Inrush{units::Amperes(log_uniform(engine, 0.5, 5.0 * most_a)),
                                  units::Seconds(log_uniform(engine, 0.01, 60.0))};
  }
  return made;
}

void add_outlets(Engine& engine, Circuit& made, std::size_t count, double most_a, double most_m) {
  made.outlets.clear();
  const bool tree = chance(engine, 0.4);
  for (std::size_t i = 0; i < count; ++i) {
    Outlet outlet;
    outlet.id = circuit::OutletId{static_cast<std::uint32_t>(i + 1)};
    outlet.name = "Outlet " + std::to_string(i + 1);
    const std::size_t above = tree ? index(engine, i + 1) : i;   // 0: the block
    outlet.fed_from = circuit::OutletId{static_cast<std::uint32_t>(above)};
    outlet.run.length = units::Metres(log_uniform(engine, 0.1, most_m));
    outlet.devices.front() = device(engine, most_a, made.supply.nominal.number());
    while (chance(engine, 0.15) && outlet.devices.size() < 4) {
      outlet.devices.push_back(device(engine, 0.5 * most_a, made.supply.nominal.number()));
    }
    if (outlet.devices.size() == 1 && chance(engine, 0.1)) outlet.taps = static_cast<int>(2 + index(engine, 6));
    made.outlets.push_back(outlet);
  }
  made.next_outlet_id = static_cast<std::uint32_t>(count + 1);
}

void dress_outlets(Engine& engine, Circuit& made) {
  for (Outlet& outlet : made.outlets) {
    if (chance(engine, 0.5)) outlet.outlet_part = "wired-medium";
    if (chance(engine, 0.3)) outlet.outlet_part = part(engine, tables::PartKind::outlet);
    if (chance(engine, 0.3)) outlet.terminal_part = "screw-16";
    if (chance(engine, 0.2)) outlet.terminal_part = part(engine, tables::PartKind::terminal);
    if (chance(engine, 0.2)) outlet.rating = units::Amperes(log_uniform(engine, 2.0, 80.0));
    if (chance(engine, 0.2)) outlet.drop_limit = uniform(engine, 0.01, 0.15);
  }
}

// Wire in the wall, switches and fuses in the line, joints without a splice, a chassis return.
void vary_runs(Engine& engine, Circuit& made) {
  const auto sizes = tables::conductors(made.wiring.gauge);
  for (Outlet& outlet : made.outlets) {
    circuit::Run& run = outlet.run;
    if (chance(engine, 0.12)) run.size = std::string(sizes[index(engine, std::min<std::size_t>(sizes.size(), 9))].id);
    if (chance(engine, 0.1)) run.metal = static_cast<tables::WireMetal>(index(engine, 3));
    if (chance(engine, 0.15)) run.two_core = true;
    const bool road = made.setting == circuit::Setting::van || made.setting == circuit::Setting::trailer;
    if (road && !run.two_core && chance(engine, 0.1)) run.back = circuit::ReturnPath::chassis;
    if (chance(engine, 0.2)) outlet.joint = circuit::Joint::direct;
    while (chance(engine, 0.15) && run.in_line.size() < 3) {
      run.in_line.push_back({static_cast<circuit::InLineKind>(index(engine, 4)),
                             units::Amperes(one_of(engine, std::array<double, 6>{3, 5, 7.5, 10, 15, 30}))});
    }
  }
}

void wire_up(Engine& engine, Circuit& made) {
  circuit::Wiring& wiring = made.wiring;
  wiring.gauge = chance(engine, 0.5) ? tables::GaugeSystem::awg : tables::GaugeSystem::metric;
  wiring.ampacity_table = chance(engine, 0.6) ? tables::default_ampacity_table(wiring.gauge)
                                              : one_of(engine, tables::ampacity_tables()).id;
  wiring.around.ambient = units::Celsius(std::round(chance(engine, 0.7) ? uniform(engine, 10, 45) : uniform(engine, -40, 90)));
  wiring.around.hot_space = chance(engine, 0.2);
  wiring.around.insulation = units::Celsius(one_of(engine, tables::insulation_ratings_c()));
  wiring.around.circuits_bundled = chance(engine, 0.6) ? 1 : static_cast<int>(1 + index(engine, 20));
  wiring.wire_temperature = units::Celsius(std::round(uniform(engine, 0, 90)));
  wiring.fuse_family = chance(engine, 0.6) ? tables::FuseFamilyId::blade : one_of(engine, tables::fuse_families()).id;
  if (made.supply.nominal > units::Volts(30.0) && chance(engine, 0.8)) {
    wiring.fuse_family = tables::FuseFamilyId::blade_high_voltage;
  }
  wiring.clamp_part = chance(engine, 0.5) ? "clamp-16" : part(engine, tables::PartKind::clamp);
  if (chance(engine, 0.2)) wiring.clamp_rating = units::Amperes(log_uniform(engine, 5.0, 100.0));
  wiring.ferrule = chance(engine, 0.3);
  wiring.splice_part = chance(engine, 0.5) ? "splice-lever-6" : part(engine, tables::PartKind::splice);
  wiring.tail = units::Metres(uniform(engine, 0.0, 0.3));
}

void feed(Engine& engine, Circuit& made) {
  circuit::Supply& supply = made.supply;
  supply.nominal = units::Volts(one_of(engine, tables::system_voltages_v()));
  supply.battery = std::string(one_of(engine, tables::battery_kinds()).key);
  supply.feeder_run = units::Metres(chance(engine, 0.2) ? 0.0 : log_uniform(engine, 0.1, 6.0));
  supply.feeder_size = chance(engine, 0.5) ? "6awg" : "16mm2";
  if (chance(engine, 0.4)) supply.feeder_size = chance(engine, 0.5) ? "2/0awg" : "70mm2";
  const bool thick = supply.feeder_size == "2/0awg" || supply.feeder_size == "70mm2";
  supply.main_fuse = units::Amperes(chance(engine, 0.1) ? 0.0 : std::round(uniform(engine, 30, thick ? 160 : 90)));
  if (chance(engine, 0.1)) supply.disconnect = units::Amperes(std::round(uniform(engine, 50, 300)));
  if (chance(engine, 0.1)) supply.block_rating = units::Amperes(std::round(uniform(engine, 30, 150)));
  if (chance(engine, 0.2)) supply.beside = units::Amperes(std::round(log_uniform(engine, 1.0, 40.0)));
  if (chance(engine, 0.1)) supply.feeder_metal = tables::WireMetal::tinned_copper;
}

void stock(Engine& engine, Circuit& made) {
  if (chance(engine, 0.4)) {
    for (const tables::Conductor& size : tables::conductors(made.wiring.gauge)) {
      if (chance(engine, 0.4)) made.shelf.missing_sizes.emplace_back(size.id);
    }
  }
  if (chance(engine, 0.3)) {
    for (const double rating : tables::fuse_family(made.wiring.fuse_family).ratings_a) {
      if (chance(engine, 0.4)) made.shelf.missing_fuses_a.push_back(rating);
    }
  }
}

double total_rated(const Circuit& made) {
  double total = 0.0;
  for (const Outlet& outlet : made.outlets) {
    total += circuit::rated_current(outlet, made.supply.nominal).number();
  }
  return total;
}

Circuit drawn(Engine& engine) {
  Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.setting = static_cast<circuit::Setting>(index(engine, 4));
  if (chance(engine, 0.5)) made.practice = one_of(engine, tables::practices()).id;
  feed(engine, made);
  wire_up(engine, made);
  const std::size_t count = 1 + index(engine, 12);
  add_outlets(engine, made, count, log_uniform(engine, 0.5, 25.0), log_uniform(engine, 0.5, 15.0));
  dress_outlets(engine, made);
  if (chance(engine, 0.6)) vary_runs(engine, made);
  stock(engine, made);
  made.drop_limit = chance(engine, 0.5) ? 0.05 : uniform(engine, 0.02, 0.15);
  if (chance(engine, 0.6)) {
    made.at_most_at_once = units::Amperes(std::fmax(0.1, total_rated(made) * uniform(engine, 0.1, 1.1)));
  }
  return made;
}

}  // namespace

double uniform(Engine& engine, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(engine);
}
bool chance(Engine& engine, double probability) { return uniform(engine, 0.0, 1.0) < probability; }

Circuit any(Engine& engine) {
  for (;;) {
    Circuit made = drawn(engine);
    if (circuit::validate(made).empty()) return made;
  }
}

Circuit small(Engine& engine, std::size_t most_outlets) {
  Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.supply.nominal = units::Volts(one_of(engine, tables::system_voltages_v()));
  const std::size_t count = 1 + index(engine, most_outlets);
  add_outlets(engine, made, count, 12.0, 8.0);
  for (Outlet& outlet : made.outlets) {
    for (circuit::Device& device : outlet.devices) device.load.minimum_voltage = std::nullopt;
  }
  // Every corner is tried: no more places than outlets asked for.
  for (Outlet& outlet : made.outlets) {
    if (network::load_slots(made).size() <= most_outlets) break;
    outlet.devices.resize(1);
    outlet.taps = 1;
  }
  const double total = total_rated(made);
  if (total > 0.5) made.at_most_at_once = units::Amperes(std::fmax(0.1, total * uniform(engine, 0.2, 1.0)));
  return made;
}

}  // namespace random_circuits
