// Numbers come back to the bit.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <random>

#include "circuit/limits.h"
#include "document/circuit_file.h"

using namespace circuit;

TEST_CASE("random lengths and loads come back to the bit") {
  constexpr std::uint64_t kSeed = 11;
  const int rounds = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 50 : 1'000;
  MESSAGE("seed ", kSeed);
  std::mt19937_64 random(kSeed);
  std::uniform_real_distribution<double> length(0.05, 100.0);
  std::uniform_real_distribution<double> exponent(std::log(0.01), std::log(300.0));
  int different = 0;
  for (int round = 0; round < rounds; ++round) {
    Circuit circuit = demo_circuit();
    for (Outlet& outlet : circuit.outlets) {
      outlet.run.length = units::Metres(length(random));
      outlet.devices.front().load.rating = std::exp(exponent(random));
      outlet.devices.front().load.rating_in_watts = false;
    }
    const auto read = document::read_circuits(document::write_circuit(circuit));
    REQUIRE(read.circuits.size() == 1);
    for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
      if (read.circuits[0].outlets[i].run.length != circuit.outlets[i].run.length) ++different;
      if (read.circuits[0].outlets[i].devices.front().load.rating != circuit.outlets[i].devices.front().load.rating) ++different;
    }
  }
  CHECK(different == 0);
}

TEST_CASE("the numbers next to a limit, and the awkward ones, come back to the bit") {
  for (const double run : {0.05, std::nextafter(0.05, 1.0), std::nextafter(100.0, 0.0), 100.0, 1.0, 0.1 + 0.2, 1.0 / 3.0}) {
    Circuit circuit = demo_circuit();
    circuit.outlets[0].run.length = units::Metres(run);
    const auto read = document::read_circuits(document::write_circuit(circuit));
    REQUIRE(read.circuits.size() == 1);
    CHECK(read.circuits[0].outlets[0].run.length.number() == run);
  }
  Circuit circuit = demo_circuit();
  circuit.supply.feeder_run = units::Metres(-0.0);
  const auto read = document::read_circuits(document::write_circuit(circuit));
  REQUIRE(read.circuits.size() == 1);
  CHECK(std::signbit(read.circuits[0].supply.feeder_run.number()));
}

TEST_CASE("the largest notebook of ordinary circuits fits into a file") {
  const std::vector<Circuit> notebook(kMaxCircuitsInFile, demo_circuit());
  const std::string text = document::write_circuits(notebook);
  CHECK(text.size() < kMaxFileBytes);
  CHECK(document::read_circuits(text).circuits.size() == kMaxCircuitsInFile);
  // And one circuit of the most outlets with the longest names.
  Circuit large = demo_circuit();
  while (large.outlets.size() < kMaxOutlets) {
    Outlet more = large.outlets.back();
    more.id = OutletId{large.next_outlet_id++};
    more.name.clear();
    for (std::size_t i = 0; i < kMaxNameCharacters; ++i) more.name += "🔌";
    large.outlets.push_back(more);
  }
  CHECK(document::read_circuits(document::write_circuit(large)).circuits.size() == 1);
}
