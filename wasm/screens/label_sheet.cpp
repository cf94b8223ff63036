// What the circuit is called, and which fuse of its vehicle feeds it.
#include "screens/fields.h"
#include "screens/places/size.h"
#include "ui/ui.h"

namespace screens {
namespace {

// Who sits on a position changes places with this circuit.
void draw_positions(app::AppState& app, const vehicle::Block& block) {
  const vehicle::Vehicle& of = app.editor().vehicle();
  const vehicle::PlacedCircuit& placed = app.editor().placed();
  std::vector<std::string> names, subs;
  std::size_t current = static_cast<std::size_t>(block.positions);
  for (int position = 1; position <= block.positions; ++position) {
    const vehicle::PlacedCircuit* there = vehicle::at_position(of, block.id, position);
    names.push_back("Position " + std::to_string(position));
    subs.push_back(there == nullptr ? "spare" : there->id == placed.id ? "this circuit" : there->plan.name + ": changes places");
    if (there != nullptr && there->id == placed.id) current = static_cast<std::size_t>(position - 1);
  }
  const auto chosen = ui::choice("Position on " + block.name, names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs});
  if (chosen)
    app.editor().change(app.editor().current().circuit.vehicle,
                        vehicle::PlaceCircuit{placed.id, block.id, static_cast<int>(*chosen) + 1});
}

}  // namespace

void draw_label_sheet(app::AppState& app, Memory& memory) {
  const circuit::Circuit circuit = app.editor().circuit();
  ui::begin_card("label", {.name = "Name", .tone = ui::Tone::plain});
  if (const auto name = name_field(memory, "circuit", "Name", circuit.name)) app.editor().dispatch(circuit::SetName{*name}, "name");
  if (const auto place = name_field(memory, "place", "Vehicle", circuit.place)) app.editor().dispatch(circuit::SetPlace{*place}, "place");
  ui::end_card();
  const std::uint64_t revision = app.editor().revision();
  const vehicle::Vehicle of = app.editor().vehicle();
  const vehicle::BlockId home = app.editor().placed().block;
  for (const vehicle::Block& block : of.blocks) {
    if (app.editor().revision() != revision) return;
    const ui::Scope scope(block.id.number);
    ui::begin_card("positions", {.name = block.name, .tone = ui::Tone::plain});
    const std::string sub = block.id == home ? "position " + std::to_string(circuit.fuse_position) : "move to this block";
    if (ui::disclosure(block.name, false, sub)) draw_positions(app, block);
    ui::end_card();
  }
}

}  // namespace screens
