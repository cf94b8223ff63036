// What can be done with stored circuits: AppState's notebook part, with files in and out.
#include "app/app_state.h"

#include <algorithm>
#include <utility>

#include "circuit/limits.h"
#include "document/circuit_file.h"

namespace app {
namespace {

constexpr std::string_view kMediaType = "application/json";

std::string full_sentence() {
  return "The notebook is full: " + std::to_string(circuit::kMaxCircuitsInFile) +
         " circuits. Export and delete some first.";
}

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

std::string shown_name(const Stored& stored) {
  return stored.readable() ? stored.circuit->name : "Circuit " + std::to_string(stored.number);
}

}  // namespace

std::string first_characters(std::string_view text, std::size_t most) {
  std::size_t end = 0;
  for (std::size_t count = 0; end < text.size() && count < most; ++count) {
    ++end;
    while (end < text.size() && continues_character(text[end])) ++end;
  }
  return std::string(text.substr(0, end));
}

std::string file_stem(std::string_view name) {
  std::string stem;
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool plain = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain) stem += upper ? static_cast<char>(c - 'A' + 'a') : c;
    else if (!stem.empty() && stem.back() != '-') stem += '-';
  }
  while (!stem.empty() && stem.back() == '-') stem.pop_back();
  return stem.empty() ? "circuit" : stem;
}

void AppState::open_circuit(std::uint32_t number) {
  if (!notebook_.open(number)) return say_problem("This circuit can't be read, so it can't be opened.");
  changed();
  go(Route::at(Screen::size));
}

void AppState::new_circuit() {
  if (notebook_.full()) return say_problem(full_sentence());
  const tables::GaugeSystem gauge =
      has_circuit() ? circuit().wiring.gauge
                    : (units() == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  const bool demo_goes = std::any_of(notebook_.circuits().begin(), notebook_.circuits().end(),
                                     [this](const Stored& each) { return notebook_.is_untouched_demo(each); });
  notebook_.add(circuit::new_circuit(gauge), true);
  changed();
  go(Route::at(Screen::size));
  if (demo_goes) say("Your first circuit takes the demo's place.");
}

void AppState::duplicate_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr || !stored->readable()) return;
  if (notebook_.full()) return say_problem(full_sentence());
  circuit::Circuit copy = *stored->circuit;
  constexpr std::string_view kSuffix = " (copy)";
  copy.name = first_characters(copy.name, circuit::kMaxNameCharacters - kSuffix.size()) + std::string(kSuffix);
  notebook_.add(copy, false);
  changed();
  go(Route::at(Screen::size));
  say("You now work on the copy.");
}

bool AppState::relabel_circuit(std::uint32_t number, const circuit::Edit& edit, std::string join_key) {
  return edit_stored(number, edit, std::move(join_key));
}

void AppState::delete_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr) return;
  const std::string name = shown_name(*stored);
  notebook_.remove(number);
  changed();
  land_on(existing(route_));
  say("'" + name + "' deleted.", Toast::Offer::put_back, number);
}

void AppState::put_back_circuit(std::uint32_t number) {
  if (!notebook_.put_back(number)) return say_problem(full_sentence());
  changed();
  say("'" + shown_name(*notebook_.find(number)) + "' is back.");
}

void AppState::move_circuit(std::uint32_t number, int by) {
  notebook_.move(number, by);
  changed();
}

void AppState::add_demo() {
  if (notebook_.full()) return say_problem(full_sentence());
  notebook_.add(circuit::demo_circuit(), false);
  changed();
  go(Route::at(Screen::size));
}

void AppState::export_circuit(std::uint32_t number) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr) return;
  const std::string name = file_stem(shown_name(*stored)) + ".branchlight.json";
  host_.save_file(name, kMediaType,
                  stored->readable() ? document::write_circuit(*stored->circuit) : stored->text);
  say("Saved as " + name + ".");
}

void AppState::export_all() {
  std::vector<circuit::Circuit> circuits;
  for (const Stored& stored : notebook_.circuits())
    if (stored.readable()) circuits.push_back(*stored.circuit);
  if (circuits.empty()) return say_problem("There is no circuit to export.");
  const std::string name = "circuits-" + host_.today() + ".branchlight.json";
  host_.save_file(name, kMediaType, document::write_circuits(circuits));
  const std::size_t left_out = notebook_.circuits().size() - circuits.size();
  say("Saved as " + name + "." +
      (left_out == 0 ? "" : " Circuits that can't be read are not in it: export each on its own."));
}

void AppState::ask_for_import() {
  import_problems_.clear();
  host_.ask_for_file();
}

void AppState::import_file(std::string_view name, std::string_view bytes) {
  import_name_ = std::string(name);
  document::ReadResult read = document::read_circuits(bytes);
  if (read.problems.empty() && read.circuits.empty())
    read.problems.push_back({"", "The file holds no circuit.", "Give a file exported from Branchlight."});
  if (read.problems.empty() && notebook_.circuits().size() + read.circuits.size() > circuit::kMaxCircuitsInFile)
    read.problems.push_back({"", "The file holds " + std::to_string(read.circuits.size()) +
                             " circuits and the notebook has no room for them.",
                             "At most " + std::to_string(circuit::kMaxCircuitsInFile) + " in all."});
  import_problems_ = std::move(read.problems);
  if (!import_problems_.empty()) {
    toast_.reset();
    go(Route::at(Screen::circuits));
    return host_.wake();
  }
  notebook_.add_all(read.circuits);
  changed();
  go(Route::at(Screen::size));
  say(read.circuits.size() == 1 ? "'" + read.circuits.front().name + "' added."
                                : std::to_string(read.circuits.size()) + " circuits added.");
}

}  // namespace app
