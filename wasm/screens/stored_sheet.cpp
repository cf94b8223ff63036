// One stored circuit: open, rename, duplicate, export, delete. One that can not be read is told
// why, and can be exported as it is or deleted.
#include "screens/fields.h"
#include "screens/pages.h"

namespace screens {
namespace {

constexpr std::string_view kDelete = "delete-circuit";

void draw_delete(app::AppState& app, std::uint32_t number, const std::string& name) {
  if (ui::button("Delete", {.kind = ui::Kind::secondary, .said = "Delete " + name})) ui::open_sheet(kDelete);
  if (ui::confirm(kDelete, {.title = "Delete '" + name + "'?",
                            .text = "You can put it back until you close the app.",
                            .yes = "Delete", .no = "Keep it", .danger = true}))
    app.desk().delete_circuit(number);
}

void draw_unreadable(app::AppState& app, const app::Stored& stored) {
  const std::uint32_t number = stored.number;
  ui::notice({.tone = ui::Tone::stop, .title = "This circuit can't be read",
              .text = stored.why_unreadable + "\nIt is kept exactly as it was stored. Export it to look at it elsewhere, "
                      "or open it with a newer Branchlight.",
              .action = {}});
  if (ui::button("Export as it is", {.icon = ui::Icon::share})) app.desk().export_circuit(number);
  draw_delete(app, number, "Circuit " + std::to_string(number));
}

}  // namespace

void draw_stored_sheet(app::AppState& app, Memory& memory) {
  const app::Stored* stored = app.desk().notebook().find(app.shown().stored);
  if (stored == nullptr) return;
  if (!stored->readable()) return draw_unreadable(app, *stored);
  const std::uint32_t number = stored->number;
  const std::string name = stored->circuit->name;
  const std::string place = stored->circuit->place;
  if (ui::button("Open", {.kind = ui::Kind::primary, .said = "Open " + name})) return app.desk().open_circuit(number);
  ui::begin_card("label", {.name = "Name and place", .tone = ui::Tone::plain});
  if (const auto typed = name_field(memory, "stored", "Name", name)) app.editor().relabel(number, circuit::SetName{*typed}, "name");
  if (const auto typed = name_field(memory, "stored-place", "Where it is", place, true))
    app.editor().relabel(number, circuit::SetPlace{*typed}, "place");
  ui::end_card();
  const ui::ButtonSpec order[] = {{.label = "Up in the list", .icon = ui::Icon::up}, {.label = "Down", .icon = ui::Icon::down, .said = "Down in the list"}};
  if (const auto pressed = ui::buttons(order)) app.desk().move_circuit(number, *pressed == 0 ? -1 : 1);
  if (ui::button("Duplicate", {.said = "Duplicate " + name})) return app.desk().duplicate_circuit(number);
  if (ui::button("Export", {.icon = ui::Icon::share, .said = "Export " + name})) app.desk().export_circuit(number);
  draw_delete(app, number, name);
}

}  // namespace screens
