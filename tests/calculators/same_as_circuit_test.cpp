// The same inputs through the core's own circuit path give the same answers.
#include "calculators/ask.h"
#include "network/branch_network.h"
#include "network/tree.h"
#include "sizing/sizing.h"

using ask::evaluate;
using ask::number;
using doctest::Approx;

namespace {

circuit::Circuit one_outlet(double run_m, double amperes) {
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.setting = circuit::Setting::van;
  made.outlets.front().run.length = units::Metres(run_m);
  made.outlets.front().devices.front().load.rating = amperes;
  return made;
}
const sizing::Judgement& of(const sizing::Candidate& candidate, sizing::Criterion criterion) {
  for (const auto& judgement : candidate.judgements) {
    if (judgement.criterion == criterion) return judgement;
  }
  FAIL("no such judgement");
  return candidate.judgements.front();
}

}  // namespace

TEST_CASE("loop resistance and ampacity are those of the network and of sizing, for every AWG size") {
  for (const tables::Conductor& wire : tables::conductors(tables::GaugeSystem::awg)) {
    const circuit::Circuit circuit = one_outlet(7.3, 4.0);
    network::Fitted fitted;
    fitted.size = &wire;
    fitted.fuse = units::Amperes(10.0);
    const auto tree = network::tree_of(circuit, fitted, network::BatteryState::resting);
    const auto e = evaluate("drop-of-a-run", {{"run", 7.3}, {"current", 4.0}, {"metal", circuit.wiring.wire_temperature.number()}},
                            {{"wire", std::string(wire.id)}});
    CHECK(number(e, "loop") == Approx(tree.points[0].wire_ohm).epsilon(1e-12));
    const sizing::Candidate judged = sizing::judge(circuit, wire);
    const auto carries = evaluate("most-current", {}, {{"wire", std::string(wire.id)}});
    REQUIRE(judged.derated_ampacity.has_value());
    CHECK(number(carries, "ampacity") == Approx(judged.derated_ampacity->number()).epsilon(1e-12));
    // A 15 A outlet and its clamp do not bind at 4 A: the fuse is the same.
    const auto fuse = evaluate("fuse-for-a-wire", {{"current", 4.0}}, {{"wire", std::string(wire.id)}});
    if (judged.fuse && of(judged, sizing::Criterion::fuse_rating).passes) CHECK(number(fuse, "fuse") == Approx(judged.fuse->number()));
  }
}

TEST_CASE("far short opens as sizing says, given sizing's resistances before the run") {
  for (const char* id : {"16awg", "14awg", "10awg"}) {
    circuit::Circuit circuit = one_outlet(6.0, 4.0);
    network::Fitted fitted;
    fitted.size = tables::conductor_by_id(id);
    fitted.tail = fitted.size;
    fitted.fuse = units::Amperes(5.0);
    const sizing::Candidate judged = sizing::judge(circuit, *fitted.size, fitted.fuse);
    fitted.tail = judged.tail;
    circuit.wiring.wire_temperature = circuit.wiring.around.insulation;
    const auto tree = network::tree_of(circuit, fitted, network::BatteryState::low);
    const double before = tree.supply_ohm + tree.points[0].path_ohm - tree.points[0].wire_ohm + tree.points[0].tail_ohm;
    const auto e = evaluate("short-at-the-far-end", {{"run", 6.0}, {"fuse", 5.0}, {"before", before}},
                            {{"wire", id}, {"battery", circuit.supply.battery}});
    const double all = tree.source_ohm + before + tree.points[0].wire_ohm;
    CHECK(number(e, "current") == Approx(tree.emf_v / all).epsilon(1e-9));
    CHECK(number(e, "opens") == Approx(of(judged, sizing::Criterion::far_short).value).epsilon(1e-9));
    CHECK((number(e, "survives") == 1.0) == of(judged, sizing::Criterion::withstand).passes);
  }
}

TEST_CASE("use in my circuit: every offer applies, and sets what it says") {
  const circuit::Circuit demo = circuit::demo_circuit();
  const circuit::OutletId at = demo.outlets.front().id;
  int offers = 0;
  for (const auto& calculator : calculators::calculators()) {
    const auto use = calculators::use_in_circuit(calculator, calculators::normal_values(calculator), demo, at, units::Preference::metric);
    CHECK_MESSAGE(use.has_value() == calculator.fits_circuit, std::string(calculator.key));
    if (!use) continue;
    ++offers;
    CHECK(use->label.rfind("Use ", 0) == 0);
    circuit::Circuit changed = demo;
    for (const auto& edit : use->edits) changed = circuit::apply(changed, edit).circuit.value();
  }
  CHECK(offers >= 5);
  const auto& drop = *calculators::calculator_by_key("drop-of-a-run");
  const auto use = calculators::use_in_circuit(drop, calculators::normal_values(drop), demo, at, units::Preference::metric);
  CHECK(use->label == "Use 5 m, 10 A at outlet A");
  CHECK_FALSE(calculators::use_in_circuit(drop, calculators::normal_values(drop), demo, circuit::kBlock, units::Preference::metric));
}
