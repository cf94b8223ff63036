// What a trace starts from: the circuit, what is known to be built of it, what else sits on the block,
// what is wrong, and what the person has in hand and can get at. Plain data.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/problem.h"
#include "network/branch_network.h"

namespace diagnosis {

enum class Symptom : int {
  one_dead,              // complaint.outlets: that one; of the others nothing is known
  several_dead,          // complaint.outlets: the dead ones, more than one
  all_dead,              // every outlet of the circuit; complaint.outlets may be empty
  weak,                  // runs, but dim or slow, at complaint.outlets
  reversed,              // a meter or a device says plus and minus are changed over
  only_when_moved,       // comes and goes when the cable or the plug moves
  blows_at_once,         // a new fuse blows as it is put in, everything unplugged
  blows_later,           // a new fuse holds for minutes, with the usual things plugged in
  volts_but_dead,        // the device stays off, yet a meter across that outlet reads battery volts
  something_else_alive,  // with this circuit's fuse put in, an outlet of another circuit comes on
};
struct SymptomRow {
  Symptom symptom;
  std::string_view key;    // stable in files: "one-dead"
  std::string_view words;  // "One outlet is dead"
  bool names_outlets;      // complaint.outlets is asked for
  bool needs_meter;        // told only by somebody who has a meter
};
std::span<const SymptomRow> symptoms();
const SymptomRow& symptom_row(Symptom symptom);
const SymptomRow* symptom_by_key(std::string_view key);

struct Complaint {
  Symptom symptom = Symptom::one_dead;
  std::vector<circuit::OutletId> outlets;  // where; ids, in any order
};

// Eyes and hands are always there, and so is the device that failed.
struct Tools {
  bool meter = false;       // volts and ohms, 10 Mohm
  bool lamp = false;        // filament lamp with leads or in a plug, 5 W, for this nominal voltage
  bool device = false;      // another device, known good, that shows that it runs (a charger with a light), 0.5 A
  bool spare_fuse = false;  // of the same rating as the one that belongs there
  friend bool operator==(const Tools&, const Tools&) = default;
};

// Where a check or a repair takes place. Reach is told per location.
enum class Location { battery, block, front, behind };  // front and behind: of an outlet
struct Site {
  Location location = Location::front;
  circuit::OutletId outlet = circuit::kBlock;  // front and behind only
  friend constexpr bool operator==(const Site&, const Site&) = default;
};
std::string site_key(Site site);  // "battery", "block", "front 3", "behind 3"

// Can something be plugged or wired in at this point, and do wires meet in splices there?
inline bool has_socket(const circuit::Outlet& point) { return point.point == circuit::PointKind::outlet; }
inline bool has_splice(const circuit::Outlet& point) {
  return !has_socket(point) || point.joint == circuit::Joint::splice;
}

// What is really there, as far as somebody knows. Never what sizing would choose: that is the plan, and a fuse
// put in by the plan may burn the wire that was built.
enum class Knowledge { unknown, guessed, known };
struct BuiltRun {
  circuit::OutletId outlet;                     // whose run, from what feeds it
  std::optional<std::string> wire;              // tables::Conductor id; nullopt: not told
  Knowledge wire_known = Knowledge::unknown;    // guessed or known where a wire is told
  std::optional<std::string> tail;              // splice to outlet, tables::Conductor id; nullopt: as the run's
  Knowledge length_known = Knowledge::unknown;  // of the run's length in the circuit
};
// What sizing says of exactly this fuse on exactly these wires. Not judged counts as not protected.
enum class Protection { not_judged, protects, too_large };
struct Built {
  std::vector<BuiltRun> runs;                 // one an outlet at most; a run that is not listed is unknown
  std::optional<units::Amperes> fuse;         // marked on the fuse that is there
  Knowledge fuse_known = Knowledge::unknown;  // guessed or known where a fuse is told
  Protection protection = Protection::not_judged;
};
// One size throughout and one fuse, all of it known, or all of it guessed.
Built built_throughout(const circuit::Circuit& circuit, const network::Fitted& fitted, Knowledge how,
                       Protection protection);

// Another position of the same block, with its branch.
struct Neighbour {
  std::string name;                    // empty: nobody told
  int fuse_position = 0;               // 0: nobody told
  bool same_loom = true;               // its pair runs with ours, so the two can be taken for each other
  std::optional<units::Amperes> fuse;  // rating marked on its fuse; nullopt: not told
};

struct Case {
  circuit::Circuit circuit;  // has passed circuit::validate()
  Built built;
  std::vector<Neighbour> neighbours;  // the other positions of this block; at most kMaxNeighbours
  Complaint complaint;
  Tools tools;
  std::vector<Site> out_of_reach;      // told beforehand; "can't reach it" answers add to it
  std::string plus_colour = "red";     // of the conductors, as words: "red", "brown"; a meter's leads stay
  std::string minus_colour = "black";  // red and black
};
inline constexpr std::size_t kMaxNeighbours = 20;

// What of the case can not be traced, in sentences; empty when it can. Circuit problems included.
circuit::Problems problems(const Case& the_case);

// Is the size of every wire known, not only guessed?
bool knows_wires(const Case& the_case);
// May words name the fuse's rating as one to put in? Only where it is known, every wire is known, and sizing
// says that it protects them.
bool names_fuse(const Case& the_case);
// "15 A", or where to read it when it may not be named.
std::string fuse_rating_words(const Case& the_case);
// "15 A fuse at position 4"; without the rating when it may not be named.
std::string fuse_words(const Case& the_case);
// "a new 15 A fuse", or which one to look for.
std::string new_fuse_words(const Case& the_case);
// What to mind whenever a fuse goes in.
std::string fuse_caution(const Case& the_case);

// When no circuit is saved: a generic one, three outlets in a chain on 12 V. Nothing of it is known to be
// built so, and its one neighbour has no name.
Case generic_case(tables::GaugeSystem gauge);

}  // namespace diagnosis
