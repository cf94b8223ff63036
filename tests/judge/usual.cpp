// Random vehicles made usual: parts that suit the loads, wire to be chosen, a feeder that was sized.
#include <algorithm>
#include <array>
#include <cmath>

#include "judge/adapter.h"
#include "vehicle/validate.h"

namespace judge_test {
namespace {

using units::Amperes;

class Usual {
 public:
  explicit Usual(Engine& engine) : engine_(engine) {}

  void vehicle(vehicle::Vehicle& made) {
    if (chance(0.5)) made.battery.internal_resistance.reset();
    for (vehicle::Source& source : made.sources) {
      if (made.battery.nominal.number() < 40) source.highest = units::Volts(made.battery.nominal.number() / 12 * 14.4);
    }
    for (vehicle::Block& each : made.blocks) block(made, each);
    for (vehicle::PlacedCircuit& each : made.circuits) {
      const vehicle::Block& on = *vehicle::find_block(made, each.block);
      circuit(each.plan, on, made.battery.nominal.number(), made.kind);
    }
  }

 private:
  double uniform(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  bool chance(double part) { return uniform(0, 1) < part; }
  template <class List>
  auto one_of(const List& list) {
    return list[engine_() % list.size()];
  }
  static double two_digits(double value) {
    const double step = std::pow(10.0, std::floor(std::log10(value)) - 1);
    return std::round(value / step) * step;
  }
  double log_uniform(double low, double high) { return two_digits(low * std::pow(high / low, uniform(0, 1))); }

  void block(const vehicle::Vehicle& of, vehicle::Block& block) {
    using Id = tables::FuseFamilyId;
    const bool high = of.battery.nominal.number() > 40;
    constexpr std::array<Id, 8> usual{Id::blade, Id::blade,      Id::blade,       Id::blade,
                                      Id::blade, Id::mini_blade, Id::large_blade, Id::bolt_on};
    block.fuse_family = high ? (chance(0.8) ? Id::blade_80v : Id::blade_high_voltage) : one_of(usual);
    const bool heavy = block.fuse_family == Id::bolt_on || block.fuse_family == Id::large_blade;
    block.clamp_part = heavy ? "clamp-stud-50" : chance(0.6) ? "clamp-6" : chance(0.6) ? "clamp-16" : "clamp-tab";
    block.clamp_rating.reset();
    if (chance(0.8)) block.rating.reset();
    if (chance(0.7)) block.disconnect.reset();
    constexpr std::array<std::pair<const char*, double>, 9> feeders{{{"6awg", 60},
                                                                     {"4awg", 100},
                                                                     {"2awg", 150},
                                                                     {"1/0awg", 150},
                                                                     {"8awg", 50},
                                                                     {"16mm2", 50},
                                                                     {"25mm2", 80},
                                                                     {"35mm2", 100},
                                                                     {"6sae", 60}}};
    const auto feeder = one_of(feeders);
    block.feeder.size = feeder.first;
    block.feeder.metal = tables::WireMetal::copper;
    block.feeder.run = units::Metres(log_uniform(0.2, 3.0));
    block.main.kind = high ? Id::class_t : chance(0.5) ? Id::terminal_post : Id::bolt_on_marine;
    if (chance(0.85)) block.main.rating = Amperes(chance(0.8) ? feeder.second : 100.0);
    if (chance(0.8)) block.main.distance = units::Metres(0.1);
    if (chance(0.7)) block.at_most_at_once = Amperes(log_uniform(20, 60));
  }

  void wiring(circuit::Wiring& wiring, bool heavy) {
    if (chance(0.8)) wiring.ampacity_table = tables::default_ampacity_table(wiring.gauge);
    constexpr std::array<double, 6> insulations{75, 90, 105, 105, 105, 125};
    wiring.around.insulation =
        units::Celsius(wiring.gauge == tables::GaugeSystem::metric && chance(0.6) ? 70.0 : one_of(insulations));
    wiring.around.ambient = units::Celsius(std::round(uniform(15, 50)));
    wiring.around.hot_space = chance(0.1);
    wiring.around.circuits_bundled = chance(0.7) ? 1 : 2 + static_cast<int>(engine_() % 3);
    wiring.wire_temperature = units::Celsius(std::max(wiring.around.ambient.number(), 50.0));
    wiring.ferrule = chance(0.1);
    constexpr std::array<const char*, 4> splices{"splice-lever-6", "splice-lever-4", "splice-stud-50",
                                                 "splice-crimp-yellow"};
    wiring.splice_part = heavy || chance(0.3) ? "splice-stud-50" : one_of(splices);
  }

  void circuit(circuit::Circuit& made, const vehicle::Block& on, double nominal, circuit::Setting kind) {
    const bool heavy = on.clamp_part == "clamp-stud-50";
    if (made.outlets.size() > 3 && chance(0.5)) drop_leaves(made, 3);
    wiring(made.wiring, heavy);
    constexpr std::array<double, 4> limits{0.03, 0.05, 0.05, 0.1};
    made.drop_limit = one_of(limits);
    if (chance(0.8)) made.shelf = {};
    for (circuit::Outlet& each : made.outlets) outlet(each, heavy, nominal, kind);
    double sum = 0;
    for (const circuit::Outlet& each : made.outlets)
      sum += circuit::rated_current(each, units::Volts(nominal)).number();
    if (made.at_most_at_once)
      made.at_most_at_once = Amperes(std::max(0.5, two_digits(std::max(0.5, sum * uniform(0.4, 1.0)))));
  }

  // The last outlets go while nothing hangs on them; they stand last.
  void drop_leaves(circuit::Circuit& made, std::size_t keep) {
    while (made.outlets.size() > keep) made.outlets.pop_back();
  }

  void outlet(circuit::Outlet& outlet, bool heavy, double nominal, circuit::Setting kind) {
    if (chance(0.85)) outlet.run.size.reset();
    if (!outlet.run.size || chance(0.7))
      outlet.run.metal = chance(0.9) ? tables::WireMetal::copper : tables::WireMetal::tinned_copper;
    if (outlet.run.two_core || kind == circuit::Setting::boat || kind == circuit::Setting::fixed)
      outlet.run.back = circuit::ReturnPath::wire;
    outlet.run.length = units::Metres(log_uniform(0.3, 8));
    in_line(outlet, heavy);
    if (chance(0.8)) outlet.drop_limit.reset();
    if (chance(0.9)) outlet.rating.reset();
    const double scale = heavy ? 30 : 6;
    for (circuit::Device& each : outlet.devices)
      device(each, scale / static_cast<double>(outlet.devices.size()), nominal);
    constexpr std::array<const char*, 4> small{"wired-small", "wired-medium", "usb-laptop", "socket-lighter-20"};
    outlet.outlet_part = heavy ? (chance(0.5) ? "wired-medium" : "connector-50") : one_of(small);
    constexpr std::array<const char*, 4> terminals{"tab-6.3", "screw-16", "screw-4", "tab-9.5"};
    outlet.terminal_part = heavy ? "stud-50" : one_of(terminals);
  }

  void in_line(circuit::Outlet& outlet, bool heavy) {
    auto& parts = outlet.run.in_line;
    const bool leaves_block = !parts.empty() && circuit::is_overcurrent_protection(parts.front());
    if (!leaves_block && chance(0.5)) parts.clear();
    constexpr std::array<double, 5> fuses{5, 7.5, 10, 15, 20};
    constexpr std::array<double, 3> contacts{20, 30, 40};
    for (circuit::InLine& part : parts)
      part.rating =
          Amperes((circuit::is_overcurrent_protection(part) ? one_of(fuses) : one_of(contacts)) * (heavy ? 3.0 : 1.0));
  }

  void device(circuit::Device& device, double most_a, double nominal) {
    circuit::Load& load = device.load;
    const double amps = log_uniform(0.2, most_a);
    load.rating = load.rating_in_watts ? two_digits(amps * nominal) : amps;
    if (load.minimum_voltage) load.minimum_voltage = units::Volts(nominal / 12 * (chance(0.5) ? 10.5 : 9.5));
    if (device.inrush)
      device.inrush =
          circuit::Inrush{Amperes(amps * two_digits(uniform(1.5, 5))), units::Seconds(chance(0.5)   ? 0.1
                                                                                      : chance(0.6) ? 0.5
                                                                                      : chance(0.7) ? 2.0
                                                                                                    : 90.0)};
  }

  Engine& engine_;
};

}  // namespace

vehicle::Vehicle any_vehicle(Engine& engine) {
  for (;;) {
    vehicle::Vehicle made = random_vehicles::any(engine, random_vehicles::kAsMet);
    if (engine() % 4 == 0) return made;
    Usual(engine).vehicle(made);
    if (vehicle::validate(made).empty()) return made;
  }
}

}  // namespace judge_test
