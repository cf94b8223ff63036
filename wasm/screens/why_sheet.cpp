// One size of wire, judged: every check with its figure, its limit, where the limit comes from
// and how sure we are of it.
#include "circuit/validate.h"
#include "screens/places/size.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

void draw_judgement(const sizing::Judgement& judgement) {
  ui::begin_card(criterion_name(judgement.criterion), {.name = std::string(criterion_name(judgement.criterion)),
                                                       .tone = ui::Tone::plain});
  ui::begin_flow();
  ui::pill(std::string(criterion_name(judgement.criterion)) + (judgement.passes ? ": passes" : ": fails"),
           judgement.passes ? ui::Tone::good : ui::Tone::stop);
  ui::end_flow();
  ui::paragraph(judgement.sentence);
  if (judgement.citation != nullptr) {
    ui::caption("Source: " + source_text(*judgement.citation) + ". How sure: " +
                std::string(tables::standing_text(judgement.citation->standing)) + ".");
    if (!judgement.citation->note.empty()) ui::caption(judgement.citation->note);
  }
  ui::end_card();
}

void draw_summary(app::AppState& app, const sizing::Candidate& candidate) {
  ui::begin_card("summary", {.name = "Summary", .tone = ui::Tone::plain});
  const sizing::Judgement* failure = candidate.first_failure();
  if (failure != nullptr) ui::question(size_text(*candidate.size) + " is not the answer: " +
                                       std::string(criterion_failed(failure->criterion)) + ".");
  else ui::question(size_text(*candidate.size) + " passes every check.");
  if (candidate.fuse) ui::fact_row("Fuse", fuse_text(app.editor().circuit(), *candidate.fuse));
  if (candidate.derated_ampacity)
    ui::fact_row("The wire may carry", units::amperes_text(*candidate.derated_ampacity), "all the time, where it lies");
  ui::fact_row("The circuit may carry", units::amperes_text(candidate.design_current), "at most at once");
  ui::fact_row("Lost as heat in the wire", units::watts_text(candidate.lost_in_wire), "with all of that flowing");
  ui::end_card();
}

void draw_outlets(app::AppState& app, const sizing::Candidate& candidate) {
  ui::begin_card("outlets", {.name = "Outlets", .tone = ui::Tone::plain});
  ui::card_title("At each outlet", "worst case");
  const circuit::Circuit& circuit = app.editor().circuit();
  for (std::size_t i = 0; i < candidate.outlets.size() && i < circuit.outlets.size(); ++i) {
    const sizing::OutletResult& outlet = candidate.outlets[i];
    const std::string value = outlet.runs ? units::volts_text(outlet.voltage) : std::string("can't run");
    ui::fact_row(circuit::outlet_title(circuit, i), value,
                 "drop " + units::percent_text(outlet.drop_fraction) + ", limit " + units::percent_text(outlet.drop_limit) +
                     "; battery low: " + units::volts_text(outlet.voltage_low));
  }
  ui::end_card();
}

}  // namespace

void draw_why_sheet(app::AppState& app, Memory&) {
  const tables::Conductor* size = app.results().size_in_hand();
  if (app.results().judged() == nullptr) return;
  const sizing::Candidate& candidate = *app.results().judged();
  draw_summary(app, candidate);
  for (const bool passes : {false, true})
    for (const sizing::Judgement& judgement : candidate.judgements)
      if (judgement.passes == passes) draw_judgement(judgement);
  draw_outlets(app, candidate);
  if (candidate.passes) return;
  if (ui::button("What would make " + size_text(*size) + " fit", {.kind = ui::Kind::secondary}))
    app.navigator().go(app::Route::what_if(size->id));
}

}  // namespace screens
