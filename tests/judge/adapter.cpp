#include "judge/adapter.h"

#include <algorithm>
#include <map>
#include <sstream>
#include <stdexcept>

#include "network/assumed.h"
#include "tables/part.h"
#include "tables/supply.h"

namespace judge_test {
namespace {

template <class Out, class In>
Out told(const std::map<In, Out>& words, In word) {
  const auto found = words.find(word);
  if (found == words.end()) throw std::runtime_error("the adapter has no word for this");
  return found->second;
}

judge::Gauge gauge_of(tables::GaugeSystem system) {
  return told<judge::Gauge, tables::GaugeSystem>({{tables::GaugeSystem::awg, judge::Gauge::awg},
                                                  {tables::GaugeSystem::sae, judge::Gauge::sae},
                                                  {tables::GaugeSystem::metric, judge::Gauge::metric}},
                                                 system);
}
judge::Metal metal_of(tables::WireMetal metal) {
  return metal == tables::WireMetal::copper          ? judge::Metal::copper
         : metal == tables::WireMetal::tinned_copper ? judge::Metal::tinned
                                                     : judge::Metal::clad;
}
judge::Wire wire_of(const std::string& id, tables::WireMetal metal, bool two_core) {
  const tables::Conductor* size = tables::conductor_by_id(id);
  return {gauge_of(size->system), std::string(size->size), metal_of(metal), two_core};
}
judge::FuseKind fuse_of(tables::FuseFamilyId id) {
  using In = tables::FuseFamilyId;
  using Out = judge::FuseKind;
  static const std::map<In, Out> words{{In::blade, Out::blade},
                                       {In::mini_blade, Out::small_blade},
                                       {In::large_blade, Out::large_blade},
                                       {In::bolt_on, Out::bolted},
                                       {In::blade_high_voltage, Out::blade_58v},
                                       {In::blade_80v, Out::blade_80v},
                                       {In::bolt_on_80v, Out::bolted_80v},
                                       {In::bolt_on_large, Out::large_bolted},
                                       {In::bolt_on_marine, Out::marine_bolted},
                                       {In::terminal_post, Out::terminal_post},
                                       {In::class_t, Out::class_t},
                                       {In::breaker, Out::breaker}};
  return told(words, id);
}
judge::Laying laying_of(tables::AmpacityTableId id) {
  using In = tables::AmpacityTableId;
  static const std::map<In, judge::Laying> words{{In::marine_us, judge::Laying::boat_air},
                                                 {In::enclosed_iec, judge::Laying::conduit},
                                                 {In::clipped_iec, judge::Laying::clipped},
                                                 {In::clipped_bs, judge::Laying::clipped_british}};
  return told(words, id);
}

bool begins(std::string_view word, std::string_view with) { return word.substr(0, with.size()) == with; }

judge::JointKind joint_of(const tables::Part& part) {
  const std::string_view key = part.key;
  if (part.wired_in) return judge::JointKind::fixed_device;
  if (begins(key, "socket") || begins(key, "usb")) return judge::JointKind::socket;
  if (begins(key, "connector")) return judge::JointKind::connector;
  if (key.find("tab") != key.npos) return judge::JointKind::tab;
  if (key.find("stud") != key.npos) return judge::JointKind::ring;
  if (key.find("lever") != key.npos) return judge::JointKind::lever;
  if (key.find("crimp") != key.npos) return judge::JointKind::crimp;
  return key.find("twist") != key.npos ? judge::JointKind::twisted : judge::JointKind::screw;
}
// What the maker marks on it.
judge::Part part_of(const std::string& key) {
  const tables::Part& part = *tables::part_by_key(key);
  judge::Part made;
  made.kind = joint_of(part);
  made.amps = part.rated.number();
  made.least_mm2 = part.smallest.number();
  made.most_mm2 = part.largest_bare.number();
  made.most_with_ferrule_mm2 = part.largest_with_ferrule ? part.largest_with_ferrule->number() : 0;
  made.amps_by_wire = key == "tab-6.3" || key == "clamp-tab" || key == "tab-4.8";
  made.ohms = part.typical_resistance.number();
  return made;
}

judge::Device device_of(const circuit::Device& device, double nominal) {
  judge::Device made;
  made.law = device.load.kind == circuit::LoadKind::constant_current ? judge::Law::current
             : device.load.kind == circuit::LoadKind::constant_power ? judge::Law::power
                                                                     : judge::Law::resistive;
  made.amps = device.load.rating_in_watts ? device.load.rating / nominal : device.load.rating;
  made.lasting = device.use == circuit::Use::continuous;
  if (device.load.minimum_voltage) made.least_volts = device.load.minimum_voltage->number();
  if (device.inrush) {
    made.start_amps = device.inrush->current.number();
    made.start_s = device.inrush->lasting.number();
  }
  return made;
}

judge::Outlet outlet_of(const circuit::Circuit& circuit, const circuit::Outlet& outlet) {
  judge::Outlet made;
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    if (circuit.outlets[i].id == outlet.fed_from) made.fed_from = static_cast<int>(i);
  }
  made.metres = outlet.run.length.number();
  made.there_already = outlet.run.size.has_value();
  if (made.there_already) made.wire = wire_of(*outlet.run.size, outlet.run.metal, outlet.run.two_core);
  made.wire.metal = metal_of(outlet.run.metal);
  made.wire.two_core = outlet.run.two_core;
  made.chassis_return = outlet.run.back == circuit::ReturnPath::chassis;
  for (const circuit::InLine& part : outlet.run.in_line) {
    const auto kind = part.kind == circuit::InLineKind::fuse      ? judge::InLineKind::fuse
                      : part.kind == circuit::InLineKind::breaker ? judge::InLineKind::breaker
                                                                  : judge::InLineKind::contact;
    made.in_line.push_back({kind, part.rating.number(), network::in_line_contact(part.kind).number()});
  }
  made.spliced = outlet.joint == circuit::Joint::splice;
  made.only_joins = outlet.point != circuit::PointKind::outlet;
  const tables::Part& point = *tables::part_by_key(outlet.outlet_part);
  made.bounds_itself = point.limits_itself || point.wired_in;
  made.terminal = part_of(outlet.terminal_part);
  made.point = part_of(outlet.outlet_part);
  if (outlet.rating) made.point.amps = outlet.rating->number();
  for (const circuit::Device& device : outlet.devices)
    made.devices.push_back(device_of(device, circuit.supply.nominal.number()));
  made.lights = outlet.taps;
  made.drop_limit = outlet.drop_limit.value_or(circuit.drop_limit);
  return made;
}

double rated_amps(const circuit::Circuit& circuit, double nominal) {
  double sum = 0;
  for (const circuit::Outlet& outlet : circuit.outlets)
    for (const circuit::Device& device : outlet.devices)
      sum += device.load.rating_in_watts ? device.load.rating / nominal : device.load.rating;
  return circuit.at_most_at_once ? std::min(sum, circuit.at_most_at_once->number()) : sum;
}

// What the block's other circuits draw at the same time.
double beside(const vehicle::Vehicle& vehicle, const vehicle::PlacedCircuit& placed, const vehicle::Block& block) {
  const double nominal = vehicle.battery.nominal.number();
  double others = 0;
  for (const vehicle::PlacedCircuit& other : vehicle.circuits) {
    if (other.block == placed.block && other.id != placed.id) others += rated_amps(other.plan, nominal);
  }
  if (!block.at_most_at_once) return others;
  return std::clamp(block.at_most_at_once->number() - rated_amps(placed.plan, nominal), 0.0, others);
}

judge::Supply supply_of(const vehicle::Vehicle& vehicle, const vehicle::PlacedCircuit& placed,
                        const circuit::Circuit& circuit) {
  const vehicle::Block& block = *vehicle::find_block(vehicle, placed.block);
  const vehicle::Battery& battery = vehicle.battery;
  const tables::BatteryKind& kind = *tables::battery_kind_by_key(battery.kind);
  judge::Supply made;
  made.nominal = battery.nominal.number();
  const double series = made.nominal / 12;
  made.resting = battery.resting ? battery.resting->number() : kind.resting.number() * series;
  made.low = battery.low ? battery.low->number() : kind.low.number() * series;
  made.highest = kind.charging.number() * series;
  for (const vehicle::Source& source : vehicle.sources) made.highest = std::max(made.highest, source.highest.number());
  made.inside_ohms =
      battery.internal_resistance ? battery.internal_resistance->number() : kind.internal_resistance.number() * series;
  made.feeder_metres = block.feeder.run.number();
  made.feeder = wire_of(block.feeder.size, block.feeder.metal, false);
  // The feeder lies apart from the circuit, alone and on a surface, in the same air and of the same insulation.
  judge::Laying laying = laying_of(circuit.wiring.ampacity_table);
  if (laying == judge::Laying::conduit) laying = judge::Laying::clipped;
  const tables::Surroundings& around = circuit.wiring.around;
  made.feeder_place = {laying, around.ambient.number(), around.hot_space, around.insulation.number(), 1};
  made.main_kind = fuse_of(block.main.kind);
  made.main_amps = block.main.rating.number();
  made.main_metres_from_post = block.main.distance.number();
  made.switch_amps = block.disconnect ? block.disconnect->number() : 0;
  made.block_amps = block.rating ? block.rating->number() : 0;
  made.beside_amps = beside(vehicle, placed, block);
  made.ring_ohms = network::feeder_lug().number();
  made.bus_ohms = network::bus_joint().number();
  made.switch_ohms = network::in_line_contact(circuit::InLineKind::toggle).number();
  made.chassis_ohms = network::chassis_return().number();
  return made;
}

bool any_note(const sizing::Answer& answer, std::string_view words) {
  return std::any_of(answer.notes.begin(), answer.notes.end(),
                     [&](const std::string& note) { return note.find(words) != note.npos; });
}

}  // namespace

judge::Circuit describe(const vehicle::Vehicle& vehicle, const vehicle::PlacedCircuit& placed) {
  const circuit::Circuit& plan = placed.plan;
  const vehicle::Block& block = *vehicle::find_block(vehicle, placed.block);
  circuit::Circuit circuit = plan;
  circuit.supply.nominal = vehicle.battery.nominal;
  judge::Circuit made;
  made.vehicle = static_cast<judge::Vehicle>(vehicle.kind);  // the same order: van, trailer, boat, fixed
  made.us_trailer_code = vehicle.practice == tables::Practice::us_rv;
  made.supply = supply_of(vehicle, placed, circuit);
  const tables::Surroundings& around = plan.wiring.around;
  made.place = {laying_of(plan.wiring.ampacity_table), around.ambient.number(), around.hot_space,
                around.insulation.number(), around.circuits_bundled};
  made.metal_c = plan.wiring.wire_temperature.number();
  made.gauge = gauge_of(plan.wiring.gauge);
  made.fuse_kind = fuse_of(block.fuse_family);
  made.clamp = part_of(block.clamp_part);
  if (block.clamp_rating) {
    made.clamp.amps = block.clamp_rating->number();
    made.clamp.amps_by_wire = false;
  }
  made.splice = part_of(plan.wiring.splice_part);
  made.ferrule = plan.wiring.ferrule;
  made.tail_metres = plan.wiring.tail.number();
  double sum = 0;
  for (const circuit::Outlet& outlet : plan.outlets) {
    made.outlets.push_back(outlet_of(circuit, outlet));
    for (const judge::Device& device : made.outlets.back().devices) sum += judge::counted_amps(device);
  }
  if (plan.at_most_at_once && plan.at_most_at_once->number() < sum) made.at_most_amps = plan.at_most_at_once->number();
  for (const std::string& id : plan.shelf.missing_sizes) {
    const tables::Conductor* size = tables::conductor_by_id(id);
    if (gauge_of(size->system) == made.gauge) made.not_on_sale_sizes.emplace_back(size->size);
  }
  made.not_on_sale_fuses = plan.shelf.missing_fuses_a;
  return made;
}

judge::Answer answer_of(const judge::Circuit& circuit, const sizing::Answer& answer) {
  judge::Answer made;
  const sizing::Candidate* choice = answer.choice();
  made.fits = answer.verdict == sizing::Verdict::fits && choice != nullptr;
  if (!made.fits) return made;
  const bool chooses =
      std::any_of(circuit.outlets.begin(), circuit.outlets.end(), [](const auto& o) { return !o.there_already; });
  made.size = chooses ? std::string(choice->size->size) : judge::sizes(circuit.gauge).back();
  if (chooses) made.tail = choice->tail != nullptr ? std::string(choice->tail->size) : "";
  made.fuse = choice->fuse ? choice->fuse->number() : 0;
  made.tells_no_main_fuse = any_note(answer, "No main fuse is told");
  made.tells_bare_piece = any_note(answer, "that piece is not protected");
  made.tells_main_volts = any_note(answer, "Take a kind that is marked for it");
  made.tells_no_breaking = any_note(answer, "Nor can the main fuse") || any_note(answer, "and none is told");
  made.tells_clad = any_note(answer, "carries less, breaks when bent");
  made.tells_chassis = any_note(answer, "chassis brings current back");
  return made;
}

std::string line(const judge::Circuit& c, const judge::Answer& answer) {
  static constexpr std::array<const char*, 3> kGauges{"AWG", "SAE", "mm2"};
  static constexpr std::array<const char*, 3> kLaws{"A", "A power", "A resistive"};
  static constexpr std::array<const char*, 3> kInLine{"contact", "fuse", "breaker"};
  std::ostringstream out;
  const judge::Supply& s = c.supply;
  out << "vehicle " << static_cast<int>(c.vehicle) << (c.us_trailer_code ? " us-trailer" : "") << ", " << s.nominal
      << " V (" << s.low << "/" << s.resting << "/" << s.highest << ", " << s.inside_ohms << " ohm), feeder "
      << s.feeder.size << " " << kGauges.at(static_cast<std::size_t>(s.feeder.gauge)) << " " << s.feeder_metres
      << " m, main kind " << static_cast<int>(s.main_kind) << " " << s.main_amps << " A, switch " << s.switch_amps
      << ", block " << s.block_amps << ", beside " << s.beside_amps << " A; laying " << static_cast<int>(c.place.laying)
      << " " << c.place.air_c << " C" << (c.place.engine_space ? " engine" : "") << " insulation "
      << c.place.insulation_c << " bundle " << c.place.circuits_bundled << " metal " << c.metal_c << "; fuses "
      << static_cast<int>(c.fuse_kind) << ", clamp " << c.clamp.amps << " A to " << c.clamp.most_mm2 << ", splice "
      << c.splice.amps << " A to " << c.splice.most_mm2 << (c.ferrule ? ", ferrule" : "") << ", tail " << c.tail_metres
      << ", at most " << c.at_most_amps;
  for (const judge::Outlet& o : c.outlets) {
    out << "\n    from " << o.fed_from << ": " << o.metres << " m";
    if (o.there_already) out << " there " << o.wire.size << " " << kGauges.at(static_cast<std::size_t>(o.wire.gauge));
    out << " metal " << static_cast<int>(o.wire.metal) << (o.wire.two_core ? " two-core" : "")
        << (o.chassis_return ? " chassis" : "")
        << (o.only_joins ? " joins"
            : o.spliced  ? " spliced"
                         : " direct")
        << ", terminal " << o.terminal.amps << " A to " << o.terminal.most_mm2
        << (o.terminal.amps_by_wire ? " by wire" : "") << ", point " << o.point.amps
        << (o.bounds_itself ? " itself" : "") << ", lights " << o.lights << ", limit " << o.drop_limit;
    for (const judge::InLine& p : o.in_line)
      out << ", " << kInLine.at(static_cast<std::size_t>(p.kind)) << " " << p.amps;
    for (const judge::Device& d : o.devices)
      out << ", [" << d.amps << kLaws.at(static_cast<std::size_t>(d.law)) << (d.lasting ? " lasting" : "") << " least "
          << d.least_volts << " start " << d.start_amps << "x" << d.start_s << "s]";
  }
  out << "\n    answer: ";
  if (answer.fits) out << answer.size << " tail " << answer.tail << " fuse " << answer.fuse;
  else out << "none fits";
  return out.str();
}

}  // namespace judge_test
