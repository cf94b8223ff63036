#include "units/parse.h"

#include <array>
#include <charconv>
#include <cstdlib>
#include <utility>

namespace units {
namespace {

// A typed number has no more characters than this; a longer run of digits is a slip.
constexpr std::size_t kLongestNumber = 30;

// What phone keyboards and copied text put where a plain character is meant.
constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kLookAlikes{{
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
    {"\xE2\x84\xA6", "Ω"},     // ohm sign for the letter
    {"mm2", "mm²"},
    {"A2s", "A²s"},
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
    result += text.front();
    text.remove_prefix(1);
  }
  return result;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
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

double take_sign(Reader& reader) {
  if (reader.take('-')) return -1.0;
  reader.take('+');
  return 1.0;
}

const UnitWord* word_named(std::span<const UnitWord> words, const std::string& unit) {
  const std::string small = lower(unit);
  for (const UnitWord& known : words) {
    if (known.word == (known.exact_case ? unit : small)) return &known;
  }
  return nullptr;
}

// "°" and "deg" say that it is a temperature and not on which scale.
bool says_no_scale(const MeasureRow& row, const std::string& unit) {
  return row.measure == Measure::temperature && (unit == "°" || lower(unit) == "deg");
}

// "1/0" to "4/0" are 0 to -3.
std::optional<double> read_zeros(std::string_view typed) {
  Reader reader(typed);
  const std::optional<double> zeros = reader.take_number();
  if (!zeros || !reader.take('/')) return std::nullopt;
  const std::optional<double> nought = reader.take_number();
  const std::string unit = lower(reader.take_unit());
  const bool whole = *zeros == 1.0 || *zeros == 2.0 || *zeros == 3.0 || *zeros == 4.0;
  if (!whole || nought != 0.0 || !reader.at_end() || !(unit.empty() || unit == "awg")) return std::nullopt;
  return 1.0 - *zeros;
}

struct Number {
  double core = 0.0;
  bool unit_told = false;
};

// A second number with a smaller unit after the first: what it adds, in the core's unit.
std::optional<double> read_smaller(Reader& reader, const MeasureRow& row, const UnitWord& larger) {
  if (larger.smaller_to_core <= 0.0) return std::nullopt;
  const std::optional<double> number = reader.take_number();
  const std::string unit = reader.take_unit();
  const UnitWord* word = word_named(row.words, unit);
  const bool named = word != nullptr && word->to_core == larger.smaller_to_core;
  if (!number || !reader.at_end() || !(named || (unit.empty() && larger.smaller_bare))) return std::nullopt;
  return *number * larger.smaller_to_core;
}

std::optional<Number> read_number(std::string_view text, const MeasureRow& row) {
  const std::string typed = plain(text);
  if (row.measure == Measure::gauge) {
    if (const auto zeros = read_zeros(typed)) return Number{*zeros, true};
  }
  Reader reader(typed);
  const double sign = take_sign(reader);
  const std::optional<double> number = reader.take_number();
  if (!number) return std::nullopt;
  const std::string unit = reader.take_unit();
  if (unit.empty() || says_no_scale(row, unit)) {   // "3 4" is two numbers, not 3 ft 4 in
    return reader.at_end() ? std::optional(Number{(sign * *number - row.zero) * row.to_core, false}) : std::nullopt;
  }
  const UnitWord* word = word_named(row.words, unit);
  if (word == nullptr) return std::nullopt;
  const double core = (sign * *number - word->zero) * word->to_core;
  if (reader.at_end()) return Number{core, true};
  const std::optional<double> further = read_smaller(reader, row, *word);
  return further ? std::optional(Number{core + sign * *further, true}) : std::nullopt;
}

std::string why_not(std::span<const Measure> offered, Preference preference) {
  std::string nouns, examples;
  for (const Measure measure : offered) {
    const MeasureRow& expected = row(measure, preference);
    nouns.append(nouns.empty() ? "" : " or ").append(expected.noun);
    examples.append(examples.empty() ? "" : " or ").append(expected.example);
  }
  return "Not " + nouns + ". Type it as " + examples + ".";
}

template <class Q>
Parsed<Q> parsed(const Typed& typed) {
  return {typed.core ? std::optional<Q>(Q(*typed.core)) : std::nullopt, typed.why_not};
}

}  // namespace

Typed read(std::string_view text, std::span<const Measure> offered, Preference preference) {
  for (const Measure measure : offered) {
    const auto number = read_number(text, row(measure, preference));
    if (number) return {number->core, measure, number->unit_told, {}};
  }
  return {std::nullopt, offered.empty() ? Measure::count : offered.front(), false, why_not(offered, preference)};
}

Typed read(std::string_view text, Measure measure, Preference preference) {
  return read(text, std::span(&measure, 1), preference);
}

Parsed<double> parse_number(std::string_view text) { return parsed<double>(read(text, Measure::count, Preference::metric)); }

Parsed<Volts> parse_volts(std::string_view text) { return parsed<Volts>(read(text, Measure::voltage, Preference::metric)); }

Parsed<double> parse_percent(std::string_view text) {
  return parsed<double>(read(text, Measure::fraction, Preference::metric));
}

std::optional<std::uint32_t> parse_whole(std::string_view digits) {
  std::uint32_t number = 0;
  const char* const end = digits.data() + digits.size();
  const auto [stopped, error] = std::from_chars(digits.data(), end, number);
  if (error != std::errc{} || stopped != end) return std::nullopt;
  return number;
}

}  // namespace units
