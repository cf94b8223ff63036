// Quick calculators as data, so that one screen draws them all: what each asks for, what it
// answers, the formula in words and in symbols, where it comes from. Each stands on a typed
// function of this room (run.h, carrying.h, power.h, gauge.h, battery.h, joint.h, short.h),
// and those on the same tables and rules as sizing.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/edit.h"
#include "circuit/problem.h"
#include "tables/citation.h"
#include "units/measure.h"

namespace calculators {

using units::Measure;   // what a number is, and the unit it is kept in

struct Choice {
  std::string_view key = {};    // stable: "10awg", "12", "lead-agm"
  std::string name;        // "10 AWG", "12 V", "Lead, AGM"
};

struct Input {
  std::string_view key = {};    // stable, within its calculator: "run", "wire"
  std::string_view name;   // "Length, one way"
  Measure measure = Measure::count;
  double low = 0.0;        // allowed range, both ends included, in the core's unit; a choice: 0 to choices.size() - 1
  double high = 0.0;
  double step = 1.0;       // one press of a stepper
  double normal = 0.0;     // what it starts with
  bool whole = false;      // whole numbers only
  bool reading = false;    // shown with every digit that was typed
  bool folded = false;     // seldom changed: stands under "More" with its value told
  std::span<const Choice> choices = {};   // not empty: one of these, by its index
  // Asked only while the choice input `only_if` stands at one of the bits of `only_if_choices`
  // (bit k: choice k). Empty `only_if`: always asked.
  std::string_view only_if = {};
  std::uint32_t only_if_choices = 0;
};

// One number of the answer. Names and units are known beforehand, text comes with the answer.
struct OutputKind {
  std::string_view key = {};    // stable: "drop"
  std::string_view name;   // "Drop"
  Measure measure = Measure::count;
};

// What the screen may draw beside the answer; pictures/plates.h draws it.
enum class Plot { none, drop_by_length, fuse_gates, battery_voltage, conductor };

struct Calculator {
  std::string_view key = {};        // address "#quick/" + key: "drop-of-a-run"
  std::string_view title = {};      // "Drop of a run"
  std::string_view question = {};   // "How much voltage does this wire lose?"
  std::span<const Input> inputs = {};    // those not folded come first: 2 to 4 asked at a time
  std::span<const OutputKind> outputs = {};   // the first is the headline
  std::string_view formula_words = {};        // "Volts lost = amperes x ohms of red and black wire together."
  std::string_view formula = {};              // "V = I x 2 x L x r(T)"
  std::span<const tables::Citation* const> citations = {};   // never empty
  std::string_view caution = {};    // one line, empty where nothing can hurt
  std::string_view keywords = {};   // synonyms for search
  Plot plot = Plot::none;
  bool fits_circuit = false;   // use_in_circuit() has something to offer
};
std::span<const Calculator> calculators();
const Calculator* calculator_by_key(std::string_view key);   // nullptr when unknown

// One number for each of Calculator::inputs, in that order.
using Values = std::vector<double>;
Values normal_values(const Calculator& calculator);
// Is this input asked for, as the choices stand?
bool is_asked(const Calculator& calculator, const Values& values, std::size_t input);
// Index of an input, or of a choice of it; nullopt when there is none.
std::optional<std::size_t> input_index(const Calculator& calculator, std::string_view key);
std::optional<std::size_t> choice_index(const Input& input, std::string_view key);

struct Output {
  OutputKind kind;
  std::optional<double> value;   // nullopt: nothing to say here, `text` tells why ("table ends")
  std::string text;              // "0.64 V", in the person's units
};

struct Result {
  std::vector<Output> outputs;            // as Calculator::outputs
  std::string sentence;                   // the answer in one sentence
  std::vector<std::string> notes;         // what was assumed, cautions, where a table ends
  std::vector<const tables::Citation*> citations;  // of this very answer; never empty
  std::optional<std::string_view> wire;   // tables::Conductor id the answer is about, for the picture
  bool serves = true;                     // false: nothing fits, or the table ends; the sentence says it
};
struct Evaluation {
  std::optional<Result> result;
  // What is wrong and what is allowed; Problem::field is never set. `input` tells which one.
  std::optional<circuit::Problem> problem;
  std::optional<std::size_t> input;
};
Evaluation evaluate(const Calculator& calculator, const Values& values, units::Preference preference);

// A number of this kind as text in the person's units; a choice by its name.
std::string value_text(const Input& input, double value, units::Preference preference);
// One value against its range; nullopt when it is fine. NaN and infinities never are.
std::optional<circuit::Problem> check_input(const Input& input, double value, units::Preference preference);

// 'Use in my circuit': the edits to make one after the other with circuit::apply(), and what to
// call them. `at` is the outlet they are meant for, kBlock: the circuit as a whole. nullopt:
// nothing of these values belongs there.
struct Use {
  std::string label;                  // "Use 3 m and 10 A at outlet C"
  std::vector<circuit::Edit> edits;
};
std::optional<Use> use_in_circuit(const Calculator& calculator, const Values& values,
                                  const circuit::Circuit& circuit, circuit::OutletId at,
                                  units::Preference preference);

// Drop of one run against length, for the plot with the limit line; from 0 to a length past
// where the limit is met. Same values as the calculators "drop-of-a-run", "longest-run" and
// "wire-for-a-run"; empty for the others or for values that evaluate() refuses.
struct CurvePoint { double x = 0.0; double y = 0.0; };
struct DropCurve {
  std::vector<CurvePoint> points;     // metres, fraction of nominal
  double limit_fraction = 0.0;
  double here_m = 0.0;                // the run asked about
  double longest_m = 0.0;             // where the limit is met
};
std::optional<DropCurve> drop_curve(const Calculator& calculator, const Values& values);

}  // namespace calculators
