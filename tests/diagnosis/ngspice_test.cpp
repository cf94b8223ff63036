// What the tracer predicts for a table of faults, against ngspice (package ngspice, version 39 when
// written) with the 10 Mohm meter or the 5 W lamp in place: a general simulator that shares nothing with
// this core but the list of resistances.
#include <doctest/doctest.h>

#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include "diagnosis/faulty.h"
#include "network/ngspice.h"

using namespace diagnosis;
using diagnosis_test::build_faulty;
using diagnosis_test::Faulty;
using diagnosis_test::three_outlets;
using network::Side;

namespace {

struct Asked {
  Fault fault;
  double ohm;
  const char* check;
};

// One deck: resistances, the battery, the instrument; 1e13 ohm to ground from every node holds what floats.
std::string deck_of(const Case& the_case, const Asked& asked, const Check& check) {
  Faulty made = build_faulty(the_case, asked.fault, asked.ohm, check.state);
  const bool lamp = check.kind == CheckKind::glow;
  const network::NodeId red = made.node(check.red, check.state.fuse_in),
                        black = made.node(check.black, check.state.fuse_in);
  std::ostringstream out;
  out.precision(17);
  out << "* " << asked.check << "\n.options rshunt=1e13\n";
  std::size_t number = 0;
  for (const network::Branch& branch : made.branch.netlist.branches()) {
    ++number;
    if (branch.law == network::Law::resistance) {
      out << "r" << number << " " << branch.from.index << " " << branch.to.index << " " << branch.value << "\n";
    } else if (branch.law == network::Law::battery) {
      out << "v" << number << " inside" << number << " " << branch.from.index << " " << branch.emf_v << "\n";
      out << "r" << number << " inside" << number << " " << branch.to.index << " " << branch.value << "\n";
    }
  }
  out << "rinstrument " << red.index << " " << black.index << " " << (lamp ? 12.0 * 12.0 / 5.0 : 10e6) << "\n";
  out << "bread reading 0 v=v(" << red.index << ")-v(" << black.index << ")\n";
  return out.str();
}

std::vector<Asked> table() {
  using enum FaultKind;
  constexpr Side r = Side::positive, b = Side::negative;
  const std::vector<std::pair<Fault, double>> faults{
      {{fuse_blown, {}, r, -1}, 0},     {{clamp_loose, {}, b, -1}, 0},       {{wire_open, {2}, b, -1}, 0},
      {{splice_open, {2}, r, -1}, 0},   {{splice_resistive, {2}, r, -1}, 7}, {{splice_resistive, {2}, b, -1}, 7},
      {{tab_off, {2}, b, -1}, 0},       {{outlet_dead, {2}, r, -1}, 0},      {{reversed_here, {2}, r, -1}, 0},
      {{reversed_from, {2}, r, -1}, 0}, {{main_open, {}, r, -1}, 0},         {{feeder_resistive, {}, r, -1}, 0.15},
      {{wire_thin, {}, r, -1}, 5},      {{wrong_branch, {2}, r, 0}, 0},      {{wrong_branch_unfused, {2}, r, 0}, 0},
      {{pair_shorted, {2}, r, -1}, 0},
  };
  std::vector<Asked> all;
  for (const auto& [fault, ohm] : faults) {
    for (const char* check :
         {"volts contact+2 contact-2 in", "glow contact+2 contact-2 in", "volts contact+2 bus- in",
          "volts bus+ contact-2 in", "volts contact+2 contact-2 in lamp2", "volts splice+2 contact+2 in lamp2",
          "volts contact+3 contact-3 in", "glow fuse-feed fuse-wire out", "volts clamp+ bus- in"}) {
      all.push_back({fault, ohm, check});
    }
  }
  return all;
}

}  // namespace

TEST_CASE("predicted readings for a table of faults agree with ngspice, meter or lamp in place") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  const Tracer tracer(the_case);
  const std::vector<Asked> all = table();
  std::vector<std::string> decks;
  for (const Asked& asked : all) {
    const std::optional<Check> check = tracer.find_check(asked.check);
    REQUIRE_MESSAGE(check.has_value(), asked.check);
    decks.push_back(deck_of(the_case, asked, *check));
  }
  const std::vector<network_test::Printed> printed = network_test::run_ngspice(decks);
  for (std::size_t k = 0; k < all.size(); ++k) {
    INFO(fault_key(all[k].fault), ": ", all[k].check);
    const std::optional<double> predicted = tracer.predicted(all[k].fault, all[k].check);
    REQUIRE(predicted.has_value());
    REQUIRE(printed[k].count("reading") == 1);
    const double value = printed[k].at("reading");
    CHECK(std::abs(*predicted - value) < 0.04);  // a neighbour's line is an estimate; the rest within millivolts
    if (all[k].fault.neighbour < 0) CHECK(std::abs(*predicted - value) < 0.003);
  }
}
