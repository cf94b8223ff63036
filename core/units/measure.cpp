#include "units/measure.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace units {
namespace {

// Exact by definition: the international yard and pound agreement of 1959 (from memory);
// 0 °C is 32 °F and 100 °C is 212 °F.
constexpr double kFoot = 0.3048;
constexpr double kInch = 0.0254;
constexpr double kFahrenheit = 5.0 / 9.0;
constexpr double kFahrenheitZero = 32.0;

// "m 20 cm" needs its unit said, "10 ft 6" does not.
constexpr UnitWord metres(std::string_view word) { return {word, 1.0, 0.0, 0.01, false}; }
constexpr UnitWord feet(std::string_view word) { return {word, kFoot, 0.0, kInch, true}; }
constexpr UnitWord inches(std::string_view word) { return {word, kInch}; }
constexpr UnitWord cased(std::string_view word, double to_core) { return {word, to_core, 0.0, 0.0, false, true}; }

constexpr std::array kLengthWords{
    metres("m"), metres("metre"), metres("metres"), metres("meter"), metres("meters"),
    UnitWord{"cm", 0.01}, UnitWord{"mm", 0.001},
    feet("ft"), feet("foot"), feet("feet"), feet("'"),
    inches("in"), inches("ins"), inches("inch"), inches("inches"), inches("\""), inches("''")};
constexpr std::array kDiameterWords{UnitWord{"mm", 1.0}, UnitWord{"cm", 10.0}, UnitWord{"in", 25.4}, UnitWord{"inch", 25.4},
                                    UnitWord{"\"", 25.4}};
constexpr std::array kAreaWords{UnitWord{"mm²", 1.0}, UnitWord{"mm", 1.0}, UnitWord{"sqmm", 1.0}};
constexpr std::array kGaugeWords{UnitWord{"awg", 1.0}};
constexpr std::array kTemperatureWords{
    UnitWord{"°c", 1.0}, UnitWord{"c", 1.0}, UnitWord{"degc", 1.0}, UnitWord{"°f", kFahrenheit, kFahrenheitZero},
    UnitWord{"f", kFahrenheit, kFahrenheitZero}, UnitWord{"degf", kFahrenheit, kFahrenheitZero}};
constexpr std::array kCurrentWords{UnitWord{"a", 1.0}, UnitWord{"amp", 1.0}, UnitWord{"amps", 1.0}, UnitWord{"ampere", 1.0},
                                   UnitWord{"amperes", 1.0}, UnitWord{"ma", 1e-3}};
constexpr std::array kVoltageWords{UnitWord{"v", 1.0}, UnitWord{"volt", 1.0}, UnitWord{"volts", 1.0}, UnitWord{"mv", 1e-3}};
constexpr std::array kPowerWords{UnitWord{"w", 1.0}, UnitWord{"watt", 1.0}, UnitWord{"watts", 1.0}, UnitWord{"kw", 1e3}};
constexpr std::array kResistanceWords{
    UnitWord{"Ω", 1.0}, UnitWord{"ohm", 1.0}, UnitWord{"ohms", 1.0}, cased("mΩ", 1e-3), cased("mohm", 1e-3),
    cased("mohms", 1e-3), UnitWord{"milliohm", 1e-3}, UnitWord{"milliohms", 1e-3}, UnitWord{"kΩ", 1e3},
    UnitWord{"kohm", 1e3}, UnitWord{"kohms", 1e3}, cased("MΩ", 1e6), cased("Mohm", 1e6), cased("Mohms", 1e6)};
constexpr std::array kPerLengthWords{cased("mΩ/m", 1e-3), cased("mohm/m", 1e-3), UnitWord{"Ω/m", 1.0}, UnitWord{"ohm/m", 1.0},
                                     cased("mΩ/ft", 1e-3 / kFoot), cased("mohm/ft", 1e-3 / kFoot), UnitWord{"Ω/ft", 1.0 / kFoot},
                                     UnitWord{"ohm/ft", 1.0 / kFoot}};
constexpr std::array kFractionWords{UnitWord{"%", 0.01}, UnitWord{"percent", 0.01}};
constexpr std::array kTimeWords{UnitWord{"s", 1.0}, UnitWord{"sec", 1.0}, UnitWord{"seconds", 1.0}, UnitWord{"min", 60.0},
                                UnitWord{"minutes", 60.0}, UnitWord{"h", 3600.0}, UnitWord{"hours", 3600.0}};
constexpr std::array kChargeWords{UnitWord{"ah", 1.0}, UnitWord{"mah", 1e-3}};
constexpr std::array kEnergyWords{UnitWord{"wh", 1.0}, UnitWord{"kwh", 1e3}};
constexpr std::array kLetThroughWords{UnitWord{"a²s", 1.0}};

constexpr std::array kMetreKeys{UnitKey{"m"}, UnitKey{"cm"}};
constexpr std::array kFootKeys{UnitKey{"ft", false}, UnitKey{"in", false}};
constexpr std::array kShortMetricKeys{UnitKey{"mm"}, UnitKey{"cm"}, UnitKey{"m"}};
constexpr std::array kShortUsKeys{UnitKey{"in"}, UnitKey{"ft", false}};
constexpr std::array kTemperatureKeys{UnitKey{"°C"}, UnitKey{"°F"}};
constexpr std::array kOhmKeys{UnitKey{"mΩ"}, UnitKey{"Ω"}};
constexpr std::array kTimeKeys{UnitKey{"s"}, UnitKey{"min"}, UnitKey{"h"}};
constexpr std::array kEnergyKeys{UnitKey{"Wh"}, UnitKey{"kWh"}};

constexpr std::array kFootSteps{1.0 / 12.0, 0.5, 1.0, 5.0, 10.0};
constexpr std::array kInchSteps{0.125, 0.25, 0.5, 1.0, 3.0, 6.0};
constexpr std::array kFahrenheitSteps{1.0, 2.0, 5.0, 10.0, 20.0};
constexpr std::array kPerFootSteps{0.01, 0.05, 0.1, 0.5, 1.0};

std::string counted(double number, int digits, std::string_view unit) {
  std::string text = number_text(number, digits);
  if (unit.empty()) return text;
  text += ' ';
  text += unit;
  return text;
}

// What a measure is, apart from the unit it is shown in.
struct Kind {
  Measure measure;
  std::span<const UnitWord> words;
  std::string_view noun, example;
  int typed_digits;
};
// The unit it is shown in.
struct Shown {
  std::string_view unit;
  double step;
  std::span<const double> round_steps;
  std::span<const UnitKey> keys;
  std::string (*text)(double core);
};

// "°C" is the word "°c"; exact_case words as they stand.
constexpr bool names(const UnitWord& word, std::string_view unit) {
  if (word.word.size() != unit.size()) return false;
  for (std::size_t i = 0; i < unit.size(); ++i) {
    const char c = unit[i];
    const bool capital = !word.exact_case && c >= 'A' && c <= 'Z';
    if (word.word[i] != (capital ? static_cast<char>(c - 'A' + 'a') : c)) return false;
  }
  return true;
}

constexpr MeasureRow made(const Kind& kind, Preference preference, const Shown& shown) {
  MeasureRow row{kind.measure, preference, shown.unit, 1.0, 0.0, shown.step, shown.round_steps, shown.keys,
                 kind.words, kind.noun, kind.example, kind.typed_digits, shown.text};
  for (const UnitWord& word : kind.words) {
    if (!names(word, shown.unit)) continue;
    row.to_core = word.to_core;
    row.zero = word.zero;
  }
  return row;
}

using Rows = std::array<MeasureRow, 2>;   // in the order of Preference
constexpr Rows rows(const Kind& kind, const Shown& metric, const Shown& us) {
  return {made(kind, Preference::metric, metric), made(kind, Preference::us, us)};
}
constexpr Rows rows(const Kind& kind, const Shown& both) { return rows(kind, both, both); }

// In the order of Measure.
constexpr std::array<Rows, kMeasures> kTable{{
    rows({Measure::length, kLengthWords, "a length", "3.2 m, 75 mm or 10 ft 6 in", 5},
         {"m", 0.1, {}, kMetreKeys, [](double m) { return length_text(Metres(m), Preference::metric); }},
         {"ft", 0.5, kFootSteps, kFootKeys, [](double m) { return length_text(Metres(m), Preference::us); }}),
    rows({Measure::short_length, kLengthWords, "a length", "75 mm or 3 in", 5},
         {"mm", 5.0, {}, kShortMetricKeys, [](double m) { return short_length_text(Metres(m), Preference::metric); }},
         {"in", 0.25, kInchSteps, kShortUsKeys, [](double m) { return short_length_text(Metres(m), Preference::us); }}),
    rows({Measure::diameter, kDiameterWords, "a diameter", "2.5 mm", 4},
         {"mm", 0.1, {}, {}, [](double mm) { return counted(mm, 3, "mm"); }}),
    rows({Measure::area, kAreaWords, "an area", "2.5 mm²", 4},
         {"mm²", 0.5, {}, {}, [](double mm2) { return area_text(SquareMillimetres(mm2)); }}),
    rows({Measure::gauge, kGaugeWords, "a gauge", "10 AWG or 1/0", 3}, {"AWG", 1.0, {}, {}, &gauge_text}),
    rows({Measure::temperature, kTemperatureWords, "a temperature", "40 °C or 104 °F", 4},
         {"°C", 5.0, {}, kTemperatureKeys, [](double c) { return celsius_text(Celsius(c), Preference::metric); }},
         {"°F", 10.0, kFahrenheitSteps, kTemperatureKeys, [](double c) { return celsius_text(Celsius(c), Preference::us); }}),
    rows({Measure::current, kCurrentWords, "a current", "7.5 A", 5},
         {"A", 0.5, {}, {}, [](double a) { return amperes_text(Amperes(a)); }}),
    rows({Measure::voltage, kVoltageWords, "a voltage", "12.2 V", 5},
         {"V", 0.1, {}, {}, [](double v) { return volts_text(Volts(v)); }}),
    rows({Measure::power, kPowerWords, "a power", "60 W", 5},
         {"W", 5.0, {}, {}, [](double w) { return watts_text(Watts(w)); }}),
    rows({Measure::resistance, kResistanceWords, "a resistance", "0.4 Ω or 15 mΩ", 5},
         {"Ω", 1.0, {}, kOhmKeys, [](double ohm) { return ohms_text(Ohms(ohm)); }}),
    rows({Measure::small_resistance, kResistanceWords, "a resistance", "15 mΩ or 0.4 Ω", 5},
         {"mΩ", 1.0, {}, kOhmKeys, [](double ohm) { return ohms_text(Ohms(ohm)); }}),
    rows({Measure::resistance_per_length, kPerLengthWords, "a resistance of a length", "3.3 mΩ/m", 4},
         {"mΩ/m", 0.1, {}, {}, [](double r) { return ohms_per_length_text(OhmsPerMetre(r), Preference::metric); }},
         {"mΩ/ft", 0.1, kPerFootSteps, {}, [](double r) { return ohms_per_length_text(OhmsPerMetre(r), Preference::us); }}),
    rows({Measure::fraction, kFractionWords, "a percentage", "5 %", 4}, {"%", 0.5, {}, {}, &percent_text}),
    rows({Measure::time, kTimeWords, "a time", "30 s, 10 min or 2 h", 4},
         {"s", 1.0, {}, kTimeKeys, [](double s) { return seconds_text(Seconds(s)); }}),
    rows({Measure::charge, kChargeWords, "a charge", "100 Ah", 5},
         {"Ah", 5.0, {}, {}, [](double ah) { return counted(ah, 3, "Ah"); }}),
    rows({Measure::energy, kEnergyWords, "an energy", "1200 Wh or 1.2 kWh", 5},
         {"Wh", 50.0, {}, kEnergyKeys, [](double wh) { return counted(wh, 3, "Wh"); }}),
    rows({Measure::let_through, kLetThroughWords, "an I²t", "1200 A²s", 4},
         {"A²s", 100.0, {}, {}, [](double a2s) { return counted(a2s, 3, "A²s"); }}),
    rows({Measure::count, {}, "a number", "12 or 7.5", 6},
         {"", 1.0, {}, {}, [](double number) { return number_text(number, 4); }}),
}};

// Every row is there, in its place, and has a unit that can be typed.
constexpr bool complete(const MeasureRow& row, Measure measure, Preference preference) {
  if (row.measure != measure || row.preference != preference) return false;
  if (row.text == nullptr || row.typed_digits < 3 || !(row.step > 0.0) || row.noun.empty() || row.example.empty()) return false;
  bool typed = row.unit.empty() && measure == Measure::count;
  for (const UnitWord& word : row.words) typed = typed || names(word, row.unit);
  return typed;
}
constexpr bool table_is_complete() {
  for (std::size_t i = 0; i < kMeasures; ++i) {
    for (const Preference preference : {Preference::metric, Preference::us}) {
      if (!complete(kTable[i][static_cast<std::size_t>(preference)], static_cast<Measure>(i), preference)) return false;
    }
  }
  return true;
}
static_assert(table_is_complete());

}  // namespace

const MeasureRow& row(Measure measure, Preference preference) {
  return kTable.at(static_cast<std::size_t>(measure)).at(static_cast<std::size_t>(preference));
}

std::string text(Measure measure, double core, Preference preference) { return row(measure, preference).text(core); }

namespace {

// What says itself best in words of its own, where these lose nothing.
bool says_itself(const MeasureRow& shown, double core) {
  if (shown.measure == Measure::gauge) return true;
  const double inches = core / kInch;
  return shown.measure == Measure::length && shown.preference == Preference::us && std::fabs(inches - std::round(inches)) < 1e-6;
}

}  // namespace

std::string typed_text(Measure measure, double core, Preference preference) {
  const MeasureRow& shown = row(measure, preference);
  if (says_itself(shown, core)) return shown.text(core);
  return number_text(to_shown(measure, core, preference), shown.typed_digits);
}

std::string exact_text(Measure measure, double core, Preference preference) {
  const MeasureRow& shown = row(measure, preference);
  if (says_itself(shown, core)) return shown.text(core);
  return counted(to_shown(measure, core, preference), shown.typed_digits, shown.unit);
}

double to_shown(Measure measure, double core, Preference preference) {
  const MeasureRow& shown = row(measure, preference);
  return core / shown.to_core + shown.zero;
}

double to_core(Measure measure, double shown, Preference preference) {
  const MeasureRow& by = row(measure, preference);
  return (shown - by.zero) * by.to_core;
}

double shown_step(Measure measure, double core_step, Preference preference) {
  const MeasureRow& shown = row(measure, preference);
  const double step = core_step / shown.to_core;
  if (!(step > 0.0) || shown.round_steps.empty()) return step;
  const auto off = [step](double round) { return std::fabs(std::log(round / step)); };
  return *std::min_element(shown.round_steps.begin(), shown.round_steps.end(),
                           [&off](double a, double b) { return off(a) < off(b); });
}

double settled(double value, double low, double high) {
  const double slack = 1e-9 * std::max(1.0, std::fabs(high));
  if (value < low && value > low - slack) return low;
  if (value > high && value < high + slack) return high;
  return value;
}

}  // namespace units
