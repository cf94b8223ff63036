// Every citation, of the rules and of the tables, with how sure we are of it.
#include "screens/places/preferences.h"
#include "screens/words.h"
#include "sizing/rules.h"
#include "tables/citation.h"
#include "ui/ui.h"

namespace screens {
namespace {

void draw_citation(const tables::Citation& citation) {
  const ui::Scope scope(citation.id);
  ui::begin_card("source", {.name = std::string(citation.document), .tone = ui::Tone::plain});
  ui::paragraph(source_text(citation));
  ui::caption(tables::standing_text(citation.standing));
  if (!citation.note.empty()) ui::caption(citation.note);
  ui::end_card();
}

}  // namespace

void draw_sources_sheet(app::AppState&, Memory&) {
  ui::paragraph("Check what matters to you against the document itself.", ui::Ink::muted);
  ui::heading("Rules");
  for (const tables::Citation* citation : sizing::rule_citations()) draw_citation(*citation);
  ui::heading("Figures");
  for (const tables::Citation* citation : tables::all_citations()) draw_citation(*citation);
}

}  // namespace screens
