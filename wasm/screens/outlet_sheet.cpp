// One outlet: what runs there, how far it is, what it is made of, and its place in the chain.
#include "screens/outlet_sheet.h"

#include "screens/fields.h"
#include "screens/places/size.h"
#include "screens/words.h"
#include "tables/part.h"

namespace screens {
namespace {

std::size_t index_of(const circuit::Circuit& circuit, circuit::OutletId id) {
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i)
    if (circuit.outlets[i].id == id) return i;
  return circuit.outlets.size();
}

// The answer follows while you edit: keep it in sight.
void draw_answer_line(app::AppState& app, std::size_t index) {
  const sizing::Answer& answer = app.results().answer();
  const sizing::Candidate* choice = answer.choice();
  if (choice != nullptr && choice->fuse && index < choice->outlets.size()) {
    ui::fact_row("Now", size_text(*choice->size) + ", " + units::amperes_text(*choice->fuse) + " fuse",
                 units::volts_text(choice->outlets[index].voltage) + " here");
  } else if (!answer.headline.empty()) {
    ui::caption(answer.headline, ui::Ink::stop);
  }
}

void draw_run(app::AppState& app, const circuit::Outlet& outlet) {
  const auto run = number_stepper(app, {.label = "Length",
                                        .sub = "one way, along the wire, from " + feeder_text(app.editor().circuit(), outlet.fed_from),
                                        .field = circuit::Field::run_m,
                                        .value = outlet.run.length.number()});
  if (run) {
    commit(app, circuit::SetRun{outlet.id, units::Metres(run->value)}, "run/" + std::to_string(outlet.id.number), *run);
    return;
  }
  const circuit::Circuit& circuit = app.editor().circuit();
  std::vector<std::string> names{"Fuse block"};
  std::vector<circuit::OutletId> ids{circuit::kBlock};
  std::size_t current = 0;
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    if (circuit.outlets[i].id == outlet.id) continue;
    if (circuit.outlets[i].id == outlet.fed_from) current = ids.size();
    ids.push_back(circuit.outlets[i].id);
    names.push_back(circuit::outlet_letter(i) + "  " + circuit.outlets[i].name);
  }
  if (ids.size() < 2) return;
  if (!ui::disclosure("Fed from " + feeder_text(circuit, outlet.fed_from), false, "where its wire comes from")) return;
  if (const auto from = ui::choice("Fed from", names, current, {.sub = {}, .hide_label = true, .as_list = true}))
    app.editor().dispatch(circuit::FeedOutletFrom{outlet.id, ids[*from]});
}

void draw_drop_limit(app::AppState& app, const circuit::Outlet& outlet) {
  const bool own = outlet.drop_limit.has_value();
  if (ui::switch_row("A drop limit of its own", own,
                     {.sub = own ? "" : "the circuit's: " + units::percent_text(app.editor().circuit().drop_limit), .disabled = false})) {
    app.editor().dispatch(circuit::SetOutletDropLimit{outlet.id, own ? std::nullopt : std::optional(app.editor().circuit().drop_limit)});
    return;
  }
  if (!own) return;
  const auto drop = number_stepper(app, {.label = "Drop limit",
                                         .sub = "battery to this outlet",
                                         .field = circuit::Field::drop_limit_fraction,
                                         .value = *outlet.drop_limit});
  if (drop)
    commit(app, circuit::SetOutletDropLimit{outlet.id, drop->value}, "own-drop/" + std::to_string(outlet.id.number), *drop);
}

std::optional<std::string> choose_part(std::string_view label, tables::PartKind kind, const std::string& key) {
  const auto parts = tables::parts(kind);
  std::vector<std::string> names;
  std::size_t current = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].key == key) current = i;
    names.emplace_back(parts[i].name);
  }
  const auto chosen = ui::choice(label, names, current, {.sub = {}, .hide_label = false, .as_list = true});
  return chosen ? std::optional(std::string(parts[*chosen].key)) : std::nullopt;
}

void draw_parts(app::AppState& app, const circuit::Outlet& outlet) {
  circuit::SetOutletParts parts{outlet.id, outlet.outlet_part, outlet.terminal_part, outlet.rating};
  if (const auto key = choose_part("Outlet", tables::PartKind::outlet, parts.outlet_part)) {
    parts.outlet_part = *key;
    app.editor().dispatch(parts);
    return;
  }
  if (const auto key = choose_part("Its terminals", tables::PartKind::terminal, parts.terminal_part)) {
    parts.terminal_part = *key;
    app.editor().dispatch(parts);
    return;
  }
  const tables::Part* part = tables::part_by_key(parts.outlet_part);
  const double typical = part != nullptr ? part->rated.number() : 10.0;
  const bool marked = parts.rating.has_value();
  if (ui::switch_row("A rating is marked on it", marked,
                     {.sub = marked ? "" : "taken as typical: " + units::amperes_text(units::Amperes(typical)), .disabled = false})) {
    parts.rating = marked ? std::nullopt : std::optional(units::Amperes(typical));
    app.editor().dispatch(parts);
    return;
  }
  if (!marked) return;
  const auto rating = number_stepper(app, {.label = "Marked rating", .sub = "of the outlet",
                                           .field = circuit::Field::part_rating_a, .value = parts.rating->number()});
  if (!rating) return;
  parts.rating = units::Amperes(rating->value);
  commit(app, parts, "rating/" + std::to_string(outlet.id.number), *rating);
}

void add_after(app::AppState& app, const circuit::Edit& edit) {
  const circuit::OutletId added = circuit::next_outlet(app.editor().circuit());
  if (app.editor().dispatch(edit)) app.navigator().replace(app::Route::at_outlet(added));
}

bool draw_point(app::AppState& app, const circuit::Outlet& outlet) {
  const std::size_t current = static_cast<std::size_t>(outlet.point);
  if (!ui::disclosure("What stands here", false, point_words()[current].name)) return false;
  const auto point = ui::choice("What stands here", names_of(point_words()), current,
                                {.sub = {}, .hide_label = true, .as_list = true, .subs = helps_of(point_words())});
  if (!point) return false;
  app.editor().dispatch(circuit::SetPoint{outlet.id, static_cast<circuit::PointKind>(*point)});
  return true;
}

void draw_chain(app::AppState& app, const circuit::Outlet& outlet, std::size_t index) {
  const std::string letter = circuit::outlet_letter(index);
  const ui::ButtonSpec moves[] = {
      {.label = "Move up", .icon = ui::Icon::up, .disabled = index == 0, .said = "Move outlet " + letter + " up"},
      {.label = "Move down", .icon = ui::Icon::down, .disabled = index + 1 == app.editor().circuit().outlets.size(),
       .said = "Move outlet " + letter + " down"}};
  if (const auto move = ui::buttons(moves)) {
    app.editor().dispatch(circuit::MoveOutlet{outlet.id, *move == 0 ? -1 : 1});
    return;
  }
  const bool feeds = !circuit::fed_by(app.editor().circuit(), outlet.id).empty();
  const ui::ButtonSpec adds[] = {
      {.label = "Insert before", .icon = ui::Icon::plus, .said = "Insert an outlet before " + letter},
      {.label = feeds ? "Branch from here" : "Add after", .icon = ui::Icon::plus,
       .said = (feeds ? "Branch from outlet " : "Add an outlet after ") + letter}};
  if (const auto add = ui::buttons(adds)) {
    if (*add == 0) add_after(app, circuit::InsertOutlet{outlet.id});
    else add_after(app, circuit::AddOutlet{outlet.id});
    return;
  }
  if (draw_point(app, outlet)) return;
  if (ui::button("Remove outlet " + letter, {.kind = ui::Kind::secondary})) app.editor().dispatch(circuit::RemoveOutlet{outlet.id});
}

}  // namespace

// Every edit changes the circuit under us, so each part works on a copy of the outlet as it
// stood when the frame began.
void draw_outlet_sheet(app::AppState& app, Memory& memory) {
  const std::size_t index = index_of(app.editor().circuit(), app.shown().outlet);
  if (index == app.editor().circuit().outlets.size()) return;
  const circuit::Outlet outlet = app.editor().circuit().outlets[index];
  const std::uint64_t revision = app.editor().revision();
  const auto untouched = [&app, revision] { return app.editor().revision() == revision; };

  const bool is_outlet = outlet.point == circuit::PointKind::outlet;
  ui::begin_card("what", {.name = is_outlet ? "What runs here" : "What stands here", .tone = ui::Tone::plain});
  draw_answer_line(app, index);
  if (const auto name = name_field(memory, "outlet/" + std::to_string(outlet.id.number), "Name", outlet.name))
    app.editor().dispatch(circuit::SetOutletName{outlet.id, *name}, "name/" + std::to_string(outlet.id.number));
  if (untouched() && is_outlet) draw_devices(app, memory, outlet);
  if (!is_outlet) ui::caption(point_words()[static_cast<std::size_t>(outlet.point)].help);
  ui::end_card();

  ui::begin_card("run", {.name = "How far it is", .tone = ui::Tone::plain});
  if (untouched()) draw_run(app, outlet);
  if (untouched()) draw_drop_limit(app, outlet);
  ui::end_card();

  ui::begin_card("wire", {.name = "The wire to it", .tone = ui::Tone::plain});
  if (untouched()) draw_wire(app, outlet);
  ui::end_card();

  ui::begin_card("chain", {.name = "Its place in the chain", .tone = ui::Tone::plain});
  if (untouched()) draw_chain(app, outlet, index);
  ui::end_card();

  if (!is_outlet) return;
  ui::begin_card("parts", {.name = "What it is made of", .tone = ui::Tone::plain});
  if (untouched() && ui::disclosure("Outlet and terminals", false, "typical parts; check the marking on yours"))
    draw_parts(app, outlet);
  ui::end_card();
}

}  // namespace screens
