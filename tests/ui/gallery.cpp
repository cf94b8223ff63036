#include "gallery.h"

#include <array>
#include <vector>

namespace gallery {
namespace {

ui::Read within(std::string_view text, double low, double high, std::string_view unit) {
  char* end = nullptr;
  const std::string number(text);
  const double value = std::strtod(number.c_str(), &end);
  if (end == number.c_str()) return {std::nullopt, "Type a number."};
  if (value < low) return {std::nullopt, "That is too little, in " + std::string(unit) + "."};
  if (value > high) return {std::nullopt, "That is too much, in " + std::string(unit) + "."};
  return {value, {}};
}

std::string shown(double value, std::string_view unit) {
  std::string text = std::to_string(value);
  text.erase(text.find('.') + 2);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text + " " + std::string(unit);
}

}  // namespace

drawing::Picture chain(int outlets) {
  using drawing::Ink;
  drawing::Picture p;
  p.width = 100.0 + 72.0 * outlets;
  p.height = 96;
  p.description = "Battery 12.8 V, fuse 15 A, outlets A, B, C in a chain.";
  const double end = p.width - 32;
  p.shapes.push_back({drawing::Line{{34, 34}, {end, 34}, 2.5, Ink::positive}, {}});
  p.shapes.push_back({drawing::Line{{34, 66}, {end, 66}, 2.5, Ink::negative}, {}});
  p.shapes.push_back({drawing::Box{{2, 28}, 32, 44, 5, 1.75, Ink::text, Ink::card}, {}});
  p.shapes.push_back({drawing::Text{{18, 44}, "12.8", drawing::Anchor::centre, drawing::TextSize::caption, true, Ink::text}, {}});
  p.shapes.push_back({drawing::Text{{18, 58}, "V", drawing::Anchor::centre, drawing::TextSize::caption, false, Ink::muted}, {}});
  p.shapes.push_back({drawing::Box{{44, 24}, 40, 20, 5, 1.75, Ink::text, Ink::card}, {}});
  p.shapes.push_back({drawing::Text{{64, 34}, "15 A", drawing::Anchor::centre, drawing::TextSize::caption, true, Ink::text}, {}});
  for (int i = 0; i < outlets; ++i) {
    const double x = 68 + 72.0 * (i + 1);
    const drawing::Subject subject{1, static_cast<std::uint32_t>(i + 1)};
    p.shapes.push_back({drawing::Line{{x, 34}, {x, 66}, 1.75, Ink::text}, {}});
    p.shapes.push_back({drawing::Circle{{x, 34}, 4, 1, Ink::none, Ink::positive}, {}});
    p.shapes.push_back({drawing::Circle{{x, 66}, 4, 1, Ink::none, Ink::negative}, {}});
    p.shapes.push_back({drawing::Circle{{x, 50}, 11, 1.75, Ink::text, Ink::card}, subject});
    p.shapes.push_back({drawing::Text{{x, 50}, std::string(1, static_cast<char>('A' + i)), drawing::Anchor::centre,
                                      drawing::TextSize::caption, true, Ink::text}, subject});
    p.shapes.push_back({drawing::Text{{x - 36, 14}, "1.4 m", drawing::Anchor::centre, drawing::TextSize::caption, false, Ink::muted}, {}});
    p.shapes.push_back({drawing::Text{{x, 88}, "12.3 V", drawing::Anchor::centre, drawing::TextSize::caption, false, Ink::muted}, {}});
  }
  return p;
}

void answers(Model& m) {
  ui::begin_card("answer", {.name = "Answer"});
  const std::array<ui::Answer, 2> both{{{.caption = "Wire, red and black", .number = "10", .unit = "AWG · 5.3 mm²"},
                                        {.caption = "Fuse", .number = "15", .unit = "A"}}};
  ui::answers(both);
  ui::begin_flow();
  ui::pill("Wire is protected", ui::Tone::good);
  ui::pill("Far outlet 12.2 V", ui::Tone::good);
  ui::end_flow();
  ui::caption("Set by voltage drop at C with 15 A flowing. 12 AWG would lose 7.3 %.");
  ui::end_card();
  ui::begin_card("sketch");
  if (ui::picture("sketch", chain(3))) ++m.pressed;
  ui::end_card();
  ui::begin_card("ladder");
  const std::array<ui::LadderRow, 4> rows{{
      {.label = "14", .unit = "AWG", .fill = 1.0, .value = "11.6 %", .tone = ui::Tone::stop, .chosen = m.size == 0},
      {.label = "12", .unit = "AWG", .fill = 0.73, .value = "7.3 %", .tone = ui::Tone::stop, .chosen = m.size == 1, .struck = true, .note = "The shop has none"},
      {.label = "10", .unit = "AWG", .fill = 0.46, .value = "4.6 %", .tone = ui::Tone::good, .chosen = m.size == 2},
      {.label = "8", .unit = "AWG", .fill = 0.29, .value = "2.9 %", .tone = ui::Tone::good, .chosen = m.size == 3},
  }};
  if (const auto row = ui::ladder("ladder", rows, {.left = "Size", .right = "Drop at far outlet · limit 5 %", .limit = 0.5})) m.size = *row;
  ui::end_card();
}

void inputs(Model& m) {
  ui::begin_card("inputs");
  if (const auto c = ui::stepper("At most at once", {.sub = "whole circuit", .shown = shown(m.amperes, "A"), .value = m.amperes, .low = 1,
                                  .high = 150, .step = 1, .allowed = "1 A to 150 A",
                                  .read = [](std::string_view t) { return within(t, 1, 150, "A"); }, .unit_keys = {{"A"}, {"W"}}})) {
    m.amperes = c->value;
  }
  if (const auto c = ui::stepper("Longest run", {.sub = "one way", .shown = shown(m.metres, "m"), .value = m.metres, .low = 0.1, .high = 100,
                                  .step = 0.1, .allowed = "0.1 m to 100 m"})) {
    m.metres = c->value;
  }
  if (const auto c = ui::number_row("Tail at each outlet", {.shown = "75 mm", .value = 75, .low = 10, .high = 500, .allowed = "10 mm to 500 mm"})) ++m.pressed;
  ui::end_card();
  ui::begin_card("outlets", {.name = "Outlets"});
  ui::card_title("Outlets", "3 in a chain");
  if (ui::list_row("Truing-stand light", {.sub = "3.2 m from the block", .value = "2 A", .badge = "A"})) ++m.pressed;
  if (ui::list_row("Tablet charger", {.sub = "1.4 m on", .value = "3 A", .badge = "B", .current = true})) ++m.pressed;
  if (ui::list_row("Tyre inflator", {.sub = "1.1 m on", .value = "10 A", .badge = "C"})) ++m.pressed;
  if (ui::button("Add outlet", {.kind = ui::Kind::primary, .icon = ui::Icon::plus})) ++m.pressed;
  const std::array<ui::ButtonSpec, 2> pair{{{.label = "Move up"}, {.label = "Remove", .kind = ui::Kind::danger}}};
  if (ui::buttons(pair)) ++m.pressed;
  ui::end_card();
  ui::begin_card("shelf");
  ui::card_title("On the shelf");
  ui::caption("Mark what the shop has; the answer follows.");
  ui::begin_flow();
  const std::array<const char*, 5> sizes{"16", "14", "12", "10", "8"};
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (ui::chip(sizes[i], {.on = m.shelf[i], .struck = !m.shelf[i], .said = std::string(sizes[i]) + " AWG"})) m.shelf[i] = !m.shelf[i];
  }
  ui::end_flow();
  ui::end_card();
}

void others(Model& m) {
  if (ui::notice({.tone = ui::Tone::caution, .title = "10 AWG with a ferrule will not fit this block's clamp.", .text = "Use bare strands, all under the screw."})) ++m.pressed;
  if (ui::notice({.tone = ui::Tone::stop, .title = "Nothing fits.", .text = "No wire in the table holds 5 % over this run.", .action = "See what would help"})) ++m.pressed;
  ui::begin_card("fix");
  ui::figure_row("Carry less", "whole circuit, at once", "10.2", "A");
  ui::caption("Fit a 10 A fuse. The inflator alone still runs.");
  ui::end_card();
  ui::heading("Settings");
  ui::begin_card("settings");
  const std::vector<std::string> units{"Metric", "US"};
  if (const auto c = ui::choice("Units", units, m.units)) m.units = *c;
  if (ui::switch_row("Dark", m.on, {.sub = "charcoal, for the night"})) m.on = !m.on;
  if (ui::checkbox_row("Bare strands", m.ticked, {.sub = "no ferrules at the clamp"})) m.ticked = !m.ticked;
  if (ui::checkbox_row("Through a hot space", m.hot)) m.hot = !m.hot;
  ui::fact_row("Insulation", "105 °C", "as printed on the wire");
  if (ui::disclosure("Why this answer")) ui::paragraph("Voltage drop sets it: the fuse and the clamp would allow 12 AWG.");
  ui::end_card();
  ui::begin_card("place");
  const std::vector<std::string> places{"Van", "Trailer", "Boat", "Fixed"};
  if (const auto c = ui::choice("Where it lies", places, m.setting, {.hide_label = true})) m.setting = *c;
  ui::question("Plug the lamp into C. Measure from the positive splice.");
  ui::paragraph("Fuse in, meter on DC volts.", ui::Ink::muted);
  if (const auto t = ui::text_field("Name", {.value = m.name, .error = m.name.empty() ? "Give it a name of 1 to 40 characters." : ""})) m.name = *t;
  ui::end_card();
  if (ui::button("Sheet", {.said = "Open the sheet"})) ui::open_sheet("sheet");
  if (ui::button("Delete circuit", {.kind = ui::Kind::quiet})) ui::open_sheet("delete");
}

void vehicle(Model& m) {
  ui::begin_card("built", {.name = "As it is built"});
  ui::card_title("As it is built");
  if (const auto k = ui::knowledge_row("Fuse", m.fuse, {.value = "15 A"})) m.fuse = *k;
  if (const auto k = ui::knowledge_row("Wire, block to A", m.wire, {.value = "10 AWG"})) m.wire = *k;
  if (const auto k = ui::knowledge_row("Tails", m.tail, {.value = "75 mm"})) m.tail = *k;
  ui::end_card();
  ui::begin_card("devices");
  ui::card_title("What is it for?", "typical figures");
  const std::array<ui::Tile, 8> tiles{{{.label = "Lights", .figure = "10 W", .icon = ui::Icon::lamp},
                                       {.label = "Phone charger", .figure = "15 W", .icon = ui::Icon::phone},
                                       {.label = "Cool box", .figure = "45 W", .icon = ui::Icon::cool_box},
                                       {.label = "Diesel heater", .figure = "10 A to start, 1.5 A on", .icon = ui::Icon::heater},
                                       {.label = "Pump", .figure = "5 A", .icon = ui::Icon::pump},
                                       {.label = "Laptop", .figure = "65 W", .icon = ui::Icon::laptop},
                                       {.label = "Inverter", .figure = "300 W", .icon = ui::Icon::inverter, .disabled = true},
                                       {.label = "Socket for anything", .icon = ui::Icon::socket}}};
  std::array<ui::Tile, 8> shown = tiles;
  shown[m.tile].chosen = true;
  if (const auto tile = ui::tile_grid("Kinds of device", shown)) m.tile = *tile;
  ui::end_card();
  ui::begin_card("volts");
  ui::card_title("Where the volts go", "at C, 10 A");
  const std::array<ui::Bar, 5> bars{{{.label = "Feeder", .fill = 0.2, .value = "0.06 V"},
                                     {.label = "Fuse", .fill = 0.1, .value = "0.03 V"},
                                     {.label = "Wire, block to C", .fill = 1.0, .value = "0.31 V", .sub = "red and black", .tone = ui::Tone::caution},
                                     {.label = "Joints", .fill = 0.42, .value = "0.13 V", .sub = "2 splices, 4 terminals"},
                                     {.label = "Switch", .fill = 0.0, .value = "0.00 V"}}};
  ui::bar_list("Where the volts go", bars, {.total = "Together", .total_value = "0.53 V"});
  ui::end_card();
  ui::begin_card("block", {.name = "Fuse block"});
  if (ui::begin_group("Lights", {.count = "3", .count_said = "3 circuits", .value = "6.2 A", .icon = ui::Icon::lamp, .open_at_first = true})) {
    if (ui::list_row("Ceiling", {.sub = "position 1", .value = "2 A"})) ++m.pressed;
    if (ui::list_row("Reading lamps", {.sub = "position 2", .value = "1.2 A"})) ++m.pressed;
    if (ui::begin_group("Outside", {.count = "1", .value = "3 A"})) {
      if (ui::list_row("Awning", {.value = "3 A"})) ++m.pressed;
      ui::end_group();
    }
    ui::end_group();
  }
  if (ui::begin_group("Water", {.count = "2", .count_said = "2 circuits", .value = "9 A", .sub = "pump and heater", .icon = ui::Icon::pump,
                                .tone = ui::Tone::caution})) {
    ui::paragraph("The pump starts with more.");
    ui::end_group();
  }
  if (ui::begin_group("Nothing fitted", {.count = "0"})) ui::end_group();
  ui::end_card();
}

void vehicle_page(Model& m) {
  ui::begin_page("vehicle", {.title = "Repair trailer", .back = true});
  vehicle(m);
  ui::end_page();
}

void page(Model& m) {
  const auto events = ui::begin_page("gallery", {.title = "Bench outlets", .subtitle = "Repair trailer · fuse position 4", .title_opens = true, .title_hint = "Notebook"});
  m.pressed += events.more || events.title ? 1 : 0;
  ui::begin_columns();
  answers(m);
  ui::next_column();
  inputs(m);
  ui::end_columns();
  others(m);
  vehicle(m);
  const std::vector<ui::Place> places{{"Size", ui::Icon::ruler}, {"Wire", ui::Icon::wire}, {"Prove", ui::Icon::check}, {"Trace", ui::Icon::pulse}, {"Tables", ui::Icon::table}};
  if (const auto place = ui::end_page(places, m.place)) m.place = *place;
  if (ui::begin_sheet("sheet", {.title = "Circuit settings", .subtitle = "Repair trailer"})) {
    ui::begin_card("limits");
    if (const auto c = ui::stepper("Drop limit", {.sub = "battery to outlet", .shown = "5 %", .value = 5, .low = 1, .high = 20})) ++m.pressed;
    ui::end_card();
    const std::vector<std::string> kinds{"Lead acid, flooded", "Lead acid, AGM", "Lithium iron phosphate"};
    ui::begin_card("battery");
    if (const auto c = ui::choice("Battery", kinds, m.temperature, {.as_list = true})) m.temperature = *c;
    ui::end_card();
    ui::end_sheet();
  }
  if (ui::confirm("delete", {.title = "Delete Bench outlets?", .text = "The circuit leaves this phone. You can take it back right after."})) {
    ui::show_toast("Bench outlets deleted.", "Undo", 7);
  }
}

}  // namespace gallery
