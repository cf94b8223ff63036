#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "document/fields.h"
#include "document/json_value.h"
#include "units/format.h"

namespace document {
namespace {

using circuit::Problem;
using circuit::Problems;

constexpr std::size_t kEnoughProblems = 20;  // more help nobody, and a hostile file has thousands

// The door that fields come in through: one object of the file, its problems told with the
// place. Every key has to be asked for; finish() tells of those that were not.
class Reader {
 public:
  Reader(const JsonObject& object, std::string place, Problems& problems)
      : object_(object), place_(std::move(place)), problems_(problems) {}

  void text(const char* key, std::string& value) {
    if (const auto* given = need<std::string>(key, "text in quotes")) value = *given;
  }
  void number(const char* key, double& value) {
    if (const auto* given = need<double>(key, "a number")) value = *given;
  }
  template <class Whole>
  void whole(const char* key, Whole& value) {
    const auto* given = need<double>(key, "a whole number");
    if (given == nullptr) return;
    constexpr double kLargest = 1e9;  // fits every whole-number type here; limits are narrower
    const double least = std::numeric_limits<Whole>::is_signed ? -kLargest : 0.0;
    if (*given == std::floor(*given) && *given >= least && *given <= kLargest) value = static_cast<Whole>(*given);
    else add(key, "This is not a whole number in range.", "Give a whole number.");
  }
  void flag(const char* key, bool& value) {
    if (const auto* given = need<bool>(key, "true or false")) value = *given;
  }
  template <class Quantity>
  void quantity(const char* key, Quantity& value) {
    if (const auto* given = need<double>(key, "a number")) value = Quantity(*given);
  }
  void maybe_number(const char* key, std::optional<double>& value) {
    if (has(key)) number(key, value.emplace());
  }
  template <class Quantity>
  void maybe_quantity(const char* key, std::optional<Quantity>& value) {
    if (has(key)) quantity(key, value.emplace());
  }
  template <class Choice, class Table>
  void choice(const char* key, Choice& value, const Table& table) {
    const auto* given = need<std::string>(key, "a word in quotes");
    if (given == nullptr) return;
    const auto found = std::find_if(table.begin(), table.end(), [given](const auto& w) { return w.first == *given; });
    if (found != table.end()) value = found->second;
    else unknown_word(key, *given, table, [](const auto& w) { return w.first; });
  }
  void ampacity_table(const char* key, tables::AmpacityTableId& id) {
    const auto* given = need<std::string>(key, "a word in quotes");
    if (given == nullptr) return;
    if (const tables::AmpacityTable* found = tables::ampacity_table_by_key(*given)) id = found->id;
    else unknown_word(key, *given, tables::ampacity_tables(), [](const auto& t) { return t.key; });
  }
  void fuse_family(const char* key, tables::FuseFamilyId& id) {
    const auto* given = need<std::string>(key, "a word in quotes");
    if (given == nullptr) return;
    if (const tables::FuseFamily* found = tables::fuse_family_by_key(*given)) id = found->id;
    else unknown_word(key, *given, tables::fuse_families(), [](const auto& f) { return f.key; });
  }
  void rating(const char* amperes_key, const char* watts_key, circuit::Load& load) {
    load.rating_in_watts = has(watts_key);
    if (load.rating_in_watts && has(amperes_key)) {
      add({}, "Both " + circuit::quoted(amperes_key) + " and " + circuit::quoted(watts_key) + " are given.", "Give one.");
    }
    number(load.rating_in_watts ? watts_key : amperes_key, load.rating);
  }
  void texts(const char* key, std::vector<std::string>& values) {
    each<std::string>(key, "text in quotes", [&values](const std::string& text) { values.push_back(text); });
  }
  void numbers(const char* key, std::vector<double>& values) {
    each<double>(key, "a number", [&values](double number) { values.push_back(number); });
  }
  template <class Fields>
  void object(const char* key, Fields fields) {
    const auto* given = need<JsonObject>(key, "an object in { }");
    if (given == nullptr) return;
    Reader inside(*given, place_of(key), problems_);
    fields(inside);
    inside.finish();
  }
  template <class T, class Fields>
  void maybe_object(const char* key, std::optional<T>& value, Fields fields) {
    if (has(key)) object(key, [&value, &fields](Reader& inside) { fields(inside, value.emplace()); });
  }
  // Outlets: placed by letter, as the screen shows them.
  template <class T, class Fields>
  void list(const char* key, std::vector<T>& values, Fields fields) {
    const auto* given = need<JsonArray>(key, "a list in [ ]");
    if (given == nullptr) return;
    for (std::size_t i = 0; i < given->size() && !enough(); ++i) {
      const std::string place = place_of("outlet " + circuit::outlet_letter(i));
      const auto* object = (*given)[i].as<JsonObject>();
      if (object == nullptr) {
        add_at(place, "This is not an object.", "Give an object in { }.");
        continue;
      }
      Reader inside(*object, place, problems_);
      fields(inside, values.emplace_back());
      inside.finish();
    }
  }

  // A key that this version does not know would be lost at the next save: refused, not skipped.
  void finish() {
    for (const auto& [key, value] : object_) {
      const bool asked = std::find(asked_.begin(), asked_.end(), key) != asked_.end();
      if (!asked) add({}, "Key " + circuit::quoted(key) + " is not known.", "Take it out, or check its spelling.");
    }
  }

 private:
  [[nodiscard]] bool has(const char* key) {
    asked_.emplace_back(key);
    return find_key(object_, key) != nullptr;
  }
  [[nodiscard]] bool enough() const { return problems_.size() >= kEnoughProblems; }
  [[nodiscard]] std::string place_of(std::string_view key) const {
    if (key.empty() || place_.empty()) return key.empty() ? place_ : std::string(key);
    return place_ + ", " + std::string(key);
  }
  void add(std::string_view key, std::string sentence, std::string allowed) {
    add_at(place_of(key), std::move(sentence), std::move(allowed));
  }
  void add_at(std::string place, std::string sentence, std::string allowed) {
    if (!enough()) problems_.push_back({std::move(place), std::move(sentence), std::move(allowed)});
  }

  template <class T>
  const T* need(const char* key, std::string_view what) {
    asked_.emplace_back(key);
    const JsonValue* value = find_key(object_, key);
    if (value == nullptr) {
      add({}, "Key " + circuit::quoted(key) + " is missing.", "Add it.");
      return nullptr;
    }
    const T* held = value->as<T>();
    if (held == nullptr) add(key, "This is not " + std::string(what) + ".", "Give " + std::string(what) + ".");
    return held;
  }

  template <class T, class Use>
  void each(const char* key, std::string_view what, Use use) {
    const auto* given = need<JsonArray>(key, "a list in [ ]");
    if (given == nullptr) return;
    for (const JsonValue& item : *given) {
      if (const T* held = item.as<T>()) {
        use(*held);
      } else {
        add(key, "An item of the list is not " + std::string(what) + ".", "Give " + std::string(what) + ".");
        return;
      }
    }
  }

  template <class Table, class Word>
  void unknown_word(const char* key, const std::string& given, const Table& table, Word word_of) {
    std::string words;
    for (const auto& entry : table) words += (words.empty() ? "\"" : ", \"") + std::string(word_of(entry)) + '"';
    add(key, "The word " + circuit::quoted(given) + " is not known.", "Give one of " + words + ".");
  }

  const JsonObject& object_;
  std::string place_;
  Problems& problems_;
  std::vector<std::string> asked_;
};

Problem not_ours() {
  return {"", "This is not a Branchlight circuit file.", "Open a file that Branchlight saved."};
}

// A file of an earlier version is brought up to the present one here, as a tree of values and
// one version at a time, before its fields are read. Version 1 is the first, so there is
// nothing to bring up yet.
static_assert(kFormatVersion == 1, "bring files of the version before up to this one, here");

std::optional<Problem> check_version(const JsonObject& root) {
  const JsonValue* format = find_key(root, "format");
  const std::string* name = format == nullptr ? nullptr : format->as<std::string>();
  if (name == nullptr || *name != kFormatName) return not_ours();

  const std::string ours = std::to_string(kFormatVersion);
  const JsonValue* version = find_key(root, "version");
  const double* number = version == nullptr ? nullptr : version->as<double>();
  if (number == nullptr || *number != std::floor(*number)) {
    return Problem{"Version", "The file does not say its format version.", "Give " + ours + "."};
  }
  const bool long_number = std::fabs(*number) >= 1e9;
  const std::string told = long_number ? std::string() : " " + units::number_text(*number, 9);
  if (*number > kFormatVersion) {
    return Problem{"", "This file was made by a newer Branchlight, format" + (long_number ? " far above" : told) +
                   "; this one reads up to " + ours + ".", "Update the app and open it again."};
  }
  if (*number < kFormatVersion) {
    return Problem{"Version", "Format version" + told + " was never in use.", "Give " + ours + "."};
  }
  return std::nullopt;
}

// "Outlet C, run" of the second circuit: "Circuit 2, outlet C, run".
Problem in_circuit(Problem problem, const std::string& circuit_place) {
  if (problem.place.empty()) {
    problem.place = circuit_place;
  } else {
    const char first = problem.place.front();
    if (first >= 'A' && first <= 'Z') problem.place.front() = static_cast<char>(first - 'A' + 'a');
    problem.place = circuit_place + ", " + problem.place;
  }
  return problem;
}

circuit::Circuit read_one(const JsonValue& value, const std::string& place, Problems& problems) {
  circuit::Circuit read;
  const auto* object = value.as<JsonObject>();
  if (object == nullptr) {
    problems.push_back({place, "This is not an object.", "Give an object in { }."});
    return read;
  }
  const std::size_t before = problems.size();
  Reader reader(*object, place, problems);
  circuit_fields(reader, read);
  reader.finish();
  if (problems.size() > before) return read;  // what is half read would only give false alarms
  for (Problem& problem : circuit::validate(read)) {
    if (problems.size() >= kEnoughProblems) break;
    problems.push_back(in_circuit(std::move(problem), place));
  }
  return read;
}

Problems wrong(Problem problem) { return {std::move(problem)}; }

}  // namespace

ReadResult read_circuits(std::string_view text) {
  const JsonResult json = read_json(text);
  if (json.problem) return {{}, wrong(*json.problem)};
  const auto* root = json.value->as<JsonObject>();
  if (root == nullptr) return {{}, wrong(not_ours())};
  if (auto problem = check_version(*root)) return {{}, wrong(std::move(*problem))};
  for (const auto& [key, value] : *root) {
    if (key != "format" && key != "version" && key != "circuits") {
      return {{}, wrong({"", "Key " + circuit::quoted(key) + " is not known.", "Take it out, or check its spelling."})};
    }
  }
  const JsonValue* circuits = find_key(*root, "circuits");
  const auto* list = circuits == nullptr ? nullptr : circuits->as<JsonArray>();
  if (list == nullptr || list->empty()) {
    return {{}, wrong({"Circuits", "The file holds no circuits.", "Give a list of 1 to " +
                       std::to_string(circuit::kMaxCircuitsInFile) + "."})};
  }
  if (list->size() > circuit::kMaxCircuitsInFile) {
    return {{}, wrong({"Circuits", "The file holds " + std::to_string(list->size()) + " circuits.", "Give at most " +
                       std::to_string(circuit::kMaxCircuitsInFile) + "."})};
  }
  ReadResult result;
  for (std::size_t i = 0; i < list->size() && result.problems.size() < kEnoughProblems; ++i) {
    result.circuits.push_back(read_one((*list)[i], "Circuit " + std::to_string(i + 1), result.problems));
  }
  if (!result.problems.empty()) result.circuits.clear();
  return result;
}

}  // namespace document
