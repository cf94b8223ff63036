#include "network/vehicle_deck.h"

#include <algorithm>
#include <map>
#include <sstream>

#include "network/assumed.h"
#include "network/ngspice.h"
#include "tables/part.h"
#include "tables/supply.h"

namespace network_test {
namespace {

struct Ends {
  std::string red, black;
};

class Writer {
 public:
  Writer(const vehicle::Vehicle& vehicle, network::BatteryState state) : vehicle_(vehicle), state_(state) {
    text_.precision(17);
    text_ << "* a whole vehicle\n";
  }

  VehicleDeck write(const std::vector<Running>& running, const Charger& charger) {
    const Ends posts = battery();
    if (charger.ohms > 0.0) {
      source("charger", charger.volts);
      resistor("charger", posts.red, charger.ohms);
    }
    const Ends bus = feeder(posts);
    for (std::size_t c = 0; c < running.size(); ++c) circuit(c, running[c], bus);
    deck_.text = text_.str();
    return std::move(deck_);
  }

 private:
  std::string fresh() { return with_number("n", ++nodes_); }
  void source(const std::string& node, double volts) { text_ << "V" << node << " " << node << " 0 " << volts << "\n"; }
  void resistor(const std::string& a, const std::string& b, double ohms) {
    text_ << "R" << ++parts_ << " " << a << " " << b << " " << std::max(ohms, 1e-5) << "\n";
  }
  std::string after(const std::string& from, double ohms) {
    const std::string to = fresh();
    resistor(from, to, ohms);
    return to;
  }
  Ends after(const Ends& from, double ohms) { return {after(from.red, ohms), after(from.black, ohms)}; }

  // Values: the tables of the program, looked up here one by one.
  static double wire_ohms(const std::string& id, tables::WireMetal metal, double metres, units::Celsius metal_c) {
    const tables::Conductor& size = *tables::conductor_by_id(id);
    return std::max(tables::resistance_at(tables::resistance_20c(size, metal), metal_c).number() * metres, 1e-5);
  }
  static double part_ohms(const std::string& key) { return tables::part_by_key(key)->typical_resistance.number(); }
  static double element_ohms(tables::FuseFamilyId id, double amps) {
    return tables::fuse_resistance(tables::fuse_family(id), units::Amperes(amps), units::Amperes(0.8 * amps)).number();
  }

  Ends battery() {
    const vehicle::Battery& told = vehicle_.battery;
    const tables::BatteryKind& kind = *tables::battery_kind_by_key(told.kind);
    const double series = told.nominal.number() / 12.0;
    double volts = told.resting ? told.resting->number() : kind.resting.number() * series;
    if (state_ == network::BatteryState::low) volts = told.low ? told.low->number() : kind.low.number() * series;
    source("cells", volts);
    const double inside =
        told.internal_resistance ? told.internal_resistance->number() : kind.internal_resistance.number() * series;
    return {after("cells", inside), "0"};
  }

  Ends feeder(Ends at) {
    const vehicle::Block& block = vehicle_.blocks.front();
    const tables::FuseFamily& main = tables::fuse_family(block.main.kind);
    if (block.main.rating.number() > 0.0)
      at.red =
          after(at.red, element_ohms(block.main.kind, block.main.rating.number()) + main.contact_resistance.number());
    if (block.disconnect) at.red = after(at.red, network::in_line_contact(circuit::InLineKind::toggle).number());
    const units::Celsius metal_c = vehicle_.circuits.front().plan.wiring.wire_temperature;
    const double wire = wire_ohms(block.feeder.size, block.feeder.metal, block.feeder.run.number(), metal_c);
    at = after(at, wire + 2.0 * network::feeder_lug().number());
    return after(at, network::bus_joint().number());
  }

  void circuit(std::size_t index, const Running& running, const Ends& bus) {
    const circuit::Circuit& plan = vehicle_.circuits[index].plan;
    const vehicle::Block& block = vehicle_.blocks.front();
    deck_.devices.emplace_back();
    deck_.fuse_ammeter.push_back(with_number("vfuse", index));
    const std::string metered = fresh();
    text_ << deck_.fuse_ammeter.back() << " " << bus.red << " " << metered << " 0\n";
    Ends at{metered, bus.black};
    at.red = after(at.red, tables::fuse_family(block.fuse_family).contact_resistance.number());
    at.red = after(at.red, element_ohms(block.fuse_family, running.fitted.fuse.number()));
    at = after(at, part_ohms(block.clamp_part));
    std::map<std::uint32_t, Ends> goes_on{{0, at}};
    std::size_t slot = 0;
    for (const circuit::Outlet& outlet : plan.outlets)
      goes_on[outlet.id.number] = outlet_of(plan, outlet, running, slot, goes_on.at(outlet.fed_from.number));
  }

  Ends outlet_of(const circuit::Circuit& plan, const circuit::Outlet& outlet, const Running& running, std::size_t& slot,
                 Ends at) {
    for (const circuit::InLine& part : outlet.run.in_line) {
      double ohms = network::in_line_contact(part.kind).number();
      if (part.kind == circuit::InLineKind::fuse)
        ohms += element_ohms(vehicle_.blocks.front().fuse_family, part.rating.number());
      at.red = after(at.red, ohms);
    }
    const std::string size = outlet.run.size.value_or(std::string(running.fitted.size->id));
    const units::Celsius metal_c = plan.wiring.wire_temperature;
    const double out = wire_ohms(size, outlet.run.metal, outlet.run.length.number(), metal_c);
    const double back = outlet.run.back == circuit::ReturnPath::chassis ? network::chassis_return().number() : out;
    const bool socket = outlet.point == circuit::PointKind::outlet;
    const bool spliced = outlet.joint == circuit::Joint::splice || !socket;
    for (int light = 0; light < outlet.taps; ++light) {
      at = {after(at.red, out / outlet.taps), after(at.black, back / outlet.taps)};
      if (spliced) at = after(at, part_ohms(plan.wiring.splice_part));
      if (!socket) continue;
      Ends contact = at;
      const std::string tail = outlet.run.size ? size : std::string(running.fitted.tail->id);
      if (spliced)
        contact = after(contact, wire_ohms(tail, tables::WireMetal::copper, plan.wiring.tail.number(), metal_c));
      contact = after(contact, part_ohms(outlet.terminal_part));
      contact = after(contact, part_ohms(outlet.outlet_part));
      if (outlet.devices.size() > 1) ++slot;  // the joint that they share has a place of its own
      for (const circuit::Device& device : outlet.devices)
        load(device.load, running.loading.at(slot++) / outlet.taps, contact);
    }
    if (!socket) ++slot;
    return at;
  }

  void load(const circuit::Load& load, double on, const Ends& at) {
    deck_.devices.back().push_back({at.red, at.black});
    const double nominal = vehicle_.battery.nominal.number();
    const double amps = (load.rating_in_watts ? load.rating / nominal : load.rating) * on;
    if (amps <= 0.0) return;
    const double fold = load.minimum_voltage ? load.minimum_voltage->number() : 0.25 * nominal;
    const std::string v = "v(" + at.red + "," + at.black + ")";
    if (load.kind == circuit::LoadKind::resistive) return resistor(at.red, at.black, nominal / amps);
    text_ << "B" << ++parts_ << " " << at.red << " " << at.black << " I = " << v << " >= " << fold << " ? ";
    if (load.kind == circuit::LoadKind::constant_current) {
      text_ << amps << " : (" << v << " > 0 ? " << v << "*" << amps / fold << " : 0)\n";
    } else {
      const double watts = amps * nominal;
      text_ << watts << "/max(" << v << "," << fold << ") : (" << v << " > 0 ? " << v << "*" << watts / (fold * fold)
            << " : 0)\n";
    }
  }

  const vehicle::Vehicle& vehicle_;
  network::BatteryState state_;
  std::ostringstream text_;
  std::size_t nodes_ = 0, parts_ = 0;
  VehicleDeck deck_;
};

}  // namespace

VehicleDeck deck_of(const vehicle::Vehicle& vehicle, const std::vector<Running>& running, network::BatteryState state,
                    const Charger& charger) {
  return Writer(vehicle, state).write(running, charger);
}

}  // namespace network_test
