// Where the volts go on the way to the outlet nearest its limit, and what a table that counts the wire
// alone would have said: so that nobody takes us to be wrong by a size.
#include "screens/pages.h"
#include "screens/words.h"
#include "ui/share.h"
#include "ui/ui.h"

namespace screens {
namespace {

// Two decimals: half a tenth of a volt is what the parts differ by.
std::string volts(units::Volts lost) { return units::number_text(lost.number(), 2) + " V"; }

std::string beside(const sizing::WireOnly& only, const sizing::Candidate& choice, units::Preference preference) {
  const std::string of = units::amperes_text(only.current) + " over " + units::length_text(only.one_way, preference);
  if (only.size == nullptr) return "A table that counts the wire alone ends before " + of + ".";
  if (only.size->id == choice.size->id) return "A table that counts the wire alone says " + size_text(*only.size) + " for " + of + ", too.";
  return "A table that counts the wire alone says " + size_text(*only.size) + " for " + of +
         ". Ours counts the joints, the fuse, the feeder, the warm wire and what the parts take as well.";
}

}  // namespace

void draw_volts_card(app::AppState& app) {
  const sizing::VoltShares* went = app.results().volts();
  const sizing::Candidate* choice = app.results().answer().choice();
  if (went == nullptr || choice == nullptr || went->shares.empty()) return;
  const double lost = (went->at_battery - went->at_device).number();
  if (!(lost > 0.0)) return;
  ui::begin_card("volts", {.name = "Where the volts go", .tone = ui::Tone::plain});
  const std::string to = circuit::outlet_letter(went->outlet);
  if (ui::disclosure("Where the volts go", false, volts(units::Volts(lost)) + " on the way to " + to)) {
    for (const sizing::VoltShare& share : went->shares) {
      const double part = share.volts.number() / lost;
      ui::share_row(share.name, {.value = volts(share.volts), .share = part, .sub = units::percent_text(part) + " of what is lost", .said = {}});
    }
    ui::caption("From " + volts(went->at_battery) + " at the battery to " + volts(went->at_device) + " at " + to + ".");
    ui::caption(beside(app.results().wire_only(), *choice, app.settings().units()));
  }
  ui::end_card();
}

}  // namespace screens
