// One fused branch circuit as plain data: the supply that feeds it, the fuse position it
// leaves from, where its wire lies, and its outlets in a chain or a small tree.
// What size of wire and fuse it needs is not in here: sizing works that out.
// Ranges of every field stand in circuit/limits.h; validate() holds a circuit to them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "tables/conductor_colours.h"
#include "tables/fuse.h"
#include "tables/practice.h"
#include "tables/wire_metal.h"
#include "units/quantity.h"

namespace circuit {

// Stable through edits, never reused within a circuit. 0 is the fuse block itself.
struct OutletId {
  std::uint32_t number = 0;
  friend constexpr auto operator<=>(OutletId, OutletId) = default;
};
inline constexpr OutletId kBlock{0};

enum class LoadKind { constant_current, constant_power, resistive };

// What is plugged in or wired in at most. A resistive load is rated in watts at the nominal
// voltage, or in amperes at the nominal voltage; `rating_in_watts` keeps what the user typed.
struct Load {
  LoadKind kind = LoadKind::constant_current;
  bool rating_in_watts = false;
  double rating = 0.0;                       // A or W; 0: nothing fitted yet
  std::optional<units::Volts> minimum_voltage;  // below it the device stops; nullopt: not known
  friend bool operator==(const Load&, const Load&) = default;
};

// How long a device runs at a go. It decides the margin that its current asks of the fuse.
enum class Use {
  continuous,    // three hours or more: 125 % of its current
  intermittent,  // less than that: 100 %
  momentary,     // up to a minute or two, then rests: a windlass, a starter; 100 %
};

// A start that takes more than the running current: glow pins, motors, pumps.
struct Inrush {
  units::Amperes current{0.0};
  units::Seconds lasting{0.0};
  friend bool operator==(const Inrush&, const Inrush&) = default;
};

struct Device {
  std::string name;                        // may be empty: the outlet's name stands for it
  std::string preset;                      // tables::DevicePreset key that it began as; may be empty
  Load load;
  Use use = Use::continuous;
  std::optional<Inrush> inrush;
  std::optional<units::Amperes> own_fuse;  // in its plug or lead: protects what lies behind it
  friend bool operator==(const Device&, const Device&) = default;
};

// What sits in the positive wire of a run, at its end nearest the source.
enum class InLineKind { toggle, fuse, breaker, relay };
struct InLine {
  InLineKind kind = InLineKind::toggle;    // toggle: a switch of any shape
  units::Amperes rating{10.0};             // marked on it
  friend bool operator==(const InLine&, const InLine&) = default;
};

enum class ReturnPath { wire, chassis };

// The wire from the point before to this one: both conductors, or the positive one alone where
// the chassis brings the current back.
struct Run {
  units::Metres length{1.0};               // one way, along the wire
  std::optional<std::string> size;         // Conductor id that stays: in the wall, or wanted; nullopt: sizing chooses
  tables::WireMetal metal = tables::WireMetal::copper;
  bool two_core = false;                   // both conductors in one sheath
  ReturnPath back = ReturnPath::wire;
  std::vector<InLine> in_line;             // in order from the source
  friend bool operator==(const Run&, const Run&) = default;
};

// What stands at the end of a run. A junction only joins wires. A sub-block joins them through
// fuses: each run that leaves it begins with a fuse of its own in `in_line`.
enum class PointKind { outlet, junction, sub_block };
// How the run's wire meets the outlet: spliced, with a tail to the outlet's terminals, or straight
// to the terminals, from where the next run goes on.
enum class Joint { splice, direct };

struct Outlet {
  OutletId id;
  std::string name;              // as typed, UTF-8, data and never markup
  PointKind point = PointKind::outlet;
  OutletId fed_from = kBlock;    // the outlet its wire comes from, or the block
  Run run;                       // from `fed_from`
  Joint joint = Joint::splice;
  std::vector<Device> devices = std::vector<Device>(1);  // an outlet has one or more, any other point none
  int taps = 1;                  // 1: the load stands at the end of the run; more: spread evenly along it, lights
  std::optional<double> drop_limit;   // fraction of nominal; nullopt: the circuit's own
  std::string outlet_part = "socket-lighter";
  std::string terminal_part = "tab-6.3";
  std::optional<units::Amperes> rating;  // marked on the outlet in hand; nullopt: the part's
};

// What feeds the circuit, as seen from its position. The vehicle holds it, once for all of its
// circuits; vehicle::circuit_of() fills it in.
struct Supply {
  units::Volts nominal{12.0};            // 12, 24 or 48
  std::string battery = "lead-agm";      // tables::BatteryKind key
  std::optional<units::Volts> resting;   // typed over the battery kind's; whole battery
  std::optional<units::Volts> low;
  std::optional<units::Volts> highest;   // of all that can charge it; nullopt: the battery kind's
  std::optional<units::Ohms> internal_resistance;  // whole battery; nullopt: the battery kind's
  units::Metres feeder_run{1.0};         // battery to block, one way; 0: block on the battery
  std::string feeder_size = "6awg";      // tables::Conductor id
  tables::WireMetal feeder_metal = tables::WireMetal::copper;
  units::Amperes main_fuse{60.0};        // protects the feeder; 0: none told
  tables::FuseFamilyId main_fuse_kind = tables::FuseFamilyId::bolt_on;
  units::Metres main_fuse_distance{0.15};  // from the battery, along the wire
  std::optional<units::Amperes> disconnect;  // marked on the main switch; nullopt: there is none
  std::optional<units::Amperes> block_rating;  // marked on the block, all positions together
  units::Amperes beside{0.0};            // what the block's other circuits draw at the same time
};

// What the installation is in; anything that moves shakes its joints.
enum class Setting { van, trailer, boat, fixed };

struct Wiring {
  tables::GaugeSystem gauge = tables::GaugeSystem::awg;
  tables::AmpacityTableId ampacity_table = tables::AmpacityTableId::marine_us;
  tables::Surroundings around;
  units::Celsius wire_temperature{50.0};  // of the metal, for the drop
  tables::FuseFamilyId fuse_family = tables::FuseFamilyId::blade;
  std::string clamp_part = "clamp-6";     // block position, typical
  std::optional<units::Amperes> clamp_rating;  // marked on the block in hand
  bool ferrule = false;                   // ferrules pressed on at the clamp
  std::string splice_part = "splice-lever-6";
  units::Metres tail{0.075};              // splice to outlet, each of red and black
};

// What the shop has. Empty means everything.
struct Shelf {
  std::vector<std::string> missing_sizes;   // Conductor ids that the shop has not
  std::vector<double> missing_fuses_a;
};

// Wire and fuse already in hand, for the question turned round.
struct InHand {
  std::string size;          // Conductor id
  units::Amperes fuse{0.0};
};

struct Circuit {
  std::string name;                     // "Bench outlets"
  std::string place;                    // "Repair trailer"; may be empty. The vehicle's, as are the next four
  int fuse_position = 1;                // on the block
  Setting setting = Setting::trailer;
  std::optional<tables::Practice> practice;  // whose rules bind; nullopt: the usual one, see practice_of()
  std::string colours;                  // tables::ConductorColours key; empty: see colours_of()
  Supply supply;
  Wiring wiring;
  double drop_limit = 0.05;             // fraction of nominal, battery to outlet
  std::optional<units::Amperes> at_most_at_once;  // rated amperes at nominal voltage; nullopt: all
  std::vector<Outlet> outlets;          // parents before children, reading order
  Shelf shelf;
  std::optional<InHand> in_hand;
  std::uint32_t next_outlet_id = 1;     // larger than any id ever used here
};

tables::Practice practice_of(const Circuit& circuit);
// As told, or as the practice told has them; untold: red and black. Words and pictures both ask here,
// so that no sentence names one wire and the picture beside it another.
const tables::ConductorColours& colours_of(const Circuit& circuit);
// Most that the system ever sees: as told, else its battery kind being charged. A kind that is known.
units::Volts highest_voltage(const Supply& supply);
const Outlet* find_outlet(const Circuit& circuit, OutletId id);   // nullptr when absent
// Letters by place in the list: A..Z, then AA, AB, ... as the sketch shows them.
std::string outlet_letter(std::size_t index);
// Rated current at nominal voltage: A as typed, W / nominal.
units::Amperes rated_current(const Load& load, units::Volts nominal);
units::Amperes rated_current(const Outlet& outlet, units::Volts nominal);   // of all its devices
// A fuse or a breaker: what lies behind it is protected by it.
bool is_overcurrent_protection(const InLine& in_line);
// Any device with a load.
bool has_load(const Outlet& outlet);
// Sum of one-way runs from the block.
units::Metres distance_from_block(const Circuit& circuit, OutletId id);
// Indices into circuit.outlets of those fed directly from `id`, reading order.
std::vector<std::size_t> fed_by(const Circuit& circuit, OutletId id);

// A new empty circuit with one outlet, and the demo: the bicycle-repair trailer's bench.
Circuit new_circuit(tables::GaugeSystem gauge);
Circuit demo_circuit();

}  // namespace circuit
