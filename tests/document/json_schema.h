// The part of JSON Schema 2020-12 that docs/*.schema.json use, written for these tests: a text is
// held to its schema by code that knows nothing of the reader.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace json_schema {

// Where and how `value` breaks the schema, empty when it does not. A keyword that is not known
// here breaks it too: none is passed over.
std::string violation(const nlohmann::json& schema, const nlohmann::json& value);

}  // namespace json_schema
