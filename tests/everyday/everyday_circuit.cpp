#include "everyday/everyday_circuit.h"

#include <algorithm>
#include <fstream>
#include <map>
#include <stdexcept>

#include "tables/fuse.h"
#include "tables/part.h"

namespace everyday {
namespace {

using Json = nlohmann::json;

bool told(const Json& object, const char* key) { return object.contains(key) && !object.at(key).is_null(); }

double number_or(const Json& object, const char* key, double otherwise) {
  return told(object, key) ? object.at(key).get<double>() : otherwise;
}

std::string word_or(const Json& object, const char* key, const std::string& otherwise) {
  return told(object, key) ? object.at(key).get<std::string>() : otherwise;
}

// "12 AWG" is "12awg", "2.5 mm2" is "2.5mm2", "16 SAE" is "16sae".
std::string size_id(const std::string& words) {
  std::string id;
  for (const char c : words) {
    if (c != ' ') id += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  }
  if (tables::conductor_by_id(id) == nullptr) throw std::runtime_error("no such wire: " + words);
  return id;
}

template <class T>
T choose(const std::map<std::string, T>& table, const std::string& word) {
  const auto found = table.find(word);
  if (found == table.end()) throw std::runtime_error("no such word: " + word);
  return found->second;
}

// Wires that a part should take, so that parts never decide.
struct Wires {
  units::SquareMillimetres least{1.0};
  units::SquareMillimetres most{1.0};
};

// Smallest part of the kind that takes these wires and carries the fuse on all of them; of the
// large ones on studs only where there is no other. nullptr: none.
const tables::Part* smallest_part(tables::PartKind kind, const Wires& wires, double fuse_a, bool moves) {
  const tables::Part* best = nullptr;
  const auto on_stud = [](const tables::Part& part) { return part.rated > units::Amperes(100.0); };
  for (const tables::Part& part : tables::parts(kind)) {
    if (moves && !part.stands_vibration) continue;
    const bool takes = tables::part_accepts(part, wires.least, false) && tables::part_accepts(part, wires.most, false) &&
                       tables::part_rating_with(part, wires.least).number() >= fuse_a;
    if (!takes) continue;
    if (best == nullptr || (on_stud(*best) && !on_stud(part)) || (part.rated < best->rated && !on_stud(part))) best = &part;
  }
  return best;
}

// The installer's own sizes, and the next ones either way where one part takes them all.
std::string part_for(tables::PartKind kind, const Wires& own, const Wires& wider, double fuse_a, bool moves) {
  for (const Wires& wires : {wider, Wires{own.least, wider.most}, own, Wires{own.most, own.most}}) {
    if (const tables::Part* part = smallest_part(kind, wires, fuse_a, moves)) return std::string(part->key);
  }
  return std::string(tables::parts(kind).back().key);
}

tables::FuseFamilyId family_for(const std::string& fuses, double made_for_v, double fuse_a) {
  if (made_for_v > 58.0) return fuses == "bolt-on" ? tables::FuseFamilyId::bolt_on_80v : tables::FuseFamilyId::blade_80v;
  if (fuses == "bolt-on") return fuse_a > 200.0 ? tables::FuseFamilyId::bolt_on_large : tables::FuseFamilyId::bolt_on;
  if (fuses == "large-blade") return tables::FuseFamilyId::large_blade;
  return made_for_v > 32.0 ? tables::FuseFamilyId::blade_high_voltage : tables::FuseFamilyId::blade;
}

circuit::Device device_of(const Json& json) {
  circuit::Device device;
  device.name = "";
  device.load.rating_in_watts = told(json, "watts");
  device.load.rating = device.load.rating_in_watts ? json.at("watts").get<double>() : number_or(json, "amps", 0.0);
  device.load.kind = choose<circuit::LoadKind>({{"current", circuit::LoadKind::constant_current},
                                                {"power", circuit::LoadKind::constant_power},
                                                {"resistive", circuit::LoadKind::resistive}},
                                               word_or(json, "law", "current"));
  device.use = choose<circuit::Use>({{"continuous", circuit::Use::continuous},
                                     {"intermittent", circuit::Use::intermittent},
                                     {"momentary", circuit::Use::momentary}},
                                    word_or(json, "use", "continuous"));
  if (told(json, "min_volts")) device.load.minimum_voltage = units::Volts(json.at("min_volts").get<double>());
  if (told(json, "inrush_a")) {
    device.inrush = circuit::Inrush{units::Amperes(json.at("inrush_a").get<double>()),
                                    units::Seconds(number_or(json, "inrush_s", 1.0))};
  }
  if (told(json, "own_fuse_a")) device.own_fuse = units::Amperes(json.at("own_fuse_a").get<double>());
  return device;
}

bool is_sub_block(const Json& part) { return part.at("what") == "sub-block"; }

bool ends_in_sub_block(const Json& outlet) {
  if (!told(outlet, "in_line")) return false;
  return std::any_of(outlet.at("in_line").begin(), outlet.at("in_line").end(), is_sub_block);
}

circuit::Run run_of(const Json& json) {
  circuit::Run run;
  run.length = units::Metres(json.at("one_way_m").get<double>());
  if (word_or(json, "return", "wire") == "chassis") run.back = circuit::ReturnPath::chassis;
  if (told(json, "existing_wire")) {
    const Json& wire = json.at("existing_wire");
    run.size = size_id(wire.at("size").get<std::string>());
    run.metal = choose<tables::WireMetal>({{"copper", tables::WireMetal::copper},
                                           {"tinned", tables::WireMetal::tinned_copper},
                                           {"cca", tables::WireMetal::copper_clad_aluminium}},
                                          word_or(wire, "metal", "copper"));
  }
  if (told(json, "in_line")) {
    for (const Json& part : json.at("in_line")) {
      if (is_sub_block(part)) continue;
      const auto kind = choose<circuit::InLineKind>({{"switch", circuit::InLineKind::toggle},
                                                     {"inline-fuse", circuit::InLineKind::fuse},
                                                     {"breaker", circuit::InLineKind::breaker},
                                                     {"relay", circuit::InLineKind::relay}},
                                                    part.at("what").get<std::string>());
      run.in_line.push_back({kind, units::Amperes(part.at("amps").get<double>())});
    }
  }
  return run;
}

std::string outlet_part_for(const Json& json, double load_a, double fuse_a) {
  const std::string point = word_or(json, "point", "socket");
  if (point.rfind("usb", 0) == 0) return "usb-charger";
  if (point == "socket") {
    const double rated_a = number_or(json, "point_rating_a", 15.0);
    return rated_a > 15.0 ? "socket-lighter-20" : rated_a > 12.0 ? "socket-lighter" : "socket-iso4165";
  }
  if (std::max(load_a, fuse_a) <= 15.0) return "wired-small";
  return std::max(load_a, fuse_a) <= 40.0 ? "wired-medium" : "wired-heavy";
}

circuit::Outlet outlet_of(const Json& json, const std::map<std::string, circuit::OutletId>& ids,
                          const circuit::Circuit& circuit, const Wires& own, const Wires& wider, double fuse_a) {
  circuit::Outlet outlet;
  outlet.name = json.at("name").get<std::string>();
  if (told(json, "fed_from")) outlet.fed_from = choose(ids, json.at("fed_from").get<std::string>());
  outlet.run = run_of(json);
  outlet.devices.clear();
  if (told(json, "devices")) {
    for (const Json& device : json.at("devices")) outlet.devices.push_back(device_of(device));
  }
  if (ends_in_sub_block(json)) {
    outlet.point = circuit::PointKind::sub_block;
    outlet.devices.clear();
    return outlet;
  }
  if (outlet.devices.empty()) outlet.devices.resize(1);
  if (word_or(json, "joint", "splice") == "direct") outlet.joint = circuit::Joint::direct;
  outlet.taps = static_cast<int>(number_or(json, "lights_along_run", 1.0));
  const double load_a = circuit::rated_current(outlet, circuit.supply.nominal).number();
  outlet.outlet_part = outlet_part_for(json, load_a, fuse_a);
  if (told(json, "point_rating_a")) outlet.rating = units::Amperes(json.at("point_rating_a").get<double>());
  const tables::Conductor* there = outlet.run.size ? tables::conductor_by_id(*outlet.run.size) : nullptr;
  const Wires at_outlet = there != nullptr ? Wires{there->area, there->area} : own;
  outlet.terminal_part = part_for(tables::PartKind::terminal, at_outlet, there != nullptr ? at_outlet : wider, fuse_a, false);
  return outlet;
}

// One size thinner and one thicker, where the list has them.
Wires one_size_wider(tables::GaugeSystem gauge, const Wires& own) {
  Wires wider = own;
  for (const tables::Conductor& size : tables::conductors(gauge)) {
    if (size.area < own.least) wider.least = size.area;
    if (size.area <= own.most) continue;
    wider.most = size.area;
    break;
  }
  return wider;
}

EverydayCircuit read_one(const Json& json) {
  EverydayCircuit read;
  read.id = json.at("id").get<std::string>();
  read.story = json.at("story").get<std::string>();
  const Json& expect = json.at("expect");
  read.expected.fits = expect.at("verdict").get<std::string>() == "fits";
  read.expected.because = word_or(expect, "because", "");
  if (told(expect, "wire")) for (const Json& wire : expect.at("wire")) read.expected.wire.push_back(size_id(wire.get<std::string>()));
  if (told(expect, "fuse_a")) for (const Json& fuse : expect.at("fuse_a")) read.expected.fuse_a.push_back(fuse.get<double>());

  circuit::Circuit& c = read.circuit;
  c.name = read.id.substr(0, 40);
  c.place = "Everyday";
  c.setting = choose<circuit::Setting>({{"van", circuit::Setting::van}, {"trailer", circuit::Setting::trailer},
                                        {"boat", circuit::Setting::boat}, {"fixed", circuit::Setting::fixed}},
                                       json.at("vehicle").get<std::string>());
  // The aircraft examples have a metal frame to bring the current back, as a vehicle has.
  for (const Json& outlet : json.at("outlets")) {
    if (word_or(outlet, "return", "wire") == "chassis" && c.setting == circuit::Setting::fixed) c.setting = circuit::Setting::van;
  }
  c.wiring.gauge = json.at("sizes") == "metric" ? tables::GaugeSystem::metric : tables::GaugeSystem::awg;
  c.shelf.missing_sizes = {"3awg"};   // seldom sold: the installer's own lists pass it over
  c.wiring.ampacity_table = tables::default_ampacity_table(c.wiring.gauge);
  c.wiring.around.ambient = units::Celsius(number_or(json, "ambient_c", 30.0));
  // Sized for voltage drop, a wire is loaded to a fraction of what it carries, so its metal is about as
  // warm as the place: the trade's own K = 10.75 is copper at 29 degC.
  c.wiring.wire_temperature = c.wiring.around.ambient;
  c.wiring.around.circuits_bundled = static_cast<int>(number_or(json, "bundled_circuits", 1.0));
  c.wiring.around.insulation = units::Celsius(number_or(json, "insulation_c", 105.0));
  c.wiring.around.hot_space = json.value("hot_space", false);
  c.drop_limit = number_or(json, "drop_limit_percent", 3.0) / 100.0;
  if (told(json, "at_most_at_once_a")) c.at_most_at_once = units::Amperes(json.at("at_most_at_once_a").get<double>());

  const Json& battery = json.at("battery");
  c.supply.nominal = units::Volts(battery.at("volts").get<double>());
  c.supply.battery = choose<std::string>({{"flooded", "lead-flooded"}, {"agm", "lead-agm"}, {"gel", "lead-agm"},
                                          {"lithium-iron-phosphate", "lifepo4"}}, battery.at("kind").get<std::string>());
  c.supply.main_fuse = units::Amperes(told(json, "main_protection") ? number_or(json.at("main_protection"), "amps", 0.0) : 0.0);
  if (told(json, "feeder")) {
    c.supply.feeder_size = size_id(json.at("feeder").at("size").get<std::string>());
    c.supply.feeder_run = units::Metres(json.at("feeder").at("one_way_m").get<double>());
  }
  c.supply.main_fuse_kind = choose<tables::FuseFamilyId>({{"bolt-on", tables::FuseFamilyId::bolt_on},
                                                          {"terminal-post", tables::FuseFamilyId::terminal_post},
                                                          {"class-t", tables::FuseFamilyId::class_t},
                                                          {"breaker", tables::FuseFamilyId::breaker}},
                                                         json.at("main_protection").at("kind").get<std::string>());
  const Json& distance = json.at("main_protection").at("inches_or_m_from_battery");
  c.supply.main_fuse_distance = units::Metres(number_or(distance, "m", 0.15));
  c.practice = told(json, "code") ? tables::Practice::us_rv : tables::Practice::european_vehicle;
  if (told(json, "block") && told(json.at("block"), "amps")) {
    c.supply.block_rating = units::Amperes(json.at("block").at("amps").get<double>());
  }

  Wires own;
  if (!read.expected.wire.empty()) own = {units::SquareMillimetres(1000.0), units::SquareMillimetres(0.0)};
  for (const std::string& id : read.expected.wire) {
    const units::SquareMillimetres area = tables::conductor_by_id(id)->area;
    own = {std::min(own.least, area), std::max(own.most, area)};
  }
  const Wires wider = one_size_wider(c.wiring.gauge, own);
  const double fuse_a = read.expected.fuse_a.empty() ? 15.0 : *std::max_element(read.expected.fuse_a.begin(), read.expected.fuse_a.end());
  const bool moves = c.setting != circuit::Setting::fixed;
  const Json& block = json.at("block");
  c.wiring.fuse_family = family_for(block.at("fuses").get<std::string>(), block.at("fuse_volts").get<double>(), fuse_a);
  c.wiring.clamp_part = part_for(tables::PartKind::clamp, own, wider, fuse_a, false);
  c.wiring.splice_part = part_for(tables::PartKind::splice, own, wider, fuse_a, moves);

  std::map<std::string, circuit::OutletId> ids;
  for (const Json& json_outlet : json.at("outlets")) {
    circuit::Outlet outlet = outlet_of(json_outlet, ids, c, own, wider, fuse_a);
    outlet.id = circuit::OutletId{c.next_outlet_id++};
    ids[outlet.name] = outlet.id;
    c.outlets.push_back(std::move(outlet));
  }
  return read;
}

}  // namespace

std::vector<EverydayCircuit> read_everyday(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("no such file: " + path);
  std::vector<EverydayCircuit> all;
  for (const Json& each : Json::parse(file)) {
    try {
      all.push_back(read_one(each));
    } catch (const std::exception& wrong) {
      throw std::runtime_error(each.value("id", "?") + ": " + wrong.what());
    }
  }
  return all;
}

}  // namespace everyday
