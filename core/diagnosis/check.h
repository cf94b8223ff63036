// A check: what to do, with what tool, at which two points or at which part, in what state the
// circuit must be, how long it takes, and the answers it can have. What each kind asks is told
// exactly here, so that a simulator written elsewhere can answer it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/case.h"
#include "network/branch_network.h"

namespace diagnosis {

// A point a probe can touch. The network node it stands for is in brackets.
enum class SpotKind : int {
  battery_post,   // either side [battery near / away]
  bus,            // feed stud (red) or negative bus (black) of the block [bus away]
  fuse_feed,      // fuse in: its test point on the feed side [fuse near]; fuse out: the live clip [bus + away]
  fuse_wire,      // test point or clip on the wire side [fuse away]; red only, as fuse_feed
  clamp,          // metal under the clamp that holds the wire [clamp away]
  wire_end,       // free end of the wire from the source, parted from the splice at an outlet [wire away]
  splice,         // bar of the splice behind an outlet, through its test slot [splice away]
  tab,            // wire's crimp on the tab behind an outlet [tail away]
  lug,            // the outlet's own blade behind it [terminal away]
  contact,        // inside the socket, from the front [outlet_inside away]
};
struct Spot {
  SpotKind kind = SpotKind::contact;
  circuit::OutletId outlet = circuit::kBlock;   // splice, tab, lug, contact
  network::Side side = network::Side::positive;
  friend constexpr bool operator==(const Spot&, const Spot&) = default;
};
std::string spot_key(const Spot& spot);                            // stable: "splice+3", "bus-", "fuse-feed"
std::string spot_words(const Case& the_case, const Spot& spot);    // "the black splice at C"
Site site_of(const Spot& spot);

// Nothing else is plugged in or switched on than is said here: the first thing asked of the person.
// device: the known good one of Tools. own: the device that failed, left in as a load; asked for only when
// neither lamp nor good device is in hand.
enum class Plugged { nothing, lamp, device, own };
struct State {
  bool fuse_in = true;                          // a fuse in our position, whatever is told of it
  Plugged plugged = Plugged::nothing;
  circuit::OutletId at = circuit::kBlock;       // outlet of the lamp or device
  // The wires from the source are out of this outlet's splices: it and all beyond hang free.
  std::optional<circuit::OutletId> parted_at;
  friend bool operator==(const State&, const State&) = default;
};

enum class CheckKind : int {
  // Two points, `red` and `black` leads.
  volts,            // meter. Words: full, between, zero, minus
  glow,             // lamp across the two points. bright, dim, dark
  ohms,             // meter on ohms, fuse out. joined (below 5 ohm), some, open
  // At an outlet.
  device_here,      // the device that failed (symptom device) in another outlet of this circuit, left in
                    // that outlet while it is watched. works, weak, dead
  other_device,     // known good device in this outlet. works, weak, dead
  device_elsewhere, // the device that failed, in an outlet of another circuit known to be alive. works, dead
  others_work,      // the failed device in every outlet that the complaint does not name. all, some, none
  wiggle,           // lamp or device plugged in at `outlet`; move the cable and the plug, watch. steady, flickers
                    // (flickers: opens_when_moved, or a resistive joint, on the way to this outlet)
  look_behind,      // fuse out, proved dead, outlet drawn forward: splices, tabs, colours, cables.
                    // fine, red-splice, black-splice, red-tab, black-tab, crossed-tabs, crossed-splice,
                    // other-cable, damaged (insulation of this outlet's run), live
  tug,              // fuse out, proved dead: pull each wire at this outlet's splices and tabs.
                    // holds, red-splice, black-splice, red-tab, black-tab, live
  read_gauge,       // the size printed on the wire at this outlet. as-drawn, thinner
  // At the block.
  block_alive,      // does anything else on the block work? yes, weak, no
  fuse_look,        // which fuse sits in our position, and is its element whole?
                    // whole, blown, missing, elsewhere (empty, and a fuse sits where none belongs)
  fuse_press,       // press our fuse home, watch the failed device. works, same
  fuse_swap,        // a new fuse of the same rating in our position, watch the failed device:
                    // works, same, blows-at-once, blows-later
  pull_fuse,        // pull a fuse, ours (neighbour -1) or a neighbour's, watch the outlet with something
                    // running in it. dies, stays, was-dead
  neighbour_fuse,   // the neighbour's fuse out? Put it in; watch the failed device. works, same
  tug_clamps,       // main switch open, fuse out, proved dead, feed stud too: pull red and black at our clamps. holds, red, black, live
  main_look,        // main fuse and main switch. on, off
  add_up,           // what is usually plugged in, added up against the fuse. within, over
};
struct CheckKindRow {
  CheckKind kind;
  std::string_view key;   // stable: "volts"
  std::string_view tool;  // "meter", "lamp", "meter on ohms", "eyes", "hands", "device", "spare fuse"
};
const CheckKindRow& check_kind_row(CheckKind kind);

// What hands do, for the safety rules (safety.h).
enum class Act {
  watch,      // look, ask, plug and unplug at the front of an outlet
  probe,      // insulated probe tips on metal; may be live
  fuse,       // draw or put in a fuse by its body
  cover,      // move a cable or plug by its insulation; may be live
  hands,      // fingers near bare conductors: the part must be dead, and proved dead
};

struct Choice {
  std::string key;       // "full"; stable
  std::string words;     // "About 12.6 V", for this circuit
  // The range of the reading that the word stands for; empty for words without a number.
  std::optional<double> low, high;
};

struct Check {
  int index = -1;             // in Tracer::all_checks()
  std::string id;             // stable key built from what follows: "volts splice+3 bus- in lamp3"
  CheckKind kind = CheckKind::volts;
  Spot red, black;            // volts, glow, ohms
  circuit::OutletId outlet = circuit::kBlock;   // kinds at an outlet; else kBlock
  int neighbour = -1;         // pull_fuse, neighbour_fuse
  State state;
  Act act = Act::watch;
  bool proves_dead = false;   // the instruction starts with pulling the fuse and proving dead
  std::vector<Site> sites;    // where one has to be
  double minutes = 1.0;       // by itself, from the spot, circuit as it should be (see Tracer::minutes)
  std::string question;       // "Plug the lamp into C. Measure from the red splice at C to the negative bus."
  std::string state_words;    // "Fuse in, lamp in C, everything else unplugged"
  std::string caution;        // may be empty
  std::vector<Choice> choices;
  bool takes_reading = false; // volts and ohms: a typed figure is welcome
};

enum class AnswerKind { word, reading, cant_reach, not_sure };
struct Answer {
  AnswerKind kind = AnswerKind::not_sure;
  std::string word;        // AnswerKind::word: a Choice's key
  double reading = 0.0;    // AnswerKind::reading: volts as shown, with its sign, or ohms (infinity: open)
  friend bool operator==(const Answer&, const Answer&) = default;
};
Answer word(std::string_view key);
Answer reading(double number);
Answer cant_reach();
Answer not_sure();

}  // namespace diagnosis
