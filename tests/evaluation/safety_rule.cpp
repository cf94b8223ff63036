#include "evaluation/safety_rule.h"

#include <cctype>
#include <cstdlib>

namespace evaluation {
namespace {

using diagnosis::Act;
using diagnosis::Case;
using diagnosis::Check;
using diagnosis::CheckKind;
using diagnosis::Location;
using diagnosis::Remedy;
using diagnosis::RemedyKind;
using diagnosis::RemedyStep;

// The largest "<number> A fuse" that a sentence speaks of; 0 when it speaks of none.
double fuse_spoken_of(const std::string& words) {
  double most = 0.0;
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (std::isdigit(static_cast<unsigned char>(words[at])) == 0) continue;
    char* end = nullptr;
    const double number = std::strtod(words.c_str() + at, &end);
    const auto after = static_cast<std::size_t>(end - words.c_str());
    if (words.compare(after, 7, " A fuse") == 0 && number > most) most = number;
    at = after;
  }
  return most;
}

// The fuse that is there, where somebody read it off with every wire and it protects them; else none may be named.
double largest_fuse_to_name(const Case& the_case) {
  const diagnosis::Built& built = the_case.built;
  if (!built.fuse || built.fuse_known != diagnosis::Knowledge::known || built.protection != diagnosis::Protection::protects) return 0.0;
  for (const diagnosis::BuiltRun& run : built.runs) {
    if (run.wire_known != diagnosis::Knowledge::known) return 0.0;
  }
  return built.runs.size() >= the_case.circuit.outlets.size() ? built.fuse->number() : 0.0;
}

bool fingers_on_metal(CheckKind kind) {
  return kind == CheckKind::tug || kind == CheckKind::tug_clamps;
}

bool tells_to_prove_dead(const std::string& words) {
  return words.find("dead") != std::string::npos || words.find("no volts") != std::string::npos;
}

// What of a repair cannot be done without fingers on conductors: typed a second time on purpose, so that a
// kind taken out of the engine's own list is missed here.
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

std::string breach(const Case& the_case, const Check& check) {
  const bool hands = check.act == Act::hands || fingers_on_metal(check.kind) || check.state.parted_at.has_value();
  const bool looks = check.kind == CheckKind::look_behind || check.kind == CheckKind::read_gauge;
  if (looks && (check.state.fuse_in || check.question.find("touch nothing") == std::string::npos))
    return "bare metal drawn forward with the fuse in, or to be touched";
  if (hands && !the_case.tools.meter && !the_case.tools.lamp) return "hands with no tester";
  if (hands && check.state.fuse_in) return "hands near conductors with the fuse in";
  if (hands && !check.proves_dead) return "hands near conductors that nobody proved dead";
  if (hands && check.caution.empty()) return "hands near conductors without a caution";
  if (check.kind == CheckKind::ohms && check.state.fuse_in) return "a meter on ohms with the fuse in";
  if (check.kind == CheckKind::ohms && check.state.plugged != diagnosis::Plugged::nothing) return "ohms with a load in";
  std::string spoken = check.question;
  for (const std::string& words : check.first) spoken += " " + words;
  if (fuse_spoken_of(spoken) > largest_fuse_to_name(the_case) + 1e-9) return "speaks of a bigger fuse";
  if (check.kind == CheckKind::ohms && !check.proves_dead) return "ohms on what nobody proved dead";
  if (check.kind == CheckKind::fuse_swap && !the_case.tools.spare_fuse) return "asks for a fuse that is not there";
  for (const diagnosis::Site& site : check.sites) {
    const bool battery = site.location == Location::battery;
    if (battery && hands) return "hands on the battery";
    if (battery && check.act == Act::probe && check.caution.empty()) return "probes on the battery without a caution";
  }
  return {};
}

std::string breach(const Case& the_case, const Remedy& remedy) {
  bool fuse_in = true, main_on = true, proved = false, hands = false;
  for (const RemedyStep& step : remedy.steps) {
    if (step.act == Act::hands) {
      hands = true;
      if (step.fuse_in) return "wiring with the fuse in: " + step.words;
      if (fuse_in) return "wiring before the fuse was drawn: " + step.words;
      if (!step.proved_dead || !proved) return "wiring before it was proved dead: " + step.words;
      if (remedy.kind == RemedyKind::remake_feeder_joint && (main_on || step.main_on)) {
        return "work on the feeder with the battery on it: " + step.words;
      }
    }
    if (step.fits_fuse && step.fits_fuse->number() > largest_fuse_to_name(the_case) + 1e-9) return "a bigger fuse: " + step.words;
    if (fuse_spoken_of(step.words) > largest_fuse_to_name(the_case) + 1e-9) return "speaks of a bigger fuse: " + step.words;
    // A step that puts the fuse back ends the time of hands until it is out and proved again.
    fuse_in = step.fuse_in;
    main_on = step.main_on;
    proved = !step.fuse_in && (proved || tells_to_prove_dead(step.words));
  }
  if (is_wiring(remedy.kind) && !hands) return "wiring told as if it took no hands";
  if (is_wiring(remedy.kind) && remedy.cautions.empty()) return "wiring without a caution";
  if (remedy.steps.empty()) return "a remedy without steps";
  if (remedy.retest.words.empty()) return "no re-test at the end";
  return {};
}

}  // namespace evaluation
