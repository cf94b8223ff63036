// A promise that does not hold stops the program in every build, release too.
#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

#include "units/expect.h"

namespace {

[[noreturn]] void throw_it(const char* file, int line) {
  throw std::runtime_error(std::string(file) + ":" + std::to_string(line));
}

}  // namespace

TEST_CASE("a broken promise goes to the handler with the file's name alone and its line") {
  const units::BugHandler before = units::on_bug(throw_it);
  int asked = 0;
  const auto holds = [&asked](bool so) { ++asked; return so; };
  CHECK_NOTHROW(BRANCHLIGHT_EXPECT(holds(true)));
  std::string said;
  const int line = __LINE__ + 2;
  try {
    BRANCHLIGHT_EXPECT(holds(false));
  } catch (const std::runtime_error& error) {
    said = error.what();
  }
  CHECK(asked == 2);   // NDEBUG or not
  CHECK(said == "expect_test.cpp:" + std::to_string(line));
  const bool was_ours = units::on_bug(before) == throw_it;
  CHECK(was_ours);
}
