// A number with minus and plus. Hold repeats, faster by and by. A tap on the number opens the
// keypad. A typed value that `read` refuses says why in words, and the last good value stays.
//
//   if (auto changed = ui::stepper("Longest run", {.sub = "one way", .shown = "5.7 m", .value = 5.7,
//         .low = 0.05, .high = 100, .step = 0.1, .allowed = "0.05 m to 100 m", .read = read_run}))
//     edit(SetRun{id, units::Metres(changed->value)}, changed->joins ? "run" : "");
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "units/measure.h"

namespace ui {

// What typed text means in the widget's own unit, or why it means nothing.
struct Read {
  std::optional<double> value{};
  std::string why_not{};        // "A run is 0.05 m to 100 m." Plain sentence; empty when there is a value
};
using Reader = std::function<Read(std::string_view text)>;   // called within the frame only

using units::UnitKey;

struct StepperOptions {
  std::string sub{};
  std::string shown{};          // "15 A", as drawn and said
  double value = 0.0;         // any unit the caller likes; low, high, step and read share it
  double low = 0.0;
  double high = 0.0;
  double step = 1.0;          // a press goes to the next multiple
  std::string allowed{};        // "1 A to 150 A", shown over the keypad
  std::string first_text{};     // what the keypad starts with; empty: the number of `shown`
  std::string unit{};           // of a bare number: stands beside it in the keypad from the first digit
  Reader read{};                // empty: plain number within low and high
  std::vector<UnitKey> unit_keys{};
  bool minus_sign = false;    // the keypad has a minus key
  std::function<std::string(double)> preview{};   // what follows from a value, told while it is typed
  bool disabled = false;
  std::string said{};           // name for a screen reader where the label alone is not enough
};

struct Changed {
  double value = 0.0;
  std::string typed{};          // the text, when it came from the keypad or the mirror ("60 W")
  bool joins = false;         // part of a hold: join with the step before in undo
};
std::optional<Changed> stepper(std::string_view label, const StepperOptions& options);

// A list_row that opens the keypad: for numbers without small steps.
std::optional<Changed> number_row(std::string_view label, const StepperOptions& options);

}  // namespace ui
