// docs/vehicle.schema.json, docs/vehicle-format.md and the code name the same keys, ranges and
// words, and every file that is written is one that the schema describes.
#include <doctest/doctest.h>

#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "circuit/limits.h"
#include "document/circuit_file.h"
#include "document/field_lister.h"
#include "document/json_schema.h"
#include "document/vehicle_file.h"
#include "files.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "units/format.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/validate.h"

using circuit::Field;
using field_lister::Keys;
using field_lister::listed;
using nlohmann::json;

namespace {

const json& schema() {
  static const json read = files::schema("vehicle.schema.json");
  return read;
}

// A property of an object; what it refers to where it is a plain reference.
json property(const std::string& object, const std::string& key) {
  const json& defs = schema().at("$defs");
  const json& found = defs.at(object).at("properties").at(key);
  if (!found.contains("$ref")) return found;
  return defs.at(found.at("$ref").get<std::string>().substr(std::string("#/$defs/").size()));
}

std::set<std::string> words_in_schema(const json& node) {
  std::set<std::string> words;
  for (const json& word : node.at("enum")) words.insert(word.is_string() ? word.get<std::string>() : word.dump());
  return words;
}

std::set<std::string> part_keys(tables::PartKind kind) {
  std::set<std::string> keys;
  for (const tables::Part& part : tables::parts(kind)) keys.insert(std::string(part.key));
  return keys;
}

// Every key of a sample, by the object that it stands in; objects are called as in the lister.
std::set<std::string> keys_seen(const json& text) {
  std::set<std::string> seen;
  const std::function<void(const json&)> walk = [&](const json& node) {
    for (const auto& item : node.items()) {
      if (node.is_object()) seen.insert(item.key());
      if (item.value().is_structured()) walk(item.value());
    }
  };
  walk(text);
  return seen;
}

}  // namespace

TEST_CASE("schema and code name the same keys, needed and optional, and no others") {
  const json& defs = schema().at("$defs");
  const std::set<std::string> shared{"name", "size", "metal", "fuse_kind", "setting", "practice", "colours", "knowledge"};
  for (const auto& entry : listed().objects) {
    const std::string& name = entry.first;
    const Keys& keys = entry.second;
    CAPTURE(name);
    REQUIRE(defs.contains(name));
    const json& node = defs.at(name);
    CHECK(node.at("additionalProperties") == false);
    CHECK(node.at("required").get<std::set<std::string>>() == keys.needed);
    std::set<std::string> properties;
    for (const auto& item : node.at("properties").items()) properties.insert(item.key());
    std::set<std::string> all = keys.needed;
    all.insert(keys.optional.begin(), keys.optional.end());
    CHECK(properties == all);
  }
  CHECK(listed().objects.size() == 23);
  CHECK(defs.size() == listed().objects.size() + shared.size());
  for (const std::string& name : shared) CHECK(defs.contains(name));
  const json& formats = schema().at("oneOf");
  CHECK(formats.at(0).at("properties").at("format").at("const") == std::string(document::kVehiclesFormat));
  CHECK(formats.at(1).at("properties").at("format").at("const") == std::string(document::kCircuitsFormat));
  for (const json& format : formats) CHECK(format.at("properties").at("version").at("const") == document::kFormatVersion);
}

TEST_CASE("the samples with every key have every key that the code names") {
  std::set<std::string> seen = keys_seen(json::parse(files::read(files::documents() / "version-2/everything.json")));
  const std::set<std::string> in_circuits = keys_seen(json::parse(files::read(files::documents() / "version-2/circuits.json")));
  seen.insert(in_circuits.begin(), in_circuits.end());
  for (const auto& entry : listed().objects) {
    for (const auto& key : entry.second.needed) CHECK_MESSAGE(seen.count(key) == 1, entry.first, ".", key);
    for (const auto& key : entry.second.optional) CHECK_MESSAGE(seen.count(key) == 1, entry.first, ".", key);
  }
}

namespace {

// Where each limited field stands in the file.
struct Row { Field field; const char* object; const char* key; };
const std::vector<Row>& rows_of_limits() {
  static const std::vector<Row> rows{
      {Field::run_m, "outlet", "run_m"},
      {Field::load_a, "load", "rated_a"},
      {Field::load_w, "load", "rated_w"},
      {Field::at_most_at_once_a, "plan", "at_most_at_once_a"},
      {Field::at_most_at_once_a, "circuit_with_supply", "at_most_at_once_a"},
      {Field::at_most_at_once_a, "block", "at_most_at_once_a"},
      {Field::drop_limit_fraction, "plan", "drop_limit_fraction"},
      {Field::drop_limit_fraction, "circuit_with_supply", "drop_limit_fraction"},
      {Field::drop_limit_fraction, "outlet", "drop_limit_fraction"},
      {Field::minimum_voltage_per_12v, "load", "minimum_voltage_v"},
      {Field::ambient_c, "wiring", "ambient_c"},
      {Field::ambient_c, "plan_wiring", "ambient_c"},
      {Field::wire_temperature_c, "wiring", "wire_temperature_c"},
      {Field::wire_temperature_c, "plan_wiring", "wire_temperature_c"},
      {Field::circuits_bundled, "wiring", "circuits_bundled"},
      {Field::circuits_bundled, "plan_wiring", "circuits_bundled"},
      {Field::tail_m, "wiring", "tail_m"},
      {Field::tail_m, "plan_wiring", "tail_m"},
      {Field::feeder_run_m, "supply", "feeder_run_m"},
      {Field::feeder_run_m, "feeder", "run_m"},
      {Field::main_fuse_a, "supply", "main_fuse_a"},
      {Field::main_fuse_a, "main", "rating_a"},
      {Field::main_fuse_a, "source", "fuse_a"},
      {Field::resting_per_12v, "supply", "resting_v"},
      {Field::resting_per_12v, "battery", "resting_v"},
      {Field::low_per_12v, "supply", "low_v"},
      {Field::low_per_12v, "battery", "low_v"},
      {Field::part_rating_a, "wiring", "clamp_rating_a"},
      {Field::part_rating_a, "block", "clamp_rating_a"},
      {Field::part_rating_a, "outlet", "rating_a"},
      {Field::fuse_position, "circuit_with_supply", "fuse_position"},
      {Field::fuse_a, "in_hand", "fuse_a"},
      {Field::fuse_a, "device", "own_fuse_a"},
      {Field::taps, "outlet", "taps"},
      {Field::inrush_a, "inrush", "current_a"},
      {Field::inrush_s, "inrush", "lasting_s"},
      {Field::in_line_a, "in_line", "rating_a"},
      {Field::highest_per_12v, "supply", "highest_v"},
      {Field::highest_per_12v, "source", "highest_v"},
      {Field::internal_ohm, "supply", "internal_ohm"},
      {Field::internal_ohm, "battery", "internal_ohm"},
      {Field::main_fuse_distance_m, "supply", "main_fuse_distance_m"},
      {Field::main_fuse_distance_m, "main", "distance_m"},
      {Field::disconnect_a, "supply", "disconnect_a"},
      {Field::disconnect_a, "block", "disconnect_a"},
      {Field::block_a, "supply", "block_rating_a"},
      {Field::block_a, "block", "rating_a"},
      {Field::beside_a, "supply", "beside_a"},
      {Field::capacity_ah, "battery", "capacity_ah"},
      {Field::positions, "block", "positions"},
      {Field::source_a, "source", "most_a"},
      {Field::source_run_m, "source", "cable_run_m"},
  };
  return rows;
}

bool is_per_12v(Field field) {
  return field == Field::minimum_voltage_per_12v || field == Field::resting_per_12v || field == Field::low_per_12v ||
         field == Field::highest_per_12v;
}

// The section of docs/vehicle-format.md whose heading names the object, and the line of a key in it.
std::string line_of(const std::string& object, const std::string& key) {
  static const std::string page = files::read(std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "docs/vehicle-format.md");
  std::size_t heading = page.find("\n## `" + object + "`\n");
  if (heading == std::string::npos) heading = page.find(": `" + object + "`\n");
  if (heading == std::string::npos) return {};
  const std::size_t end = page.find("\n#", heading + 1);
  const std::size_t at = page.find("\n| `" + key + "` |", heading);
  if (at == std::string::npos || at > end) return {};
  return page.substr(at + 1, page.find('\n', at + 1) - at);
}

}  // namespace

TEST_CASE("docs/vehicle-format.md has a line for every key, with the range of its limit") {
  for (const auto& entry : listed().objects) {
    for (const auto& key : entry.second.needed) {
      CAPTURE(entry.first + "." + key);
      const std::string line = line_of(entry.first, key);
      CHECK(!line.empty());
      CHECK(line.find("*may be left out*") == std::string::npos);
    }
    for (const auto& key : entry.second.optional) {
      CAPTURE(entry.first + "." + key);
      const bool one_of_two = key == "rated_a" || key == "rated_w";
      CHECK((line_of(entry.first, key).find("*may be left out*") != std::string::npos) != one_of_two);
    }
  }
  for (const Row& row : rows_of_limits()) {
    const circuit::Limit& limit = circuit::limit(row.field);
    const std::string range = units::number_text(limit.low, 9) + " to " + units::number_text(limit.high, 9);
    const std::string line = line_of(row.object, row.key);
    CAPTURE(range);
    CHECK_MESSAGE(line.find(range) != std::string::npos, row.object, ".", row.key, ": ", line);
  }
}

TEST_CASE("schema ranges are the limits") {
  std::set<Field> covered;
  for (const Row& row : rows_of_limits()) {
    CAPTURE(row.object);
    CAPTURE(row.key);
    const circuit::Limit& limit = circuit::limit(row.field);
    json node = property(row.object, row.key);
    CHECK(node.contains("anyOf") == !limit.zero.empty());
    if (node.contains("anyOf")) {
      CHECK(node.at("anyOf").at(0).at("const") == 0);
      node = node.at("anyOf").at(1);
    }
    // Told for the whole battery: up to 48 V, four times the limit per 12 V.
    CHECK(node.at("minimum").get<double>() == limit.low);
    CHECK(node.at("maximum").get<double>() == limit.high * (is_per_12v(row.field) ? 4.0 : 1.0));
    CHECK(node.at("type") == (limit.whole ? "integer" : "number"));
    covered.insert(row.field);
  }
  CHECK(covered.size() == circuit::limits().size());
  const json built_fuse = property("built", "fuse_a").at("anyOf");   // 0: unknown
  CHECK(built_fuse.at(1).at("minimum").get<double>() == circuit::limit(Field::fuse_a).low);
  CHECK(built_fuse.at(1).at("maximum").get<double>() == circuit::limit(Field::fuse_a).high);
  const json fuses = property("shelf", "missing_fuses_a");
  CHECK(fuses.at("items").at("minimum").get<double>() == circuit::limit(Field::fuse_a).low);
  CHECK(fuses.at("items").at("maximum").get<double>() == circuit::limit(Field::fuse_a).high);
  CHECK(fuses.at("maxItems") == circuit::kMaxShelfFuses);
  CHECK(property("plan", "name").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("circuit_with_supply", "place").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("device", "name").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("device", "preset").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("plan", "outlets").at("maxItems") == circuit::kMaxOutlets);
  CHECK(property("outlet", "devices").at("maxItems") == circuit::kMaxDevices);
  CHECK(property("outlet", "in_line").at("maxItems") == circuit::kMaxInLine);
  CHECK(property("outlet", "id").at("maximum") == circuit::kMaxOutletId);
  CHECK(property("plan", "next_outlet_id").at("maximum") == circuit::kMaxOutletId + 1);
  CHECK(property("vehicle", "next_id").at("maximum") == circuit::kMaxOutletId + 1);
  CHECK(property("vehicle", "blocks").at("maxItems") == vehicle::kMaxBlocks);
  CHECK(property("vehicle", "sources").at("maxItems") == vehicle::kMaxSources);
  CHECK(property("vehicle", "circuits").at("maxItems") == vehicle::kMaxCircuits);
  CHECK(property("circuit", "traces").at("maxItems") == vehicle::kMaxTraces);
  CHECK(property("circuit", "position").at("maximum") == circuit::limit(Field::positions).high);
  CHECK(property("built", "runs").at("maxItems") == circuit::kMaxOutlets);
  CHECK(property("trace", "told").at("maxItems") == vehicle::kMaxTold);
  CHECK(property("trace", "outcome").at("maxLength") == vehicle::kMaxTextBytes);
  CHECK(property("told", "answer").at("maxLength") == vehicle::kMaxTextBytes);
  const json& formats = schema().at("oneOf");
  CHECK(formats.at(0).at("properties").at("vehicles").at("maxItems") == document::kMaxVehiclesInFile);
  CHECK(formats.at(1).at("properties").at("circuits").at("maxItems") == circuit::kMaxCircuitsInFile);
}

TEST_CASE("schema words are the code's and the tables' keys") {
  for (const auto& entry : listed().words) {
    const std::size_t dot = entry.first.find('.');
    CAPTURE(entry.first);
    if (entry.first.ends_with(".fuse_family")) continue;   // not every fuse sits on a block: below
    CHECK(words_in_schema(property(entry.first.substr(0, dot), entry.first.substr(dot + 1))) == entry.second);
  }
  const auto numbers = [](std::span<const double> list) {
    std::set<std::string> words;
    for (const double number : list) words.insert(std::to_string(static_cast<int>(number)));
    return words;
  };
  const auto keys = [](const auto& table) {
    std::set<std::string> words;
    for (const auto& row : table) words.insert(std::string(row.key));
    return words;
  };
  const std::set<std::string> volts = numbers(tables::system_voltages_v());
  const std::set<std::string> batteries = keys(tables::battery_kinds());
  CHECK(words_in_schema(property("supply", "nominal_v")) == volts);
  CHECK(words_in_schema(property("battery", "nominal_v")) == volts);
  CHECK(words_in_schema(property("block", "fuse_family")) == keys(tables::fuse_families()));
  CHECK(words_in_schema(property("wiring", "fuse_family")) == keys(tables::fuse_families()));
  CHECK(words_in_schema(property("supply", "battery")) == batteries);
  CHECK(words_in_schema(property("battery", "kind")) == batteries);
  for (const char* wiring : {"wiring", "plan_wiring"}) {
    CHECK(words_in_schema(property(wiring, "insulation_c")) == numbers(tables::insulation_ratings_c()));
    CHECK(words_in_schema(property(wiring, "splice_part")) == part_keys(tables::PartKind::splice));
  }
  CHECK(words_in_schema(property("wiring", "clamp_part")) == part_keys(tables::PartKind::clamp));
  CHECK(words_in_schema(property("block", "clamp_part")) == part_keys(tables::PartKind::clamp));
  CHECK(words_in_schema(property("outlet", "outlet_part")) == part_keys(tables::PartKind::outlet));
  CHECK(words_in_schema(property("outlet", "terminal_part")) == part_keys(tables::PartKind::terminal));
  std::set<std::string> colours = keys(tables::conductor_colours());
  colours.insert("");   // as left out
  CHECK(words_in_schema(property("vehicle", "colours")) == colours);
  CHECK(words_in_schema(property("circuit_with_supply", "colours")) == colours);
  std::set<std::string> sizes;
  for (const auto system : tables::gauge_systems()) {
    for (const auto& conductor : tables::conductors(system)) sizes.insert(std::string(conductor.id));
  }
  const std::vector<std::pair<const char*, const char*>> places{
      {"supply", "feeder_size"}, {"feeder", "size"}, {"source", "cable_size"}, {"in_hand", "size"}};
  for (const auto& [object, key] : places) CHECK(words_in_schema(property(object, key)) == sizes);
  CHECK(words_in_schema(schema().at("$defs").at("size")) == sizes);   // outlet.wire_size, shelf.missing_sizes
}

TEST_CASE("every sample is one that the schema of its version describes") {
  const std::map<std::string, json> schemas{{"version-1", files::schema("circuit-v1.schema.json")}, {"version-2", schema()}};
  for (const auto& entry : schemas) {
    for (const auto& path : files::in_folder(entry.first)) {
      CAPTURE(path.string());
      CHECK(json_schema::violation(entry.second, json::parse(files::read(path))) == "");
    }
  }
}

TEST_CASE("every random vehicle, written, is one that the schema describes, and so is each of its circuits") {
  constexpr std::uint64_t kSeed = 5;
  const int rounds = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 15 : 300;
  MESSAGE("seed ", kSeed);
  random_vehicles::Engine engine(kSeed);
  for (int round = 0; round < rounds; ++round) {
    const vehicle::Vehicle made = random_vehicles::any(engine);
    const std::string text = document::write_vehicle(made);
    const std::string wrong = json_schema::violation(schema(), json::parse(text));
    REQUIRE_MESSAGE(wrong.empty(), wrong, "\n", text);
    for (const auto& placed : made.circuits) {
      const json circuit = json::parse(document::write_circuit(vehicle::circuit_of(made, placed.id)));
      REQUIRE(json_schema::violation(schema(), circuit) == "");
    }
  }
}
