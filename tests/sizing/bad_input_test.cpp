// What cannot be sized: one clear sentence each, and never a crash.
#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "sizing/fixes.h"
#include "sizing/sizing.h"

namespace {

using circuit::Circuit;
using sizing::Answer;
using sizing::Verdict;

bool one_sentence(const std::string& text) { return text.size() > 10 && text.back() == '.' && text.find('\n') == std::string::npos; }

Answer sized(const Circuit& circuit, Verdict expected) {
  const Answer answer = sizing::size_circuit(circuit);
  CHECK(answer.verdict == expected);
  CHECK(one_sentence(answer.headline));
  CHECK(answer.choice() == nullptr);
  return answer;
}

}  // namespace

TEST_CASE("no load yet") {
  const Answer answer = sized(circuit::new_circuit(tables::GaugeSystem::awg), Verdict::no_load);
  CHECK(answer.headline.find("load") != std::string::npos);
  CHECK(sizing::nearest_size(circuit::new_circuit(tables::GaugeSystem::awg), answer) == nullptr);
}

TEST_CASE("values that are out of range are told, not sized") {
  constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  for (const double bad : {-1.0, 0.0, kNaN, kInfinite, 1e12}) {
    CAPTURE(bad);
    Circuit circuit = circuit::demo_circuit();
    circuit.outlets[1].run.length = units::Metres(bad);
    sized(circuit, Verdict::invalid);
    circuit = circuit::demo_circuit();
    circuit.at_most_at_once = units::Amperes(bad);
    sized(circuit, Verdict::invalid);
    circuit = circuit::demo_circuit();
    circuit.drop_limit = bad;
    sized(circuit, Verdict::invalid);
    const auto fixes = sizing::fixes(circuit, *tables::conductor_by_id("10awg"));
    CHECK(fixes.fixes.empty());
    CHECK(one_sentence(fixes.why_none));
    CHECK(sizing::reach(circuit, {"10awg", units::Amperes(15.0)}).notes.size() == 1);
  }
}

TEST_CASE("no outlets, and 500 of them") {
  Circuit circuit = circuit::demo_circuit();
  circuit.outlets.clear();
  const Answer none = sizing::size_circuit(circuit);
  CHECK((none.verdict == Verdict::invalid || none.verdict == Verdict::no_load));
  CHECK(one_sentence(none.headline));
  circuit = circuit::demo_circuit();
  while (circuit.outlets.size() < 500) {
    circuit::Outlet outlet = circuit.outlets.back();
    outlet.fed_from = outlet.id;
    outlet.id = circuit::OutletId{circuit.next_outlet_id++};
    circuit.outlets.push_back(outlet);
  }
  sized(circuit, Verdict::invalid);
}

TEST_CASE("a load that cannot run at that length") {
  Circuit circuit = circuit::demo_circuit();
  circuit.outlets[0].run.length = units::Metres(100.0);
  circuit.outlets[1].devices.front().load.rating = 120.0;
  const Answer answer = sized(circuit, Verdict::none_fits);
  const auto& thin = answer.ladder.front().judgements[static_cast<std::size_t>(sizing::Criterion::operating_point)];
  CHECK_FALSE(thin.passes);
  CHECK(thin.sentence.find("cannot run at that length") != std::string::npos);
}

TEST_CASE("past the end of a table: said, never extrapolated") {
  Circuit circuit = circuit::new_circuit(tables::GaugeSystem::metric);
  circuit.outlets[0].devices.front().load.rating = 5.0;
  const Answer answer = sizing::size_circuit(circuit);
  const auto& last = answer.ladder.back();
  CHECK(last.size->id == "120mm2");
  CHECK_FALSE(last.passes);
  CHECK_FALSE(last.fuse.has_value());
  CHECK_FALSE(last.derated_ampacity.has_value());
  CHECK(last.judgements[0].sentence.find("ends at 70 mm²") != std::string::npos);
}

TEST_CASE("insulation below the table, and a place too hot for it") {
  Circuit circuit = circuit::demo_circuit();
  circuit.wiring.ampacity_table = tables::AmpacityTableId::enclosed_iec;
  circuit.wiring.around.insulation = units::Celsius(60.0);
  CHECK(sized(circuit, Verdict::none_fits).ladder[4].judgements[0].sentence.find("no column") != std::string::npos);
  circuit.wiring.around.insulation = units::Celsius(75.0);
  circuit.wiring.around.ambient = units::Celsius(90.0);
  CHECK(sized(circuit, Verdict::none_fits).ladder[4].judgements[0].sentence.find("too hot") != std::string::npos);
}

TEST_CASE("an empty shelf") {
  Circuit circuit = circuit::demo_circuit();
  for (const tables::Conductor& size : tables::conductors(tables::GaugeSystem::awg)) {
    circuit.shelf.missing_sizes.emplace_back(size.id);
  }
  const Answer answer = sized(circuit, Verdict::not_on_shelf);
  CHECK(answer.best_ignoring_shelf.has_value());
  CHECK(sizing::nearest_size(circuit, answer) == nullptr);
}

TEST_CASE("a current beyond every fuse") {
  Circuit circuit = circuit::demo_circuit();
  circuit.at_most_at_once = std::nullopt;
  circuit.outlets[2].devices.front().load.rating = 200.0;
  const Answer answer = sized(circuit, Verdict::none_fits);
  CHECK(answer.ladder.back().judgements[1].sentence.find("the largest blade fuse is 40 A") != std::string::npos);
}

TEST_CASE("a 48 V system does not take a 32 V fuse") {
  Circuit circuit = circuit::demo_circuit();
  circuit.supply.nominal = units::Volts(48.0);
  circuit.outlets[1].devices.front().load.minimum_voltage = units::Volts(44.0);
  const Answer answer = sized(circuit, Verdict::none_fits);
  CHECK(answer.headline.find("32") != std::string::npos);
  circuit.wiring.fuse_family = tables::FuseFamilyId::blade_high_voltage;
  CHECK(sizing::size_circuit(circuit).verdict == Verdict::none_fits);   // 58 V, and charging passes it
  circuit.wiring.fuse_family = tables::FuseFamilyId::blade_80v;
  CHECK(sizing::size_circuit(circuit).verdict == Verdict::fits);
}
