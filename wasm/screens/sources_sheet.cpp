// Every citation of the tables, with how sure we are of it.
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/citation.h"
#include "ui/ui.h"

namespace screens {

void draw_sources_sheet(app::AppState&) {
  ui::paragraph("Check what matters to you against the document itself.", ui::Ink::muted);
  for (const tables::Citation* citation : tables::all_citations()) {
    const ui::Scope scope(citation->id);
    ui::begin_card("source", {.name = std::string(citation->document), .tone = ui::Tone::plain});
    ui::paragraph(source_text(*citation));
    ui::caption(tables::standing_text(citation->standing));
    if (!citation->note.empty()) ui::caption(citation->note);
    ui::end_card();
  }
}

}  // namespace screens
