// The answer first: wire and fuse, whether the fuse protects the wire, what set it. Where there
// is no answer: why not, and the way on.
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "ui/ui.h"

namespace screens {
namespace {

// "Outlet C has 12.2 V": the one nearest its limit.
std::string lowest_outlet_text(const circuit::Circuit& circuit, const sizing::Candidate& choice) {
  const sizing::OutletResult& worst = choice.outlets[choice.worst_outlet];
  const std::string volts = units::volts_text(worst.voltage);
  if (circuit.outlets.size() == 1) return "Outlet has " + volts;
  const bool last = choice.worst_outlet + 1 == circuit.outlets.size();
  return (last ? "Far outlet " : "Outlet " + circuit::outlet_letter(choice.worst_outlet) + " ") + volts;
}

void draw_choice(const circuit::Circuit& circuit, const sizing::Answer& answer, const sizing::Candidate& choice) {
  ui::begin_card("answer", {.name = "Answer", .tone = ui::Tone::plain});
  const std::string_view colour =
      choice.fuse ? tables::fuse_colour(circuit.wiring.fuse_family, *choice.fuse) : std::string_view{};
  const tables::ConductorColours& colours = circuit::colours_of(circuit);
  const ui::Answer both[] = {
      {"Wire, " + std::string(colours.plus) + " and " + std::string(colours.minus), std::string(choice.size->size), size_unit(*choice.size), ui::Tone::plain},
      {colour.empty() ? "Fuse" : "Fuse, " + std::string(colour),
       choice.fuse ? units::number_text(choice.fuse->number(), 4) : "none", choice.fuse ? "A" : "", ui::Tone::plain}};
  ui::answers(both);
  ui::begin_flow();
  if (choice.passes) ui::pill("Wire is protected", ui::Tone::good);
  if (!choice.outlets.empty()) ui::pill(lowest_outlet_text(circuit, choice), ui::Tone::good);
  ui::end_flow();
  ui::caption(answer.reason);
  ui::end_card();
}

void draw_nothing_fits(app::AppState& app, const sizing::Answer& answer) {
  const tables::Conductor* size = app.results().nearest();
  const bool shelf = answer.verdict == sizing::Verdict::not_on_shelf;
  ui::begin_card("answer", {.name = "Answer", .tone = ui::Tone::stop});
  if (!shelf) ui::question("Nothing fits yet");
  if (shelf) ui::question(answer.headline);
  else ui::paragraph(answer.headline);
  if (ui::button(shelf ? "See what would fit" : "See what would make it fit", {.kind = ui::Kind::primary}))
    app.navigator().go(app::Route::what_if(size != nullptr ? size->id : std::string_view{}));
  ui::end_card();
  ui::announce(answer.headline);
}

void draw_no_load(app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  ui::begin_card("answer", {.name = "Answer", .tone = ui::Tone::plain});
  ui::question("What will run on this circuit?");
  ui::paragraph("Give each outlet its load: the amps or watts on the device's label.", ui::Ink::muted);
  if (!circuit.outlets.empty() &&
      ui::button("Set the load of " + circuit::outlet_letter(0), {.kind = ui::Kind::primary}))
    app.navigator().go(app::Route::at_outlet(circuit.outlets.front().id));
  ui::end_card();
}

void draw_invalid(const sizing::Answer& answer) {
  std::string text;
  for (const circuit::Problem& problem : answer.problems) {
    if (!text.empty()) text += "\n";
    text += circuit::one_line(problem);
  }
  ui::notice({.tone = ui::Tone::stop, .title = "This circuit can't be sized", .text = text, .action = {}, .alert = true});
}

}  // namespace

void draw_answer_card(app::AppState& app) {
  const sizing::Answer& answer = app.results().answer();
  switch (answer.verdict) {
    case sizing::Verdict::fits: return draw_choice(app.editor().circuit(), answer, *answer.choice());
    case sizing::Verdict::none_fits:
    case sizing::Verdict::not_on_shelf: return draw_nothing_fits(app, answer);
    case sizing::Verdict::no_load: return draw_no_load(app);
    case sizing::Verdict::invalid: return draw_invalid(answer);
  }
}

}  // namespace screens
