// How a calculator comes to its answer: the rule in words and symbols, each source, how sure.
#include <algorithm>

#include "screens/lookup.h"
#include "screens/places/quick.h"
#include "ui/ui.h"

namespace screens {

void draw_how_sheet(app::AppState& app, Memory&) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(app.shown().key);
  if (calculator == nullptr) return;
  const calculators::Evaluation evaluation =
      calculators::evaluate(*calculator, app.lookup().quick_values(*calculator), app.settings().units());
  ui::begin_card("rule", {.name = "Rule", .tone = ui::Tone::plain});
  ui::paragraph(calculator->formula_words);
  ui::question(calculator->formula);
  ui::end_card();
  if (evaluation.result) {
    ui::begin_card("answer", {.name = "This answer", .tone = ui::Tone::plain});
    ui::card_title("This answer");
    ui::paragraph(evaluation.result->sentence);
    for (const std::string& note : evaluation.result->notes) ui::caption(note);
    ui::end_card();
  }
  // Of the formula first, then of the figures this very answer took from the tables.
  std::vector<const tables::Citation*> citations(calculator->citations.begin(), calculator->citations.end());
  if (evaluation.result)
    for (const tables::Citation* citation : evaluation.result->citations)
      if (std::find(citations.begin(), citations.end(), citation) == citations.end()) citations.push_back(citation);
  ui::begin_card("sources", {.name = "Sources", .tone = ui::Tone::plain});
  draw_citations(citations);
  ui::end_card();
  ui::caption("Planning figures. Local codes, the makers' instructions and licensed practice come first.");
}

}  // namespace screens
