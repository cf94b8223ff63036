#include <algorithm>

#include "network/branch_network.h"
#include "network/probe.h"
#include "network/solve.h"
#include "probe/answers.h"

namespace probe {
namespace {

using network::BatteryState;
using network::BranchNetwork;
using network::Element;
using network::Instrument;
using network::NodeId;
using network::Outcome;
using network::Side;

const Words<Element> kElements = {
    {"battery", Element::battery},     {"main fuse", Element::main_fuse}, {"feeder", Element::feeder},
    {"bus", Element::bus},             {"fuse contact", Element::fuse_contact}, {"fuse", Element::fuse},
    {"clamp", Element::clamp},         {"wire", Element::wire},           {"splice", Element::splice},
    {"tail", Element::tail},           {"terminal", Element::terminal},   {"outlet inside", Element::outlet_inside},
    {"device", Element::device}};
const Words<Side> kSides = {{"positive", Side::positive}, {"negative", Side::negative}};
const Words<Outcome> kOutcomes = {{"solved", Outcome::solved},
                                      {"no operating point", Outcome::no_operating_point},
                                      {"not converged", Outcome::not_converged},
                                      {"invalid", Outcome::invalid}};

network::Fitted fitted_of(const Json& request) {
  const Json& told = need_object(need(request, "fitted"), "\"fitted\"");
  only_keys(told, {"size", "tail", "fuse_a"});
  network::Fitted fitted;
  fitted.size = &need_size(need(told, "size"), "size");
  if (told.contains("tail")) fitted.tail = &need_size(told["tail"], "tail");
  fitted.fuse = units::Amperes(need_number(need(told, "fuse_a"), "fuse_a", 0.1, 1000.0));
  return fitted;
}

network::Loading loading_of(const Json& request, std::size_t outlets) {
  if (!request.contains("loading")) return network::Loading(outlets, 1.0);
  const Json& told = need_array(request["loading"], "\"loading\"");
  if (told.size() != outlets) refuse("\"loading\" needs one number for each outlet");
  network::Loading loading;
  for (const Json& part : told) loading.push_back(need_number(part, "loading", 0.0, 1.0));
  return loading;
}

BatteryState battery_of(const Json& request) {
  if (!request.contains("battery")) return BatteryState::resting;
  return need_word<BatteryState>(request["battery"], "\"battery\"", {{"resting", BatteryState::resting},
                                                                     {"low", BatteryState::low},
                                                                     {"charging", BatteryState::charging}});
}

// {"element": "splice", "outlet": 3, "side": "negative"}: outlet 0 and the positive side when left out.
const BranchNetwork::Named& element_at(const Json& told, const BranchNetwork& built, const circuit::Circuit& circuit) {
  network::Place place;
  place.element = need_word<Element>(need(told, "element"), "\"element\"", kElements);
  if (told.contains("outlet")) place.outlet = need_outlet(told["outlet"], circuit);
  if (told.contains("side")) place.side = need_word<Side>(told["side"], "\"side\"", kSides);
  const BranchNetwork::Named* found = built.find(place);
  if (found == nullptr) refuse("the circuit has no such element");
  return *found;
}

// A point to touch: one end of an element, or with no element an outlet's contact.
NodeId point_of(const Json& told, const BranchNetwork& built, const circuit::Circuit& circuit) {
  need_object(told, "a point");
  only_keys(told, {"element", "outlet", "side", "end"});
  if (!told.contains("element")) {
    if (told.contains("end")) refuse("\"end\" needs an element");
    const circuit::OutletId outlet = need_outlet(need(told, "outlet"), circuit);
    if (outlet == circuit::kBlock) refuse("a point on the block needs an element");
    return built.outlet_contact(outlet, need_word<Side>(need(told, "side"), "\"side\"", kSides));
  }
  const BranchNetwork::Named& named = element_at(told, built, circuit);
  if (!told.contains("end")) return named.away;
  return need_word<NodeId>(told["end"], "\"end\"", {{"near", named.near_source}, {"away", named.away}});
}

double ohm_of(const Json& edit, double otherwise) {
  if (!edit.contains("ohm")) return otherwise;
  return need_number(edit["ohm"], "\"ohm\"", network::kSmallestOhm, 1e9);
}

void make_edit(const Json& edit, BranchNetwork& built, const circuit::Circuit& circuit) {
  constexpr double kBoltedShortOhm = 1e-4;
  enum class Fault { open, series, short_circuit, swap };
  need_object(edit, "an edit");
  const Fault fault = need_word<Fault>(need(edit, "do"), "the edit's \"do\"", {{"open", Fault::open},
                                                                               {"series", Fault::series},
                                                                               {"short", Fault::short_circuit},
                                                                               {"swap", Fault::swap}});
  network::Netlist& netlist = built.netlist;
  switch (fault) {
    case Fault::open:
      only_keys(edit, {"do", "element", "outlet", "side"});
      netlist.open(element_at(edit, built, circuit).branch);
      return;
    case Fault::series:
      only_keys(edit, {"do", "element", "outlet", "side", "ohm"});
      need(edit, "ohm");
      netlist.add_series(element_at(edit, built, circuit).branch, units::Ohms(ohm_of(edit, 0.0)));
      return;
    case Fault::short_circuit:
      only_keys(edit, {"do", "from", "to", "ohm"});
      netlist.bridge(point_of(need(edit, "from"), built, circuit), point_of(need(edit, "to"), built, circuit),
                     units::Ohms(ohm_of(edit, kBoltedShortOhm)));
      return;
    case Fault::swap: {
      only_keys(edit, {"do", "first", "second"});
      const Json& first = need_object(need(edit, "first"), "\"first\"");
      const Json& second = need_object(need(edit, "second"), "\"second\"");
      only_keys(first, {"element", "outlet", "side"});
      only_keys(second, {"element", "outlet", "side"});
      netlist.swap_ends(element_at(first, built, circuit).branch, element_at(second, built, circuit).branch);
      return;
    }
  }
}

// Ends of a fault list and a reading list: more than any real request, and no way to stall the probe.
const Json& list_or_empty(const Json& request, const char* key) {
  static const Json empty = Json::array();
  constexpr std::size_t kMost = 200;
  if (!request.contains(key)) return empty;
  const Json& list = need_array(request[key], key);
  if (list.size() > kMost) refuse("\"" + std::string(key) + "\" has more than 200 items");
  return list;
}

Json reading_json(const Json& told, const BranchNetwork& built, const circuit::Circuit& circuit) {
  need_object(told, "an item of \"probe\"");
  only_keys(told, {"red", "black", "with"});
  const auto instrument = need_word<Instrument>(need(told, "with"), "\"with\"",
                                                {{"meter", Instrument::meter_volts}, {"lamp", Instrument::lamp}});
  const NodeId red = point_of(need(told, "red"), built, circuit);
  const NodeId black = point_of(need(told, "black"), built, circuit);
  const network::Reading reading = network::probe(built.netlist, red, black, instrument, circuit.supply.nominal);
  return {{"outcome", word_of<Outcome>(reading.outcome, kOutcomes)},
          {"voltage_v", number(reading.voltage.number())},
          {"current_a", number(reading.current.number())}};
}

// null where either end hangs in the air: only what is held to the battery has a voltage.
Json voltage_json(const network::Solution& solution, NodeId plus, NodeId minus) {
  const auto floats = [&solution](NodeId node) { return solution.floating[static_cast<std::size_t>(node.index)]; };
  if (floats(plus) || floats(minus)) return nullptr;
  return number(solution.between(plus, minus).number());
}

Json outlets_json(const circuit::Circuit& circuit, const BranchNetwork& built, const network::Solution& solution) {
  Json list = Json::array();
  for (const circuit::Outlet& outlet : circuit.outlets) {
    const BranchNetwork::Named& device = *built.find({Element::device, outlet.id, Side::positive});
    const bool folded = std::find(solution.folded.begin(), solution.folded.end(), device.branch) != solution.folded.end();
    list.push_back({{"id", outlet.id.number},
                    {"voltage_v", voltage_json(solution, device.near_source, device.away)},
                    {"current_a", number(solution.through(device.branch).number())},
                    {"folded", folded}});
  }
  return list;
}

Json elements_json(const BranchNetwork& built, const network::Solution& solution) {
  Json list = Json::array();
  for (const BranchNetwork::Named& named : built.elements) {
    list.push_back({{"element", word_of<Element>(named.place.element, kElements)},
                    {"outlet", named.place.outlet.number},
                    {"side", word_of<Side>(named.place.side, kSides)},
                    {"near_v", voltage_json(solution, named.near_source, network::kReference)},
                    {"away_v", voltage_json(solution, named.away, network::kReference)},
                    {"current_a", number(solution.through(named.branch).number())}});
  }
  return list;
}

}  // namespace

Json solve_answer(const Json& request) {
  only_keys(request, {"do", "circuit", "fitted", "loading", "battery", "edits", "probe", "elements"});
  const bool elements = flag_or(request, "elements", false);
  const circuit::Circuit circuit = need_circuit(request);
  BranchNetwork built = network::build(circuit, fitted_of(request), loading_of(request, circuit.outlets.size()),
                                       battery_of(request));
  for (const Json& edit : list_or_empty(request, "edits")) make_edit(edit, built, circuit);
  const network::Solution solution = network::solve(built.netlist);
  Json json = {{"outcome", word_of<Outcome>(solution.outcome, kOutcomes)}};
  json["message"] = solution.message;
  if (solution.outcome != Outcome::invalid) {
    const BranchNetwork::Named& battery = *built.find({Element::battery, circuit::kBlock, Side::positive});
    json["battery_v"] = voltage_json(solution, battery.away, battery.near_source);
    const BranchNetwork::Named& fuse = *built.find({Element::fuse, circuit::kBlock, Side::positive});
    json["fuse_current_a"] = number(solution.through(fuse.branch).number());
    json["outlets"] = outlets_json(circuit, built, solution);
    if (elements) json["elements"] = elements_json(built, solution);
  }
  json["readings"] = Json::array();
  for (const Json& told : list_or_empty(request, "probe")) json["readings"].push_back(reading_json(told, built, circuit));
  return json;
}

}  // namespace probe
