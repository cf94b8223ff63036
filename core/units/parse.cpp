#include "units/parse.h"

#include <array>
#include <cmath>
#include <cstdlib>
#include <span>
#include <utility>

namespace units {
namespace {

// A typed number has no more characters than this; a longer run of digits is a slip.
constexpr std::size_t kLongestNumber = 30;

// What phone keyboards and copied text put where a plain character is meant.
constexpr std::array<std::pair<std::string_view, std::string_view>, 11> kLookAlikes{{
    {"\xC2\xA0", " "},      // no-break space
    {"\xE2\x80\xAF", " "},  // narrow no-break space
    {"\xE2\x80\x89", " "},  // thin space
    {"\xE2\x88\x92", "-"},  // minus sign
    {"\xE2\x80\xB2", "'"},  // prime
    {"\xE2\x80\x99", "'"},  // right single quote
    {"\xE2\x80\x98", "'"},  // left single quote
    {"\xE2\x80\xB3", "\""}, // double prime
    {"\xE2\x80\x9D", "\""}, // right double quote
    {"\xE2\x80\x9C", "\""}, // left double quote
    {"\xC2\xBA", "\xC2\xB0"},  // ordinal sign for a degree sign
}};

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string plain(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  while (!text.empty()) {
    bool replaced = false;
    for (const auto& [from, to] : kLookAlikes) {
      if (text.substr(0, from.size()) != from) continue;
      result += to;
      text.remove_prefix(from.size());
      replaced = true;
      break;
    }
    if (replaced) continue;
    const char c = text.front();
    result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    text.remove_prefix(1);
  }
  return result;
}

bool looks_like_thousands(std::string_view number) {
  const std::size_t comma = number.find(',');
  return comma != std::string_view::npos && comma > 0 && number.front() != '0' && number.size() - comma == 4;
}

// Reads from the front of a text, piece by piece.
class Reader {
 public:
  explicit Reader(std::string_view rest) : rest_(rest) {}

  void skip_spaces() {
    while (!rest_.empty() && is_space(rest_.front())) rest_.remove_prefix(1);
  }
  [[nodiscard]] bool at_end() {
    skip_spaces();
    return rest_.empty();
  }
  bool take(char c) {
    skip_spaces();
    if (rest_.empty() || rest_.front() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }
  // Digits with one decimal point or comma; no sign, no exponent. "1,200" is refused: it is a
  // thousand to some and one point two to others.
  std::optional<double> take_number() {
    skip_spaces();
    std::string digits;
    bool point = false;
    bool any = false;
    std::size_t used = 0;
    for (; used < rest_.size(); ++used) {
      const char c = rest_[used];
      if (is_digit(c)) {
        any = true;
        digits += c;
      } else if ((c == '.' || c == ',') && !point) {
        point = true;
        digits += '.';
      } else {
        break;
      }
      if (digits.size() > kLongestNumber) return std::nullopt;
    }
    if (looks_like_thousands(rest_.substr(0, used))) return std::nullopt;
    if (!any || (used < rest_.size() && (rest_[used] == '.' || rest_[used] == ','))) return std::nullopt;
    rest_.remove_prefix(used);
    return std::strtod(digits.c_str(), nullptr);
  }
  // Everything up to the next digit, comma or sign, without the spaces and an abbreviation's
  // point ("ft.").
  std::string take_unit() {
    skip_spaces();
    std::string unit;
    while (!rest_.empty() && !is_digit(rest_.front()) && rest_.front() != ',' && rest_.front() != '-' &&
           rest_.front() != '+') {
      const bool point = rest_.front() == '.';
      if (point && (unit.empty() || (rest_.size() > 1 && is_digit(rest_[1])))) break;
      if (!is_space(rest_.front()) && !point) unit += rest_.front();
      rest_.remove_prefix(1);
    }
    return unit;
  }

 private:
  std::string_view rest_;
};

struct UnitWord {
  std::string_view word;
  double factor;  // to the unit the result is in
};

constexpr std::array<UnitWord, 6> kAmpereWords{
    {{"", 1}, {"a", 1}, {"amp", 1}, {"amps", 1}, {"amperes", 1}, {"ma", 1e-3}}};
constexpr std::array<UnitWord, 5> kWattWords{{{"", 1}, {"w", 1}, {"watt", 1}, {"watts", 1}, {"kw", 1e3}}};
constexpr std::array<UnitWord, 5> kVoltWords{{{"", 1}, {"v", 1}, {"volt", 1}, {"volts", 1}, {"mv", 1e-3}}};
constexpr std::array<UnitWord, 3> kPercentWords{{{"", 0.01}, {"%", 0.01}, {"percent", 0.01}}};
constexpr std::array<UnitWord, 1> kNoWords{{{"", 1}}};

enum class LengthUnit { none, metre, centimetre, millimetre, foot, inch };
struct LengthWord {
  std::string_view word;
  LengthUnit unit;
};
constexpr std::array<LengthWord, 18> kLengthWords{{
    {"", LengthUnit::none},          {"m", LengthUnit::metre},        {"metre", LengthUnit::metre},
    {"metres", LengthUnit::metre},   {"meter", LengthUnit::metre},    {"meters", LengthUnit::metre},
    {"cm", LengthUnit::centimetre},  {"mm", LengthUnit::millimetre},  {"ft", LengthUnit::foot},
    {"foot", LengthUnit::foot},      {"feet", LengthUnit::foot},      {"'", LengthUnit::foot},
    {"in", LengthUnit::inch},        {"ins", LengthUnit::inch},       {"inch", LengthUnit::inch},
    {"inches", LengthUnit::inch},    {"\"", LengthUnit::inch},        {"''", LengthUnit::inch},
}};

double metres_in(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::none:
    case LengthUnit::metre: return 1.0;
    case LengthUnit::centimetre: return 0.01;
    case LengthUnit::millimetre: return 0.001;
    case LengthUnit::foot: return 0.3048;
    case LengthUnit::inch: return 0.0254;
  }
  return 1.0;
}

std::optional<LengthUnit> take_length_unit(Reader& reader) {
  const std::string word = reader.take_unit();
  for (const LengthWord& known : kLengthWords) {
    if (known.word == word) return known.unit;
  }
  return std::nullopt;
}

double take_sign(Reader& reader) {
  if (reader.take('-')) return -1.0;
  reader.take('+');
  return 1.0;
}

// One number and one unit, nothing after it.
std::optional<double> read_simple(std::string_view text, std::span<const UnitWord> words) {
  const std::string typed = plain(text);
  Reader reader(typed);
  const double sign = take_sign(reader);
  const std::optional<double> number = reader.take_number();
  if (!number) return std::nullopt;
  const std::string unit = reader.take_unit();
  if (!reader.at_end()) return std::nullopt;
  for (const UnitWord& known : words) {
    if (known.word == unit) return sign * *number * known.factor;
  }
  return std::nullopt;
}

template <class T>
Parsed<T> parsed(std::optional<T> value, std::string_view expected) {
  if (value) return {value, {}};
  return {std::nullopt, std::string(expected)};
}

template <class Q>
Parsed<Q> parse_quantity(std::string_view text, std::span<const UnitWord> words, std::string_view expected) {
  const std::optional<double> number = read_simple(text, words);
  return parsed<Q>(number ? std::optional<Q>(Q(*number)) : std::nullopt, expected);
}

// The smaller unit that may follow without saying so: 10'6 and 10 ft 6 mean inches.
LengthUnit follower_of(LengthUnit unit) { return unit == LengthUnit::foot ? LengthUnit::inch : LengthUnit::centimetre; }

std::optional<double> read_length_m(std::string_view text, Preference bare) {
  const std::string typed = plain(text);
  Reader reader(typed);
  const double sign = take_sign(reader);
  const std::optional<double> number = reader.take_number();
  if (!number) return std::nullopt;
  std::optional<LengthUnit> unit = take_length_unit(reader);
  if (!unit) return std::nullopt;
  const bool bare_number = *unit == LengthUnit::none;
  if (bare_number) unit = bare == Preference::us ? LengthUnit::foot : LengthUnit::metre;
  const double metres = *number * metres_in(*unit);
  if (reader.at_end()) return sign * metres;
  if (bare_number) return std::nullopt;  // "3 4" is two numbers, not 3 ft 4 in

  const std::optional<double> further = reader.take_number();
  const std::optional<LengthUnit> smaller = take_length_unit(reader);
  if (!further || !smaller || !reader.at_end()) return std::nullopt;
  const bool feet = *unit == LengthUnit::foot && (*smaller == LengthUnit::inch || *smaller == LengthUnit::none);
  const bool metric = *unit == LengthUnit::metre && *smaller == LengthUnit::centimetre;
  if (!feet && !metric) return std::nullopt;
  return sign * (metres + *further * metres_in(follower_of(*unit)));
}

}  // namespace

Parsed<double> parse_number(std::string_view text) {
  return parsed(read_simple(text, kNoWords), "Not a number. Type digits, such as 12 or 7.5.");
}

Parsed<Metres> parse_length(std::string_view text, Preference bare_number_unit) {
  const std::optional<double> metres = read_length_m(text, bare_number_unit);
  return parsed<Metres>(metres ? std::optional<Metres>(Metres(*metres)) : std::nullopt,
                        "Not a length. Type it as 3.2 m, 75 mm or 10 ft 6 in.");
}

Parsed<Amperes> parse_amperes(std::string_view text) {
  return parse_quantity<Amperes>(text, kAmpereWords, "Not a current. Type it as 7.5 A.");
}

Parsed<Watts> parse_watts(std::string_view text) {
  return parse_quantity<Watts>(text, kWattWords, "Not a power. Type it as 60 W.");
}

Parsed<Volts> parse_volts(std::string_view text) {
  return parse_quantity<Volts>(text, kVoltWords, "Not a voltage. Type it as 12.2 V.");
}

Parsed<double> parse_percent(std::string_view text) {
  return parsed(read_simple(text, kPercentWords), "Not a percentage. Type it as 5 %.");
}

Parsed<Celsius> parse_celsius(std::string_view text, Preference bare_number_unit) {
  constexpr std::string_view kExpected = "Not a temperature. Type it as 40 °C or 104 °F.";
  const std::string typed = plain(text);
  Reader reader(typed);
  const double sign = take_sign(reader);
  const std::optional<double> number = reader.take_number();
  const std::string unit = reader.take_unit();
  if (!number || !reader.at_end()) return {std::nullopt, std::string(kExpected)};
  const bool bare = unit.empty() || unit == "°" || unit == "deg";
  const bool celsius = unit == "°c" || unit == "c" || unit == "degc" || (bare && bare_number_unit == Preference::metric);
  const bool fahrenheit = unit == "°f" || unit == "f" || unit == "degf" || (bare && bare_number_unit == Preference::us);
  if (celsius) return {Celsius(sign * *number), {}};
  if (fahrenheit) return {Celsius((sign * *number - 32.0) * 5.0 / 9.0), {}};
  return {std::nullopt, std::string(kExpected)};
}

}  // namespace units
