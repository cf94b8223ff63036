// How-to cards: a handful of steps each, in our own words.
#include "reference/pages.h"

namespace reference {
namespace {

constexpr const char* kFuseOut = "Fuse out and the circuit proved dead before your hands go in.";
constexpr const char* kMakersFirst = "The maker's instructions for tool and terminal go first.";

}  // namespace

std::vector<Card> how_to_cards() {
  const tables::Citation* practice = tables::citation_by_id("workshop-practice");
  const tables::Citation* safe = tables::citation_by_id("safe-practice");
  const tables::Citation* strip = tables::citation_by_id("strip-length");
  const tables::Citation* meter = tables::citation_by_id("meter-use");
  const tables::Citation* joint = tables::citation_by_id("joint-resistance");
  const tables::Citation* pull = tables::citation_by_id("pull-boat");
  std::vector<Card> cards;
  cards.push_back({.key = "strip", .title = "Strip a wire", .when = "Before anything goes on its end.",
                   .tools = {"Stripper with a hole for this size", "The part the wire goes into"},
                   .steps = {"Read the strip length on the part, or hold the wire beside its barrel and mark it.",
                             "Pick the stripper's hole for the wire's size.",
                             "Close, turn a quarter, pull straight off.",
                             "Look: no strand cut or nicked. Cut off and start again if there is.",
                             "Leave the strands as they lie; twist them only lightly."},
                   .cautions = {"A nicked strand breaks later, by vibration."},
                   .citations = {practice, strip}, .keywords = "strip stripping insulation wire end knife stripper how to",
                   .picture = {Depicts::how_to, "strip"}});
  cards.push_back({.key = "crimp", .title = "Crimp a terminal", .when = "For a tab, ring or crimp splice that stays.",
                   .tools = {"Ratchet crimper for this kind of terminal", "Terminal in the wire's colour", "Stripper"},
                   .steps = {"Check that the wire's size is in the terminal's range.",
                             "Strip to the barrel's length and up to 1 mm more.",
                             "Push the strands in until they show at the far end of the barrel.",
                             "Set the barrel in the die of its colour and close until the tool lets go.",
                             "Look: all strands inside, insulation up to the barrel and not under it.",
                             "Tug it."},
                   .cautions = {kMakersFirst, "Pliers do not make a crimp. Solder alone does not hold a joint."},
                   .citations = {practice, strip}, .keywords = "crimp crimping terminal lug tab ring pliers ratchet how to",
                   .picture = {Depicts::how_to, "crimp"}});
  cards.push_back({.key = "splice", .title = "Seat a splice and look behind it", .when = "For each wire that goes into a lever splice.",
                   .tools = {"Lever splice for this size", "Stripper", "Light"},
                   .steps = {"Strip to the gauge moulded on the splice.", "Open the lever fully.",
                             "Push the wire in until it stops; close the lever flat.",
                             "Look from behind and from the side: bare copper under the bar, no insulation under it, no copper outside.",
                             "Tug each wire.", "Tie the wires so that the splice carries no pull."},
                   .cautions = {kFuseOut, "Insulation under the bar is the fault that looks finished."},
                   .citations = {practice, strip}, .keywords = "splice lever seat insert connector look behind insulation under bar how to",
                   .picture = {Depicts::how_to, "splice"}});
  cards.push_back({.key = "tug", .title = "Tug a joint", .when = "After every joint, and when one is in doubt.",
                   .tools = {"Your hand"},
                   .steps = {"Hold the terminal or splice in one hand, the wire a hand's breadth away in the other.",
                             "Pull along the wire, firmly, for a breath. Do not jerk or bend.",
                             "Nothing may slip. If it does, cut it off and make it again.",
                             "Try your tool on a spare piece first: see the table of pulls."},
                   .cautions = {kFuseOut}, .citations = {practice, pull}, .keywords = "tug pull test joint loose check how to",
                   .picture = {Depicts::how_to, "tug"}});
  cards.push_back({.key = "drop-under-load", .title = "Measure a drop under load", .when = "To find the wire or joint that loses the volts.",
                   .tools = {"Meter on d.c. volts", "The load that belongs there, or a lamp"},
                   .steps = {"Switch the load on and leave it on.",
                             "Put one lead at each end of the same wire: red to red, or black to black.",
                             "Read the volts. That is what this piece loses.",
                             "Go piece by piece: the one that loses most is the one to look at.",
                             "Divide by the amperes for its ohms: 0.1 V at 10 A is 10 mΩ."},
                   .cautions = {"The circuit is live: touch only with the probes, and do not bridge red to black.",
                                "A joint that loses volts is hot."},
                   .citations = {meter, joint}, .keywords = "measure voltage drop under load meter test bad joint find how to",
                   .picture = {Depicts::probes_drop, ""}});
  cards.push_back({.key = "prove-dead", .title = "Prove it dead", .when = "Before your hands go in.",
                   .tools = {"Meter on d.c. volts, or a lamp"},
                   .steps = {"Try the meter on a live outlet: it must show volts.",
                             "Take the fuse out and keep it in your pocket.",
                             "Measure red to black where you will work: nothing.",
                             "Measure red to a bare ground nearby too: another circuit may feed it.",
                             "Try the meter on the live outlet again."},
                   .cautions = {"A meter that died shows 0 V as well: that is why it is tried twice.",
                                "Panels on the roof and chargers feed from the other end."},
                   .citations = {meter, safe}, .keywords = "prove dead isolate no voltage safe check before work fuse out how to",
                   .picture = {Depicts::how_to, "prove-dead"}});
  cards.push_back({.key = "label", .title = "Label a wire", .when = "On both ends, before the next wire.",
                   .tools = {"Label that stands oil and heat, or sleeve", "Pen that does not wash off"},
                   .steps = {"Write the fuse position and the outlet's letter: 4 B.",
                             "Put it a hand's breadth from the end, readable without moving the wire.",
                             "Put the same on the other end.",
                             "Write it into the fuse map.",
                             "Mark red and black where colours could be taken for others."},
                   .cautions = {"An unlabelled black wire may be a live one of somebody else's."},
                   .citations = {practice}, .keywords = "label mark wire number tag fuse map identify how to",
                   .picture = {Depicts::how_to, "label"}});
  return cards;
}

}  // namespace reference
