// One fuse block: who sits on which position, and what feeds it.
#include <cmath>

#include "screens/fields.h"
#include "screens/places/circuits.h"
#include "screens/supply_cards.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

struct BlockAt {
  app::AppState& app;
  std::uint32_t number;
  vehicle::Vehicle of;      // as they stood when the frame began
  vehicle::Block block;

  bool tell(const vehicle::Block& told, std::string key = {}) const {
    app.editor().change(number, vehicle::SetBlock{told}, std::move(key));
    return true;
  }
};

bool draw_block(const BlockAt& at, Memory& memory) {
  vehicle::Block told = at.block;
  if (const auto name = name_field(memory, "block", "Name", told.name)) {
    told.name = *name;
    return at.tell(told, "block-name");
  }
  if (const auto positions = number_stepper(at.app, {.label = "Positions", .sub = "fuses that it takes",
                                                     .field = circuit::Field::positions, .value = static_cast<double>(told.positions)})) {
    told.positions = static_cast<int>(std::lround(positions->value));
    change(at.app, at.number, vehicle::SetBlock{told}, "positions", *positions);
    return true;
  }
  const bool capped = told.at_most_at_once.has_value();
  const units::Amperes all = vehicle::block_demand(at.of, at.block.id);
  if (ui::switch_row("Not all circuits run at once", capped,
                     {.sub = capped ? std::string() : "taken together: " + units::amperes_text(all), .disabled = false})) {
    told.at_most_at_once = capped ? std::nullopt : std::optional(std::max(all, units::Amperes(1.0)));
    return at.tell(told);
  }
  if (!capped) return false;
  const auto most = number_stepper(at.app, {.label = "BlockAt most at once", .sub = "of all its circuits",
                                            .field = circuit::Field::at_most_at_once_a, .value = told.at_most_at_once->number()});
  if (!most) return false;
  told.at_most_at_once = units::Amperes(most->value);
  change(at.app, at.number, vehicle::SetBlock{told}, "block-cap", *most);
  return true;
}

bool draw_taken(const BlockAt& at) {
  for (int position = 1; position <= at.block.positions; ++position) {
    const vehicle::PlacedCircuit* there = vehicle::at_position(at.of, at.block.id, position);
    if (there == nullptr) continue;
    const ui::Scope scope(static_cast<std::uint32_t>(position));
    const std::string badge = std::to_string(position);
    if (!ui::list_row(there->plan.name, {.badge = badge, .said = "Position " + badge + ": " + there->plan.name})) continue;
    at.app.navigator().go(app::Route::at_circuit({at.number, there->id}));
    return true;
  }
  return false;
}

bool draw_spare(const BlockAt& at) {
  std::vector<int> spare;
  for (int position = 1; position <= at.block.positions; ++position) {
    if (vehicle::at_position(at.of, at.block.id, position) == nullptr) spare.push_back(position);
  }
  if (spare.empty()) return false;
  if (!ui::disclosure(std::to_string(spare.size()) + " spare", false, "put a new circuit on one")) return false;
  ui::begin_flow();
  int pressed = 0;
  for (const int position : spare) {
    const std::string number = std::to_string(position);
    if (ui::chip(number, {.said = "New circuit on position " + number})) pressed = position;
  }
  ui::end_flow();
  if (pressed == 0) return false;
  at.app.desk().new_circuit_in(at.number, at.block.id, pressed);
  return true;
}

}  // namespace

void draw_block_sheet(app::AppState& app, Memory& memory) {
  const app::Stored* stored = app.desk().notebook().find(app.shown().stored);
  if (stored == nullptr) return;
  const vehicle::Block* block = vehicle::find_block(stored->vehicle, vehicle::BlockId{app.shown().part});
  if (block == nullptr) return;
  const BlockAt at{app, stored->number, stored->vehicle, *block};
  ui::begin_card("what", {.name = "What it is", .tone = ui::Tone::plain});
  bool edited = draw_block(at, memory);
  ui::end_card();
  ui::begin_card("positions", {.name = "Positions", .tone = ui::Tone::plain});
  ui::card_title("Positions");
  edited = edited || draw_taken(at) || draw_spare(at);
  ui::end_card();
  if (edited || draw_supply_cards({app, at.number, at.block.id})) return;
  if (at.of.blocks.size() < 2 || !ui::button("Remove this block", {.said = "Remove " + at.block.name})) return;
  app.editor().change(at.number, vehicle::RemoveBlock{at.block.id});
  app.navigator().leave_what_is_gone();
}

}  // namespace screens
