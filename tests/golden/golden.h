// Golden files: text kept in tests/golden/ and compared to what the code makes today. Run
// with BRANCHLIGHT_UPDATE_GOLDEN=1 to rewrite them, then review the change as a diff.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

namespace golden {

inline void check(const std::string& file, const std::string& text) {
  const std::string path = std::string(BRANCHLIGHT_SOURCE_DIR) + "/tests/golden/" + file;
  if (std::getenv("BRANCHLIGHT_UPDATE_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << text;
  }
  std::ifstream stream(path, std::ios::binary);
  REQUIRE_MESSAGE(stream.good(), "no golden file " << path);
  const std::string kept{std::istreambuf_iterator<char>(stream), {}};
  // Not CHECK(kept == text): that would print both files.
  const bool same = kept == text;
  CHECK_MESSAGE(same, file << " differs; BRANCHLIGHT_UPDATE_GOLDEN=1 rewrites it for review");
}

}  // namespace golden
