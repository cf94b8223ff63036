#include "units/format.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace units {
namespace {

constexpr double kMetresPerFoot = 0.3048;
constexpr double kMetresPerInch = 0.0254;
constexpr long long kInchesPerFoot = 12;

// Larger than any double written out in full with its decimals (309 digits).
constexpr std::size_t kRoom = 400;

// Fixed notation; trailing zeros dropped when asked; never "-0".
std::string fixed(double number, int decimals, bool drop_zeros) {
  if (std::isnan(number)) return "?";
  if (std::isinf(number)) return number > 0 ? "∞" : "-∞";
  std::array<char, kRoom> room{};
  const int written = std::snprintf(room.data(), room.size(), "%.*f", std::clamp(decimals, 0, 17), number);
  std::string text(room.data(), static_cast<std::size_t>(std::max(written, 0)));
  if (drop_zeros && text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

// Decimals that leave `digits` significant ones; negative when the number is that large.
int decimals_for(double number, int digits) {
  if (number == 0.0 || !std::isfinite(number)) return 0;
  return digits - 1 - static_cast<int>(std::floor(std::log10(std::fabs(number))));
}

double rounded(double number, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const double scaled = number * scale;
  return std::isfinite(scaled) && scale > 0.0 ? std::round(scaled) / scale : number;
}

std::string with_unit(std::string number, std::string_view unit) {
  number += ' ';
  number += unit;
  return number;
}

// At most `digits` significant digits, but never a whole ampere or watt rounded away.
std::string whole_or(double number, int digits) {
  const int decimals = std::max(0, decimals_for(number, digits));
  const double shown = rounded(number, decimals);
  return fixed(shown, std::min(decimals, std::max(0, decimals_for(shown, digits))), true);
}

// A feet-and-inches text with whole inches; below a foot inches alone.
std::string feet_text(double metres) {
  const double inches_all = std::round(std::fabs(metres) / kMetresPerInch);
  if (!(inches_all < 1e15)) return with_unit(fixed(metres / kMetresPerFoot, 0, true), "ft");
  const auto inches = static_cast<long long>(inches_all);
  const std::string sign = metres < 0.0 && inches > 0 ? "-" : "";
  const long long feet = inches / kInchesPerFoot;
  const long long rest = inches % kInchesPerFoot;
  if (feet == 0) return sign + std::to_string(rest) + " in";
  if (rest == 0) return sign + std::to_string(feet) + " ft";
  return sign + std::to_string(feet) + " ft " + std::to_string(rest) + " in";
}

}  // namespace

std::string number_text(double number, int significant_digits) {
  const int digits = std::clamp(significant_digits, 1, 15);
  int decimals = decimals_for(number, digits);
  const double shown = rounded(number, decimals);  // 9.996 to three digits is 10.0: one decimal less
  decimals = std::min(decimals, decimals_for(shown, digits));
  return fixed(shown, decimals, true);
}

std::string volts_text(Volts v) {
  const double volts = v.number();
  const bool small = std::fabs(rounded(volts, 2)) < 1.0;
  return with_unit(fixed(volts, small ? 2 : 1, false), "V");
}

std::string amperes_text(Amperes i) { return with_unit(whole_or(i.number(), 3), "A"); }

std::string watts_text(Watts p) { return with_unit(whole_or(p.number(), 3), "W"); }

std::string ohms_text(Ohms r) {
  const double ohms = r.number();
  const double size = std::fabs(ohms);
  if (size >= 999.5e3) return with_unit(whole_or(ohms / 1e6, 3), "MΩ");
  if (size >= 999.5) return with_unit(whole_or(ohms / 1e3, 3), "kΩ");
  if (size >= 0.9995 || size == 0.0) return with_unit(whole_or(ohms, 3), "Ω");
  return with_unit(whole_or(ohms * 1e3, 2), "mΩ");
}

std::string seconds_text(Seconds t) {
  const double seconds = t.number();
  const double size = std::fabs(seconds);
  if (size >= 2.0 * 3600.0) return with_unit(whole_or(seconds / 3600.0, 2), "h");
  if (size >= 120.0) return with_unit(whole_or(seconds / 60.0, 2), "min");
  return with_unit(whole_or(seconds, 2), "s");
}

std::string percent_text(double fraction) { return with_unit(fixed(fraction * 100.0, 1, true), "%"); }

std::string celsius_text(Celsius t, Preference preference) {
  if (preference == Preference::us) return with_unit(fixed(t.number() * 9.0 / 5.0 + 32.0, 0, true), "°F");
  return with_unit(fixed(t.number(), 0, true), "°C");
}

std::string length_text(Metres l, Preference preference) {
  if (preference == Preference::us) return feet_text(l.number());
  return with_unit(fixed(l.number(), 2, true), "m");
}

std::string short_length_text(Metres l, Preference preference) {
  if (preference == Preference::us) return feet_text(l.number());
  return with_unit(fixed(l.number() * 1000.0, 0, true), "mm");
}

std::string area_text(SquareMillimetres a) { return with_unit(whole_or(a.number(), 2), "mm²"); }

std::string ohms_per_length_text(OhmsPerMetre r, Preference preference) {
  const bool us = preference == Preference::us;
  const double milliohm = 1000.0 * r.number() * (us ? kMetresPerFoot : 1.0);
  if (milliohm >= 1000.0) return with_unit(number_text(milliohm / 1000.0, 3), us ? "Ω/ft" : "Ω/m");
  return with_unit(number_text(milliohm, 3), us ? "mΩ/ft" : "mΩ/m");
}

std::string gauge_text(double awg) {
  const double nearest = std::round(awg);
  if (std::fabs(awg - nearest) > 0.005) return number_text(std::round(awg * 10.0) / 10.0, 3);
  if (nearest > 0.5) return with_unit(number_text(nearest, 3), "AWG");
  return with_unit(number_text(1.0 - nearest, 2) + "/0", "AWG");
}

}  // namespace units
