#include "probe/answer_line.h"

#include "document/vehicle_file.h"
#include "probe/answers.h"

namespace probe {
namespace {

Json answer(std::string_view line) {
  const Json request = parse_request(line);
  const std::string what = need_text(need(request, "do"), "\"do\"");
  if (what == "size") return size_answer(request);
  if (what == "solve") return solve_answer(request);
  if (what == "trace") return trace_answer(request);
  if (what == "check document") return check_document_answer(request);
  refuse("\"do\" is none of \"size\", \"solve\", \"trace\", \"check document\"");
}

}  // namespace

Json problems_json(const circuit::Problems& problems) {
  Json list = Json::array();
  for (const circuit::Problem& problem : problems) {
    list.push_back({{"place", problem.place}, {"sentence", problem.sentence}, {"allowed", problem.allowed}});
  }
  return list;
}

Json check_document_answer(const Json& request) {
  only_keys(request, {"do", "text"});
  const document::VehiclesRead read = document::read_vehicles(need_text(need(request, "text"), "\"text\""));
  Json vehicles = Json::array();
  for (const vehicle::Vehicle& each : read.vehicles) {
    Json names = Json::array();
    for (const vehicle::PlacedCircuit& placed : each.circuits) names.push_back(placed.plan.name);
    vehicles.push_back({{"name", each.name}, {"circuits", names}});
  }
  return {{"valid", read.problems.empty()}, {"vehicles", vehicles}, {"problems", problems_json(read.problems)}};
}

std::string answer_line(std::string_view line) {
  Json given;
  try {
    given = answer(line);
  } catch (const Refused& refused) {
    given = {{"error", refused.why}};
    if (!refused.problems.empty()) given["problems"] = problems_json(refused.problems);
  }
  return given.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace probe
