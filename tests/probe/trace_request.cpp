#include "probe/trace_request.h"

#include <cmath>
#include <limits>

#include "circuit/limits.h"
#include "sizing/fixes.h"

namespace probe {
namespace {

using diagnosis::Location;
using diagnosis::Site;

const Json& list_of(const Json& request, const char* key, std::size_t most) {
  static const Json empty = Json::array();
  if (!request.contains(key)) return empty;
  const Json& list = need_array(request[key], key);
  if (list.size() > most) refuse("\"" + std::string(key) + "\" has more than " + std::to_string(most) + " items");
  return list;
}

int need_position(const Json& value) {
  const circuit::Limit& limit = circuit::limit(circuit::Field::fuse_position);
  const double position = need_number(value, "\"fuse_position\"", limit.low, limit.high);
  if (position != std::floor(position)) refuse("\"fuse_position\" is not a whole number");
  return static_cast<int>(position);
}

diagnosis::Case start_of(const Json& request) {
  using tables::GaugeSystem;
  if (!request.contains("generic")) {
    diagnosis::Case made = diagnosis::generic_case(GaugeSystem::awg);
    made.circuit = need_circuit(request);
    made.neighbours.clear();
    return made;
  }
  if (request.contains("circuit")) refuse("\"circuit\" and \"generic\" do not go together");
  return diagnosis::generic_case(need_word<GaugeSystem>(request["generic"], "\"generic\"", {{"awg", GaugeSystem::awg},
                                                                                         {"metric", GaugeSystem::metric}}));
}

// Only what is told: the wire and fuse that sizing would choose are a plan, and never taken as fitted. The fuse
// is named where it protects the wire, by sizing's own rules.
Fitted fit(const Json& request, diagnosis::Case& into) {
  Fitted fitted;
  if (!request.contains("fitted")) return fitted;
  using diagnosis::Protection;
  const Json& told = need_object(request["fitted"], "\"fitted\"");
  only_keys(told, {"size", "tail", "fuse_a"});
  fitted.size = &need_size(need(told, "size"), "size");
  if (told.contains("tail")) fitted.tail = &need_size(told["tail"], "tail");
  if (told.contains("fuse_a")) fitted.fuse = units::Amperes(need_number(told["fuse_a"], "fuse_a", 0.1, 1000.0));
  Protection protection = Protection::not_judged;
  if (fitted.fuse) {
    const bool protects = sizing::reach(into.circuit, {std::string(fitted.size->id), *fitted.fuse}).fuse_protects_wire;
    protection = protects ? Protection::protects : Protection::too_large;
  }
  into.built = diagnosis::built_throughout(into.circuit, {fitted.size, fitted.tail, fitted.fuse.value_or(units::Amperes(0.0))},
                                           diagnosis::Knowledge::known, protection);
  return fitted;
}

diagnosis::Tools tools_of(const Json& request) {
  using diagnosis::Tools;
  Tools held;
  for (const Json& each : list_of(request, "tools", 4)) {
    held.*need_word<bool Tools::*>(each, "a tool", {{"meter", &Tools::meter},
                                                    {"lamp", &Tools::lamp},
                                                    {"device", &Tools::device},
                                                    {"spare fuse", &Tools::spare_fuse}}) = true;
  }
  return held;
}

diagnosis::Complaint complaint_of(const Json& request, const circuit::Circuit& circuit) {
  const std::string key = need_text(need(request, "symptom"), "\"symptom\"");
  const diagnosis::SymptomRow* row = diagnosis::symptom_by_key(key);
  if (row == nullptr) {
    std::string all;
    for (const diagnosis::SymptomRow& each : diagnosis::symptoms()) {
      all.append(all.empty() ? "\"" : ", \"").append(each.key).append("\"");
    }
    refuse("\"symptom\" is none of " + all);
  }
  diagnosis::Complaint complaint{row->symptom, {}};
  for (const Json& each : list_of(request, "outlets", circuit::kMaxOutlets)) {
    complaint.outlets.push_back(need_outlet(each, circuit));
  }
  return complaint;
}

std::vector<diagnosis::Neighbour> neighbours_of(const Json& request, const circuit::Circuit& circuit) {
  std::vector<diagnosis::Neighbour> found;
  for (const Json& each : list_of(request, "neighbours", diagnosis::kMaxNeighbours)) {
    need_object(each, "a neighbour");
    only_keys(each, {"name", "fuse_position", "same_loom"});
    diagnosis::Neighbour neighbour;
    neighbour.name = need_text(need(each, "name"), "\"name\"");
    if (neighbour.name.size() > 4 * circuit::kMaxNameCharacters) refuse("\"name\" is too long");
    neighbour.fuse_position = need_position(need(each, "fuse_position"));
    if (neighbour.fuse_position == circuit.fuse_position) refuse("a neighbour sits at this circuit's own fuse position");
    neighbour.same_loom = flag_or(each, "same_loom", true);
    found.push_back(std::move(neighbour));
  }
  return found;
}

// "battery", "block", "front 3", "behind 3": as Site's own keys.
Site need_site(const Json& value, const circuit::Circuit& circuit) {
  const std::string told = need_text(value, "a site");
  std::vector<Site> all{{Location::battery, circuit::kBlock}, {Location::block, circuit::kBlock}};
  for (const circuit::Outlet& outlet : circuit.outlets) {
    all.push_back({Location::front, outlet.id});
    all.push_back({Location::behind, outlet.id});
  }
  for (const Site& site : all) {
    if (diagnosis::site_key(site) == told) return site;
  }
  refuse("a site is \"battery\", \"block\", \"front 3\" or \"behind 3\", with an outlet of the circuit");
}

double need_reading(const Json& value) {
  if (value.is_string() && value == "open") return std::numeric_limits<double>::infinity();
  constexpr double kAnyMeter = 1e12;   // what can not be is for the core to say
  return need_number(value, "\"reading\"", -kAnyMeter, kAnyMeter);
}

Said said_of(const Json& told) {
  using diagnosis::RetestResult;
  need_object(told, "an item of \"told\"");
  Said said;
  said.remedy = told.contains("remedy");
  if (said.remedy) {
    only_keys(told, {"remedy", "result"});
    said.id = need_text(told["remedy"], "\"remedy\"");
    said.result = need_word<RetestResult>(need(told, "result"), "\"result\"", {{"works", RetestResult::works},
                                                                               {"same", RetestResult::same},
                                                                               {"blew", RetestResult::blew},
                                                                               {"can't", RetestResult::cant}});
    return said;
  }
  only_keys(told, {"check", "answer", "reading"});
  said.id = need_text(need(told, "check"), "\"check\"");
  if (told.contains("answer") == told.contains("reading")) refuse("a check needs an \"answer\" or a \"reading\"");
  if (told.contains("reading")) {
    said.answer = diagnosis::reading(need_reading(told["reading"]));
    return said;
  }
  const std::string word = need_text(told["answer"], "\"answer\"");
  said.answer = word == "can't reach" ? diagnosis::cant_reach() : word == "not sure" ? diagnosis::not_sure() : diagnosis::word(word);
  return said;
}

std::size_t suspects_of(const Json& request) {
  if (!request.contains("suspects")) return 8;
  const double most = need_number(request["suspects"], "\"suspects\"", 0.0, 10'000.0);
  if (most != std::floor(most)) refuse("\"suspects\" is not a whole number");
  return static_cast<std::size_t>(most);
}

}  // namespace

TraceRequest read_trace_request(const Json& request) {
  only_keys(request, {"do", "circuit", "generic", "fitted", "tools", "symptom", "outlets", "neighbours", "out_of_reach",
                      "told", "suspects", "list_checks"});
  TraceRequest read;
  read.suspects = suspects_of(request);
  read.list_checks = flag_or(request, "list_checks", false);
  read.the_case = start_of(request);
  const circuit::Circuit& circuit = read.the_case.circuit;
  read.the_case.tools = tools_of(request);
  read.the_case.complaint = complaint_of(request, circuit);
  if (request.contains("neighbours")) read.the_case.neighbours = neighbours_of(request, circuit);
  for (const Json& each : list_of(request, "out_of_reach", 2 + 2 * circuit::kMaxOutlets)) {
    read.the_case.out_of_reach.push_back(need_site(each, circuit));
  }
  constexpr std::size_t kMostTold = 200;
  for (const Json& each : list_of(request, "told", kMostTold)) read.told.push_back(said_of(each));
  read.fitted = fit(request, read.the_case);
  circuit::Problems problems = diagnosis::problems(read.the_case);
  if (!problems.empty()) throw Refused{one_line(problems.front()), std::move(problems)};
  return read;
}

}  // namespace probe
