// docs/circuit.schema.json and the code name the same keys, ranges and words.
#include <doctest/doctest.h>

#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "circuit/limits.h"
#include "document/circuit_file.h"
#include "document/fields.h"
#include "files.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "units/format.h"

using circuit::Field;
using nlohmann::json;

namespace {

// The keys of one object as fields.h names them, gathered by going through its doors.
struct Keys {
  std::set<std::string> needed;
  std::set<std::string> optional;
};

class Lister {
 public:
  explicit Lister(std::string name) : name_(std::move(name)) { objects()[name_]; }

  template <class T> void text(const char* key, T&) { needed(key); }
  template <class T> void number(const char* key, T&) { needed(key); }
  template <class T> void whole(const char* key, T&) { needed(key); }
  template <class T> void flag(const char* key, T&) { needed(key); }
  template <class T> void quantity(const char* key, T&) { needed(key); }
  template <class T> void maybe_number(const char* key, T&) { optional(key); }
  template <class T> void maybe_quantity(const char* key, T&) { optional(key); }
  template <class T, class Table>
  void choice(const char* key, T&, const Table& table) {
    needed(key);
    for (const auto& word : table) words()[name_ + "." + key].insert(std::string(word.first));
  }
  template <class T> void ampacity_table(const char* key, T&) { needed(key); }
  template <class T> void fuse_family(const char* key, T&) { needed(key); }
  template <class T> void rating(const char* a, const char* w, T&) { optional(a); optional(w); }
  template <class T> void texts(const char* key, T&) { needed(key); }
  template <class T> void numbers(const char* key, T&) { needed(key); }
  template <class Fields>
  void object(const char* key, Fields fields) {
    needed(key);
    Lister inside(key);
    fields(inside);
  }
  template <class T, class Fields>
  void maybe_object(const char* key, std::optional<T>& value, Fields fields) {
    optional(key);
    Lister inside(key);
    fields(inside, value.emplace());
  }
  template <class T, class Fields>
  void list(const char* key, std::vector<T>& values, Fields fields) {
    needed(key);
    Lister inside("outlet");
    fields(inside, values.emplace_back());
  }

  static std::map<std::string, Keys>& objects() {
    static std::map<std::string, Keys> all;
    return all;
  }
  static std::map<std::string, std::set<std::string>>& words() {
    static std::map<std::string, std::set<std::string>> all;
    return all;
  }

 private:
  void needed(const char* key) { objects()[name_].needed.insert(key); }
  void optional(const char* key) { objects()[name_].optional.insert(key); }
  std::string name_;
};

const std::map<std::string, Keys>& keys_of_the_code() {
  circuit::Circuit circuit;
  Lister lister("circuit");
  document::circuit_fields(lister, circuit);
  return Lister::objects();
}

json schema() { return json::parse(files::read(std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "docs/circuit.schema.json")); }

json property(const std::string& object, const std::string& key) {
  static const json defs = schema().at("$defs");
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

}  // namespace

TEST_CASE("schema and code name the same keys, needed and optional, and no others") {
  const json defs = schema().at("$defs");
  std::size_t objects = 0;
  for (const auto& entry : keys_of_the_code()) {
    const std::string& name = entry.first;
    const Keys& keys = entry.second;
    CAPTURE(name);
    const json& node = defs.at(name);
    CHECK(node.at("additionalProperties") == false);
    const auto required = node.at("required").get<std::set<std::string>>();
    CHECK(required == keys.needed);
    std::set<std::string> properties;
    for (const auto& item : node.at("properties").items()) properties.insert(item.key());
    std::set<std::string> all = keys.needed;
    all.insert(keys.optional.begin(), keys.optional.end());
    CHECK(properties == all);
    ++objects;
  }
  CHECK(objects == 7);         // circuit, supply, wiring, outlet, load, shelf, in_hand
  CHECK(defs.size() == objects + 2);  // and the shared: name, size
  CHECK(schema().at("properties").at("format").at("const") == std::string(document::kFormatName));
  CHECK(schema().at("properties").at("version").at("const") == document::kFormatVersion);
}

TEST_CASE("the sample with every key has every key that the code names") {
  const json sample = json::parse(files::read(files::documents() / "version-1/every-key.json"));
  std::set<std::string> seen;
  const std::function<void(const json&)> walk = [&](const json& node) {
    for (const auto& item : node.items()) {
      if (node.is_object()) seen.insert(item.key());
      if (item.value().is_structured()) walk(item.value());
    }
  };
  walk(sample);
  for (const auto& entry : keys_of_the_code()) {
    const std::string& name = entry.first;
    const Keys& keys = entry.second;
    for (const auto& key : keys.needed) CHECK_MESSAGE(seen.count(key) == 1, name, ".", key);
    for (const auto& key : keys.optional) {
      if (name == "circuit" && key == "at_most_at_once_a") continue;  // left out there, in bench.json
      CHECK_MESSAGE(seen.count(key) == 1, name, ".", key);
    }
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
      {Field::at_most_at_once_a, "circuit", "at_most_at_once_a"},
      {Field::drop_limit_fraction, "circuit", "drop_limit_fraction"},
      {Field::drop_limit_fraction, "outlet", "drop_limit_fraction"},
      {Field::minimum_voltage_per_12v, "load", "minimum_voltage_v"},
      {Field::ambient_c, "wiring", "ambient_c"},
      {Field::wire_temperature_c, "wiring", "wire_temperature_c"},
      {Field::circuits_bundled, "wiring", "circuits_bundled"},
      {Field::tail_m, "wiring", "tail_m"},
      {Field::feeder_run_m, "supply", "feeder_run_m"},
      {Field::main_fuse_a, "supply", "main_fuse_a"},
      {Field::resting_per_12v, "supply", "resting_v"},
      {Field::low_per_12v, "supply", "low_v"},
      {Field::part_rating_a, "wiring", "clamp_rating_a"},
      {Field::part_rating_a, "outlet", "rating_a"},
      {Field::fuse_position, "circuit", "fuse_position"},
      {Field::fuse_a, "in_hand", "fuse_a"},
  };
  return rows;
}

}  // namespace

TEST_CASE("docs/circuit-format.md has a line for every key, with the range of its limit") {
  const std::string page = files::read(std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "docs/circuit-format.md");
  // Shelf and in-hand keys are written with their object before them. Two tables have a
  // drop_limit_fraction: their lines are taken together.
  const auto line_of = [&page](const std::string& object, const std::string& key) {
    const bool dotted = object == "shelf" || object == "in_hand";
    const std::string start = "\n| `" + (dotted ? object + "." : std::string()) + key + "` |";
    std::string lines;
    for (std::size_t at = page.find(start); at != std::string::npos; at = page.find(start, at + 1)) {
      lines += page.substr(at + 1, page.find('\n', at + 1) - at);
    }
    return lines;
  };
  for (const auto& entry : keys_of_the_code()) {
    for (const auto& key : entry.second.needed) CHECK_MESSAGE(!line_of(entry.first, key).empty(), entry.first, ".", key);
    for (const auto& key : entry.second.optional) {
      const bool one_of_two = key == "rated_a" || key == "rated_w";
      CHECK_MESSAGE((line_of(entry.first, key).find("*may be left out*") != std::string::npos) != one_of_two, entry.first, ".", key);
    }
  }
  for (const Row& row : rows_of_limits()) {
    const circuit::Limit& limit = circuit::limit(row.field);
    const std::string range = units::number_text(limit.low, 6) + " to " + units::number_text(limit.high, 6);
    const std::string line = line_of(row.object, row.key);
    CAPTURE(range);
    CHECK_MESSAGE(line.find(range) != std::string::npos, line);
  }
}

TEST_CASE("schema ranges are the limits") {
  std::set<Field> covered;
  for (const Row& row : rows_of_limits()) {
    CAPTURE(row.key);
    const circuit::Limit& limit = circuit::limit(row.field);
    json node = property(row.object, row.key);
    CHECK(node.contains("anyOf") == !limit.zero.empty());
    if (node.contains("anyOf")) {
      CHECK(node.at("anyOf").at(0).at("const") == 0);
      node = node.at("anyOf").at(1);
    }
    // Told for the whole battery: up to 48 V, four times the limit per 12 V.
    const bool per_12v = row.field == Field::minimum_voltage_per_12v || row.field == Field::resting_per_12v ||
                         row.field == Field::low_per_12v;
    CHECK(node.at("minimum").get<double>() == limit.low);
    CHECK(node.at("maximum").get<double>() == limit.high * (per_12v ? 4.0 : 1.0));
    CHECK(node.at("type") == (limit.whole ? "integer" : "number"));
    covered.insert(row.field);
  }
  CHECK(covered.size() == circuit::limits().size());
  CHECK(property("shelf", "missing_fuses_a").at("items").at("minimum").get<double>() == circuit::limit(Field::fuse_a).low);
  CHECK(property("shelf", "missing_fuses_a").at("items").at("maximum").get<double>() == circuit::limit(Field::fuse_a).high);
  CHECK(property("shelf", "missing_fuses_a").at("maxItems") == circuit::kMaxShelfFuses);
  CHECK(property("circuit", "name").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("circuit", "place").at("maxLength") == circuit::kMaxNameCharacters);
  CHECK(property("circuit", "outlets").at("maxItems") == circuit::kMaxOutlets);
  CHECK(property("outlet", "id").at("maximum") == circuit::kMaxOutletId);
  CHECK(property("circuit", "next_outlet_id").at("maximum") == circuit::kMaxOutletId + 1);
  CHECK(schema().at("properties").at("circuits").at("maxItems") == circuit::kMaxCircuitsInFile);
}

TEST_CASE("schema words are the tables' keys") {
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
  CHECK(words_in_schema(property("supply", "nominal_v")) == numbers(tables::system_voltages_v()));
  CHECK(words_in_schema(property("wiring", "insulation_c")) == numbers(tables::insulation_ratings_c()));
  CHECK(words_in_schema(property("supply", "battery")) == keys(tables::battery_kinds()));
  CHECK(words_in_schema(property("wiring", "ampacity_table")) == keys(tables::ampacity_tables()));
  CHECK(words_in_schema(property("wiring", "fuse_family")) == keys(tables::fuse_families()));
  CHECK(words_in_schema(property("wiring", "clamp_part")) == part_keys(tables::PartKind::clamp));
  CHECK(words_in_schema(property("wiring", "splice_part")) == part_keys(tables::PartKind::splice));
  CHECK(words_in_schema(property("outlet", "outlet_part")) == part_keys(tables::PartKind::outlet));
  CHECK(words_in_schema(property("outlet", "terminal_part")) == part_keys(tables::PartKind::terminal));
  std::set<std::string> sizes;
  for (const auto system : {tables::GaugeSystem::awg, tables::GaugeSystem::metric}) {
    for (const auto& conductor : tables::conductors(system)) sizes.insert(std::string(conductor.id));
  }
  CHECK(words_in_schema(property("supply", "feeder_size")) == sizes);
  CHECK(words_in_schema(property("in_hand", "size")) == sizes);
  keys_of_the_code();
  CHECK(words_in_schema(property("circuit", "setting")) == Lister::words().at("circuit.setting"));
  CHECK(words_in_schema(property("wiring", "gauge")) == Lister::words().at("wiring.gauge"));
  CHECK(words_in_schema(property("load", "kind")) == Lister::words().at("load.kind"));
}
