// A check: what to do, with what tool, at which two points or at which part, in what state the
// circuit must be, how long it takes, and the answers it can have. What each kind asks is told
// exactly here, so that a simulator written elsewhere can answer it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/answer.h"
#include "diagnosis/case.h"
#include "network/branch_network.h"

namespace diagnosis {

// A point a probe can touch. The network node it stands for is in brackets.
enum class SpotKind : int {
  battery_post,  // either side [battery near / away]
  bus,           // feed stud (red) or negative bus (black) of the block [bus away]
  fuse_feed,     // fuse in: its test point on the feed side [fuse near]; fuse out: the live clip [bus + away]
  fuse_wire,     // test point or clip on the wire side [fuse away]; red only, as fuse_feed
  clamp,         // metal under the clamp that holds the wire [clamp away]
  wire_end,      // free end of the wire from the source, parted from the splice at an outlet [wire away]
  splice,        // bar of the splice behind an outlet, through its test slot [splice away]
  tab,           // wire's crimp on the tab behind an outlet [tail away]
  lug,           // the outlet's own blade behind it [terminal away]
  contact,       // inside the socket, from the front [outlet_inside away]
};
struct Spot {
  SpotKind kind = SpotKind::contact;
  circuit::OutletId outlet = circuit::kBlock;  // splice, tab, lug, contact
  network::Side side = network::Side::positive;
  friend constexpr bool operator==(const Spot&, const Spot&) = default;
};
std::string spot_key(const Spot& spot);                          // stable: "splice+3", "bus-", "fuse-feed"
std::string spot_words(const Case& the_case, const Spot& spot);  // "the black splice at C"
Site site_of(const Spot& spot);

// Nothing else is plugged in or switched on than is said here: the first thing asked of the person.
// device: the known good one of Tools. own: the device that failed, left in as a load; asked for only when
// neither lamp nor good device is in hand.
enum class Plugged { nothing, lamp, device, own };
struct State {
  bool fuse_in = true;  // a fuse in our position, whatever is told of it
  Plugged plugged = Plugged::nothing;
  circuit::OutletId at = circuit::kBlock;  // outlet of the lamp or device
  // The wires from the source are out of this outlet's splices: it and all beyond hang free.
  std::optional<circuit::OutletId> parted_at;
  friend bool operator==(const State&, const State&) = default;
};

enum class CheckKind : int {
  // Two points, `red` and `black` leads.
  volts,  // meter
  glow,   // lamp across the two points
  ohms,   // meter on ohms, fuse out, proved dead on volts first
  // At an outlet.
  device_here,       // the device that failed (symptom device) in another outlet of this circuit, left in
                     // that outlet while it is watched
  other_device,      // known good device in this outlet
  device_elsewhere,  // the device that failed, in an outlet of another circuit known to be alive
  others_work,       // the failed device in every outlet that the complaint does not name
  wiggle,            // lamp or device plugged in at `outlet`; move the cable and the plug, watch
                     // (flickers: opens_when_moved, or a resistive joint, on the way to this outlet)
  look_behind,       // fuse out, outlet drawn forward by its plate, nothing touched: splices, tabs, colours, cables
                     // (damaged: insulation of this outlet's run)
  tug,               // fuse out, proved dead: pull each wire at this outlet's splices and tabs
  read_gauge,        // as look_behind: the size printed on the wire at this outlet, against what is built
  // At the block.
  block_alive,     // does anything else on the block work?
  fuse_look,       // which fuse sits in our position, and is its element whole?
                   // (elsewhere: empty, and a fuse sits where none belongs)
  fuse_press,      // press our fuse home, watch the failed device
  fuse_swap,       // a new fuse of the same rating in our position, watch the failed device
  pull_fuse,       // see something run in `outlet`, pull a fuse, ours (neighbour -1) or a neighbour's, and
                   // try it again
  neighbour_fuse,  // the neighbour's fuse out? Put it in; watch the failed device
  tug_clamps,      // main switch open, fuse out, proved dead, feed stud too: pull plus and minus at our clamps
  main_look,       // main fuse and main switch
  add_up,          // what is usually plugged in, added up against the fuse
};
inline constexpr std::size_t kCheckKinds = static_cast<std::size_t>(CheckKind::add_up) + 1;

// What is done, for the safety rules (safety.h).
enum class Act {
  watch,       // look, ask, plug and unplug at the front of an outlet
  probe,       // insulated probe tips on metal; may be live
  fuse,        // draw or put in a fuse by its body
  cover,       // move a cable, a plug or an outlet by its insulation; may be live
  minus_lead,  // the battery's minus lead, by insulated spanner: the one tool on what can not be switched off
  hands,       // fingers near bare conductors: the part must be dead, and proved dead
};
// What a check or a repair takes, stated in its row: nothing is advised on what a row leaves open (safety.h).
struct Takes {
  bool hands_on_conductors;  // fingers on bare metal or on what may come bare, at any step
  bool tools_on_metal;       // a probe, a lamp's leads, a spanner on metal that is bare
  bool live_circuit;         // at any step with this circuit, or what it touches, under voltage
};

struct Choice {
  AnswerKey key;
  std::string words;  // "About 12.6 V", for this circuit
  // The range of the reading that the word stands for; empty for words without a number.
  std::optional<double> low, high;
};

struct Check {
  int index = -1;  // in Tracer::all_checks()
  std::string id;  // stable key built from what follows: "volts splice+3 bus- in lamp3"
  CheckKind kind = CheckKind::volts;
  Spot red, black;                             // volts, glow, ohms
  circuit::OutletId outlet = circuit::kBlock;  // kinds at an outlet; else kBlock
  int neighbour = -1;                          // pull_fuse, neighbour_fuse
  State state;
  Act act = Act::hands;  // the most there is, as in `takes`, until its row says less
  Takes takes{true, true, true};
  bool proves_dead = false;        // `first` ends with the fuse out, the metal bare, and that metal proved dead
  std::vector<Site> sites;         // where one has to be
  double minutes = 1.0;            // by itself, from the spot, circuit as it should be (see Tracer::minutes)
  std::vector<std::string> first;  // what has to be done before, in order: "Plug the lamp into C."
  std::string question;            // "Measure from the red splice at C to the negative bus."
  std::string state_words;         // "Fuse in, lamp in C, everything else unplugged"
  std::string caution;             // may be empty
  std::vector<Choice> choices;
  bool takes_reading = false;  // volts and ohms: a typed figure is welcome
};

}  // namespace diagnosis
