// The door that fields come in through: one object of the file, its problems told with the place.
// Every key has to be asked for; finish() tells of those that were not. Private to this room.
#pragma once

#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/problem.h"
#include "document/json_value.h"
#include "document/words.h"

namespace document {

inline constexpr std::size_t kEnoughProblems = 20;  // more help nobody, and a hostile file has thousands

class Reader {
 public:
  Reader(const JsonObject& object, std::string place, circuit::Problems& problems)
      : object_(object), place_(std::move(place)), problems_(problems) {}

  void text(const char* key, std::string& value) {
    if (const auto* given = need<std::string>(key, "text in quotes")) value = *given;
  }
  void text_or(const char* key, std::string& value, std::string_view usual) {
    value = usual;
    if (has(key)) text(key, value);
  }
  void maybe_text(const char* key, std::optional<std::string>& value) {
    if (has(key)) text(key, value.emplace());
  }
  void number(const char* key, double& value) {
    if (const auto* given = need<double>(key, "a number")) value = *given;
  }
  void number_or(const char* key, double& value, double usual) {
    value = usual;
    if (has(key)) number(key, value);
  }
  void maybe_number(const char* key, std::optional<double>& value) {
    if (has(key)) number(key, value.emplace());
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
  template <class Whole>
  void whole_or(const char* key, Whole& value, Whole usual) {
    value = usual;
    if (has(key)) whole(key, value);
  }
  void flag(const char* key, bool& value) {
    if (const auto* given = need<bool>(key, "true or false")) value = *given;
  }
  void flag_or(const char* key, bool& value, bool usual) {
    value = usual;
    if (has(key)) flag(key, value);
  }
  template <class Quantity>
  void quantity(const char* key, Quantity& value) {
    if (const auto* given = need<double>(key, "a number")) value = Quantity(*given);
  }
  template <class Quantity>
  void quantity_or(const char* key, Quantity& value, double usual) {
    value = Quantity(usual);
    if (has(key)) quantity(key, value);
  }
  template <class Quantity>
  void maybe_quantity(const char* key, std::optional<Quantity>& value) {
    if (has(key)) quantity(key, value.emplace());
  }
  template <class Choice>
  void word(const char* key, Choice& value) {
    const auto* given = need<std::string>(key, "a word in quotes");
    if (given == nullptr) return;
    if (const auto meant = from_word<Choice>(*given)) value = *meant;
    else unknown_word(key, *given, all_words<Choice>());
  }
  template <class Choice>
  void word_or(const char* key, Choice& value, Choice usual) {
    value = usual;
    if (has(key)) word(key, value);
  }
  template <class Choice>
  void maybe_word(const char* key, std::optional<Choice>& value) {
    if (has(key)) word(key, value.emplace());
  }
  void rating(const char* amperes_key, const char* watts_key, circuit::Load& load);
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
  template <class T, class Fields>
  void list(const char* key, const char* item, std::vector<T>& values, Fields fields) {
    values.clear();
    const auto* given = need<JsonArray>(key, "a list in [ ]");
    if (given == nullptr) return;
    for (std::size_t i = 0; i < given->size() && !enough(); ++i) {
      const std::string place = place_of(item_title(item, i));
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
  template <class T, class Fields>
  void list_or_none(const char* key, const char* item, std::vector<T>& values, Fields fields) {
    values.clear();
    if (has(key)) list(key, item, values, fields);
  }
  template <class LoadFields, class DeviceFields>
  void load_or_devices(const char* load_key, const char* devices_key, std::vector<circuit::Device>& devices,
                       LoadFields load_fields, DeviceFields device_fields) {
    const bool load = has(load_key);
    list_or_none(devices_key, "device", devices, device_fields);
    if (!load) return;
    if (find_key(object_, devices_key) != nullptr) return both_given(load_key, devices_key);
    devices.resize(1);
    object(load_key, [&](Reader& inside) { load_fields(inside, devices.front().load); });
  }

  // A key that this version does not know would be lost at the next save: refused, not skipped.
  void finish();

 private:
  [[nodiscard]] bool has(const char* key) {
    asked_.emplace_back(key);
    return find_key(object_, key) != nullptr;
  }
  [[nodiscard]] bool enough() const { return problems_.size() >= kEnoughProblems; }
  [[nodiscard]] std::string place_of(std::string_view key) const;
  // Outlets by letter, as the screen shows them; all else by number.
  static std::string item_title(std::string_view item, std::size_t index);
  void add(std::string_view key, std::string sentence, std::string allowed) {
    add_at(place_of(key), std::move(sentence), std::move(allowed));
  }
  void add_at(std::string place, std::string sentence, std::string allowed);
  void both_given(const char* one, const char* other);
  void missing(const char* key);
  void unknown_word(const char* key, const std::string& given, const std::vector<std::string_view>& known);

  template <class T>
  const T* need(const char* key, std::string_view what) {
    asked_.emplace_back(key);
    const JsonValue* value = find_key(object_, key);
    if (value == nullptr) {
      missing(key);
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

  const JsonObject& object_;
  std::string place_;
  circuit::Problems& problems_;
  std::vector<std::string_view> asked_;
};

// "Outlet C, run" of the second circuit: "Circuit 2, outlet C, run".
circuit::Problem within(circuit::Problem problem, const std::string& place);

// A file as a tree, with its head: whose format it is, and which version.
struct FileResult {
  JsonObject root;
  std::string_view format;   // kVehiclesFormat or kCircuitsFormat
  int version = 0;
  std::optional<circuit::Problem> problem;   // then the rest is empty
};
FileResult read_file(std::string_view text);
// The items under the file's only other key, "circuits" or "vehicles": 1 to `most`.
struct ListResult {
  const JsonArray* list = nullptr;
  std::optional<circuit::Problem> problem;
};
ListResult read_list(const JsonObject& root, const char* key, std::size_t most);

// One item of that list through its fields, and what `validate` says of it; problems told under
// "Circuit 2" or the like.
template <class T, class Fields, class Validate>
T read_item(const JsonValue& value, const std::string& place, circuit::Problems& problems, Fields fields,
            Validate validate) {
  T read;
  const auto* object = value.as<JsonObject>();
  if (object == nullptr) {
    problems.push_back({place, "This is not an object.", "Give an object in { }."});
    return read;
  }
  const std::size_t before = problems.size();
  Reader reader(*object, place, problems);
  fields(reader, read);
  reader.finish();
  if (problems.size() > before) return read;  // what is half read would only give false alarms
  for (circuit::Problem& problem : validate(read)) {
    if (problems.size() >= kEnoughProblems) break;
    problems.push_back(within(std::move(problem), place));
  }
  return read;
}

}  // namespace document
