#include "diagnosis/remedy.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/plant.h"
#include "diagnosis/words.h"
#include "units/format.h"

namespace diagnosis {
namespace {

using network::Side;
using units::Amperes;
using units::Volts;

std::string_view remedy_word(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::charge_source: return "charge-source";
    case RemedyKind::restore_main: return "restore-main";
    case RemedyKind::remake_feeder_joint: return "remake-feeder-joint";
    case RemedyKind::fit_fuse: return "fit-fuse";
    case RemedyKind::move_fuse: return "move-fuse";
    case RemedyKind::seat_fuse: return "seat-fuse";
    case RemedyKind::remake_clamp: return "remake-clamp";
    case RemedyKind::replace_run: return "replace-run";
    case RemedyKind::remake_splice: return "remake-splice";
    case RemedyKind::clear_short: return "clear-short";
    case RemedyKind::shed_load: return "shed-load";
    case RemedyKind::refit_tab: return "refit-tab";
    case RemedyKind::replace_outlet: return "replace-outlet";
    case RemedyKind::replace_device: return "replace-device";
    case RemedyKind::swap_at_tabs: return "swap-at-tabs";
    case RemedyKind::swap_at_splice: return "swap-at-splice";
    case RemedyKind::reconnect_pair: return "reconnect-pair";
    case RemedyKind::thicker_wire: return "thicker-wire";
    case RemedyKind::look_further: break;
  }
  return "look-further";
}

// Splices and runs are worked on per side, outlets and tabs too; the rest as one.
bool by_side(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::remake_feeder_joint:
    case RemedyKind::remake_clamp:
    case RemedyKind::replace_run:
    case RemedyKind::remake_splice:
    case RemedyKind::refit_tab: return true;
    default: return false;
  }
}

// Strip length: as marked on the part; these are usual ones for lever splices and clamps (common practice).
constexpr std::string_view kStrip = "Strip as marked on the part, usually 10 to 12 mm";

class Writer {
 public:
  Writer(const Case& the_case, const Fault& fault) : case_(the_case), fault_(fault) {
    remedy_.id = remedy_id(fault);
    remedy_.kind = fault_row(fault.kind).remedy;
    remedy_.fault = fault;
    remedy_.title = joined({fault_words(the_case, fault), "."});
    remedy_.minutes = fault_row(fault.kind).repair_minutes;
  }

  Remedy write() {
    steps();
    retest();
    return std::move(remedy_);
  }

 private:
  [[nodiscard]] std::string fuse() const {
    return fuse_words(case_);
  }
  [[nodiscard]] std::string here() const { return letter_of(case_, fault_.outlet); }
  [[nodiscard]] std::string_view side() const { return side_words(fault_.side); }

  void caution(std::string words) { remedy_.cautions.push_back(std::move(words)); }
  void watch(std::string words, Act act = Act::watch) {
    remedy_.steps.push_back({std::move(words), act, fuse_in_, main_on_, dead_, false, {}});
  }
  void hands(std::string words) { watch(std::move(words), Act::hands); }

  // Every repair starts so. What proves dead is what the person has.
  void make_dead(const std::string& where) {
    fuse_in_ = false;
    watch(joined({"Pull the ", fuse(), " and put it in your pocket."}), Act::fuse);
    prove_dead(where);
    caution("If it is still live, another circuit feeds it: hands off, and find that fuse first.");
  }
  void make_dead_at_battery() {
    main_on_ = false;
    fuse_in_ = false;
    watch("Switch everything off, chargers and solar too, and open the main switch or take out the main fuse.");
    watch(joined({"Pull the ", fuse(), "."}), Act::fuse);
    // Upstream of the switch everything is live until the minus lead is off.
    watch("Take the battery's minus lead off, insulated spanner, rings off, and tie it away from the post.", Act::cover);
    prove_dead("every feeder joint, at the battery's end too,");
    caution("The battery itself can not be switched off: minus lead off first and on last, nothing metal across the posts.");
    caution("This part carries everything on the block. If in doubt, leave it to somebody who does this for a living.");
  }
  void prove_dead(const std::string& where) {
    const std::string_view with = case_.tools.meter ? "the meter: below 1 V" : case_.tools.lamp ? "the lamp: dark" : "a device: dead";
    remedy_.steps.push_back({joined({"Prove ", where, " dead with ", with, ", and that the tester itself works on a live point."}),
                             Act::probe, fuse_in_, main_on_, false, true, {}});
    dead_ = true;
  }
  void fuse_back() {
    if (!main_on_) {
      main_on_ = true;
      dead_ = false;
      watch("Tools away. Put back what cut the battery off, the minus lead last, and close the main switch.", Act::cover);
    }
    fuse_in_ = true;
    dead_ = false;
    watch(joined({"Hands and tools away. Put the ", fuse(), " back, the same rating."}), Act::fuse);
    remedy_.steps.back().fits_fuse = case_.fitted.fuse;
  }
  void open_up() { hands(joined({"Draw outlet ", here(), " forward."})); }
  void tug() { hands("Tug each wire by hand: none may move."); }

  void steps();
  void remake_splice();
  void retest();

  const Case& case_;
  const Fault& fault_;
  Remedy remedy_;
  bool fuse_in_ = true, main_on_ = true, dead_ = false;
};

void Writer::remake_splice() {
  make_dead(joined({"outlet ", here()}));
  open_up();
  hands(joined({"Open the ", side(), " splice. Look for insulation under the bar, loose strands, browned plastic."}));
  hands(joined({"Trim to bright copper. ", kStrip, ", no nicked strands."}));
  hands("Seat every wire fully, copper only under the bar, and close it. Browned or slack: a new splice.");
  tug();
  hands("Look at the other side's splice too, then push the outlet back.");
  fuse_back();
  caution("A loose joint heats. Replace plastic that is browned or soft.");
}

void Writer::steps() {
  switch (remedy_.kind) {
    case RemedyKind::charge_source:
      watch("Charge the battery fully with its own charger.");
      watch("Let it rest for two hours, then read it again. Low once more: the battery is worn out.");
      caution("Charging makes gas: air, no sparks. Follow the charger's and the battery's instructions.");
      return;
    case RemedyKind::restore_main:
      watch("Look why it opened before you close it: a blown main fuse has a reason, a switch may just be off.");
      watch("Switch off: close it. Fuse blown: the battery comes off first, as follows.");
      make_dead_at_battery();
      hands("Put in a main fuse of the same rating, never a bigger one.");
      watch("Put the minus lead back last, and close the main switch.", Act::cover);
      remedy_.steps.back().main_on = true;
      main_on_ = true;
      fuse_back();
      caution("A main fuse that blows again means a short before the block: stop, and get help.");
      return;
    case RemedyKind::remake_feeder_joint:
      make_dead_at_battery();
      hands(joined({"Undo the ", side(), " feeder joints at battery, main fuse and block one at a time. Clean to bright metal, look for green or browned lugs."}));
      hands("Tighten each to the maker's torque, spring washer under the nut. Tug.");
      fuse_back();
      return;
    case RemedyKind::fit_fuse:
      fuse_in_ = false;
      watch("Unplug everything on this circuit.");
      watch(joined({"Look at what was plugged in and at every cable you see: why did it blow? Browned, crushed or wet parts come first."}));
      fuse_in_ = true;
      watch(joined({"Put in ", new_fuse_words(case_), ". Blows again: do not try a third."}), Act::fuse);
      remedy_.steps.back().fits_fuse = case_.fitted.fuse;
      caution("Same rating, never a bigger one: the fuse protects the wire.");
      return;
    case RemedyKind::move_fuse:
      fuse_in_ = false;
      watch("Take the fuse out of the position where no circuit is.", Act::fuse);
      fuse_in_ = true;
      watch(joined({"Put it in at position ", std::to_string(case_.circuit.fuse_position), " if it is marked ",
                    fuse_rating_words(case_), "; else a new one of that rating."}), Act::fuse);
      remedy_.steps.back().fits_fuse = case_.fitted.fuse;
      watch("Label the position.");
      caution("Check the rating on the fuse itself. Never a bigger one.");
      return;
    case RemedyKind::seat_fuse:
      fuse_in_ = false;
      watch(joined({"Pull the ", fuse(), ". Look at blades and clips: bright, tight, not browned."}), Act::fuse);
      fuse_in_ = true;
      watch("Press it home until it stops. It must hold by itself; slack or browned clips: the block is to be replaced.", Act::fuse);
      remedy_.steps.back().fits_fuse = case_.fitted.fuse;
      caution("Do not bend live clips. That is work with the battery cut off.");
      return;
    case RemedyKind::remake_clamp:
      main_on_ = false;   // the feed stud and the other positions are a finger away
      watch("Open the main switch or take out the main fuse: the feed stud and the other positions are live without it.");
      make_dead("the clamps, the feed stud and the positions beside them,");
      hands(joined({"Undo the ", side(), " clamp of this circuit and draw the wire out."}));
      hands(joined({"Trim to bright copper. ", kStrip, "."}));
      hands("Seat all strands under the screw, no insulation, and tighten it to the maker's torque.");
      tug();
      fuse_back();
      caution("No way to switch the block off: do not work in it. Get help.");
      return;
    case RemedyKind::replace_run:
      make_dead(joined({"both ends of the run from ", fed_from_words(case_, fault_.outlet), " to ", here()}));
      hands(joined({"Take the ", side(), " wire out at both ends and insulate its ends: it stays dead for good."}));
      hands("Draw in a new wire of the same size, protected where it passes edges, strain relief at both ends.");
      hands(joined({kStrip, ". Seat both ends and tug them."}));
      fuse_back();
      caution("Same size or thicker. Never join a broken wire where you can not see the joint.");
      return;
    case RemedyKind::remake_splice: remake_splice(); return;
    case RemedyKind::clear_short:
      make_dead(joined({"the run from ", fed_from_words(case_, fault_.outlet), " to ", here()}));
      hands("Follow the cable: screws, edges, hinges, crushed places. Look for soot.");
      hands("Take the damaged length out of service: part it at both splices, ends insulated.");
      hands("Draw in a new pair of the same size, off the edge that did it.");
      tug();
      watch(joined({case_.tools.meter ? "With the fuse still out, measure ohms across the pair at the clamps, everything unplugged: it must be open."
                                      : "With the fuse still out and everything unplugged, the lamp across the fuse clips must stay dark."}), Act::probe);
      fuse_back();
      caution("Do not feed a short with fuse after fuse. Each one heats the damage.");
      return;
    case RemedyKind::shed_load:
      fuse_in_ = false;
      watch("Unplug what does not have to run at the same time, or move one thing to another circuit.");
      fuse_in_ = true;
      watch(joined({"Put in ", new_fuse_words(case_), "."}), Act::fuse);
      remedy_.steps.back().fits_fuse = case_.fitted.fuse;
      caution("A bigger fuse is no answer: the wire would become the fuse.");
      return;
    case RemedyKind::refit_tab:
      make_dead(joined({"outlet ", here()}));
      open_up();
      hands(joined({"Push the ", side(), " tab fully home on its blade. It must need a pull to come off; slack: crimp a new one."}));
      tug();
      hands("Push the outlet back without bending the tails.");
      fuse_back();
      return;
    case RemedyKind::replace_outlet:
      make_dead(joined({"outlet ", here()}));
      open_up();
      hands("Draw both tabs off and note which was plus: the middle contact of a lighter-form socket.");
      hands("Fit a new outlet of at least the circuit's rating, tabs fully home, red to plus.");
      tug();
      fuse_back();
      caution("Replace an outlet that is browned or soft even if it works again.");
      return;
    case RemedyKind::replace_device:
      watch("Unplug it. Look at the small fuse in its plug: unscrew the tip.");
      watch("Fuse blown: a new one of the same rating. Fuse whole: the device is to be mended or replaced.");
      caution("A plug fuse that blows again: the device has a fault. Do not fit a bigger one.");
      return;
    case RemedyKind::swap_at_tabs:
      make_dead(joined({"outlet ", here()}));
      open_up();
      hands("Change the two tabs over: red on plus, the middle contact of a lighter-form socket.");
      tug();
      fuse_back();
      caution("Devices that were plugged in reversed may be damaged. Try a cheap one first.");
      return;
    case RemedyKind::swap_at_splice:
      make_dead(joined({"outlet ", here()}));
      open_up();
      hands("At the two splices, change over the two wires that come from the block's side: red with red, black with black.");
      tug();
      hands("Look at the outlets beyond: if somebody changed them over to make up for it, change them back.");
      fuse_back();
      caution("Devices that were plugged in reversed may be damaged. Try a cheap one first.");
      return;
    case RemedyKind::reconnect_pair:
      watch(joined({"Pull the fuse of ", neighbour_words(case_, fault_.neighbour), " too. Both stay out until you are done."}), Act::fuse);
      make_dead(joined({"outlet ", here()}));
      open_up();
      hands("Take the wrong pair out of both splices and insulate its ends one by one.");
      hands(joined({"Find this circuit's own pair, red and black, from ", fed_from_words(case_, fault_.outlet), ". Prove it dead as well."}));
      hands(joined({kStrip, ", seat it in the splices, red with red."}));
      tug();
      hands("Label both pairs at both ends: the circuit's name and its position on the block.");
      fuse_back();
      watch(joined({"Put the fuse of ", neighbour_words(case_, fault_.neighbour), " back, its own rating."}), Act::fuse);
      caution("Two circuits meet here. One fuse out does not make it dead.");
      return;
    case RemedyKind::thicker_wire:
      watch("Work out the size that the load needs on the Size page, and until then plug in less.");
      make_dead("both ends of the run");
      hands("Draw in the thicker wire, every run that is too thin, and remake its joints.");
      tug();
      fuse_back();
      caution("The fuse must suit the thinnest wire left in the circuit.");
      return;
    case RemedyKind::look_further:
      watch("Nothing known here explains what you saw. Go over the answers once more, the surprising one first.");
      watch("Then leave the fuse out and have somebody look at it who does this for a living.");
      caution("Do not run a circuit that you do not understand.");
      return;
  }
}

// What a healthy circuit reads at the outlet with what is in hand, battery low to charging.
void Writer::retest() {
  const Plant plant(case_);
  int k = plant.outlet_index(fault_.outlet);
  for (const circuit::OutletId id : case_.complaint.outlets) {
    const int complained = plant.outlet_index(id);
    if (complained >= 0 && (k < 0 || plant.feeds(k, complained))) k = complained;
  }
  if (k < 0) k = static_cast<int>(plant.outlets()) - 1;
  Retest& test = remedy_.retest;
  test.outlet = case_.circuit.outlets[static_cast<std::size_t>(k)].id;
  test.with = case_.tools.lamp ? Plugged::lamp : case_.tools.device ? Plugged::device : Plugged::nothing;
  test.by_meter = case_.tools.meter;
  Potentials now;
  plant.solve({}, {}, now);
  const int red = plant.contact(k, Side::positive), black = plant.contact(k, Side::negative);
  const auto volts_from = [&](network::BatteryState state) {
    const network::BranchNetwork built = network::build(case_.circuit, case_.fitted, {}, state);
    const double emf = built.netlist.branch(built.find({network::Element::battery, circuit::kBlock, Side::positive})->branch).emf_v;
    const double ohm = test.with == Plugged::lamp ? plant.lamp_ohm() : test.with == Plugged::device ? plant.test_device_ohm() : 10e6;
    return now.load_volts(red, black, ohm, false) * emf / plant.emf_v();
  };
  // Meter: 1 % and two digits of tolerance.
  test.low = Volts(volts_from(network::BatteryState::low) * 0.99 - 0.02);
  test.high = Volts(std::max(volts_from(network::BatteryState::resting), volts_from(network::BatteryState::charging)) * 1.01 + 0.02);
  const std::string letter = letter_of(case_, test.outlet);
  const std::string_view plugged = test.with == Plugged::lamp ? "the lamp" : test.with == Plugged::device ? "a device" : "nothing";
  if (test.by_meter) {
    test.words = joined({"Fuse in, ", plugged, " plugged into ", letter, ". Measure there, red lead on plus: ",
                         units::volts_text(test.low), " to ", units::volts_text(test.high), ", no minus sign."});
  } else if (test.with != Plugged::nothing) {
    test.words = joined({"Fuse in, ", plugged, " in ", letter, ": as bright and steady as anywhere else. Move the cable: no flicker."});
  } else {
    test.words = joined({"Fuse in, the device that failed in ", letter, ": it runs. Move the cable: no change."});
  }
}

}  // namespace

std::string remedy_id(const Fault& fault) {
  const RemedyKind kind = fault_row(fault.kind).remedy;
  std::string id(remedy_word(kind));
  if (fault.outlet != circuit::kBlock) id.append(" ").append(std::to_string(fault.outlet.number));
  if (by_side(kind)) id.append(" ").push_back(side_sign(fault.side));
  if (fault.neighbour >= 0) id.append(" n").append(std::to_string(fault.neighbour));
  return id;
}

Remedy remedy_for(const Case& the_case, const Fault& fault) { return Writer(the_case, fault).write(); }

}  // namespace diagnosis
