// What the circuit is called and which fuse feeds it.
#include "screens/fields.h"
#include "screens/pages.h"

namespace screens {

void draw_label_sheet(app::AppState& app, Memory& memory) {
  const circuit::Circuit circuit = app.editor().circuit();
  ui::begin_card("label", {.name = "Name and place", .tone = ui::Tone::plain});
  if (const auto name = name_field(memory, "circuit", "Name", circuit.name))
    app.editor().dispatch(circuit::SetName{*name}, "name");
  if (const auto place = name_field(memory, "place", "Where it is", circuit.place, true))
    app.editor().dispatch(circuit::SetPlace{*place}, "place");
  const auto position = number_stepper(app, {.label = "Fuse position", .sub = "counted on the block",
                                             .field = circuit::Field::fuse_position,
                                             .value = static_cast<double>(circuit.fuse_position)});
  if (position) commit(app, circuit::SetFusePosition{static_cast<int>(position->value)}, "position", *position);
  ui::end_card();
}

}  // namespace screens
