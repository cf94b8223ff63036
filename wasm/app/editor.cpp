#include "app/editor.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "units/expect.h"

namespace app {
namespace {

// "remove outlet C" -> "Undid: remove outlet C."
std::string sentence(std::string_view start, const std::string& what) {
  return std::string(start) + (what.empty() ? "." : ": " + what + ".");
}

std::string why_not(const std::optional<circuit::Problem>& problem) {
  return problem ? circuit::one_line(*problem) : "That can not be done.";
}

// A trace tells what was seen: going back in the plan does not unsee it. And a number that was given
// once is not given again.
vehicle::Vehicle with_traces_of(vehicle::Vehicle earlier, const vehicle::Vehicle& now) {
  for (vehicle::PlacedCircuit& placed : earlier.circuits) {
    const vehicle::PlacedCircuit* same = vehicle::find_circuit(now, placed.id);
    if (same != nullptr) placed.traces = same->traces;
  }
  earlier.next_id = std::max(earlier.next_id, now.next_id);
  return earlier;
}

std::string told_of(const vehicle::PlacedCircuit& placed) {
  std::string text = document::write_circuit(placed.plan) + std::to_string(placed.block.number) + "/" + std::to_string(placed.position);
  if (placed.built) text += document::write_circuit(placed.built->circuit) + std::to_string(placed.built->fuse.number());
  return text;
}

// The one circuit that a step adds or changes; where it is none or several, `else_open`.
vehicle::CircuitId changed_by(const vehicle::Vehicle& from, const vehicle::Vehicle& to, vehicle::CircuitId else_open) {
  std::vector<vehicle::CircuitId> changed;
  for (const vehicle::PlacedCircuit& placed : to.circuits) {
    const vehicle::PlacedCircuit* before = vehicle::find_circuit(from, placed.id);
    if (before == nullptr) return placed.id;
    if (told_of(*before) != told_of(placed)) changed.push_back(placed.id);
  }
  return changed.size() == 1 ? changed.front() : else_open;
}

}  // namespace

Editor::Editor(platform::Host& host, Notebook& notebook, Messages& messages, Navigator& navigator, Revision& revision)
    : host_(host), notebook_(notebook), messages_(messages), navigator_(navigator), revision_(revision) {}

const circuit::Circuit& Editor::circuit() const {
  BRANCHLIGHT_EXPECT(has_circuit());   // else: ask it first
  return *notebook_.open_circuit();
}

const vehicle::PlacedCircuit& Editor::placed() const {
  BRANCHLIGHT_EXPECT(has_circuit());
  return *notebook_.find(notebook_.open());
}

const vehicle::Vehicle& Editor::vehicle() const {
  BRANCHLIGHT_EXPECT(has_vehicle());
  return notebook_.open_vehicle()->vehicle;
}

std::string Editor::undo_what() const { return has_vehicle() ? notebook_.open_vehicle()->history.undo_what() : ""; }
std::string Editor::redo_what() const { return has_vehicle() ? notebook_.open_vehicle()->history.redo_what() : ""; }

void Editor::vehicles_changed() {
  revision_.raise();
  messages_.clear();
  navigator_.show_title();
  host_.wake();
}

// The one door to the stored vehicles: what is too long to be read again is not written.
bool Editor::put(const Stored& stored, vehicle::Vehicle after, std::string what, std::string join_key) {
  const std::uint32_t number = stored.number;
  if (const auto problem = document::too_long_to_read(document::write_vehicle(after))) {
    messages_.say_problem(circuit::one_line(*problem));
    return false;
  }
  Earlier before{stored.vehicle, notebook_.open().vehicle == number ? notebook_.open().circuit : vehicle::CircuitId{}};
  if (notebook_.replace(number, after)) {
    notebook_.history(number)->remember(std::move(before), std::move(what), std::move(join_key));
    vehicles_changed();
  }
  messages_.clear_problem();
  return true;
}

bool Editor::change(std::uint32_t vehicle, const vehicle::Edit& edit, std::string join_key) {
  const Stored* stored = notebook_.find(vehicle);
  if (stored == nullptr) return false;
  vehicle::EditResult result = vehicle::apply(stored->vehicle, edit);
  if (!result.vehicle) {
    messages_.say_problem(why_not(result.problem));
    return false;
  }
  return put(*stored, std::move(*result.vehicle), vehicle::describe(stored->vehicle, edit), std::move(join_key));
}

bool Editor::relabel(CircuitRef circuit, const circuit::Edit& edit, std::string join_key) {
  // The same key at two circuits is not one held finger.
  if (!join_key.empty()) join_key += "/" + std::to_string(circuit.circuit.number);
  return change(circuit.vehicle, vehicle::EditCircuit{circuit.circuit, edit}, std::move(join_key));
}

bool Editor::dispatch(const circuit::Edit& edit, std::string join_key) {
  if (!has_circuit()) return false;
  const std::string what = circuit::describe(circuit(), edit);
  if (!relabel(notebook_.open(), edit, std::move(join_key))) return false;
  // A removal is the one edit that takes something away: offer it back at once.
  if (std::holds_alternative<circuit::RemoveOutlet>(edit)) messages_.say(sentence("Done", what), Toast::Offer::undo_edit);
  navigator_.leave_what_is_gone();
  return true;
}

void Editor::end_join() {
  if (has_vehicle()) notebook_.history(notebook_.open_vehicle()->number)->end_join();
}

bool Editor::tell_built(std::optional<vehicle::Built> built, std::string join_key) {
  if (!has_circuit()) return false;
  return change(notebook_.open().vehicle, vehicle::SetBuilt{notebook_.open().circuit, std::move(built)}, std::move(join_key));
}

bool Editor::use_edits(const std::vector<circuit::Edit>& edits, const std::string& what) {
  if (!has_circuit() || edits.empty()) return false;
  const Stored& stored = *notebook_.open_vehicle();
  const vehicle::CircuitId open = notebook_.open().circuit;
  vehicle::Vehicle after = stored.vehicle;
  for (const circuit::Edit& edit : edits) {
    vehicle::EditResult result = vehicle::apply(after, vehicle::EditCircuit{open, edit});
    if (!result.vehicle) {
      messages_.say_problem(why_not(result.problem));
      return false;
    }
    after = std::move(*result.vehicle);
  }
  const std::uint64_t before = revision_.now();
  if (!put(stored, std::move(after), what, {})) return false;
  if (revision_.now() == before) messages_.say("Your circuit has that already.");
  else messages_.say("Done: " + what + ".", Toast::Offer::undo_edit);
  return true;
}

void Editor::use_fix(const sizing::Fix& fix) {
  if (!has_circuit() || fix.result.empty()) return;
  const Stored& stored = *notebook_.open_vehicle();
  const vehicle::BlockId block = placed().block;
  std::vector<vehicle::Edit> edits{vehicle::PutCircuit{notebook_.open().circuit, fix.result.front()}};
  for (std::size_t i = 1; i < fix.result.size(); ++i) edits.push_back(vehicle::AddCircuit{block, fix.result[i]});
  vehicle::Vehicle after = stored.vehicle;
  for (const vehicle::Edit& edit : edits) {
    vehicle::EditResult result = vehicle::apply(after, edit);
    if (!result.vehicle) return messages_.say_problem(why_not(result.problem));
    after = std::move(*result.vehicle);
  }
  if (!put(stored, std::move(after), fix.title, {})) return;
  const std::string other = fix.result.size() > 1 ? " The other half is the circuit '" + fix.result[1].name + "'." : "";
  messages_.say(fix.title + ": done." + other, Toast::Offer::undo_edit);
}

void Editor::step(bool back) {
  if (!(back ? can_undo() : can_redo())) return;
  const Stored& stored = *notebook_.open_vehicle();
  const std::uint32_t number = stored.number;
  const std::string what = back ? undo_what() : redo_what();
  const Earlier now{stored.vehicle, notebook_.open().circuit};
  History& history = *notebook_.history(number);
  auto earlier = back ? history.undo(now) : history.redo(now);
  if (!earlier) return;
  const bool still = vehicle::find_circuit(earlier->vehicle, now.open) != nullptr;
  const vehicle::CircuitId open = changed_by(now.vehicle, earlier->vehicle, still ? now.open : earlier->open);
  notebook_.replace(number, with_traces_of(std::move(earlier->vehicle), now.vehicle));
  notebook_.open({number, open});
  vehicles_changed();
  messages_.say(sentence(back ? "Undone" : "Done again", what));
  navigator_.leave_what_is_gone();
}

}  // namespace app
