#include "document/reader.h"

#include <algorithm>

#include "circuit/validate.h"
#include "document/format.h"
#include "units/format.h"

namespace document {
namespace {

using circuit::Problem;

Problem unknown_key(std::string place, std::string_view key) {
  return {std::move(place), "Key " + circuit::quoted(key) + " is not known.",
          "A newer app may know it: update the app. Else check its spelling."};
}

struct Format {
  std::string_view name;
  int first_version;
};
constexpr Format kFormats[] = {{kVehiclesFormat, 2}, {kCircuitsFormat, 1}};

FileResult no_file(Problem problem) { return {{}, {}, 0, std::move(problem)}; }

}  // namespace

void Reader::rating(const char* amperes_key, const char* watts_key, circuit::Load& load) {
  load.rating_in_watts = has(watts_key);
  if (load.rating_in_watts && has(amperes_key)) both_given(amperes_key, watts_key);
  number(load.rating_in_watts ? watts_key : amperes_key, load.rating);
}

void Reader::finish() {
  for (const auto& [key, value] : object_) {
    const bool asked = std::find(asked_.begin(), asked_.end(), key) != asked_.end();
    if (!asked && !enough()) problems_.push_back(unknown_key(place_, key));
  }
}

std::string Reader::place_of(std::string_view key) const {
  if (key.empty() || place_.empty()) return key.empty() ? place_ : std::string(key);
  return place_ + ", " + std::string(key);
}

std::string Reader::item_title(std::string_view item, std::size_t index) {
  const std::string which = item == "outlet" ? circuit::outlet_letter(index) : std::to_string(index + 1);
  return std::string(item) + " " + which;
}

void Reader::add_at(std::string place, std::string sentence, std::string allowed) {
  if (!enough()) problems_.push_back({std::move(place), std::move(sentence), std::move(allowed)});
}

void Reader::both_given(const char* one, const char* other) {
  add({}, "Both " + circuit::quoted(one) + " and " + circuit::quoted(other) + " are given.", "Give one.");
}

void Reader::missing(const char* key) { add({}, "Key " + circuit::quoted(key) + " is missing.", "Add it."); }

void Reader::unknown_word(const char* key, const std::string& given, const std::vector<std::string_view>& known) {
  std::string words;
  for (const std::string_view word : known) words += (words.empty() ? "\"" : ", \"") + std::string(word) + '"';
  add(key, "The word " + circuit::quoted(given) + " is not known.", "Give one of " + words + ".");
}

Problem within(Problem problem, const std::string& place) {
  if (problem.place.empty()) {
    problem.place = place;
  } else {
    const char first = problem.place.front();
    if (first >= 'A' && first <= 'Z') problem.place.front() = static_cast<char>(first - 'A' + 'a');
    problem.place = place + ", " + problem.place;
  }
  return problem;
}

FileResult read_file(std::string_view text) {
  JsonResult json = read_json(text);
  if (json.problem) return no_file(std::move(*json.problem));
  auto* root = std::get_if<JsonObject>(&json.value->held);
  const JsonValue* format = root == nullptr ? nullptr : find_key(*root, "format");
  const std::string* name = format == nullptr ? nullptr : format->as<std::string>();
  const Format* known = std::find_if(std::begin(kFormats), std::end(kFormats),
                                     [name](const Format& each) { return name != nullptr && *name == each.name; });
  if (known == std::end(kFormats)) {
    return no_file({"", "This is not a Branchlight file of vehicles or circuits.", "Open a file that Branchlight saved."});
  }
  const std::string ours = std::to_string(kFormatVersion);
  const JsonValue* version = find_key(*root, "version");
  const double* number = version == nullptr ? nullptr : version->as<double>();
  if (number == nullptr || *number != std::floor(*number)) {
    return no_file({"Version", "The file does not say its format version.", "Give " + ours + "."});
  }
  const bool long_number = std::fabs(*number) >= 1e9;
  const std::string told = long_number ? std::string() : " " + units::number_text(*number, 9);
  if (*number > kFormatVersion) {
    return no_file({"", "This file was made by a newer Branchlight, format" + (long_number ? " far above" : told) +
                          "; this one reads up to " + ours + ".", "Update the app and open it again."});
  }
  if (*number < known->first_version) {
    return no_file({"Version", "Format version" + told + " was never in use.", "Give " + ours + "."});
  }
  return {std::move(*root), known->name, static_cast<int>(*number), std::nullopt};
}

ListResult read_list(const JsonObject& root, const char* key, std::size_t most) {
  for (const auto& [given, value] : root) {
    if (given != "format" && given != "version" && given != key) return {nullptr, unknown_key({}, given)};
  }
  std::string title(key);
  title.front() = static_cast<char>(title.front() - 'a' + 'A');
  const JsonValue* items = find_key(root, key);
  const auto* list = items == nullptr ? nullptr : items->as<JsonArray>();
  if (list == nullptr || list->empty()) {
    return {nullptr, Problem{title, "The file holds no " + std::string(key) + ".",
                             "Give a list of 1 to " + std::to_string(most) + "."}};
  }
  if (list->size() > most) {
    return {nullptr, Problem{title, "The file holds " + std::to_string(list->size()) + " " + key + ".",
                             "Give at most " + std::to_string(most) + "."}};
  }
  return {list, std::nullopt};
}

}  // namespace document
