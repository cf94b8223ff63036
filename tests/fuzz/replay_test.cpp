#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "fuzz/file_promise.h"
#include "fuzz/trace_record_promise.h"

TEST_CASE("every kept file, good or bad, keeps the promise of the reader") {
  const std::filesystem::path documents = std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "tests/documents";
  int files = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(documents)) {
    if (!entry.is_regular_file()) continue;
    CAPTURE(entry.path().string());
    std::ifstream file(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    CHECK(broken_vehicle_promise(text) == "");
    CHECK(broken_circuit_promise(text) == "");
    ++files;
  }
  CHECK(files > 110);
}

TEST_CASE("every kept trace keeps the promise of its reader") {
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(BRANCHLIGHT_SOURCE_DIR) / "tests/fuzz/traces")) {
    CAPTURE(entry.path().string());
    std::ifstream file(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    CHECK(broken_trace_promise(text) == "");
    // One byte wrong anywhere is refused or kept, never lost.
    for (std::size_t at = 0; at < text.size(); ++at) {
      std::string damaged = text;
      damaged[at] = static_cast<char>(damaged[at] ^ 0x11);
      CHECK(broken_trace_promise(damaged) == "");
    }
    ++files;
  }
  CHECK(files == 4);
}
