// The ways a branch fails, one row each: how often it happens, what the network looks like then, how it shows
// to eyes and hands, what puts it right. A row that leaves anything out does not compile. A hypothesis is a
// kind at a place; its size is not known and is integrated over the row's spread.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/answer.h"
#include "diagnosis/case.h"
#include "diagnosis/fault_size.h"
#include "network/branch_network.h"
#include "tables/citation.h"

namespace diagnosis {

enum class FaultKind : int {
  source_flat,           // emf 70 to 93 % of nominal, 3 to 30 times the internal resistance
  main_open,             // main fuse or main switch open: nothing on the block has volts
  feeder_resistive,      // 0.1 to 5 ohm more in the feeder, red or black
  fuse_blown,            // element open; a new one holds
  fuse_missing,          // clips empty
  fuse_elsewhere,        // the fuse sits in another position; ours is empty
  fuse_loose,            // in the clips, but not home: open, or 1 to 200 ohm, in fuse_contact
  clamp_loose,           // red or black: open, or 1 to 200 ohm
  wire_open,             // run to an outlet, red or black: broken
  splice_open,           // at an outlet, red or black: wire out, in any of its ports (from the source,
                         // to this outlet's tail, to what is fed from here)
  splice_resistive,      // same ports, 0.3 to 200 ohm
  splice_on_insulation,  // same ports, closed on the insulation: open; to be seen when looked at
  pair_shorted,          // run to an outlet: red on black. Any fuse put in blows at once
  overload,              // more plugged in than the fuse carries: blown, and blows again after minutes
  tab_off,               // terminal at an outlet, red or black: open
  outlet_dead,           // inside the outlet, red or black: open
  device_dead,           // the device that failed, or the fuse in its plug; the circuit is sound
  reversed_here,         // changed over at this outlet's tabs
  reversed_from,         // changed over at this outlet's splice: here and everything beyond
  wrong_branch,          // fed from this outlet on by the pair of a neighbour; its fuse is in
  wrong_branch_unfused,  // the same, and the neighbour's fuse is out: dead from here on
  wire_thin,             // a wire too thin for the load: 4 to 20 times the resistance in every run
  opens_when_moved,      // splice at an outlet, red or black: open now and then, sound when left alone
  none_of_these,         // never at zero; every answer about equally likely
};
inline constexpr std::size_t kFaultKinds = static_cast<std::size_t>(FaultKind::none_of_these) + 1;

// What puts it right, at the fault's place. Two faults with the same remedy at the same place need
// not be told apart.
enum class RemedyKind : int {
  charge_source,
  restore_main,
  remake_feeder_joint,
  fit_fuse,
  move_fuse,
  seat_fuse,
  remake_clamp,
  replace_run,
  remake_splice,
  clear_short,
  shed_load,
  refit_tab,
  replace_outlet,
  replace_device,
  swap_at_tabs,
  swap_at_splice,
  reconnect_pair,
  thicker_wire,
  look_further,
};
inline constexpr std::size_t kRemedyKinds = static_cast<std::size_t>(RemedyKind::look_further) + 1;

// Which places a kind can stand at. A neighbour: once for each of Case::neighbours in our loom.
// A run: at every point that one leads to. A splice: not where the wire goes straight to an outlet's terminals. A
// socket: where something is plugged or wired in, so no junction and no sub-block.
enum class PlacedAt { circuit, circuit_side, run, run_side, run_neighbour, splice, splice_side, socket, socket_side };
constexpr bool has_side(PlacedAt placed) {
  return placed == PlacedAt::circuit_side || placed == PlacedAt::run_side || placed == PlacedAt::splice_side ||
         placed == PlacedAt::socket_side;
}
bool stands_at(PlacedAt placed, const circuit::Outlet& outlet);  // false for the circuit's own

// What a fault does to the network, seen from outside (scenario.h makes edits of it).
enum class Damage {
  nothing,                  // the circuit is as it should be
  series,                   // `sizes` more ohms in `element`
  splice_ports,             // the same in any port of the splice: from the source, to the tail, to what goes on
  swapped,                  // the away ends of both sides of `element` change places
  shorted,                  // plus on minus at the far end of the run
  fed_from_neighbour,       // its line joined here, its fuse in
  fed_from_dead_neighbour,  // its fuse out
  weak_source,              // `sizes`: share of nominal volts left
  thin_runs,                // `sizes`: times the ohms of every run
};
struct DamageRow {
  Damage damage;
  network::Element element;
  std::span<const Size> sizes;
};

// As which answer a fault shows to whoever looks, pulls or moves, by its side, and how often; else `otherwise`.
struct Show {
  AnswerKey plus, minus, otherwise;
  double often;
};
struct Shows {
  Show behind;            // look_behind, at its outlet
  Show tugged;            // tug at its outlet; of a fault at the block, tug_clamps
  Show fuse;              // fuse_look
  double flickers;        // wiggle, on the way to the outlet
  double main_off;        // main_look
  double over;            // add_up
  double thinner;         // read_gauge
  double dead_elsewhere;  // device_elsewhere
  const tables::Citation* citation;
};
// How likely somebody who has this fault comes with a complaint that is not about an outlet's volts.
struct ToldAs {
  double blows_at_once, blows_later, something_else_alive;
};

struct FaultRow {
  FaultKind kind;
  std::string_view key;    // stable in files: "splice-open"
  std::string_view words;  // "The {side} splice at {outlet} is open", see fault_words()
  PlacedAt placed_at;
  double prior;                      // relative, for one place (one side of one outlet)
  std::string_view reasoning;        // why this prior
  const tables::Citation* citation;  // of the prior; never null
  DamageRow does;
  Shows shows;
  ToldAs told_as;
  RemedyKind remedy;
  double repair_minutes;  // typical, from the fuse out to the re-test
  const tables::Citation* minutes_citation;
};
std::span<const FaultRow> fault_rows();  // in the order of FaultKind
const FaultRow& fault_row(FaultKind kind);
const FaultRow* fault_by_key(std::string_view key);

// A kind at a place. `outlet`: where it stands, or whose run it is; kBlock for the circuit's own.
struct Fault {
  FaultKind kind = FaultKind::none_of_these;
  circuit::OutletId outlet = circuit::kBlock;
  network::Side side = network::Side::positive;  // positive where the kind has none
  int neighbour = -1;                            // index in Case::neighbours; -1: none
  friend constexpr bool operator==(const Fault&, const Fault&) = default;
};
std::string fault_key(const Fault& fault);                          // stable: "splice-open 3 -", "fuse-blown"
std::string fault_words(const Case& the_case, const Fault& fault);  // "The black splice at C is loose"

// Every single fault of this case with its prior, summing to one (none_of_these included).
// Neighbours in another loom are left out.
struct Hypothesis {
  Fault fault;
  double prior = 0.0;
};
std::vector<Hypothesis> hypotheses(const Case& the_case);

}  // namespace diagnosis
