#include "app/notebook.h"

#include <algorithm>
#include <utility>

#include "app/migrate.h"
#include "circuit/limits.h"
#include "document/vehicle_file.h"
#include "vehicle/validate.h"

namespace app {
namespace {

vehicle::CircuitId first_circuit(const vehicle::Vehicle& vehicle) {
  return vehicle.circuits.empty() ? vehicle::CircuitId{} : vehicle.circuits.front().id;
}

}  // namespace

Notebook::Notebook(Records& records, const std::vector<platform::StoredRecord>& stored) : records_(records) {
  bool has_index = false;
  for (const platform::StoredRecord& record : stored) {
    if (record.key == kIndexKey) {
      index_ = read_index(record.text);
      has_index = true;
    } else {
      read_record(record);
    }
  }
  // Newest first where the index does not say otherwise.
  std::sort(vehicles_.begin(), vehicles_.end(), [](const Stored& a, const Stored& b) { return a.number > b.number; });
  for (const Stored& each : vehicles_) next_number_ = std::max(next_number_, each.number + 1);
  if (has_index) take_index(index_);
  if (!has_index && vehicles_.empty() && unread_.empty()) put_in_demo();
  if (!has_index && vehicles_.size() == 1) demo_ = vehicles_.front().number;   // is_untouched_demo() decides
  see_open();
  if (!circuit_) open_first();
}

void Notebook::read_record(const platform::StoredRecord& record) {
  const auto number = vehicle_in_key(record.key);
  if (!number) {
    // Those of version 1 that can be read are in vehicles by now; anything else is not ours, and is left alone.
    if (auto why = why_not_moved(record)) {
      unread_.push_back({static_cast<std::uint32_t>(unread_.size()) + 1, record.key, record.text, std::move(*why)});
    }
    return;
  }
  next_number_ = std::max(next_number_, *number + 1);
  document::VehiclesRead read = document::read_vehicles(record.text);
  if (read.problems.empty() && read.vehicles.size() == 1) {
    vehicles_.push_back({*number, std::move(read.vehicles.front()), record.text, {}});
    return;
  }
  std::string why = read.problems.empty() ? "The record does not hold exactly one vehicle." : circuit::one_line(read.problems.front());
  unread_.push_back({static_cast<std::uint32_t>(unread_.size()) + 1, record.key, record.text, std::move(why)});
}

// Vehicles that it does not name come first: they were stored just before the app was stopped.
void Notebook::take_index(const VehicleIndex& index) {
  open_ = index.open;
  demo_ = index.demo;
  next_number_ = std::max(next_number_, index.next);
  const auto place = [&index](const Stored& stored) {
    const auto at = std::find(index.order.begin(), index.order.end(), stored.number);
    return at == index.order.end() ? std::ptrdiff_t{-1} : at - index.order.begin();
  };
  std::stable_sort(vehicles_.begin(), vehicles_.end(),
                   [&place](const Stored& a, const Stored& b) { return place(a) < place(b); });
}

void Notebook::put_in_demo() {
  demo_ = insert(vehicle::demo_vehicle(), 0);
  open_vehicle(demo_);
  store_index();
}

// The first circuit of all; where there is none, the first vehicle.
void Notebook::open_first() {
  open_ = {};
  for (const Stored& each : vehicles_) {
    if (open_.vehicle == 0 || (open_.none() && !each.vehicle.circuits.empty())) open_ = {each.number, first_circuit(each.vehicle)};
  }
  see_open();
}

void Notebook::see_open() {
  if (find(open_) == nullptr) {
    circuit_.reset();
    return;
  }
  circuit_ = vehicle::circuit_of(find(open_.vehicle)->vehicle, open_.circuit);
}

const Stored* Notebook::find(std::uint32_t vehicle) const {
  for (const Stored& stored : vehicles_) {
    if (stored.number == vehicle) return &stored;
  }
  return nullptr;
}

Stored* Notebook::find_mutable(std::uint32_t number) {
  for (Stored& stored : vehicles_) {
    if (stored.number == number) return &stored;
  }
  return nullptr;
}

const vehicle::PlacedCircuit* Notebook::find(CircuitRef ref) const {
  const Stored* stored = find(ref.vehicle);
  return stored != nullptr ? vehicle::find_circuit(stored->vehicle, ref.circuit) : nullptr;
}

std::size_t Notebook::circuits() const {
  std::size_t sum = 0;
  for (const Stored& stored : vehicles_) sum += stored.vehicle.circuits.size();
  return sum;
}

const Unread* Notebook::find_unread(std::uint32_t number) const {
  for (const Unread& each : unread_) {
    if (each.number == number) return &each;
  }
  return nullptr;
}

bool Notebook::may_have(CircuitRef ref) const {
  const std::string key = vehicle_key(ref.vehicle);
  const bool unread = std::any_of(unread_.begin(), unread_.end(), [&key](const Unread& each) { return each.key == key; });
  return unread || find(ref) != nullptr;
}

bool Notebook::is_untouched_demo(const Stored& stored) const {
  return stored.number == demo_ && stored.text == document::write_vehicle(vehicle::demo_vehicle());
}

bool Notebook::has_untouched_demo() const {
  const Stored* demo = find(demo_);
  return demo != nullptr && is_untouched_demo(*demo);
}

bool Notebook::full() const { return vehicles_.size() >= document::kMaxVehiclesInFile; }

History* Notebook::history(std::uint32_t number) {
  Stored* stored = find_mutable(number);
  return stored != nullptr ? &stored->history : nullptr;
}

void Notebook::store(const Stored& stored) { records_.store(vehicle_key(stored.number), stored.text); }

void Notebook::store_index() {
  index_.order.clear();
  for (const Stored& stored : vehicles_) index_.order.push_back(stored.number);
  index_.open = open_;
  index_.demo = demo_;
  index_.next = next_number_;
  records_.store(kIndexKey, write_index(index_));
}

bool Notebook::open(CircuitRef ref) {
  if (find(ref) == nullptr) return false;
  if (open_ == ref && circuit_) return true;
  open_ = ref;
  see_open();
  store_index();
  return true;
}

bool Notebook::open_vehicle(std::uint32_t number) {
  const Stored* stored = find(number);
  if (stored == nullptr) return false;
  open_ = {number, first_circuit(stored->vehicle)};
  see_open();
  store_index();
  return true;
}

std::uint32_t Notebook::insert(const vehicle::Vehicle& vehicle, std::size_t place) {
  Stored stored;
  stored.number = next_number_++;
  stored.vehicle = vehicle;
  stored.text = document::write_vehicle(vehicle);
  store(stored);
  const std::uint32_t number = stored.number;
  vehicles_.insert(vehicles_.begin() + static_cast<std::ptrdiff_t>(place), std::move(stored));
  return number;
}

// The order of the writes matters: the new vehicle is safe before the demo goes.
std::uint32_t Notebook::add(const vehicle::Vehicle& vehicle, bool own) {
  const std::uint32_t number = insert(vehicle, 0);
  if (own) make_room_for_own();
  open_vehicle(number);
  return number;
}

void Notebook::add_all(const std::vector<vehicle::Vehicle>& vehicles) {
  std::uint32_t first = 0;
  for (std::size_t i = 0; i < vehicles.size(); ++i) {
    const std::uint32_t number = insert(vehicles[i], i);
    if (i == 0) first = number;
  }
  make_room_for_own();
  open_vehicle(first);
}

void Notebook::make_room_for_own() {
  if (!has_untouched_demo()) return;
  records_.remove(vehicle_key(demo_));
  std::erase_if(vehicles_, [this](const Stored& stored) { return stored.number == demo_; });
  demo_ = 0;
}

bool Notebook::replace(std::uint32_t number, const vehicle::Vehicle& vehicle) {
  Stored* stored = find_mutable(number);
  if (stored == nullptr) return false;
  std::string text = document::write_vehicle(vehicle);
  if (text == stored->text) return false;
  stored->vehicle = vehicle;
  stored->text = std::move(text);
  store(*stored);
  forget_deleted_in(*stored);
  if (number == open_.vehicle) {
    see_open();
    if (!circuit_) open_vehicle(number);
  }
  return true;
}

std::uint32_t Notebook::add_deleted(Deleted deleted) {
  deleted.number = ++deletions_;
  deleted_.push_back(std::move(deleted));
  return deleted_.back().number;
}

std::uint32_t Notebook::remove(std::uint32_t vehicle) {
  const auto at = std::find_if(vehicles_.begin(), vehicles_.end(),
                               [vehicle](const Stored& stored) { return stored.number == vehicle; });
  if (at == vehicles_.end()) return 0;
  records_.remove(vehicle_key(vehicle));
  Deleted deleted;
  deleted.name = at->vehicle.name;
  deleted.place = static_cast<std::size_t>(at - vehicles_.begin());
  deleted.stored = std::move(*at);
  vehicles_.erase(at);
  const std::uint32_t number = add_deleted(std::move(deleted));
  if (open_.vehicle == vehicle) open_first();
  store_index();
  return number;
}

std::uint32_t Notebook::keep_deleted(CircuitRef ref) {
  const vehicle::PlacedCircuit* placed = find(ref);
  if (placed == nullptr) return 0;
  Deleted deleted;
  deleted.name = placed->plan.name;
  deleted.circuit = *placed;
  deleted.of = ref.vehicle;
  deleted.place = static_cast<std::size_t>(placed - find(ref.vehicle)->vehicle.circuits.data());
  return add_deleted(std::move(deleted));
}

// Undo gave it back: it is deleted no more.
void Notebook::forget_deleted_in(const Stored& stored) {
  std::erase_if(deleted_, [&stored](const Deleted& each) {
    return each.circuit && each.of == stored.number && vehicle::find_circuit(stored.vehicle, each.circuit->id) != nullptr;
  });
}

std::uint32_t Notebook::remove_unread(std::uint32_t number) {
  const auto at = std::find_if(unread_.begin(), unread_.end(), [number](const Unread& each) { return each.number == number; });
  if (at == unread_.end()) return 0;
  records_.remove(at->key);
  Deleted deleted;
  deleted.name = at->key;
  deleted.unread = std::move(*at);
  unread_.erase(at);
  return add_deleted(std::move(deleted));
}

std::string Notebook::put_back(std::uint32_t number) {
  const auto at = std::find_if(deleted_.begin(), deleted_.end(), [number](const Deleted& each) { return each.number == number; });
  if (at == deleted_.end()) return "It is no longer kept.";
  if (at->circuit) return put_back_circuit(*at);
  if (at->stored) {
    if (full()) return "The notebook is full. Export and delete a vehicle first.";
    store(*at->stored);
    const std::size_t place = std::min(at->place, vehicles_.size());
    vehicles_.insert(vehicles_.begin() + static_cast<std::ptrdiff_t>(place), std::move(*at->stored));
    if (!circuit_) open_first();
    store_index();
  } else if (at->unread) {
    records_.store(at->unread->key, at->unread->text);
    unread_.push_back(std::move(*at->unread));
  }
  deleted_.erase(at);
  return {};
}

// On its own position; where that is taken by now, on the first spare one.
std::string Notebook::put_back_circuit(const Deleted& deleted) {
  const Stored* stored = find(deleted.of);
  if (stored == nullptr) return "Its vehicle is deleted. Put that back first.";
  vehicle::Vehicle after = stored->vehicle;
  vehicle::PlacedCircuit placed = *deleted.circuit;
  if (vehicle::find_block(after, placed.block) == nullptr) placed.block = after.blocks.front().id;
  const bool taken = vehicle::at_position(after, placed.block, placed.position) != nullptr ||
                     placed.position > vehicle::find_block(after, placed.block)->positions;
  if (taken) {
    const auto spare = vehicle::spare_position(after, placed.block);
    if (!spare) return "Its fuse block has no spare position. Give it more, or move a circuit.";
    placed.position = *spare;
  }
  const std::size_t place = std::min(deleted.place, after.circuits.size());
  after.circuits.insert(after.circuits.begin() + static_cast<std::ptrdiff_t>(place), std::move(placed));
  if (const auto problems = vehicle::validate(after); !problems.empty()) return circuit::one_line(problems.front());
  const CircuitRef back{deleted.of, deleted.circuit->id};
  replace(back.vehicle, after);   // which takes it off deleted_
  if (!circuit_) open(back);
  return {};
}

void Notebook::move(std::uint32_t vehicle, int by) {
  for (std::size_t i = 0; i < vehicles_.size(); ++i) {
    if (vehicles_[i].number != vehicle) continue;
    const auto to = static_cast<std::ptrdiff_t>(i) + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(vehicles_.size())) return;
    std::swap(vehicles_[i], vehicles_[static_cast<std::size_t>(to)]);
    return store_index();
  }
}

}  // namespace app
