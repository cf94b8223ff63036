#include "probe/answer_line.h"

#include "document/circuit_file.h"
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
  const document::ReadResult read = document::read_circuits(need_text(need(request, "text"), "\"text\""));
  Json names = Json::array();
  for (const circuit::Circuit& circuit : read.circuits) names.push_back(circuit.name);
  return {{"valid", read.problems.empty()}, {"circuits", names}, {"problems", problems_json(read.problems)}};
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
