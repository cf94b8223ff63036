// A JSON text as a small tree of values, read without trust: any bytes give a tree or one
// problem. The tree is no deeper than kMaxDepth and no larger than kMaxValues, no object
// names a key twice, every text is valid UTF-8 and every number finite.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "circuit/problem.h"

namespace document {

inline constexpr std::size_t kMaxDepth = 16;         // the load of a device as built needs 12
inline constexpr std::size_t kMaxValues = 500'000;   // a file of kMaxFileBytes that means something has fewer
inline constexpr std::size_t kMaxKeys = 64;          // in one object

struct JsonValue;
struct JsonMember;
using JsonArray = std::vector<JsonValue>;
using JsonObject = std::vector<JsonMember>;  // in the order written, no key twice

struct JsonValue {
  std::variant<std::monostate, bool, double, std::string, JsonArray, JsonObject> held;  // monostate: null

  template <class T>
  [[nodiscard]] const T* as() const { return std::get_if<T>(&held); }  // nullptr: of another kind
};
struct JsonMember {
  std::string key;
  JsonValue value;
};
const JsonValue* find_key(const JsonObject& object, std::string_view key);  // nullptr when absent

struct JsonResult {
  std::optional<JsonValue> value;
  std::optional<circuit::Problem> problem;
};
JsonResult read_json(std::string_view text);

}  // namespace document
