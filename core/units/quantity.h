// Electrical and mechanical quantities as types: a length can not be passed where a
// current belongs. One number each, always in the unit the type is named after.
// Only the operators physics allows exist. Inside a matrix loop use plain doubles,
// named with their unit (voltage_v, length_m); at every door of the core use these.
#pragma once

#include <compare>

namespace units {

template <class Dimension>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double number) : number_(number) {}
  // The bare number, in the unit the type is named after.
  [[nodiscard]] constexpr double number() const { return number_; }

  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.number_ + b.number_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.number_ - b.number_); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.number_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.number_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.number_ * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.number_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.number_ / b.number_; }
  constexpr Quantity& operator+=(Quantity b) { number_ += b.number_; return *this; }
  constexpr Quantity& operator-=(Quantity b) { number_ -= b.number_; return *this; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  double number_ = 0.0;
};

using Volts = Quantity<struct VoltageDimension>;
using Amperes = Quantity<struct CurrentDimension>;
using Ohms = Quantity<struct ResistanceDimension>;
using Watts = Quantity<struct PowerDimension>;
using Metres = Quantity<struct LengthDimension>;
using Millimetres = Quantity<struct SmallLengthDimension>;
using SquareMillimetres = Quantity<struct AreaDimension>;
using OhmsPerMetre = Quantity<struct ResistancePerLengthDimension>;
using Seconds = Quantity<struct TimeDimension>;
using AmpereSquaredSeconds = Quantity<struct JouleIntegralDimension>;  // I squared t

// A temperature is a point on a scale, so it does not add; two of them differ by Kelvins.
using Kelvins = Quantity<struct TemperatureDifferenceDimension>;
class Celsius {
 public:
  constexpr Celsius() = default;
  constexpr explicit Celsius(double number) : number_(number) {}
  [[nodiscard]] constexpr double number() const { return number_; }
  friend constexpr Kelvins operator-(Celsius a, Celsius b) { return Kelvins(a.number_ - b.number_); }
  friend constexpr Celsius operator+(Celsius a, Kelvins d) { return Celsius(a.number_ + d.number()); }
  friend constexpr auto operator<=>(Celsius, Celsius) = default;

 private:
  double number_ = 0.0;
};

constexpr Volts operator*(Amperes i, Ohms r) { return Volts(i.number() * r.number()); }
constexpr Volts operator*(Ohms r, Amperes i) { return i * r; }
constexpr Amperes operator/(Volts v, Ohms r) { return Amperes(v.number() / r.number()); }
constexpr Ohms operator/(Volts v, Amperes i) { return Ohms(v.number() / i.number()); }
constexpr Watts operator*(Volts v, Amperes i) { return Watts(v.number() * i.number()); }
constexpr Watts operator*(Amperes i, Volts v) { return v * i; }
constexpr Amperes operator/(Watts p, Volts v) { return Amperes(p.number() / v.number()); }
constexpr Ohms operator*(OhmsPerMetre r, Metres l) { return Ohms(r.number() * l.number()); }
constexpr Ohms operator*(Metres l, OhmsPerMetre r) { return r * l; }
constexpr Metres operator/(Ohms r, OhmsPerMetre per) { return Metres(r.number() / per.number()); }
constexpr Metres to_metres(Millimetres l) { return Metres(l.number() / 1000.0); }

// An allowed range, both ends included.
template <class Q>
struct Range {
  Q low;
  Q high;
  [[nodiscard]] constexpr bool contains(Q q) const { return q >= low && q <= high; }
};

namespace literals {
constexpr Volts operator""_V(long double x) { return Volts(static_cast<double>(x)); }
constexpr Volts operator""_V(unsigned long long x) { return Volts(static_cast<double>(x)); }
constexpr Amperes operator""_A(long double x) { return Amperes(static_cast<double>(x)); }
constexpr Amperes operator""_A(unsigned long long x) { return Amperes(static_cast<double>(x)); }
constexpr Ohms operator""_ohm(long double x) { return Ohms(static_cast<double>(x)); }
constexpr Ohms operator""_ohm(unsigned long long x) { return Ohms(static_cast<double>(x)); }
constexpr Watts operator""_W(long double x) { return Watts(static_cast<double>(x)); }
constexpr Watts operator""_W(unsigned long long x) { return Watts(static_cast<double>(x)); }
constexpr Metres operator""_m(long double x) { return Metres(static_cast<double>(x)); }
constexpr Metres operator""_m(unsigned long long x) { return Metres(static_cast<double>(x)); }
constexpr Celsius operator""_C(long double x) { return Celsius(static_cast<double>(x)); }
constexpr Celsius operator""_C(unsigned long long x) { return Celsius(static_cast<double>(x)); }
constexpr SquareMillimetres operator""_mm2(long double x) { return SquareMillimetres(static_cast<double>(x)); }
constexpr SquareMillimetres operator""_mm2(unsigned long long x) { return SquareMillimetres(static_cast<double>(x)); }
}  // namespace literals

}  // namespace units
