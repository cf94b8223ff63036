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
#include "tables/fuse.h"
#include "units/quantity.h"

namespace circuit {

// Stable through edits, never reused within a circuit. 0 is the fuse block itself.
struct OutletId {
  std::uint32_t number = 0;
  friend constexpr auto operator<=>(OutletId, OutletId) = default;
};
inline constexpr OutletId kBlock{0};

enum class LoadKind { constant_current, constant_power, resistive };

// What is plugged in at most. A resistive load is rated in watts at the nominal voltage, or
// in amperes at the nominal voltage; `rating_in_watts` keeps what the user typed.
struct Load {
  LoadKind kind = LoadKind::constant_current;
  bool rating_in_watts = false;
  double rating = 0.0;                       // A or W; 0: nothing fitted yet
  std::optional<units::Volts> minimum_voltage;  // below it the device stops; nullopt: not known
};

struct Outlet {
  OutletId id;
  std::string name;              // as typed, UTF-8, data and never markup
  OutletId fed_from = kBlock;    // the outlet its wire comes from, or the block
  units::Metres run{1.0};        // one way, along the wire, from `fed_from`
  Load load;
  std::optional<double> drop_limit;   // fraction of nominal; nullopt: the circuit's own
  std::string outlet_part = "socket-lighter";
  std::string terminal_part = "tab-6.3";
  std::optional<units::Amperes> rating;  // marked on the outlet in hand; nullopt: the part's
};

struct Supply {
  units::Volts nominal{12.0};            // 12, 24 or 48
  std::string battery = "lead-agm";      // tables::BatteryKind key
  std::optional<units::Volts> resting;   // typed over the battery kind's; whole battery
  std::optional<units::Volts> low;
  units::Metres feeder_run{1.0};         // battery to block, one way; 0: block on the battery
  std::string feeder_size = "6awg";      // tables::Conductor id
  units::Amperes main_fuse{60.0};        // protects the feeder; 0: none told
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
  std::string place;                    // "Repair trailer"; may be empty
  int fuse_position = 1;                // on the block
  Setting setting = Setting::trailer;
  Supply supply;
  Wiring wiring;
  double drop_limit = 0.05;             // fraction of nominal, battery to outlet
  std::optional<units::Amperes> at_most_at_once;  // rated amperes at nominal voltage; nullopt: all
  std::vector<Outlet> outlets;          // parents before children, reading order
  Shelf shelf;
  std::optional<InHand> in_hand;
  std::uint32_t next_outlet_id = 1;     // larger than any id ever used here
};

const Outlet* find_outlet(const Circuit& circuit, OutletId id);   // nullptr when absent
// Letters by place in the list: A..Z, then AA, AB, ... as the sketch shows them.
std::string outlet_letter(std::size_t index);
// Rated current at nominal voltage: A as typed, W / nominal.
units::Amperes rated_current(const Load& load, units::Volts nominal);
// Sum of one-way runs from the block.
units::Metres distance_from_block(const Circuit& circuit, OutletId id);
// Indices into circuit.outlets of those fed directly from `id`, reading order.
std::vector<std::size_t> fed_by(const Circuit& circuit, OutletId id);

// A new empty circuit with one outlet, and the demo: the bicycle-repair trailer's bench.
Circuit new_circuit(tables::GaugeSystem gauge);
Circuit demo_circuit();

}  // namespace circuit
