#include "circuit/limits.h"

#include <array>

namespace circuit {
namespace {

// In the order of Field. "per 12 V": for a 24 V system twice, for 48 V four times.
constexpr std::array<Limit, 17> kLimits{{
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
}};

constexpr bool in_order_of_field() {
  for (std::size_t i = 0; i < kLimits.size(); ++i) {
    if (static_cast<std::size_t>(kLimits[i].field) != i || !(kLimits[i].low < kLimits[i].high)) return false;
  }
  return static_cast<std::size_t>(Field::fuse_a) + 1 == kLimits.size();
}
static_assert(in_order_of_field());

}  // namespace

std::span<const Limit> limits() { return kLimits; }

const Limit& limit(Field field) { return kLimits[static_cast<std::size_t>(field)]; }

}  // namespace circuit
