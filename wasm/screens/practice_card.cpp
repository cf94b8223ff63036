// Whose rules bind in this vehicle, and what colours its plus and minus have.
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/conductor_colours.h"
#include "tables/practice.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string colours_text(const tables::ConductorColours& colours) {
  return "plus " + std::string(colours.plus_words) + "; minus " + std::string(colours.minus_words);
}

// What binds while none is chosen: by the kind of vehicle and the wire.
tables::Practice usual(circuit::Circuit circuit) {
  circuit.practice = std::nullopt;
  return circuit::practice_of(circuit);
}

const tables::ConductorColours& untold(circuit::Circuit circuit) {
  circuit.colours.clear();
  return circuit::colours_of(circuit);
}

bool draw_rules(app::AppState& app, const circuit::Circuit& circuit) {
  const auto practices = tables::practices();
  const tables::PracticeRow& by_itself = tables::practice(usual(circuit));
  std::vector<std::string> names{"The usual ones here"}, subs{std::string(by_itself.name)};
  std::size_t current = 0;
  for (std::size_t i = 0; i < practices.size(); ++i) {
    if (circuit.practice == practices[i].id) current = i + 1;
    names.emplace_back(practices[i].name);
    subs.emplace_back(practices[i].about);
  }
  if (!ui::disclosure("Whose rules bind", false, tables::practice(circuit::practice_of(circuit)).name)) return false;
  if (const auto chosen = ui::choice("Whose rules bind", names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs})) {
    const auto practice = *chosen == 0 ? std::nullopt : std::optional(practices[*chosen - 1].id);
    app.editor().dispatch(circuit::SetPractice{practice, circuit.colours});
    return true;
  }
  ui::heading("What they ask", 3);
  for (const tables::PracticeText& text : tables::practice(circuit::practice_of(circuit)).texts) {
    ui::paragraph(std::string(text.what) + ": " + std::string(text.says));
    ui::caption("Source: " + source_text(*text.citation) + ". How sure: " + std::string(tables::standing_text(text.citation->standing)) + ".");
  }
  return false;
}

bool draw_colours(app::AppState& app, const circuit::Circuit& circuit) {
  const auto all = tables::conductor_colours();
  std::vector<std::string> names{circuit.practice ? "As the rules have it" : "Not told"}, subs;
  subs.push_back(colours_text(untold(circuit)));
  std::size_t current = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (circuit.colours == all[i].key) current = i + 1;
    names.emplace_back(all[i].where);
    subs.push_back(colours_text(all[i]));
  }
  const tables::ConductorColours& now = circuit::colours_of(circuit);
  if (!ui::disclosure("Wire colours", false, "plus " + std::string(now.plus) + ", minus " + std::string(now.minus))) return false;
  if (const auto chosen = ui::choice("Wire colours", names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs})) {
    app.editor().dispatch(circuit::SetPractice{circuit.practice, *chosen == 0 ? std::string() : std::string(all[*chosen - 1].key)});
    return true;
  }
  ui::caption(now.caution, ui::Ink::caution);
  ui::caption("Source: " + source_text(*now.citation) + ". How sure: " + std::string(tables::standing_text(now.citation->standing)) + ".");
  ui::caption(tables::kTrustNoColour, ui::Ink::caution);
  return false;
}

}  // namespace

void draw_practice_card(app::AppState& app) {
  const circuit::Circuit circuit = app.editor().circuit();
  ui::begin_card("practice", {.name = "Rules and colours", .tone = ui::Tone::plain});
  if (!draw_rules(app, circuit)) draw_colours(app, circuit);
  ui::caption("They hold for the whole vehicle.");
  ui::end_card();
}

}  // namespace screens
