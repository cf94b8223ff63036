#include <array>

#include "diagnosis/prove_dead.h"
#include "diagnosis/remedy_row.h"

namespace diagnosis {
namespace {

using R = RemedyKind;
using T = Then;

// Steps that many repairs share -----------------------------------------------------------------------------------

constexpr StepRow watch(std::string_view words) { return {Act::watch, T::as_before, words}; }
constexpr StepRow hands(std::string_view words) { return {Act::hands, T::as_before, words}; }
constexpr StepRow fuse_out(std::string_view words) { return {Act::fuse, T::fuse_out, words}; }
constexpr StepRow prove(std::string_view part) { return {Act::probe, T::proves_dead, part}; }

constexpr StepRow kUnplug = watch("Switch off and unplug everything on this circuit.");
constexpr StepRow kPull = fuse_out("Pull the {fuse} and put it in your pocket.");
constexpr StepRow kOpenUp{Act::cover, T::exposes,
                          "Draw outlet {outlet} forward by its plate, fingers off the metal behind it."};
constexpr StepRow expose(std::string_view words) { return {Act::cover, T::exposes, words}; }
constexpr StepRow kTug = hands("Tug each wire by hand: none may move.");
constexpr StepRow kFuseBack{Act::fuse, T::fuse_in, "Hands and tools away. {fuse_back}"};
constexpr std::string_view kStrip = "Strip as long as the mark on the part says, no nicked strands.";

// clang-format off
constexpr StepRow kChargersOff = watch("Switch off everything that takes or gives current: loads, chargers, solar, alternator.");
constexpr StepRow kMainOff{Act::watch, T::main_off, "Open the main switch, if there is one."};
constexpr StepRow kAllOff{Act::minus_lead, T::main_off, kBlockOff};
constexpr StepRow kMinusOff{Act::minus_lead, T::minus_off,
                            "Take the battery's minus lead off, before any tool comes near plus: insulated spanner, rings off. "
                            "Tie it away from the post."};
constexpr StepRow kMainOn{Act::minus_lead, T::main_on,
                          "Tools away, covers on. Put back what cut the battery off, a minus lead last, then close the main switch."};

constexpr std::string_view kBatteryFirstOff =
    "The battery itself can not be switched off: minus lead off first and on last, nothing metal across the posts.";
constexpr std::string_view kWholeBlock = "This part carries everything on the block. If in doubt, leave it to somebody who does this for a living.";
constexpr std::string_view kStud =
    "The feed stud carries the whole battery: a spanner that slips there burns as at the posts. Rings off, insulated tools.";
constexpr std::string_view kNoSwitch = "No way to cut the block off from the battery: do not work in it. Get help.";
constexpr std::string_view kFuse = "{fuse_caution}";
constexpr std::string_view kReversed = "Devices that were plugged in reversed may be damaged. Try a cheap one first.";

// Rows -------------------------------------------------------------------------------------------------------------

constexpr StepRow kCharge[] = {
    watch("Charge the battery fully with its own charger."),
    watch("Let it rest, a lead battery for 4 to 24 hours, then read it again. Below {rest_low} after that: it is worn out."),
};
constexpr std::string_view kChargeCautions[] = {
    "Charging makes gas: air, no sparks. Follow the charger's and the battery's instructions, and never charge lithium below freezing."};

constexpr StepRow kRestoreMain[] = {
    watch("Look which it is: a switch that is off, or a main fuse that has blown."),
    watch("A switch is off: ask who turned it off, and why. With nobody at work on the vehicle, turn it on; go on to the test."),
    watch("The fuse has blown: something drew that current. Look for browned, crushed or wet parts between battery and block first."),
    watch("Still the fuse: the battery comes off before anybody touches its holder, as follows."),
    kChargersOff, kMainOff, kPull, kMinusOff, expose("Take the cover off the main fuse, fingers off its metal."), prove("both ends of the main fuse"),
    hands("Put in a main fuse of the same kind and rating, never a bigger one."), kMainOn, kFuseBack,
};
constexpr std::string_view kRestoreMainCautions[] = {
    "A main fuse that blows again means a short before the block: stop, and get help.", kBatteryFirstOff, kStud, kWholeBlock};

constexpr StepRow kFeeder[] = {
    kChargersOff, kMainOff, kPull, kMinusOff, expose("Take the covers off the feeder's joints, fingers off the metal."),
    prove("every feeder joint, at the battery's end too,"),
    hands("Undo the {side} feeder joints at battery, main fuse and block one at a time. Clean to bright metal, look for green or browned lugs."),
    hands("Tighten each to the maker's torque, spring washer under the nut. Tug."), kMainOn, kFuseBack,
};
constexpr std::string_view kFeederCautions[] = {kBatteryFirstOff, kStud, kWholeBlock};

constexpr StepRow kFitFuse[] = {
    {Act::watch, T::fuse_out, "Unplug everything on this circuit."},
    watch("A fuse that is not there was taken out for a reason: ask, or look for work left unfinished."),
    watch("A blown one: look at what was plugged in and at every cable you see. Browned, crushed or wet parts come first."),
    {Act::fuse, T::fuse_in, "Put in {new_fuse}. If it blows, do not try another: look for the cause."},
};
constexpr std::string_view kFitFuseCautions[] = {kFuse};

constexpr StepRow kMoveFuse[] = {
    kUnplug,
    fuse_out("Take the fuse out of the position where no circuit is."),
    {Act::fuse, T::fuse_in, "Put it in at position {position} if it is marked with {rating}; else {new_fuse}."},
    watch("Label the position."),
};
constexpr std::string_view kMoveFuseCautions[] = {"Check the rating on the fuse itself. Never a bigger one.", kFuse};

constexpr StepRow kSeatFuse[] = {
    kUnplug,
    fuse_out("Pull the {fuse}. Look at blades and clips: bright, tight, not browned."),
    {Act::fuse, T::fuse_in, "{fuse_back} Press it home until it stops: it must hold by itself. Slack or browned clips: the block is to be replaced."},
};
constexpr std::string_view kSeatFuseCautions[] = {"Do not bend live clips. That is work with the battery cut off.", kFuse};

constexpr StepRow kClamp[] = {
    kUnplug,
    watch("The feed stud and the other positions stay live with this fuse out: the whole block goes off, as follows."),
    kChargersOff, kAllOff, kPull, expose("Take the block's cover off, fingers off the metal."),
    prove("the clamps, the feed stud and the positions beside them"),
    hands("Undo the {side} clamp of this circuit and draw the wire out."), hands("Trim to bright copper. Strip as long as the mark on the block says."),
    hands("Seat all strands under the screw, no insulation, and tighten it to the maker's torque."), kTug,
    kMainOn, kFuseBack,
};
constexpr std::string_view kClampCautions[] = {kNoSwitch, kStud};

constexpr StepRow kRun[] = {
    kUnplug, kPull, expose("Open up both ends of the run from {from} to {outlet}, fingers off the metal."),
    prove("both ends of the run"),
    hands("Take the {side} wire out at both ends and insulate its ends: it stays dead for good."),
    hands("Draw in a new wire of the same size, protected where it passes edges, strain relief at both ends."),
    hands(kStrip), hands("Seat both ends and tug them."), kFuseBack,
};
constexpr std::string_view kRunCautions[] = {
    "Same size or thicker. Never join a broken wire where you can not see the joint.",
    "Before you drill or pull: gas, fuel and brake lines, other cables."};

constexpr StepRow kSplice[] = {
    kUnplug, kPull, kOpenUp, prove("outlet {outlet}"),
    hands("Open the {side} splice. Look for insulation under the bar, loose strands, browned plastic."),
    hands("Trim to bright copper. Strip as long as the mark on the splice says, no nicked strands."),
    hands("Seat every wire fully, copper only under the bar, and close it. Browned or slack: a new splice."), kTug,
    hands("Look at the {other_side} splice too, then push the outlet back."), kFuseBack,
};
constexpr std::string_view kSpliceCautions[] = {"A loose joint heats. Replace plastic that is browned or soft."};

constexpr StepRow kShort[] = {
    kUnplug, kPull, expose("Open up both ends of the run from {from} to {outlet}, fingers off the metal."), prove("the run"),
    hands("Follow the cable: screws, edges, hinges, crushed places. Look for soot."),
    hands("Take the damaged length out of service: part it at both splices, ends insulated."),
    hands("Draw in a new pair of the same size, off the edge that did it."), kTug,
    {Act::probe, T::as_before, "{prove_open}"}, kFuseBack,
};
constexpr std::string_view kShortCautions[] = {"Do not feed a short with fuse after fuse. Each one heats the damage."};

constexpr StepRow kShed[] = {
    {Act::watch, T::fuse_out, "Unplug what does not have to run at the same time, or move one thing to another circuit."},
    {Act::fuse, T::fuse_in, "Switch off what is left, put in {new_fuse}, and switch on one thing after the other."},
};
constexpr std::string_view kShedCautions[] = {"A bigger fuse is no answer: the wire would become the fuse.", kFuse};

constexpr StepRow kTab[] = {
    kUnplug, kPull, kOpenUp, prove("outlet {outlet}"),
    hands("Push the {side} tab fully home on its blade. It must need a pull to come off; slack: crimp a new one."), kTug,
    hands("Push the outlet back without bending the tails."), kFuseBack,
};
constexpr std::string_view kTabCautions[] = {"A tab that came off may have touched the other side: look for soot and bare metal."};

constexpr StepRow kOutlet[] = {
    kUnplug, kPull, kOpenUp, prove("outlet {outlet}"),
    hands("Draw both tabs off and note which was plus: the middle contact of a lighter-form socket."),
    hands("Fit a new outlet that is marked for what this fuse carries, tabs fully home, {plus} to plus."), kTug, kFuseBack,
};
constexpr std::string_view kOutletCautions[] = {"Replace an outlet that is browned or soft even if it works again."};

constexpr StepRow kDevice[] = {
    watch("Unplug it. Look at the small fuse in its plug: unscrew the tip."),
    watch("The plug's fuse has blown: put in a new one of the same rating, with the plug out of the outlet."),
    watch("The plug's fuse is whole: the device is to be mended or replaced."),
};
constexpr std::string_view kDeviceCautions[] = {"A plug fuse that blows again: the device has a fault. Do not fit a bigger one."};

constexpr StepRow kTabs[] = {
    kUnplug, kPull, kOpenUp, prove("outlet {outlet}"),
    hands("Change the two tabs over: {plus} on plus, the middle contact of a lighter-form socket."), kTug, kFuseBack,
};
constexpr StepRow kSplices[] = {
    kUnplug, kPull, kOpenUp, prove("outlet {outlet}"),
    hands("At the two splices, change over the two wires that come from the block's side: {plus} with {plus}, {minus} with {minus}."), kTug,
    hands("Look at the outlets beyond: if somebody changed them over to make up for it, change them back."), kFuseBack,
};
constexpr std::string_view kReversedCautions[] = {kReversed};

constexpr StepRow kPair[] = {
    kUnplug, fuse_out("Pull the fuse of {neighbour} too, with nothing running on it. Both stay out until you are done."), kPull,
    kOpenUp, prove("outlet {outlet}, both pairs,"),
    hands("Take the wrong pair out of both splices and insulate its ends one by one."),
    hands("Find this circuit's own pair, {plus} and {minus}, from {from}. Prove it dead as well."),
    hands("Strip as long as the mark on the splice says, seat it in the splices, {plus} with {plus}."), kTug,
    hands("Label both pairs at both ends: the circuit's name and its position on the block."), kFuseBack,
    {Act::fuse, T::as_before, "Put the fuse of {neighbour} back, its own rating{its_rating}."},
};
constexpr std::string_view kPairCautions[] = {"Two circuits meet here. One fuse out does not make it dead."};

constexpr StepRow kThicker[] = {
    watch("Work out the size that the load needs on the Size page, and until then plug in less."),
    kUnplug, kPull, expose("Open up both ends of the run, fingers off the metal."), prove("both ends of the run"),
    hands("Draw in the thicker wire, every run that is too thin, and remake its joints."), kTug,
    {Act::fuse, T::fuse_in, "Hands and tools away. Put in a fuse that suits the thinnest wire left in the circuit, at most the one you pulled."},
};
constexpr std::string_view kThickerCautions[] = {"The fuse must suit the thinnest wire left in the circuit.",
                                                 "Before you drill or pull: gas, fuel and brake lines, other cables."};

constexpr StepRow kFurther[] = {
    watch("Nothing known here explains what you saw. Go over the answers once more, the surprising one first."),
    watch("Then leave the fuse out and have somebody look at it who does this for a living."),
};
constexpr std::string_view kFurtherCautions[] = {"Do not run a circuit that you do not understand."};
// clang-format on

// hands on conductors, tools on metal, live circuit
constexpr Takes kEyes{false, false, true}, kNothing{false, false, false}, kDeadHands{true, true, false};
constexpr bool kBySide = true, kAsOne = false;
constexpr Supply kBeyondFuse = Supply::beyond_the_fuse, kAtBlock = Supply::at_the_block,
                 kBeforeBlock = Supply::before_the_block;

constexpr FuseWork kNoFuse = FuseWork::none, kOnlyAFuse = FuseWork::only_a_fuse,
                   kTheCause = FuseWork::removes_what_blew_it;

// clang-format off
constexpr std::array<RemedyRow, kRemedyKinds> kRows{{
    {R::charge_source, "charge-source", kAsOne, kEyes, kBeyondFuse, kNoFuse, kCharge, kChargeCautions},
    {R::restore_main, "restore-main", kAsOne, kDeadHands, kBeforeBlock, kNoFuse, kRestoreMain, kRestoreMainCautions},
    {R::remake_feeder_joint, "remake-feeder-joint", kBySide, kDeadHands, kBeforeBlock, kNoFuse, kFeeder, kFeederCautions},
    {R::fit_fuse, "fit-fuse", kAsOne, kEyes, kBeyondFuse, kOnlyAFuse, kFitFuse, kFitFuseCautions},
    {R::move_fuse, "move-fuse", kAsOne, kEyes, kBeyondFuse, kOnlyAFuse, kMoveFuse, kMoveFuseCautions},
    {R::seat_fuse, "seat-fuse", kAsOne, kEyes, kBeyondFuse, kNoFuse, kSeatFuse, kSeatFuseCautions},
    {R::remake_clamp, "remake-clamp", kBySide, kDeadHands, kAtBlock, kNoFuse, kClamp, kClampCautions},
    {R::replace_run, "replace-run", kBySide, kDeadHands, kBeyondFuse, kNoFuse, kRun, kRunCautions},
    {R::remake_splice, "remake-splice", kBySide, kDeadHands, kBeyondFuse, kNoFuse, kSplice, kSpliceCautions},
    {R::clear_short, "clear-short", kAsOne, kDeadHands, kBeyondFuse, kTheCause, kShort, kShortCautions},
    {R::shed_load, "shed-load", kAsOne, kEyes, kBeyondFuse, kTheCause, kShed, kShedCautions},
    {R::refit_tab, "refit-tab", kBySide, kDeadHands, kBeyondFuse, kNoFuse, kTab, kTabCautions},
    {R::replace_outlet, "replace-outlet", kAsOne, kDeadHands, kBeyondFuse, kNoFuse, kOutlet, kOutletCautions},
    {R::replace_device, "replace-device", kAsOne, kNothing, kBeyondFuse, kNoFuse, kDevice, kDeviceCautions},
    {R::swap_at_tabs, "swap-at-tabs", kAsOne, kDeadHands, kBeyondFuse, kNoFuse, kTabs, kReversedCautions},
    {R::swap_at_splice, "swap-at-splice", kAsOne, kDeadHands, kBeyondFuse, kNoFuse, kSplices, kReversedCautions},
    {R::reconnect_pair, "reconnect-pair", kAsOne, kDeadHands, kBeyondFuse, kNoFuse, kPair, kPairCautions},
    {R::thicker_wire, "thicker-wire", kAsOne, kDeadHands, kBeyondFuse, kNoFuse, kThicker, kThickerCautions},
    {R::look_further, "look-further", kAsOne, kNothing, kBeyondFuse, kNoFuse, kFurther, kFurtherCautions},
}};
// clang-format on

// The compiler refuses a row with a field left out; this refuses one that is left out, empty, or whose steps
// take more than it says.
constexpr bool each_remedy_complete() {
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    const RemedyRow& row = kRows[i];
    if (static_cast<std::size_t>(row.kind) != i || row.key.empty() || row.steps.empty() || row.cautions.empty())
      return false;
    bool hands_on = false, tools = false, exposed = false;
    for (const StepRow& step : row.steps) {
      if (step.words.empty()) return false;
      exposed = exposed || step.then == T::exposes;
      if (step.act == Act::hands && !exposed) return false;
      hands_on = hands_on || step.act == Act::hands;
      tools = tools || step.act == Act::hands || step.act == Act::probe;
    }
    if (hands_on != row.takes.hands_on_conductors || tools != row.takes.tools_on_metal) return false;
    if (hands_on && row.takes.live_circuit) return false;
  }
  return true;
}
static_assert(each_remedy_complete());

}  // namespace

std::span<const RemedyRow> remedy_rows() { return kRows; }
const RemedyRow& remedy_row(RemedyKind kind) { return kRows[static_cast<std::size_t>(kind)]; }

}  // namespace diagnosis
