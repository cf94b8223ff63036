#include "diagnosis/safety.h"

namespace diagnosis {
namespace {

constexpr double kRounding = 1e-9;

// What takes fingers near conductors, told from what is done and where, whatever the row's own flag says.
bool takes_hands(const Check& check) {
  if (check.act == Act::hands || check.state.parted_at) return true;
  switch (check.kind) {
    case CheckKind::look_behind:
    case CheckKind::tug:
    case CheckKind::tug_clamps:
    case CheckKind::read_gauge: return true;
    default: break;
  }
  const bool by_tips = check.kind == CheckKind::volts || check.kind == CheckKind::glow || check.kind == CheckKind::ohms;
  for (const Site& site : check.sites) {
    if (site.location == Location::behind && !by_tips) return true;
  }
  return false;
}

bool is_wiring(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::remake_feeder_joint:
    case RemedyKind::remake_clamp:
    case RemedyKind::replace_run:
    case RemedyKind::remake_splice:
    case RemedyKind::clear_short:
    case RemedyKind::refit_tab:
    case RemedyKind::replace_outlet:
    case RemedyKind::swap_at_tabs:
    case RemedyKind::swap_at_splice:
    case RemedyKind::reconnect_pair:
    case RemedyKind::thicker_wire: return true;
    default: return false;
  }
}

}  // namespace

std::string unsafe(const Case&, const Check& check) {
  const bool hands = takes_hands(check);
  if (hands && check.state.fuse_in) return "Hands near bare conductors with the fuse in.";
  if (hands && !check.proves_dead) return "Hands near bare conductors that were not proved dead.";
  if (hands && check.caution.empty()) return "Hands near bare conductors without a caution.";
  if (check.state.parted_at && (check.state.fuse_in || !check.proves_dead)) return "A splice parted while it may be live.";
  if (check.kind == CheckKind::ohms && check.state.fuse_in) return "A meter on ohms with the fuse in.";
  for (const Site& site : check.sites) {
    if (site.location == Location::battery && hands) return "Hands at the battery, which can not be switched off.";
  }
  const bool across_the_source = check.red.kind == SpotKind::battery_post || check.red.kind == SpotKind::bus;
  if (check.kind == CheckKind::ohms && across_the_source) return "A meter on ohms across the battery.";
  return {};
}

std::string unsafe(const Case& the_case, const RemedyStep& step) {
  if (step.act == Act::hands && step.fuse_in) return "Hands near bare conductors with the fuse in.";
  if (step.act == Act::hands && !step.proved_dead) return "Hands near bare conductors that were not proved dead.";
  if (step.fits_fuse && step.fits_fuse->number() > the_case.fitted.fuse.number() + kRounding) return "A bigger fuse.";
  return {};
}

std::string unsafe(const Case& the_case, const Remedy& remedy) {
  bool dead = false, hands = false;   // proved, and still so; any step by hand
  for (const RemedyStep& step : remedy.steps) {
    const std::string why = unsafe(the_case, step);
    if (!why.empty()) return why;
    const bool in_the_supply = remedy.kind == RemedyKind::remake_clamp || remedy.kind == RemedyKind::remake_feeder_joint ||
                               remedy.kind == RemedyKind::restore_main;
    if (step.act == Act::hands && in_the_supply && step.main_on) return "Hands at the block or the battery with the main on.";
    if (step.act == Act::hands && !dead) return "Hands before dead was proved.";
    hands = hands || step.act == Act::hands;
    if (step.fits_fuse && !step.fuse_in) return "A fuse put in while the step says that it is out.";
    dead = (dead || step.proves_dead) && !step.fuse_in;
  }
  if (remedy.steps.empty()) return "No steps.";
  if (is_wiring(remedy.kind) && !hands) return "Wiring told as if it took no hands.";
  if (remedy.retest.words.empty()) return "No re-test.";
  return {};
}

}  // namespace diagnosis
