// 'Use in my circuit': the inputs of a calculator as edits of the open circuit, each tried.
#include "calculators/ask.h"

namespace calculators {
namespace {

// Edits in the making, and the words for them.
struct Making {
  const Asked& asked;
  const circuit::Circuit& circuit;
  const circuit::Outlet* outlet;
  Use use;
  std::string what;

  void say(const std::string& part) { what += (what.empty() ? "" : ", ") + part; }

  void run() {
    const auto index = input_index(asked.calculator, "run");
    if (!index || outlet == nullptr) return;
    use.edits.push_back(circuit::SetRun{outlet->id, units::Metres(asked.values[*index])});
    say(units::length_text(units::Metres(asked.values[*index]), asked.preference));
  }
  // The device's own law and lowest voltage stay; only how much it takes changes.
  void load(bool in_watts, double rating) {
    if (outlet == nullptr) return;
    circuit::Load load = outlet->devices.front().load;
    load.rating_in_watts = in_watts;
    load.rating = rating;
    use.edits.push_back(circuit::SetLoad{outlet->id, load});
    say(in_watts ? units::watts_text(units::Watts(rating)) : units::amperes_text(units::Amperes(rating)));
  }
  void drop_limit() {
    if (outlet == nullptr) return;
    use.edits.push_back(circuit::SetOutletDropLimit{outlet->id, asked.number("limit")});
    say(units::percent_text(asked.number("limit")) + " drop");
  }
  // The circuit as a whole: where its wire lies.
  void surroundings() {
    circuit::Wiring wiring = circuit.wiring;
    const Lie lie = asked.lie();
    wiring.around = lie.around;
    if (lie.table) wiring.ampacity_table = *lie.table;
    use.edits.push_back(circuit::SetWiring{wiring});
    say("where the wire lies");
  }
  void in_hand(const Result& result) {
    if (!result.outputs.front().value) return;
    use.edits.push_back(circuit::SetInHand{circuit::InHand{std::string(asked.wire().id),
                                                           units::Amperes(*result.outputs.front().value)}});
    say(wire_name(asked.wire()) + " and a " + result.outputs.front().text + " fuse in hand");
  }
};

bool all_apply(circuit::Circuit circuit, const std::vector<circuit::Edit>& edits) {
  for (const circuit::Edit& edit : edits) {
    circuit::EditResult result = circuit::apply(circuit, edit);
    if (!result.circuit) return false;
    circuit = std::move(*result.circuit);
  }
  return true;
}

std::string place_text(const circuit::Circuit& circuit, const circuit::Outlet* outlet) {
  if (outlet == nullptr) return {};
  return " at outlet " + circuit::outlet_letter(static_cast<std::size_t>(outlet - circuit.outlets.data()));
}

}  // namespace

std::optional<Use> use_in_circuit(const Calculator& calculator, const Values& values,
                                  const circuit::Circuit& circuit, circuit::OutletId at,
                                  units::Preference preference) {
  const Evaluation evaluation = evaluate(calculator, values, preference);
  if (!calculator.fits_circuit || !evaluation.result) return std::nullopt;
  const Asked asked{calculator, values, preference};
  const circuit::Outlet* outlet = circuit::find_outlet(circuit, at);
  Making making{asked, circuit, outlet, {}, {}};
  bool at_outlet = true;
  if (calculator.key == "most-current") {
    making.surroundings();
    at_outlet = false;
  } else if (calculator.key == "fuse-for-a-wire") {
    making.in_hand(*evaluation.result);
    at_outlet = false;
  } else if (calculator.key == "watts-amps-volts") {
    making.load(true, *evaluation.result->outputs.front().value);
  } else {
    making.run();
    making.load(false, asked.number("current"));
    if (calculator.key != "drop-of-a-run") making.drop_limit();
  }
  if (making.use.edits.empty() || !all_apply(circuit, making.use.edits)) return std::nullopt;
  making.use.label = "Use " + making.what + (at_outlet ? place_text(circuit, outlet) : std::string());
  return std::move(making.use);
}

}  // namespace calculators
