// Private to this room: how a calculator is put together. Each ask_*.cpp defines some: what
// they ask, what they answer, and the work between.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "calculators/calculator.h"
#include "calculators/carrying.h"
#include "tables/conductor.h"
#include "tables/fuse.h"

namespace calculators {

struct Asked;
struct Definition {
  Calculator face;                   // its spans are set to the vectors below by the catalogue
  std::vector<Input> inputs;
  std::vector<OutputKind> outputs;
  std::vector<const tables::Citation*> citations;
  Evaluation (*work)(const Asked& asked);
};
std::vector<Definition> run_calculators();
std::vector<Definition> carrying_calculators();
std::vector<Definition> power_calculators();
std::vector<Definition> gauge_calculators();
std::vector<Definition> battery_calculators();
std::vector<Definition> joint_calculators();
std::vector<Definition> short_calculators();
const std::vector<Definition>& definitions();

// The values of one question, all within their ranges, by key.
struct Asked {
  const Calculator& calculator;
  const Values& values;
  units::Preference preference;

  [[nodiscard]] double number(std::string_view key) const;       // 0 for an unknown key
  [[nodiscard]] std::string_view choice(std::string_view key) const;
  [[nodiscard]] const tables::Conductor& wire() const;           // input "wire"
  [[nodiscard]] units::Volts system() const;                     // input "system"
  [[nodiscard]] const tables::FuseFamily& family() const;        // input "family"
  [[nodiscard]] Lie lie() const;                                 // the inputs of lying_inputs() that are there
};

// An answer in the making: outputs in the order of the calculator's.
class Draft {
 public:
  explicit Draft(const Asked& asked);
  Draft& gives(double value);                          // next output, text by its unit
  Draft& gives_text(double value, std::string text);   // next output, own text
  Draft& lacks(std::string text);                      // next output has no value
  Draft& note(std::string text);
  Draft& cites(const tables::Citation* citation);      // each once
  Draft& about(const tables::Conductor& wire);
  Draft& serves_not();
  Evaluation says(std::string sentence);               // ends it

 private:
  const Asked& asked_;
  Result result_;
};
Evaluation refuse(const Asked& asked, std::string_view input, std::string sentence, std::string allowed);

// Inputs that several calculators share.
Input wire_input();
Input length_input();
Input current_input(std::string_view name, double normal);
Input system_input();
Input drop_limit_input(bool folded);
Input metal_input();
Input insulation_input(bool folded);
Input ambient_input(bool folded);
Input bundled_input(bool folded);
Input table_input(bool folded);
Input hot_space_input();
Input setting_input();
Input family_input(bool folded);
Input number_input(std::string_view key, std::string_view name, Measure measure, double low, double high, double step,
                   double normal);
Input as_reading(Input input);   // shown with every digit, as a meter or a label tells it
Input choice_input(std::string_view key, std::string_view name, std::span<const Choice> choices,
                   std::string_view normal);
std::span<const Choice> wire_choices();
std::span<const Choice> battery_choices();

std::string wire_name(const tables::Conductor& wire);            // "10 AWG", "6 mm²"
std::string no_ampacity_text(tables::NoAmpacity why);            // a sentence

// Sources of the formulas that stand in no table.
extern const tables::Citation kOhmsLaw;
extern const tables::Citation kPowerLaw;
extern const tables::Citation kKirchhoff;
extern const tables::Citation kLoadedTest;
extern const tables::Citation kChargeOverCurrent;
std::vector<const tables::Citation*> formula_citations();

}  // namespace calculators
