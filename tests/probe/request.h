// Reading a request: every value is checked, every key has to be known.
#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <utility>

#include "circuit/circuit.h"
#include "circuit/problem.h"
#include "tables/conductor.h"

namespace probe {

using Json = nlohmann::ordered_json;

// Thrown to leave a request that can not be answered; answer_line() turns it into an error.
struct Refused {
  std::string why;
  circuit::Problems problems;
};
[[noreturn]] void refuse(std::string why);

// The line as an object, no deeper than a request needs.
Json parse_request(std::string_view line);
void only_keys(const Json& object, std::initializer_list<std::string_view> known);

const Json& need(const Json& object, const char* key);
const Json& need_object(const Json& value, const char* what);
const Json& need_array(const Json& value, const char* what);
std::string need_text(const Json& value, const char* what);
double need_number(const Json& value, const char* what, double low, double high);
bool flag_or(const Json& object, const char* key, bool otherwise);

circuit::Circuit need_circuit(const Json& request);
const tables::Conductor& need_size(const Json& value, const char* what);
circuit::OutletId need_outlet(const Json& value, const circuit::Circuit& circuit);

template <class T>
using Words = std::initializer_list<std::pair<std::string_view, T>>;

template <class T>
T need_word(const Json& value, const char* what, Words<T> words) {
  const std::string given = need_text(value, what);
  std::string all;
  for (const auto& [word, meaning] : words) {
    if (word == given) return meaning;
    all += (all.empty() ? "\"" : ", \"") + std::string(word) + '"';
  }
  refuse(std::string(what) + " is none of " + all);
}
template <class T>
std::string word_of(T meaning, Words<T> words) {
  for (const auto& [word, each] : words) {
    if (each == meaning) return std::string(word);
  }
  return "?";
}

// Rounded to 1e-9, so that an answer does not show the noise of the last bits; null when not finite.
Json number(double value);

}  // namespace probe
