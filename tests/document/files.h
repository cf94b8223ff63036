// The sample files of tests/documents/.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace files {

inline std::filesystem::path documents() { return std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "tests/documents"; }

inline std::string read(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE_MESSAGE(file.good(), path.string());
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::vector<std::filesystem::path> in_folder(const std::string& folder) {
  std::vector<std::filesystem::path> found;
  for (const auto& entry : std::filesystem::directory_iterator(documents() / folder)) {
    if (entry.path().extension() == ".json") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  REQUIRE_FALSE(found.empty());
  return found;
}

inline nlohmann::json schema(const std::string& name) {
  return nlohmann::json::parse(read(std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "docs" / name));
}

}  // namespace files
