#include "circuit/limits.h"

#include <array>

namespace circuit {
namespace {

// In the order of Field. "per 12 V": for a 24 V system twice, for 48 V four times.
constexpr std::array<Limit, 31> kLimits{{
    // field                        name                      unit  low    high   step   whole  zero
    {Field::run_m,                  "length",                 "m",  0.05,  100.0, 0.1,   false, ""},
    {Field::load_a,                 "load",                   "A",  0.01,  300.0, 0.5,   false, "nothing fitted yet"},
    {Field::load_w,                 "load",                   "W",  0.1,   5000.0, 5.0,  false, "nothing fitted yet"},
    {Field::at_most_at_once_a,      "most at once",           "A",  0.1,   400.0, 1.0,   false, ""},
    {Field::drop_limit_fraction,    "drop limit",             "%",  0.005, 0.20,  0.005, false, ""},
    {Field::minimum_voltage_per_12v, "lowest voltage",        "V",  1.0,   14.0,  0.1,   false, ""},
    {Field::ambient_c,              "air temperature",        "°C", -40.0, 90.0,  5.0,   false, ""},
    {Field::wire_temperature_c,     "wire temperature",       "°C", -40.0, 200.0, 5.0,   false, ""},
    {Field::circuits_bundled,       "circuits bundled",       "",   1.0,   20.0,  1.0,   true,  ""},
    {Field::tail_m,                 "tail length",            "m",  0.0,   2.0,   0.025, false, ""},
    {Field::feeder_run_m,           "feeder length",          "m",  0.0,   30.0,  0.1,   false, ""},
    {Field::main_fuse_a,            "main fuse",              "A",  1.0,   500.0, 5.0,   false, "none told"},
    {Field::resting_per_12v,        "resting voltage",        "V",  10.0,  14.8,  0.1,   false, ""},
    {Field::low_per_12v,            "low battery voltage",    "V",  9.0,   13.0,  0.1,   false, ""},
    {Field::part_rating_a,          "rating",                 "A",  1.0,   300.0, 1.0,   false, ""},
    {Field::fuse_position,          "fuse position",          "",   1.0,   99.0,  1.0,   true,  ""},
    {Field::fuse_a,                 "fuse",                   "A",  0.5,   500.0, 1.0,   false, ""},
    {Field::taps,                   "number of lights",       "",   1.0,   100.0, 1.0,   true,  ""},
    {Field::inrush_a,               "starting current",       "A",  0.1,   3000.0, 1.0,  false, ""},
    {Field::inrush_s,               "starting time",          "s",  0.001, 120.0, 0.5,   false, ""},
    {Field::in_line_a,              "rating",                 "A",  0.5,   500.0, 1.0,   false, ""},
    {Field::highest_per_12v,        "highest voltage",        "V",  12.0,  16.0,  0.1,   false, ""},
    {Field::internal_ohm,           "internal resistance",    "ohm", 0.0001, 1.0, 0.001, false, ""},
    {Field::main_fuse_distance_m,   "distance to the main fuse", "m", 0.0, 10.0,  0.05,  false, ""},
    {Field::disconnect_a,           "main switch",            "A",  1.0,   1000.0, 10.0, false, ""},
    {Field::block_a,                "block",                  "A",  1.0,   1000.0, 10.0, false, ""},
    // Never typed: as much as a hundred circuits of the most outlets and devices can draw.
    {Field::beside_a,               "current of the other circuits", "A", 0.0, 1e8, 1.0,   false, ""},
    {Field::capacity_ah,            "capacity",               "Ah", 1.0,   5000.0, 10.0, false, "not told"},
    {Field::positions,              "number of positions",    "",   1.0,   99.0,  1.0,   true,  ""},
    {Field::source_a,               "most current",           "A",  0.1,   1000.0, 1.0,  false, ""},
    {Field::source_run_m,           "cable length",           "m",  0.0,   30.0,  0.1,   false, ""},
}};

constexpr bool in_order_of_field() {
  for (std::size_t i = 0; i < kLimits.size(); ++i) {
    if (static_cast<std::size_t>(kLimits[i].field) != i || !(kLimits[i].low < kLimits[i].high)) return false;
  }
  return static_cast<std::size_t>(Field::source_run_m) + 1 == kLimits.size();
}
static_assert(in_order_of_field());

}  // namespace

std::span<const Limit> limits() { return kLimits; }

const Limit& limit(Field field) { return kLimits[static_cast<std::size_t>(field)]; }

}  // namespace circuit
