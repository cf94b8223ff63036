// The wire tables against the GNU units program, which has its own wire gauge and copper.
// Its wiregauge(0) is 1/0 and wiregauge(-1) is 2/0; it gives the diameter.
#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "reference/reference.h"
#include "tables/conductor.h"

namespace {

// Output of one command; empty when it fails, so that a missing program fails the test.
std::string run(const std::string& command) {
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen((command + " 2>/dev/null").c_str(), "r"), pclose);
  if (!pipe) return {};
  std::string output;
  std::array<char, 256> line{};
  while (std::fgets(line.data(), line.size(), pipe.get()) != nullptr) output += line.data();
  return output;
}

double ask(const std::string& have, const std::string& want) {
  const std::string output = run("units -t '" + have + "' '" + want + "'");
  REQUIRE_MESSAGE(!output.empty(), "GNU units gave nothing for " << have << ": is the package 'units' installed?");
  return std::strtod(output.c_str(), nullptr);
}

int gauge_number(std::string_view size) {
  if (size.size() == 3 && size.substr(1) == "/0") return 1 - (size[0] - '0');
  return std::atoi(std::string(size).c_str());
}

}  // namespace

TEST_CASE("GNU units finds the same AWG area and copper resistance") {
  for (const tables::Conductor& size : tables::conductors(tables::GaugeSystem::awg)) {
    const std::string gauge = "wiregauge(" + std::to_string(gauge_number(size.size)) + ")";
    CHECK(size.area.number() == doctest::Approx(ask("(pi/4) " + gauge + "^2", "mm^2")).epsilon(1e-6));
    const double solid = ask("1 m / (copperconductivity (pi/4) " + gauge + "^2)", "ohm");
    CHECK(size.resistance_20c.number() == doctest::Approx(1.02 * solid).epsilon(1e-6));
  }
}

TEST_CASE("Metric maxima lie above the same area of GNU units' copper, by 0 to 16 %") {
  for (const tables::Conductor& size : tables::conductors(tables::GaugeSystem::metric)) {
    const double solid =
        ask("1 m / (copperconductivity * " + std::to_string(size.area.number()) + " mm^2)", "ohm");
    const double ratio = size.resistance_20c.number() / solid;
    CHECK_MESSAGE(ratio > 1.0, size.id);
    CHECK_MESSAGE(ratio < 1.16, size.id);
  }
}

TEST_CASE("GNU units still answers as it did when the commands were noted") {
  for (const auto& row : reference::read("gnu_units")["rows"]) {
    const std::string output = run(row["command"].get<std::string>());
    REQUIRE_MESSAGE(!output.empty(), "is the package 'units' installed?");
    const double noted = std::strtod(row["output"].get<std::string>().c_str(), nullptr);
    CHECK(std::strtod(output.c_str(), nullptr) == doctest::Approx(noted).epsilon(1e-6));
  }
}
