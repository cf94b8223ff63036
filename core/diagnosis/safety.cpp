#include "diagnosis/safety.h"

#include <algorithm>

#include "diagnosis/prove_dead.h"
#include "diagnosis/remedy_row.h"

namespace diagnosis {
namespace {

constexpr double kRounding = 1e-9;

bool by_tips(const Check& check) {
  return check.kind == CheckKind::volts || check.kind == CheckKind::glow || check.kind == CheckKind::ohms;
}
bool at(const Check& check, Location location) {
  return std::any_of(check.sites.begin(), check.sites.end(),
                     [&](const Site& site) { return site.location == location; });
}

// An outlet drawn forward by its plate, eyes only.
bool only_looks(const Check& check) {
  return check.kind == CheckKind::look_behind || check.kind == CheckKind::read_gauge;
}

// What takes fingers near conductors, told from what is done and where as well, whatever the row says.
bool takes_hands(const Check& check) {
  if (check.takes.hands_on_conductors || check.act == Act::hands || check.state.parted_at) return true;
  switch (check.kind) {
    case CheckKind::tug:
    case CheckKind::tug_clamps: return true;
    default: break;
  }
  return at(check, Location::behind) && !by_tips(check) && !only_looks(check);
}
bool takes_tools(const Check& check) { return check.takes.tools_on_metal || check.act == Act::probe || by_tips(check); }

// Hands: the fuse out, the part proved dead, and never at the battery.
std::string against_hands(const Check& check) {
  if (check.state.fuse_in) return "Hands near bare conductors with the fuse in.";
  if (!check.proves_dead) return "Hands near bare conductors that were not proved dead.";
  if (at(check, Location::battery)) return "Hands at the battery, which can not be switched off.";
  return {};
}

// Tools: insulated tips of a meter on volts or of a lamp on live metal; a meter on ohms on what is proved dead.
// Anything else only together with hands, by their rule.
std::string against_tools(const Check& check, bool hands) {
  if (check.kind == CheckKind::volts || check.kind == CheckKind::glow) return {};
  if (check.kind == CheckKind::ohms) {
    if (check.state.fuse_in) return "A meter on ohms with the fuse in.";
    if (!check.proves_dead) return "A meter on ohms on what was not proved dead.";
    const bool across_the_source = check.red.kind == SpotKind::battery_post || check.red.kind == SpotKind::bus;
    return across_the_source ? "A meter on ohms across the battery." : "";
  }
  return hands ? "" : "Tools on metal that no rule permits.";
}

}  // namespace

std::string unsafe(const Check& check) {
  const bool hands = takes_hands(check), tools = takes_tools(check);
  if (only_looks(check) && check.state.fuse_in) return "Bare metal drawn forward with the fuse in.";
  if (hands) {
    if (std::string why = against_hands(check); !why.empty()) return why;
  }
  if (tools) {
    if (std::string why = against_tools(check, hands); !why.empty()) return why;
  }
  return {};
}

std::string unsafe(const Case& the_case, const Check& check) {
  std::string why = unsafe(check);
  if (why.empty() && check.proves_dead && !can_prove_dead(the_case.tools)) why = "Nothing in hand that proves dead.";
  if (why.empty() && check.caution.empty() && (takes_hands(check) || takes_tools(check)))
    why = "Hands or tools on metal without a caution.";
  return why;
}

std::string unsafe(const Case& the_case, const RemedyStep& step) {
  if (step.act == Act::hands && step.fuse_in) return "Hands near bare conductors with the fuse in.";
  if (step.act == Act::hands && !step.proved_dead) return "Hands near bare conductors that were not proved dead.";
  if (step.fits_fuse) {
    if (!names_fuse(the_case)) return "A fuse rating that nobody read off, or that does not protect the wire.";
    if (step.fits_fuse->number() > the_case.built.fuse->number() + kRounding) return "A bigger fuse.";
  }
  return {};
}

std::string unsafe(const Case& the_case, const Remedy& remedy) {
  const RemedyRow& row = remedy_row(remedy.kind);
  bool dead = false, hands = false, borrowed = false;  // proved, and still so; any step by hand; a tester to get first
  for (const RemedyStep& step : remedy.steps) {
    if (std::string why = unsafe(the_case, step); !why.empty()) return why;
    const bool by_hand = step.act == Act::hands;
    if (by_hand && !row.takes.hands_on_conductors) return "Hands that the remedy does not state.";
    if (by_hand && row.supply != Supply::beyond_the_fuse && step.main_on)
      return "Hands at the block or the battery with the main on.";
    if (by_hand && row.supply == Supply::before_the_block && step.minus_on)
      return "Hands before the block with the battery's minus lead on.";
    if (by_hand && !dead) return "Hands before dead was proved.";
    if (by_hand && !can_prove_dead(the_case.tools) && !borrowed) return "Hands with nothing that proves dead.";
    hands = hands || by_hand;
    borrowed = borrowed || (step.act == Act::watch && !step.words.empty() && step.words == borrow_words(the_case));
    const bool fuse = step.puts_fuse_in || step.fits_fuse.has_value();
    if (fuse && !step.fuse_in) return "A fuse put in while the step says that it is out.";
    dead = (dead || step.proves_dead) && !step.fuse_in && !step.exposes;
  }
  if (remedy.steps.empty()) return "No steps.";
  if (row.takes.hands_on_conductors && !hands) return "Wiring told as if it took no hands.";
  if (remedy.cautions.empty()) return "No caution.";
  if (remedy.retest.words.empty()) return "No re-test.";
  return {};
}

}  // namespace diagnosis
