#include <algorithm>
#include <cmath>

#include "diagnosis/check_row.h"
#include "diagnosis/judgement_constants.h"

namespace diagnosis {
namespace {

using A = AnswerKey;
using K = CheckKind;

// Ranges -------------------------------------------------------------------------------------------------------

Bounds no_bounds(const Plant&, bool) { return {}; }
double zero_v(const Plant& plant, bool drop) {
  return judged(drop ? Judged::no_drop_below : Judged::zero_below) * plant.emf_v();
}
double full_v(const Plant& plant) { return judged(Judged::full_from) * plant.emf_v(); }
Bounds full(const Plant& plant, bool) { return {full_v(plant), {}}; }
Bounds between(const Plant& plant, bool drop) { return {zero_v(plant, drop), full_v(plant)}; }
Bounds zero(const Plant& plant, bool drop) { return {-zero_v(plant, drop), zero_v(plant, drop)}; }
Bounds minus(const Plant& plant, bool drop) { return {{}, -zero_v(plant, drop)}; }

template <Judged from>
Bounds from_share(const Plant& plant, bool) {
  return {judged(from) * plant.nominal_v(), {}};
}
template <Judged from, Judged to>
Bounds between_shares(const Plant& plant, bool) {
  return {judged(from) * plant.nominal_v(), judged(to) * plant.nominal_v()};
}
template <Judged to>
Bounds up_to_share(const Plant& plant, bool) {
  return {{}, judged(to) * plant.nominal_v()};
}
Bounds dark(const Plant& plant, bool) { return {0.0, judged(Judged::dim_from) * plant.nominal_v()}; }

Bounds no_ohms(const Plant&, bool) { return {0.0, judged(Judged::joined_below_ohm)}; }
Bounds some_ohms(const Plant&, bool) { return {judged(Judged::joined_below_ohm), judged(Judged::open_from_ohm)}; }
Bounds open_ohms(const Plant&, bool) { return {judged(Judged::open_from_ohm), {}}; }

// Chances ------------------------------------------------------------------------------------------------------

// The reading falls into the word's own range.
double in_range(const Seen& seen, const Choice& choice) {
  const double up_to_high = choice.high ? below((*choice.high - seen.value) / seen.sigma) : 1.0;
  const double up_to_low = choice.low ? below((*choice.low - seen.value) / seen.sigma) : 0.0;
  return std::max(0.0, up_to_high - up_to_low);
}
// The same of something that is never below nothing.
double up_to_high(const Seen& seen, const Choice& choice) {
  return below((choice.high.value_or(kOpenOhm) - seen.value) / seen.sigma);
}
// Ranges of ohms stand decades apart: no meter confuses them. Live, nobody measures ohms.
double ohms_in_range(const Seen& seen, const Choice& choice) {
  const bool in = (!choice.low || seen.value >= *choice.low) && (!choice.high || seen.value < *choice.high);
  return in ? 1.0 - seen.share_of(A::live) : 0.0;
}
double as_seen(const Seen& seen, const Choice& choice) { return seen.share_of(choice.key); }

// Answers ------------------------------------------------------------------------------------------------------

// clang-format off
constexpr AnswerRow kVolts[] = {{A::full, "About {volts}", full, in_range},
                                {A::between, "In between", between, in_range},
                                {A::zero, "{zero}", zero, in_range},
                                {A::minus, "Minus", minus, in_range}};
constexpr AnswerRow kGlow[] = {{A::bright, "Bright", from_share<Judged::bright_from>, in_range},
                               {A::dim, "Dim", between_shares<Judged::dim_from, Judged::bright_from>, in_range},
                               {A::dark, "Dark", dark, up_to_high}};
constexpr AnswerRow kOhms[] = {{A::joined, "Below {joined}", no_ohms, ohms_in_range},
                               {A::some, "Some ohms", some_ohms, ohms_in_range},
                               {A::open, "Open", open_ohms, ohms_in_range},
                               {A::live, "Still live, hands off", no_bounds, as_seen}};
constexpr AnswerRow kDevice[] = {{A::works, "Works", from_share<Judged::works_from>, as_seen},
                                 {A::weak, "Weak", between_shares<Judged::weak_from, Judged::works_from>, as_seen},
                                 {A::dead, "Dead", up_to_share<Judged::weak_from>, as_seen}};
constexpr AnswerRow kElsewhere[] = {{A::works, "Works there", no_bounds, as_seen}, {A::dead, "Dead there too", no_bounds, as_seen}};
constexpr AnswerRow kOthers[] = {{A::all, "They all work", no_bounds, as_seen},
                                 {A::some, "Some do", no_bounds, as_seen},
                                 {A::none, "None works", no_bounds, as_seen}};
constexpr AnswerRow kWiggle[] = {{A::steady, "No change", no_bounds, as_seen}, {A::flickers, "It flickers", no_bounds, as_seen}};
constexpr AnswerRow kBehind[] = {{A::fine, "All looks right", no_bounds, as_seen},
                                 {A::plus_splice, "{Plus} splice wrong", no_bounds, as_seen},
                                 {A::minus_splice, "{Minus} splice wrong", no_bounds, as_seen},
                                 {A::plus_tab, "{Plus} tab off", no_bounds, as_seen},
                                 {A::minus_tab, "{Minus} tab off", no_bounds, as_seen},
                                 {A::crossed_tabs, "Colours crossed at the tabs", no_bounds, as_seen},
                                 {A::crossed_splice, "Colours crossed at the splices", no_bounds, as_seen},
                                 {A::other_cable, "Another cable is in there", no_bounds, as_seen},
                                 {A::damaged, "Cable damaged", no_bounds, as_seen}};
constexpr AnswerRow kTug[] = {{A::holds, "All hold", no_bounds, as_seen},
                              {A::plus_splice, "{Plus} splice gives", no_bounds, as_seen},
                              {A::minus_splice, "{Minus} splice gives", no_bounds, as_seen},
                              {A::plus_tab, "{Plus} tab gives", no_bounds, as_seen},
                              {A::minus_tab, "{Minus} tab gives", no_bounds, as_seen},
                              {A::live, "Still live, hands off", no_bounds, as_seen}};
constexpr AnswerRow kGauge[] = {{A::as_drawn, "As drawn", no_bounds, as_seen}, {A::thinner, "Thinner", no_bounds, as_seen}};
constexpr AnswerRow kBlock[] = {{A::yes, "Yes, as always", no_bounds, as_seen},
                                {A::weak, "Weakly", no_bounds, as_seen},
                                {A::no, "No, nothing", no_bounds, as_seen}};
constexpr AnswerRow kFuse[] = {{A::whole, "There, and whole", no_bounds, as_seen},
                               {A::blown, "Blown", no_bounds, as_seen},
                               {A::missing, "No fuse there", no_bounds, as_seen},
                               {A::elsewhere, "It sits in another position", no_bounds, as_seen}};
constexpr AnswerRow kPress[] = {{A::works, "Now it works", no_bounds, as_seen}, {A::same, "No change", no_bounds, as_seen}};
constexpr AnswerRow kSwap[] = {{A::works, "Now it works", no_bounds, as_seen},
                               {A::same, "Still the same", no_bounds, as_seen},
                               {A::blows_at_once, "Blows at once", no_bounds, as_seen},
                               {A::blows_later, "Blows after a while", no_bounds, as_seen}};
constexpr AnswerRow kPull[] = {{A::dies, "Dead now", no_bounds, as_seen},
                               {A::stays, "It still runs", no_bounds, as_seen},
                               {A::was_dead, "Nothing ran there", no_bounds, as_seen}};
constexpr AnswerRow kClamps[] = {{A::holds, "Both hold", no_bounds, as_seen},
                                 {A::plus_clamp, "{Plus} gives", no_bounds, as_seen},
                                 {A::minus_clamp, "{Minus} gives", no_bounds, as_seen},
                                 {A::live, "Still live, hands off", no_bounds, as_seen}};
constexpr AnswerRow kMain[] = {{A::on, "On, and whole", no_bounds, as_seen}, {A::off, "Off or blown", no_bounds, as_seen}};
constexpr AnswerRow kAddUp[] = {{A::within, "Within the fuse", no_bounds, as_seen}, {A::over, "More than the fuse", no_bounds, as_seen}};
// clang-format on

// Cautions -----------------------------------------------------------------------------------------------------

constexpr std::string_view kHands = "Dead is what the tester shows, not what the fuse says.";
constexpr std::string_view kLook = "Eyes only: another circuit may feed it, fuse out or not.";
constexpr std::string_view kTips = "Insulated tips, one slip can short the pair.";
constexpr std::string_view kOhmsDead = "Ohms only on what is dead. Volts there: another circuit feeds it, hands off.";
constexpr std::string_view kNoLoad = "{no_load}";

// What is done with hands and tools, and whether the circuit is live then.
constexpr Takes kEyes{false, false, true}, kPaper{false, false, false}, kLiveTips{false, true, true},
    kDeadTips{false, true, false}, kDeadHands{true, true, false};
constexpr const tables::Citation* kMin = &kMinutesEstimate;

// clang-format off
constexpr std::array<CheckKindRow, kCheckKinds> kRows{{
    {K::volts, "volts", "meter", &Tools::meter, Act::probe, kLiveTips, false, 0.5, kMin, StateTold::everything,
     "", "Measure {pair}, red lead first.", kTips, kVolts, see_volts},
    {K::glow, "glow", "lamp", &Tools::lamp, Act::probe, kLiveTips, false, 0.5, kMin, StateTold::everything,
     "", "Hold the lamp {pair}.", kTips, kGlow, see_glow},
    {K::ohms, "ohms", "meter on ohms", &Tools::meter, Act::probe, kDeadTips, true, 0.6, kMin, StateTold::everything,
     "", "On ohms, measure {pair}.", kOhmsDead, kOhms, see_ohms},
    {K::device_here, "device-here", "eyes", nullptr, Act::watch, kEyes, false, 0.4, kMin, StateTold::fuse,
     "", "Plug the device that failed into {outlet}. Does it run?", "", kDevice, see_device_here},
    {K::other_device, "other-device", "device", &Tools::device, Act::watch, kEyes, false, 0.4, kMin, StateTold::fuse,
     "", "Try another device, one you know is good, in {outlet}. Does it run?", "", kDevice, see_other_device},
    {K::device_elsewhere, "device-elsewhere", "eyes", nullptr, Act::watch, kEyes, false, 1.5, kMin, StateTold::nothing,
     "", "Try the device that failed in an outlet of another circuit, one that is alive.", "", kElsewhere, see_device_elsewhere},
    {K::others_work, "others-work", "eyes", nullptr, Act::watch, kEyes, false, 0.3, kMin, StateTold::nothing,
     "", "Do the other outlets on this fuse work? Try the same device in each.", "", kOthers, see_others},
    {K::wiggle, "wiggle", "hands", nullptr, Act::cover, kEyes, false, 1.0, kMin, StateTold::fuse,
     "Plug a device into {outlet} and switch it on.", "Move its cable and plug at {outlet}, and watch the device.",
     "Insulation only. Stop if you see bare copper.", kWiggle, see_wiggle},
    {K::look_behind, "look-behind", "eyes", nullptr, Act::cover, kEyes, false, 0.7, kMin, StateTold::fuse,
     "", "Look behind {outlet}, touch nothing: splices, tabs, colours, cables.", kLook, kBehind, see_behind},
    {K::tug, "tug", "hands", nullptr, Act::hands, kDeadHands, true, 0.8, kMin, StateTold::fuse,
     "", "Tug each wire behind {outlet}, at its splices and tabs.", kHands, kTug, see_tug},
    {K::read_gauge, "read-gauge", "eyes", nullptr, Act::cover, kEyes, false, 0.5, kMin, StateTold::fuse,
     "", "Read the size printed on the wire behind {outlet}, touch nothing.", kLook, kGauge, see_gauge},
    {K::block_alive, "block-alive", "eyes", nullptr, Act::watch, kEyes, false, 0.4, kMin, StateTold::nothing,
     "", "Does anything else on the fuse block work?", "", kBlock, see_block},
    {K::fuse_look, "fuse-look", "eyes", nullptr, Act::watch, kEyes, false, 0.4, kMin, StateTold::nothing,
     "", "Look at position {position}: is the right fuse there, and is its element whole?", "", kFuse, see_fuse},
    {K::fuse_press, "fuse-press", "hands", nullptr, Act::fuse, kEyes, false, 0.3, kMin, StateTold::nothing,
     "Switch off what is plugged in.", "Press the fuse at position {position} home. Does {failed} work now?", "Press its body only.",
     kPress, see_press},
    {K::fuse_swap, "fuse-swap", "spare fuse", &Tools::spare_fuse, Act::fuse, kEyes, false, 0.8, kMin, StateTold::nothing,
     "Switch off what is plugged in. Take {new_fuse}.", "Put the new fuse in, never a bigger one. Does {failed} work now?",
     "{fuse_caution}", kSwap, see_swap},
    {K::pull_fuse, "pull-fuse", "hands", nullptr, Act::fuse, kEyes, false, 0.8, kMin, StateTold::nothing,
     "See something small run in {outlet}, then unplug it. Pull the fuse of {whose}.",
     "Plug it into {outlet} again: does it run? Then put the fuse back.", kNoLoad, kPull, see_pull},
    {K::neighbour_fuse, "neighbour-fuse", "hands", nullptr, Act::fuse, kEyes, false, 0.8, kMin, StateTold::nothing,
     "Is the fuse of {neighbour} out? Put its own fuse in{its_rating}.", "With that fuse in, does {failed} work now?", kNoLoad, kPress,
     see_neighbour_fuse},
    {K::tug_clamps, "tug-clamps", "hands", nullptr, Act::hands, kDeadHands, true, 0.8, kMin, StateTold::fuse,
     "", "Tug this circuit's {plus} and {minus} wire at the block, by their insulation.", kHands, kClamps, see_tug_clamps},
    {K::main_look, "main-look", "eyes", nullptr, Act::watch, kEyes, false, 0.7, kMin, StateTold::nothing,
     "", "Look at the main switch and the main fuse: on, and whole?", "Look only: a tool that slips here draws hundreds of amperes.",
     kMain, see_main},
    {K::add_up, "add-up", "eyes", nullptr, Act::watch, kPaper, false, 0.7, kMin, StateTold::nothing,
     "", "Add up what is usually plugged in at once. Is it more than {fuse_number}?", "", kAddUp, see_add_up},
}};
// clang-format on

// The compiler refuses a row with a field left out; this refuses one that is left out, or empty.
constexpr bool each_check_complete() {
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    const CheckKindRow& row = kRows[i];
    if (static_cast<std::size_t>(row.kind) != i || row.key.empty() || row.tool.empty() || row.question.empty())
      return false;
    if (!(row.minutes > 0.0) || row.minutes_citation == nullptr || row.see == nullptr) return false;
    if (row.takes.hands_on_conductors != (row.act == Act::hands)) return false;
    if (row.act == Act::probe && !row.takes.tools_on_metal) return false;
    if ((row.takes.hands_on_conductors || row.takes.tools_on_metal) && row.caution.empty()) return false;
    if (row.takes.hands_on_conductors && (row.takes.live_circuit || !row.proves_dead)) return false;
    if (row.answers.size() < 2 || row.answers.size() > kMaxChoices) return false;
    for (std::size_t a = 0; a < row.answers.size(); ++a) {
      const AnswerRow& answer = row.answers[a];
      if (answer.words.empty() || answer.bounds == nullptr || answer.chance == nullptr || answer.key == A::unknown)
        return false;
      for (std::size_t b = 0; b < a; ++b) {
        if (row.answers[b].key == answer.key || row.answers[b].words == answer.words) return false;
      }
    }
  }
  return true;
}
static_assert(each_check_complete());

}  // namespace

std::span<const CheckKindRow> check_kind_rows() { return kRows; }
const CheckKindRow& check_kind_row(CheckKind kind) { return kRows[static_cast<std::size_t>(kind)]; }

const AnswerRow* answer_row(const CheckKindRow& row, AnswerKey key) {
  const auto found =
      std::find_if(row.answers.begin(), row.answers.end(), [&](const AnswerRow& each) { return each.key == key; });
  return found == row.answers.end() ? nullptr : &*found;
}

}  // namespace diagnosis
