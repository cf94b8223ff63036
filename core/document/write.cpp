#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "document/circuit_file.h"
#include "document/fields.h"

namespace document {
namespace {

using Json = nlohmann::ordered_json;

// A whole number is written without ".0"; any other with the digits that give it back exactly.
Json json_number(double number) {
  constexpr double kExactlyWhole = 1e15;
  const bool whole = number == std::floor(number) && std::fabs(number) < kExactlyWhole;
  if (whole && !std::signbit(number)) return Json(static_cast<std::int64_t>(number));
  return Json(number);
}

// The door that fields go out through.
class Writer {
 public:
  explicit Writer(Json& object) : object_(object) {}

  void text(const char* key, const std::string& value) { object_[key] = value; }
  void number(const char* key, double value) { object_[key] = json_number(value); }
  template <class Whole>
  void whole(const char* key, Whole value) { object_[key] = value; }
  void flag(const char* key, bool value) { object_[key] = value; }
  template <class Quantity>
  void quantity(const char* key, Quantity value) { number(key, value.number()); }
  void maybe_number(const char* key, const std::optional<double>& value) {
    if (value) number(key, *value);
  }
  template <class Quantity>
  void maybe_quantity(const char* key, const std::optional<Quantity>& value) {
    if (value) quantity(key, *value);
  }
  template <class Choice, class Table>
  void choice(const char* key, Choice value, const Table& table) {
    const auto found = std::find_if(table.begin(), table.end(), [value](const auto& w) { return w.second == value; });
    object_[key] = std::string(found->first);
  }
  void ampacity_table(const char* key, tables::AmpacityTableId id) {
    object_[key] = std::string(tables::ampacity_table(id).key);
  }
  void fuse_family(const char* key, tables::FuseFamilyId id) { object_[key] = std::string(tables::fuse_family(id).key); }
  void rating(const char* amperes_key, const char* watts_key, const circuit::Load& load) {
    number(load.rating_in_watts ? watts_key : amperes_key, load.rating);
  }
  void texts(const char* key, const std::vector<std::string>& values) { object_[key] = values; }
  void numbers(const char* key, const std::vector<double>& values) {
    Json list = Json::array();
    for (const double value : values) list.push_back(json_number(value));
    object_[key] = std::move(list);
  }
  template <class Fields>
  void object(const char* key, Fields fields) {
    Json inside = Json::object();
    Writer writer(inside);
    fields(writer);
    object_[key] = std::move(inside);
  }
  template <class T, class Fields>
  void maybe_object(const char* key, const std::optional<T>& value, Fields fields) {
    if (value) object(key, [&value, &fields](Writer& inside) { fields(inside, *value); });
  }
  template <class T, class Fields>
  void list(const char* key, const std::vector<T>& values, Fields fields) {
    Json list = Json::array();
    for (const T& value : values) {
      Json inside = Json::object();
      Writer writer(inside);
      fields(writer, value);
      list.push_back(std::move(inside));
    }
    object_[key] = std::move(list);
  }

 private:
  Json& object_;
};

// A line per key down to the supply and the wiring, and a line per outlet: what changed shows
// as the changed line.
bool is_spread(const Json& value, int depth) {
  constexpr int kSupplyDepth = 3;  // file, list of circuits, circuit, supply
  const bool list_of_objects = value.is_array() && !value.empty() && value.front().is_object();
  return list_of_objects || (value.is_object() && depth <= kSupplyDepth);
}

void append(std::string& out, const Json& value, int depth) {
  if (!value.is_structured()) {
    // Names are valid UTF-8 by validate(); anything else is replaced, never thrown about.
    out += value.dump(-1, ' ', false, Json::error_handler_t::replace);
    return;
  }
  const bool spread = is_spread(value, depth);
  const auto new_line = [&out](int indent) { out.append("\n").append(static_cast<std::size_t>(2 * indent), ' '); };
  out += value.is_object() ? '{' : '[';
  bool first = true;
  for (auto entry = value.begin(); entry != value.end(); ++entry) {
    if (!first) out += spread ? "," : ", ";
    first = false;
    if (spread) new_line(depth + 1);
    if (value.is_object()) out += Json(entry.key()).dump() + ": ";
    append(out, *entry, depth + 1);
  }
  if (spread && !first) new_line(depth);
  out += value.is_object() ? '}' : ']';
}

}  // namespace

std::string write_circuits(const std::vector<circuit::Circuit>& circuits) {
  Json root = Json::object();
  Writer writer(root);
  writer.text("format", std::string(kFormatName));
  writer.whole("version", kFormatVersion);
  writer.list("circuits", circuits, [](Writer& inside, const circuit::Circuit& c) { circuit_fields(inside, c); });
  std::string text;
  append(text, root, 0);
  text += '\n';
  return text;
}

std::string write_circuit(const circuit::Circuit& circuit) { return write_circuits({circuit}); }

}  // namespace document
