// How each kind of number is shown, stepped and typed, in either preference: one table with a
// complete row for each. Every field of a screen, every input and output of a calculator, is one
// of these. "Core" is the unit that the core keeps the number in, "shown" the one a person sees.
// Reading typed text by these rows: parse.h.
#pragma once

#include <cstddef>
#include <cstdint>

#include <span>
#include <string>
#include <string_view>

#include "units/format.h"

namespace units {

enum class Measure : std::uint8_t {
  // name                  core        shown
  length,                // m          m; feet and inches
  short_length,          // m          mm; inches: tails, stripping
  diameter,              // mm         mm
  area,                  // mm²        mm²
  gauge,                 // AWG number AWG; 0 is 1/0, -3 is 4/0
  temperature,           // °C         °C; °F
  current,               // A          A
  voltage,               // V          V
  power,                 // W          W
  resistance,            // ohm        ohm, with milli and kilo
  small_resistance,      // ohm        milliohm: joints, feeders
  resistance_per_length, // ohm/m      milliohm per metre or per foot
  fraction,              // 0.05       5 %
  time,                  // s          s, min, h
  charge,                // Ah         Ah
  energy,                // Wh         Wh
  let_through,           // A²s        A²s
  count,                 // 1          no unit
  count_,
};
inline constexpr std::size_t kMeasures = static_cast<std::size_t>(Measure::count_);

// A key of the number pad that puts a unit behind the number. `in_place`: takes the place of
// another such unit ("A" for "W"); else it is written on ("10 ft 6 in").
struct UnitKey {
  std::string_view label{};
  bool in_place = true;
};

// A unit as it may be typed. Core = (number - zero) * to_core.
struct UnitWord {
  std::string_view word{};     // lower case, without blanks and points; "" never: a bare number is in the row's unit
  double to_core = 1.0;
  double zero = 0.0;
  // A smaller unit may follow ("10 ft 6 in", "1 m 20 cm"): its size; 0: none may.
  double smaller_to_core = 0.0;
  bool smaller_bare = false;   // it may follow without its name: 10'6
  bool exact_case = false;     // mΩ and MΩ are a thousand million apart
};

struct MeasureRow {
  Measure measure{};
  Preference preference{};
  std::string_view unit{};               // shown; a bare number is in it; empty only for a count
  double to_core = 1.0, zero = 0.0;      // of that unit: core = (shown - zero) * to_core
  double step = 1.0;                     // what one press changes where a field says no other, shown unit
  std::span<const double> round_steps{}; // a step told in the core's unit goes to the nearest; empty: it is round
  std::span<const UnitKey> keys{};       // offered by the number pad; empty where only one unit serves
  std::span<const UnitWord> words{};
  std::string_view noun{};               // "a length", as in "Not a length."
  std::string_view example{};            // "3.2 m, 75 mm or 10 ft 6 in"
  int typed_digits = 0;                  // significant digits kept of what was typed, by exact_text() and typed_text()
  std::string (*text)(double core) = nullptr;    // rounded as people say it
};
const MeasureRow& row(Measure measure, Preference preference);

std::string text(Measure measure, double core, Preference preference);         // "10 ft 6 in"
// With the digits that were typed, in the shown unit: "12.345 V" where text says "12.3 V".
std::string exact_text(Measure measure, double core, Preference preference);
// What a number pad starts with: a bare number in the shown unit ("12.345"), or what only its own
// words can say ("10 ft 6 in", "1/0 AWG"). Reads back as the same number, to its digits.
std::string typed_text(Measure measure, double core, Preference preference);

double to_shown(Measure measure, double core, Preference preference);
double to_core(Measure measure, double shown, Preference preference);
// One press of a stepper in the shown unit: 0.1 m is 0.1 m, or half a foot.
double shown_step(Measure measure, double core_step, Preference preference);
// A conversion there and back may leave the end of a range by a rounding error: put back on it.
double settled(double value, double low, double high);

}  // namespace units
