#include "app/notebook_desk.h"

#include <algorithm>
#include <utility>

#include "app/names.h"
#include "circuit/limits.h"
#include "document/circuit_file.h"

namespace app {
namespace {

constexpr std::string_view kMediaType = "application/json";

std::string full_sentence() {
  return "The notebook is full: " + std::to_string(circuit::kMaxCircuitsInFile) +
         " circuits. Export and delete some first.";
}

std::string shown_name(const Stored& stored) {
  return stored.readable() ? stored.circuit->name : "Circuit " + std::to_string(stored.number);
}

}  // namespace

NotebookDesk::NotebookDesk(platform::Host& host, Notebook& notebook, const Settings& settings, Messages& messages,
                           Navigator& navigator, Editor& editor)
    : host_(host), notebook_(notebook), settings_(settings), messages_(messages), navigator_(navigator), editor_(editor) {}

void NotebookDesk::open_circuit(std::uint32_t number) {
  if (!notebook_.open(number)) return messages_.say_problem("This circuit can't be read, so it can't be opened.");
  editor_.circuits_changed();
  navigator_.go(Route::at(Screen::size));
}

bool NotebookDesk::add(const circuit::Circuit& circuit, bool own) {
  if (notebook_.full()) {
    messages_.say_problem(full_sentence());
    return false;
  }
  notebook_.add(circuit, own);
  editor_.circuits_changed();
  navigator_.go(Route::at(Screen::size));
  return true;
}

tables::GaugeSystem NotebookDesk::usual_gauge() const {
  if (editor_.has_circuit()) return editor_.circuit().wiring.gauge;
  return settings_.units() == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric;
}

void NotebookDesk::new_circuit() {
  const bool demo_goes = std::any_of(notebook_.circuits().begin(), notebook_.circuits().end(),
                                     [this](const Stored& each) { return notebook_.is_untouched_demo(each); });
  if (add(circuit::new_circuit(usual_gauge()), true) && demo_goes)
    messages_.say("Your first circuit takes the demo's place.");
}

void NotebookDesk::add_demo() { add(circuit::demo_circuit(), false); }

void NotebookDesk::duplicate_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr || !stored->readable()) return;
  circuit::Circuit copy = *stored->circuit;
  constexpr std::string_view kSuffix = " (copy)";
  copy.name = first_characters(copy.name, circuit::kMaxNameCharacters - kSuffix.size()) + std::string(kSuffix);
  if (add(copy, false)) messages_.say("You now work on the copy.");
}

void NotebookDesk::delete_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr) return;
  const std::string name = shown_name(*stored);
  notebook_.remove(number);
  editor_.circuits_changed();
  navigator_.leave_what_is_gone();
  messages_.say("'" + name + "' deleted.", Toast::Offer::put_back, number);
}

void NotebookDesk::put_back_circuit(std::uint32_t number) {
  if (!notebook_.put_back(number)) return messages_.say_problem(full_sentence());
  editor_.circuits_changed();
  messages_.say("'" + shown_name(*notebook_.find(number)) + "' is back.");
}

void NotebookDesk::move_circuit(std::uint32_t number, int by) {
  notebook_.move(number, by);
  editor_.circuits_changed();
}

void NotebookDesk::export_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr) return;
  const std::string name = file_stem(shown_name(*stored)) + ".branchlight.json";
  host_.save_file(name, kMediaType,
                  stored->readable() ? document::write_circuit(*stored->circuit) : stored->text);
  messages_.say("Saved as " + name + ".");
}

void NotebookDesk::export_all() {
  std::vector<circuit::Circuit> circuits;
  for (const Stored& stored : notebook_.circuits())
    if (stored.readable()) circuits.push_back(*stored.circuit);
  if (circuits.empty()) return messages_.say_problem("There is no circuit to export.");
  const std::string name = "circuits-" + host_.today() + ".branchlight.json";
  host_.save_file(name, kMediaType, document::write_circuits(circuits));
  const std::size_t left_out = notebook_.circuits().size() - circuits.size();
  messages_.say("Saved as " + name + "." +
                (left_out == 0 ? "" : " Circuits that can't be read are not in it: export each on its own."));
}

void NotebookDesk::ask_for_import() {
  import_problems_.clear();
  host_.ask_for_file();
}

void NotebookDesk::import_file(std::string_view /*name*/, std::string_view bytes) {
  document::ReadResult read = document::read_circuits(bytes);
  if (read.problems.empty() && read.circuits.empty())
    read.problems.push_back({"", "The file holds no circuit.", "Give a file exported from Branchlight."});
  if (read.problems.empty() && notebook_.circuits().size() + read.circuits.size() > circuit::kMaxCircuitsInFile)
    read.problems.push_back({"", "The file holds " + std::to_string(read.circuits.size()) +
                             " circuits and the notebook has no room for them.",
                             "At most " + std::to_string(circuit::kMaxCircuitsInFile) + " in all."});
  import_problems_ = std::move(read.problems);
  if (!import_problems_.empty()) {
    messages_.dismiss_toast();
    navigator_.go(Route::at(Screen::circuits));
    return host_.wake();
  }
  notebook_.add_all(read.circuits);
  editor_.circuits_changed();
  navigator_.go(Route::at(Screen::size));
  messages_.say(read.circuits.size() == 1 ? "'" + read.circuits.front().name + "' added."
                                          : std::to_string(read.circuits.size()) + " circuits added.");
}

}  // namespace app
