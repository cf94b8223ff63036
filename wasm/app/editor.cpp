#include "app/editor.h"

#include <optional>
#include <utility>
#include <variant>

#include "circuit/limits.h"
#include "units/expect.h"

namespace app {
namespace {

// "remove outlet C" -> "Undid: remove outlet C."
std::string sentence(std::string_view start, const std::string& what) {
  return std::string(start) + (what.empty() ? "." : ": " + what + ".");
}

std::string why_not(const circuit::EditResult& refused) {
  return refused.problem ? circuit::one_line(*refused.problem) : "That can not be done.";
}

}  // namespace

Editor::Editor(platform::Host& host, Notebook& notebook, Messages& messages, Navigator& navigator, Revision& revision)
    : host_(host), notebook_(notebook), messages_(messages), navigator_(navigator), revision_(revision) {}

const circuit::Circuit& Editor::circuit() const {
  const Stored* open = notebook_.open();
  BRANCHLIGHT_EXPECT(open != nullptr);   // else: ask has_circuit() first
  return *open->circuit;
}

Current Editor::current() const {
  const Stored* open = notebook_.open();
  return {revision_.now(), open != nullptr ? open->number : kNoCircuit};
}

void Editor::circuits_changed() {
  revision_.raise();
  messages_.clear();
  navigator_.show_title();
  host_.wake();
}

bool Editor::relabel(std::uint32_t number, const circuit::Edit& edit, std::string join_key) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr || !stored->readable()) return false;
  const circuit::Circuit before = *stored->circuit;
  circuit::EditResult result = circuit::apply(before, edit);
  if (!result.circuit) {
    messages_.say_problem(why_not(result));
    return false;
  }
  if (notebook_.replace(number, *result.circuit)) {
    notebook_.history(number)->remember(before, circuit::describe(before, edit), std::move(join_key));
    circuits_changed();
  }
  messages_.clear_problem();
  return true;
}

bool Editor::dispatch(const circuit::Edit& edit, std::string join_key) {
  if (!has_circuit()) return false;
  const Stored* open = notebook_.open();
  const std::string what = circuit::describe(*open->circuit, edit);
  if (!relabel(open->number, edit, std::move(join_key))) return false;
  // A removal is the one edit that takes something away: offer it back at once.
  if (std::holds_alternative<circuit::RemoveOutlet>(edit)) messages_.say(sentence("Done", what), Toast::Offer::undo_edit);
  navigator_.leave_what_is_gone();
  return true;
}

void Editor::end_join() {
  if (const Stored* open = notebook_.open()) notebook_.history(open->number)->end_join();
}

bool Editor::use_edits(const std::vector<circuit::Edit>& edits, const std::string& what) {
  if (!has_circuit() || edits.empty()) return false;
  const std::uint32_t number = notebook_.open()->number;
  const circuit::Circuit before = circuit();
  circuit::Circuit after = before;
  for (const circuit::Edit& edit : edits) {
    circuit::EditResult result = circuit::apply(after, edit);
    if (!result.circuit) {
      messages_.say_problem(why_not(result));
      return false;
    }
    after = std::move(*result.circuit);
  }
  if (!notebook_.replace_open(after)) {
    messages_.say("Your circuit has that already.");
    return true;
  }
  notebook_.history(number)->remember(before, what);
  circuits_changed();
  messages_.say("Done: " + what + ".", Toast::Offer::undo_edit);
  return true;
}

// The second circuit of a split is stored first: stopped in between, the load is in both
// rather than in neither.
void Editor::use_fix(const sizing::Fix& fix) {
  if (!has_circuit() || fix.result.empty()) return;
  const std::uint32_t number = notebook_.open()->number;
  const std::vector<circuit::Circuit>& result = fix.result;
  if (notebook_.full() && result.size() > 1)
    return messages_.say_problem("The notebook is full: " + std::to_string(circuit::kMaxCircuitsInFile) +
                                 " circuits. Delete one first.");
  for (std::size_t i = 1; i < result.size(); ++i) notebook_.add(result[i], false);
  notebook_.open(number);
  const circuit::Circuit before = circuit();
  if (notebook_.replace_open(result.front())) notebook_.history(number)->remember(before, fix.title);
  circuits_changed();
  const std::string other = result.size() > 1 ? " The other half is the circuit '" + result[1].name + "'." : "";
  messages_.say(fix.title + ": done." + other, Toast::Offer::undo_edit);
}

bool Editor::can_undo() const { return has_circuit() && notebook_.open()->history.can_undo(); }
bool Editor::can_redo() const { return has_circuit() && notebook_.open()->history.can_redo(); }
std::string Editor::undo_what() const { return has_circuit() ? notebook_.open()->history.undo_what() : ""; }
std::string Editor::redo_what() const { return has_circuit() ? notebook_.open()->history.redo_what() : ""; }

void Editor::undo() {
  if (!can_undo()) return;
  const Stored* open = notebook_.open();
  const std::string what = undo_what();
  if (const auto earlier = notebook_.history(open->number)->undo(*open->circuit)) {
    notebook_.replace_open(*earlier);
    circuits_changed();
    messages_.say(sentence("Undone", what));
    navigator_.leave_what_is_gone();
  }
}

void Editor::redo() {
  if (!can_redo()) return;
  const Stored* open = notebook_.open();
  const std::string what = redo_what();
  if (const auto later = notebook_.history(open->number)->redo(*open->circuit)) {
    notebook_.replace_open(*later);
    circuits_changed();
    messages_.say(sentence("Done again", what));
    navigator_.leave_what_is_gone();
  }
}

}  // namespace app
