#include "pictures/sample_circuits.h"

#include <string>

namespace samples {
namespace {

circuit::Outlet outlet(std::uint32_t number, std::uint32_t from, double run_m) {
  circuit::Outlet made;
  made.id = {number};
  made.name = "Lamp " + std::to_string(number);
  made.fed_from = {from};
  made.run.length = units::Metres(run_m);
  return made;
}

}  // namespace

sizing::Candidate answer_for(const circuit::Circuit& circuit, double step_v) {
  sizing::Candidate answer;
  answer.fuse = units::Amperes(15.0);
  double volts = 12.6;
  for (const circuit::Outlet& each : circuit.outlets) {
    volts -= step_v;
    sizing::OutletResult result;
    result.id = each.id;
    result.voltage = units::Volts(volts);
    result.drop_fraction = (12.8 - volts) / 12.0;
    result.drop_limit = circuit.drop_limit;
    answer.outlets.push_back(result);
  }
  return answer;
}

circuit::Circuit chain(std::size_t outlets) {
  circuit::Circuit made;
  made.name = "Chain";
  for (std::uint32_t i = 1; i <= outlets; ++i) made.outlets.push_back(outlet(i, i - 1, 0.5 + 0.25 * (i % 7)));
  made.next_outlet_id = static_cast<std::uint32_t>(outlets) + 1;
  return made;
}

circuit::Circuit tree() {
  circuit::Circuit made;
  made.name = "Tree";
  made.outlets = {outlet(1, 0, 2.4), outlet(2, 1, 1.2), outlet(3, 2, 0.8), outlet(4, 1, 1.5), outlet(5, 4, 0.6),
                  outlet(6, 2, 3.1)};
  made.next_outlet_id = 7;
  return made;
}

circuit::Circuit random_circuit(std::mt19937_64& random, std::size_t outlets) {
  circuit::Circuit made;
  made.name = "Random";
  // From almost a chain to a bush, and now and then a star.
  const std::uint32_t reach = 1 + static_cast<std::uint32_t>(random() % 12);
  for (std::uint32_t i = 1; i <= outlets; ++i) {
    const std::uint32_t back = 1 + static_cast<std::uint32_t>(random() % reach);
    made.outlets.push_back(outlet(i, back > i ? 0 : i - back, 0.05 + static_cast<double>(random() % 9995) / 100.0));
  }
  made.next_outlet_id = static_cast<std::uint32_t>(outlets) + 1;
  return made;
}

}  // namespace samples
