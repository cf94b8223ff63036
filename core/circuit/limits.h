// The allowed range of every field a person can change, in one table: validation, the
// keypad and the file reader all read it. The ranges are our choice: wide enough for any
// branch circuit of a van, trailer or boat, narrow enough to catch a slipped decimal point.
#pragma once

#include <cstddef>
#include <cstdint>

#include <span>
#include <string_view>

namespace circuit {

enum class Field : int {
  run_m, load_a, load_w, at_most_at_once_a, drop_limit_fraction, minimum_voltage_per_12v,
  ambient_c, wire_temperature_c, circuits_bundled, tail_m, feeder_run_m, main_fuse_a,
  resting_per_12v, low_per_12v, part_rating_a, fuse_position, fuse_a,
  taps, inrush_a, inrush_s, in_line_a, highest_per_12v, internal_ohm, main_fuse_distance_m, disconnect_a,
  block_a, beside_a, capacity_ah, positions, source_a, source_run_m,
};

struct Limit {
  Field field;
  std::string_view name;  // as in a sentence: "length", "load"
  std::string_view unit;  // "m", "A", "W", "%", "V", "°C", "" ; fractions are shown in %
  double low;
  double high;
  double step;            // what one press of a stepper changes
  bool whole;             // whole numbers only
  std::string_view zero;  // what 0 says where 0 is allowed besides the range: "none told"; else empty
};
std::span<const Limit> limits();
const Limit& limit(Field field);

inline constexpr std::size_t kMaxOutlets = 300;
inline constexpr std::size_t kMaxDevices = 8;             // at one outlet
inline constexpr std::size_t kMaxInLine = 4;              // in one run
inline constexpr std::size_t kMaxNameCharacters = 40;   // code points
inline constexpr std::size_t kMaxShelfFuses = 100;      // ratings a shop can be told to lack
inline constexpr std::uint32_t kMaxOutletId = 999'999'999;
inline constexpr std::size_t kMaxCircuitsInFile = 500;
inline constexpr std::size_t kMaxFileBytes = 4u << 20;

}  // namespace circuit
