// Keeps the sheet on screen and the address in step: the address opens it, closing it takes
// the address back.
#include "screens/pages.h"
#include "screens/places.h"
#include "ui/ui.h"

namespace screens {
namespace {

ui::SheetOptions head_of(const app::AppState& app, const SheetRow& row) {
  if (row.head.get() != nullptr) return row.head.get()(app);
  return {.title = std::string(row.title.get()), .subtitle = std::string(row.subtitle.get()), .tall = row.tall};
}

}  // namespace

void draw_sheet(app::AppState& app, Memory& memory) {
  const bool wanted = app.shown().sheet != app::Sheet::none;
  const std::string address = wanted ? places().address(app.shown()) : std::string();
  if (address != memory.open_sheet) {
    if (!memory.open_sheet.empty()) ui::close_sheet(memory.open_sheet);
    if (wanted) ui::open_sheet(address);
    memory.open_sheet = address;
    memory.sheet_leaving = false;
    memory.draft = {};
  } else if (wanted && !memory.sheet_leaving && !ui::sheet_is_open(address)) {
    memory.sheet_leaving = true;   // the host changes the address in its own time
    app.navigator().back();
    return;
  }
  if (!wanted || memory.sheet_leaving) return;
  const SheetRow& row = sheet_of(app.shown().sheet);
  if (!ui::begin_sheet(address, head_of(app, row))) return;
  draw_problem(app);
  row.draw.get()(app, memory);
  ui::end_sheet();
}

}  // namespace screens
