#include "app/notebook_desk.h"

#include <algorithm>
#include <utility>

#include "app/names.h"
#include "circuit/limits.h"
#include "document/vehicle_file.h"

namespace app {
namespace {

constexpr std::string_view kMediaType = "application/json";

std::string full_sentence() {
  return "The notebook is full: " + std::to_string(document::kMaxVehiclesInFile) +
         " vehicles. Export and delete some first.";
}

std::string copy_name(const std::string& name) {
  constexpr std::string_view kSuffix = " (copy)";
  return first_characters(name, circuit::kMaxNameCharacters - kSuffix.size()) + std::string(kSuffix);
}

// The vehicle with this one circuit: what there is to hand on of it.
vehicle::Vehicle only(const vehicle::Vehicle& of, vehicle::CircuitId id) {
  vehicle::Vehicle alone = of;
  std::erase_if(alone.circuits, [id](const vehicle::PlacedCircuit& each) { return each.id != id; });
  std::erase_if(alone.blocks, [&alone](const vehicle::Block& each) { return each.id != alone.circuits.front().block; });
  return alone;
}

std::string counted(std::size_t count, const std::string& what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

}  // namespace

NotebookDesk::NotebookDesk(platform::Host& host, Notebook& notebook, const Settings& settings, Messages& messages,
                           Navigator& navigator, Editor& editor)
    : host_(host), notebook_(notebook), settings_(settings), messages_(messages), navigator_(navigator), editor_(editor) {}

void NotebookDesk::open_circuit(CircuitRef circuit) {
  if (!notebook_.open(circuit)) return messages_.say_problem("This circuit is gone.");
  editor_.vehicles_changed();
  navigator_.go(Route::at(Screen::size));
}

bool NotebookDesk::add(const vehicle::Vehicle& vehicle, bool own) {
  if (notebook_.full()) {
    messages_.say_problem(full_sentence());
    return false;
  }
  notebook_.add(vehicle, own);
  editor_.vehicles_changed();
  navigator_.go(Route::at(Screen::size));
  return true;
}

tables::GaugeSystem NotebookDesk::usual_gauge() const {
  if (editor_.has_circuit()) return editor_.circuit().wiring.gauge;
  return settings_.units() == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric;
}

std::uint32_t NotebookDesk::home() const {
  const Stored* open = notebook_.open_vehicle();
  return open == nullptr || notebook_.is_untouched_demo(*open) ? 0 : open->number;
}

// The demo is nobody's vehicle: the first own circuit gets one of its own, in the demo's place.
void NotebookDesk::new_circuit() {
  if (const std::uint32_t vehicle = home()) {
    const auto& blocks = notebook_.find(vehicle)->vehicle.blocks;
    vehicle::BlockId block = editor_.has_circuit() ? editor_.placed().block : blocks.front().id;
    for (const vehicle::Block& each : blocks) {
      if (!vehicle::spare_position(editor_.vehicle(), block)) block = each.id;
    }
    return new_circuit_in(vehicle, block);
  }
  new_vehicle(circuit::Setting::van);
}

void NotebookDesk::new_vehicle(circuit::Setting kind) {
  const tables::GaugeSystem gauge = usual_gauge();
  vehicle::Vehicle made = vehicle::new_vehicle(kind, gauge);
  const vehicle::EditResult with =
      vehicle::apply(made, vehicle::AddCircuit{made.blocks.front().id, circuit::new_circuit(gauge)});
  if (with.vehicle) made = *with.vehicle;
  const bool demo_goes = notebook_.has_untouched_demo();
  if (add(made, true) && demo_goes) messages_.say("Your first circuit takes the demo's place.");
}

void NotebookDesk::new_circuit_in(std::uint32_t vehicle, vehicle::BlockId block, std::optional<int> position) {
  add_circuit(vehicle, block, position, circuit::new_circuit(usual_gauge()));
}

// One step of undo, though a told position is a second edit.
void NotebookDesk::add_circuit(std::uint32_t vehicle, vehicle::BlockId block, std::optional<int> position,
                               circuit::Circuit plan) {
  const Stored* stored = notebook_.find(vehicle);
  if (stored == nullptr) return;
  const vehicle::CircuitId id{vehicle::next_id(stored->vehicle)};
  const std::string join = "add/" + std::to_string(id.number);
  if (!editor_.change(vehicle, vehicle::AddCircuit{block, std::move(plan)}, join)) return;
  if (position) editor_.change(vehicle, vehicle::PlaceCircuit{id, block, *position}, join);
  notebook_.open({vehicle, id});
  editor_.vehicles_changed();
  navigator_.go(Route::at(Screen::size));
}

void NotebookDesk::add_demo() { add(vehicle::demo_vehicle(), false); }

void NotebookDesk::duplicate_circuit(CircuitRef circuit) {
  const vehicle::PlacedCircuit* placed = notebook_.find(circuit);
  if (placed == nullptr) return;
  circuit::Circuit copy = placed->plan;
  copy.name = copy_name(copy.name);
  const std::size_t before = notebook_.circuits();
  add_circuit(circuit.vehicle, placed->block, std::nullopt, std::move(copy));
  if (notebook_.circuits() > before) messages_.say("You now work on the copy.");
}

void NotebookDesk::duplicate_vehicle(std::uint32_t vehicle) {
  const Stored* stored = notebook_.find(vehicle);
  if (stored == nullptr) return;
  vehicle::Vehicle copy = stored->vehicle;
  copy.name = copy_name(copy.name);
  if (add(copy, false)) messages_.say("You now work on the copy.");
}

void NotebookDesk::offer_back(const std::string& name, std::uint32_t deleted) {
  editor_.vehicles_changed();
  navigator_.leave_what_is_gone();
  messages_.say("'" + name + "' deleted.", Toast::Offer::put_back, deleted);
}

void NotebookDesk::delete_circuit(CircuitRef circuit) {
  const vehicle::PlacedCircuit* placed = notebook_.find(circuit);
  if (placed == nullptr) return;
  const std::string name = placed->plan.name;
  const std::uint32_t deleted = notebook_.keep_deleted(circuit);
  editor_.change(circuit.vehicle, vehicle::RemoveCircuit{circuit.circuit});
  offer_back(name, deleted);
}

void NotebookDesk::delete_vehicle(std::uint32_t vehicle) {
  const Stored* stored = notebook_.find(vehicle);
  if (stored == nullptr) return;
  const std::string name = stored->vehicle.name;
  offer_back(name, notebook_.remove(vehicle));
}

void NotebookDesk::delete_unread(std::uint32_t number) {
  if (notebook_.find_unread(number) == nullptr) return;
  const std::string name = notebook_.find_unread(number)->key;
  offer_back(name, notebook_.remove_unread(number));
}

void NotebookDesk::put_back(std::uint32_t deleted) {
  std::string name;
  for (const Deleted& each : notebook_.deleted()) {
    if (each.number == deleted) name = each.name;
  }
  if (const std::string why_not = notebook_.put_back(deleted); !why_not.empty()) return messages_.say_problem(why_not);
  editor_.vehicles_changed();
  messages_.say("'" + name + "' is back.");
}

void NotebookDesk::move_circuit(CircuitRef circuit, int by) {
  editor_.change(circuit.vehicle, vehicle::MoveCircuit{circuit.circuit, by});
}

void NotebookDesk::move_vehicle(std::uint32_t vehicle, int by) {
  notebook_.move(vehicle, by);
  editor_.vehicles_changed();
}

void NotebookDesk::save(const std::string& stem, const std::string& text) {
  const std::string name = stem + ".branchlight.json";
  host_.save_file(name, kMediaType, text);
  messages_.say("Saved as " + name + ".");
}

void NotebookDesk::export_circuit(CircuitRef circuit) {
  const vehicle::PlacedCircuit* placed = notebook_.find(circuit);
  if (placed == nullptr) return;
  save(file_stem(placed->plan.name), document::write_vehicle(only(notebook_.find(circuit.vehicle)->vehicle, circuit.circuit)));
}

void NotebookDesk::export_vehicle(std::uint32_t vehicle) {
  const Stored* stored = notebook_.find(vehicle);
  if (stored == nullptr) return;
  save(file_stem(stored->vehicle.name), stored->text);
}

void NotebookDesk::export_unread(std::uint32_t number) {
  const Unread* unread = notebook_.find_unread(number);
  if (unread == nullptr) return;
  save(file_stem(unread->key), unread->text);
}

void NotebookDesk::export_all() {
  std::vector<vehicle::Vehicle> vehicles;
  for (const Stored& stored : notebook_.vehicles()) vehicles.push_back(stored.vehicle);
  if (vehicles.empty()) return messages_.say_problem("There is no vehicle to export.");
  const std::string text = document::write_vehicles(vehicles);
  if (document::too_long_to_read(text))
    return messages_.say_problem("Together they are too large for one file. Export each vehicle on its own.");
  const std::string name = "vehicles-" + host_.today() + ".branchlight.json";
  host_.save_file(name, kMediaType, text);
  messages_.say("Saved as " + name + "." +
                (notebook_.unread().empty() ? "" : " Records that can't be read are not in it: export each on its own."));
}

void NotebookDesk::ask_for_import() {
  import_problems_.clear();
  host_.ask_for_file();
}

void NotebookDesk::import_file(std::string_view /*name*/, std::string_view bytes) {
  document::VehiclesRead read = document::read_vehicles(bytes);
  if (read.problems.empty() && read.vehicles.empty())
    read.problems.push_back({"", "The file holds no vehicle.", "Give a file exported from Branchlight."});
  if (read.problems.empty() && notebook_.vehicles().size() + read.vehicles.size() > document::kMaxVehiclesInFile)
    read.problems.push_back({"", "The file holds " + counted(read.vehicles.size(), "vehicle") +
                                     " and the notebook has no room for them.",
                             "At most " + std::to_string(document::kMaxVehiclesInFile) + " in all."});
  import_problems_ = std::move(read.problems);
  if (!import_problems_.empty()) {
    messages_.dismiss_toast();
    navigator_.go(Route::at(Screen::circuits));
    return host_.wake();
  }
  notebook_.add_all(read.vehicles);
  editor_.vehicles_changed();
  navigator_.go(Route::at(Screen::size));
  std::size_t circuits = 0;
  for (const vehicle::Vehicle& each : read.vehicles) circuits += each.circuits.size();
  const std::string what = read.vehicles.size() == 1 ? "'" + read.vehicles.front().name + "'" : counted(read.vehicles.size(), "vehicle");
  messages_.say(what + " added, with " + counted(circuits, "circuit") + ".");
}

}  // namespace app
