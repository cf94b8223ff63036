// The wire to an outlet: what is in the wall already, what it is made of, how it comes back and how
// it meets the outlet, and what sits in its line. Folded away: as a rule sizing chooses it.
#include <array>

#include "screens/fields.h"
#include "screens/outlet_sheet.h"
#include "screens/words.h"
#include "tables/wire_metal.h"

namespace screens {
namespace {

std::string in_sentence(std::string_view name) {
  std::string text(name);
  if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z') text.front() = static_cast<char>(text.front() - 'A' + 'a');
  return text;
}

bool put(app::AppState& app, const circuit::Outlet& outlet, circuit::Run run) {
  app.editor().dispatch(circuit::SetWire{outlet.id, std::move(run)});
  return true;
}

// Where the switch starts: the answer, else a common size.
std::string first_size(const app::AppState& app) {
  const sizing::Candidate* choice = app.results().answer().choice();
  if (choice != nullptr) return std::string(choice->size->id);
  return std::string(tables::conductors(app.editor().circuit().wiring.gauge)[2].id);
}

// The same copper or the next thinner in another system: never more than is there.
std::string as_in(tables::GaugeSystem system, const tables::Conductor& size) {
  const auto list = tables::conductors(system);
  const tables::Conductor* found = &list.front();
  for (const tables::Conductor& each : list)
    if (each.area <= size.area) found = &each;
  return std::string(found->id);
}

bool draw_size(app::AppState& app, const circuit::Outlet& outlet, const tables::Conductor& size) {
  circuit::Run run = outlet.run;
  if (const auto system = gauge_choice("Its size is marked in", size.system)) {
    run.size = as_in(*system, size);
    return put(app, outlet, run);
  }
  const tables::Conductor* pressed = nullptr;
  ui::begin_flow();
  for (const tables::Conductor& each : tables::conductors(size.system))
    if (ui::chip(std::string(each.size), {.on = each.id == size.id, .said = "In the wall " + size_text(each)})) pressed = &each;
  ui::end_flow();
  if (pressed == nullptr) return false;
  run.size = std::string(pressed->id);
  return put(app, outlet, run);
}

bool draw_in_the_wall(app::AppState& app, const circuit::Outlet& outlet) {
  circuit::Run run = outlet.run;
  const tables::Conductor* size = run.size ? tables::conductor_by_id(*run.size) : nullptr;
  const bool stays = size != nullptr;
  if (ui::switch_row("Wire in the wall", stays,
                     {.sub = stays ? "it stays; its fuse follows it" : "new wire, sizing chooses", .disabled = false})) {
    run.size = stays ? std::nullopt : std::optional(first_size(app));
    // New wire is copper: nothing else is ever proposed.
    if (stays && !tables::wire_metal(run.metal).recommended) run.metal = tables::WireMetal::copper;
    return put(app, outlet, run);
  }
  return stays && draw_size(app, outlet, *size);
}

bool draw_metal(app::AppState& app, const circuit::Outlet& outlet) {
  std::vector<std::string> names, subs;
  std::vector<tables::WireMetal> metals;
  std::size_t current = 0;
  for (const tables::WireMetalRow& row : tables::wire_metals()) {
    if (!row.recommended && !outlet.run.size && row.metal != outlet.run.metal) continue;
    if (row.metal == outlet.run.metal) current = metals.size();
    metals.push_back(row.metal);
    names.emplace_back(row.name);
    subs.emplace_back(row.note);
  }
  const auto chosen = ui::choice("Made of", names, current, {.sub = {}, .hide_label = false, .as_list = true, .subs = subs});
  if (chosen) {
    circuit::Run run = outlet.run;
    run.metal = metals[*chosen];
    return put(app, outlet, run);
  }
  const std::string_view caution = tables::wire_metal(outlet.run.metal).caution;
  if (!caution.empty()) ui::caption(caution, ui::Ink::caution);
  return false;
}

bool draw_cores(app::AppState& app, const circuit::Outlet& outlet) {
  circuit::Run run = outlet.run;
  const bool by_chassis = run.back == circuit::ReturnPath::chassis;
  if (!ui::switch_row("Two-core cable", run.two_core,
                      {.sub = by_chassis ? "the chassis brings the current back" : "both in one sheath: each warms the other",
                       .disabled = by_chassis}))
    return false;
  run.two_core = !run.two_core;
  return put(app, outlet, run);
}

// Offered where practice allows it, and where it is told, to be taken back.
bool draw_return(app::AppState& app, const circuit::Outlet& outlet) {
  const circuit::Setting setting = app.editor().circuit().setting;
  const bool road = setting == circuit::Setting::van || setting == circuit::Setting::trailer;
  const bool by_chassis = outlet.run.back == circuit::ReturnPath::chassis;
  if ((!road || outlet.run.two_core) && !by_chassis) return false;
  const auto chosen = ui::choice("Return", names_of(return_words()), static_cast<std::size_t>(outlet.run.back),
                                 {.sub = {}, .hide_label = false, .as_list = true, .subs = helps_of(return_words())});
  if (chosen) {
    circuit::Run run = outlet.run;
    run.back = static_cast<circuit::ReturnPath>(*chosen);
    return put(app, outlet, run);
  }
  if (by_chassis)
    ui::caption("Bonds bare, bolted, greased and in reach: a rusty bond heats. Never through a hinge, a hitch or a gas pipe. "
                "Common practice, no source.", ui::Ink::caution);
  return false;
}

bool draw_joint(app::AppState& app, const circuit::Outlet& outlet) {
  if (outlet.point != circuit::PointKind::outlet) return false;
  const auto chosen = ui::choice("How it meets the outlet", names_of(joint_words()), static_cast<std::size_t>(outlet.joint),
                                 {.sub = {}, .hide_label = false, .as_list = true, .subs = helps_of(joint_words())});
  if (!chosen) return false;
  app.editor().dispatch(circuit::SetJoint{outlet.id, static_cast<circuit::Joint>(*chosen)});
  return true;
}

bool draw_in_line_part(app::AppState& app, const circuit::Outlet& outlet, std::size_t index) {
  const ui::Scope scope(static_cast<std::uint32_t>(index + 1));
  circuit::Run run = outlet.run;
  circuit::InLine& part = run.in_line[index];
  const std::string name(in_line_name(part.kind));
  const std::string number = run.in_line.size() > 1 ? " " + std::to_string(index + 1) : std::string();
  const auto rating = number_stepper(app, {.label = name, .sub = "marked on it",
                                           .said = "Rating of part " + std::to_string(index + 1) + " in the line, " + in_sentence(name),
                                           .field = circuit::Field::in_line_a, .value = part.rating.number()});
  if (rating) {
    part.rating = units::Amperes(rating->value);
    commit(app, circuit::SetWire{outlet.id, run},
           "in-line/" + std::to_string(outlet.id.number) + "/" + std::to_string(index), *rating);
    return true;
  }
  if (!ui::button("Take out the " + in_sentence(name) + number, {.kind = ui::Kind::quiet})) return false;
  run.in_line.erase(run.in_line.begin() + static_cast<std::ptrdiff_t>(index));
  return put(app, outlet, run);
}

bool draw_in_line(app::AppState& app, const circuit::Outlet& outlet) {
  ui::heading("In the line", 3);
  ui::caption("In the plus wire, at the end nearest the battery, in this order.");
  for (std::size_t i = 0; i < outlet.run.in_line.size(); ++i)
    if (draw_in_line_part(app, outlet, i)) return true;
  if (outlet.run.in_line.size() >= circuit::kMaxInLine) {
    ui::caption("At most " + std::to_string(circuit::kMaxInLine) + " parts in one run.");
    return false;
  }
  std::vector<ui::ButtonSpec> adds;
  using circuit::InLineKind;
  for (const InLineKind kind : {InLineKind::toggle, InLineKind::fuse, InLineKind::breaker, InLineKind::relay})
    adds.push_back({.label = std::string(in_line_name(kind)), .icon = ui::Icon::plus,
                    .said = "Put in: " + in_sentence(in_line_name(kind))});
  const auto added = ui::button_grid(adds);
  if (!added) return false;
  circuit::Run run = outlet.run;
  run.in_line.push_back({.kind = static_cast<circuit::InLineKind>(*added)});
  return put(app, outlet, run);
}

std::string wire_text(const circuit::Outlet& outlet) {
  const tables::Conductor* size = outlet.run.size ? tables::conductor_by_id(*outlet.run.size) : nullptr;
  std::string text = size != nullptr ? size_text(*size) + " in the wall" : std::string("new, sizing chooses");
  if (outlet.run.metal != tables::WireMetal::copper) text += ", " + in_sentence(tables::wire_metal(outlet.run.metal).name);
  if (outlet.run.two_core) text += ", two-core";
  if (outlet.run.back == circuit::ReturnPath::chassis) text += ", back by chassis";
  if (outlet.point == circuit::PointKind::outlet && outlet.joint == circuit::Joint::direct) text += ", straight to the terminals";
  for (const circuit::InLine& part : outlet.run.in_line)
    text += ", " + in_sentence(in_line_name(part.kind)) + " " + units::amperes_text(part.rating);
  return text;
}

}  // namespace

bool draw_wire(app::AppState& app, const circuit::Outlet& outlet) {
  if (!ui::disclosure("The wire to it", false, wire_text(outlet))) return false;
  return draw_in_the_wall(app, outlet) || draw_metal(app, outlet) || draw_cores(app, outlet) || draw_return(app, outlet) ||
         draw_joint(app, outlet) || draw_in_line(app, outlet);
}

}  // namespace screens
