#include "probe/request.h"

#include <cmath>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "document/circuit_file.h"

namespace probe {
namespace {

constexpr int kMaxDepth = 16;
constexpr std::size_t kMaxLineBytes = 2 * circuit::kMaxFileBytes + 1024;  // a document as text, escaped

}  // namespace

void refuse(std::string why) { throw Refused{std::move(why), {}}; }

Json parse_request(std::string_view line) {
  if (line.size() > kMaxLineBytes) refuse("the line is too long");
  bool too_deep = false;
  const auto watch_depth = [&too_deep](int depth, Json::parse_event_t, Json&) {
    too_deep = too_deep || depth > kMaxDepth;
    return !too_deep;
  };
  Json request = Json::parse(line.begin(), line.end(), watch_depth, false);
  if (too_deep) refuse("the request is nested too deep");
  if (!request.is_object()) refuse("the line is not a JSON object");
  return request;
}

void only_keys(const Json& object, std::initializer_list<std::string_view> known) {
  for (const auto& item : object.items()) {
    bool found = false;
    for (const std::string_view key : known) found = found || key == item.key();
    if (!found) refuse("key " + circuit::quoted(item.key()) + " is not known here");
  }
}

const Json& need(const Json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) refuse("key \"" + std::string(key) + "\" is missing");
  return *found;
}

const Json& need_object(const Json& value, const char* what) {
  if (!value.is_object()) refuse(std::string(what) + " is not an object");
  return value;
}

const Json& need_array(const Json& value, const char* what) {
  if (!value.is_array()) refuse(std::string(what) + " is not a list");
  return value;
}

std::string need_text(const Json& value, const char* what) {
  if (!value.is_string()) refuse(std::string(what) + " is not a text");
  return value.get<std::string>();
}

double need_number(const Json& value, const char* what, double low, double high) {
  if (!value.is_number()) refuse(std::string(what) + " is not a number");
  const double number = value.get<double>();
  if (!(number >= low && number <= high)) {
    refuse(std::string(what) + " is not from " + Json(low).dump() + " to " + Json(high).dump());
  }
  return number;
}

bool flag_or(const Json& object, const char* key, bool otherwise) {
  const auto found = object.find(key);
  if (found == object.end()) return otherwise;
  if (!found->is_boolean()) refuse("\"" + std::string(key) + "\" is not true or false");
  return found->get<bool>();
}

circuit::Circuit need_circuit(const Json& request) {
  // Through the file reader: a request's circuit is held to what a saved file is.
  const Json file = {{"format", document::kCircuitsFormat},
                     {"version", document::kFormatVersion},
                     {"circuits", Json::array({need(request, "circuit")})}};
  document::ReadResult read = document::read_circuits(file.dump(-1, ' ', false, Json::error_handler_t::replace));
  if (read.circuits.empty()) throw Refused{one_line(read.problems.front()), std::move(read.problems)};
  return std::move(read.circuits.front());
}

const tables::Conductor& need_size(const Json& value, const char* what) {
  const std::string id = need_text(value, what);
  const tables::Conductor* size = tables::conductor_by_id(id);
  if (size == nullptr) refuse(std::string(what) + " " + circuit::quoted(id) + " is not known");
  return *size;
}

circuit::OutletId need_outlet(const Json& value, const circuit::Circuit& circuit) {
  const double number = need_number(value, "outlet", 0.0, circuit::kMaxOutletId);
  const circuit::OutletId id{static_cast<std::uint32_t>(number)};
  const bool known = id == circuit::kBlock || find_outlet(circuit, id) != nullptr;
  if (number != std::floor(number) || !known) refuse("the circuit has no outlet of that number");
  return id;
}

Json number(double value) {
  if (!std::isfinite(value)) return nullptr;
  constexpr double kPerUnit = 1e9;
  const double rounded = std::fabs(value) < 1e6 ? std::round(value * kPerUnit) / kPerUnit : value;
  return rounded == 0.0 ? 0.0 : rounded;  // never "-0.0"
}

}  // namespace probe
