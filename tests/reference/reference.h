// Reads one file of published figures from tests/reference/.
#pragma once

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

namespace reference {

// Kept for the whole run, so that a loop may go over a part of it: for (row : read("x")["rows"]).
inline const nlohmann::json& read(const std::string& name) {
  static std::map<std::string, nlohmann::json> kept;
  const auto found = kept.find(name);
  if (found != kept.end()) return found->second;
  const std::string path = std::string(BRANCHLIGHT_SOURCE_DIR) + "/tests/reference/" + name + ".json";
  std::ifstream file(path);
  if (!file) throw std::runtime_error("No reference file " + path);
  return kept.emplace(name, nlohmann::json::parse(file)).first->second;
}

}  // namespace reference
