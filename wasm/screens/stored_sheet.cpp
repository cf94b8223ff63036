// One stored circuit: open, rename, duplicate, export, delete. And a record that can not be read: why,
// and what can be done with it.
#include "screens/fields.h"
#include "screens/places/circuits.h"

namespace screens {
namespace {

constexpr std::string_view kDeleteCircuit = "delete-circuit";

// Asks once. True: it is to go.
bool draw_delete(const std::string& name) {
  if (ui::button("Delete", {.kind = ui::Kind::secondary, .said = "Delete " + name})) ui::open_sheet(kDeleteCircuit);
  return ui::confirm(kDeleteCircuit, {.title = "Delete '" + name + "'?", .text = "You can put it back until you close the app.",
                               .yes = "Delete", .no = "Keep it", .danger = true});
}

}  // namespace

void draw_stored_sheet(app::AppState& app, Memory& memory) {
  const app::CircuitRef ref = app.shown().circuit();
  const vehicle::PlacedCircuit* placed = app.desk().notebook().find(ref);
  if (placed == nullptr) return;
  const std::string name = placed->plan.name;
  if (ui::button("Open", {.kind = ui::Kind::primary, .said = "Open " + name})) return app.desk().open_circuit(ref);
  ui::begin_card("label", {.name = "Name", .tone = ui::Tone::plain});
  if (const auto typed = name_field(memory, "stored", "Name", name)) app.editor().relabel(ref, circuit::SetName{*typed}, "name");
  ui::end_card();
  const ui::ButtonSpec order[] = {{.label = "Up in the list", .icon = ui::Icon::up}, {.label = "Down", .icon = ui::Icon::down, .said = "Down in the list"}};
  if (const auto pressed = ui::buttons(order)) return app.desk().move_circuit(ref, *pressed == 0 ? -1 : 1);
  if (ui::button("Duplicate", {.said = "Duplicate " + name})) return app.desk().duplicate_circuit(ref);
  if (ui::button("Export", {.icon = ui::Icon::share, .said = "Export " + name})) return app.desk().export_circuit(ref);
  if (draw_delete(name)) app.desk().delete_circuit(ref);
}

void draw_unread_sheet(app::AppState& app, Memory&) {
  const app::Unread* unread = app.desk().notebook().find_unread(app.shown().stored);
  if (unread == nullptr) return;
  const std::uint32_t number = unread->number;
  const std::string name = unread->key;
  ui::notice({.tone = ui::Tone::stop, .title = "This record can't be read",
              .text = unread->why + "\nIt is kept exactly as it was stored. Export it to look at it elsewhere, "
                      "or open it with a newer Branchlight.",
              .action = {}});
  if (ui::button("Export as it is", {.icon = ui::Icon::share})) return app.desk().export_unread(number);
  if (draw_delete(name)) app.desk().delete_unread(number);
}

}  // namespace screens
