#include "app/trace_shelf.h"

#include <algorithm>
#include <utility>

#include "app/lines.h"
#include "document/vehicle_file.h"

namespace app {
namespace {

constexpr std::string_view kLoose = "trace/0/";

std::string loose_key(std::uint32_t number) { return std::string(kLoose) + std::to_string(number); }

}  // namespace

TraceShelf::TraceShelf(Records& records, Notebook& notebook, const std::vector<platform::StoredRecord>& stored)
    : notebook_(notebook), running_(records, stored, "running"), loose_(records, stored, "trace") {}

void TraceShelf::open(CircuitRef circuit) {
  circuit_ = circuit;
  read_kept_traces();
}

const std::string* TraceShelf::running() const { return running_.find(running_key()); }
void TraceShelf::store_running(const RunningTrace& trace) { running_.store(running_key(), write_running(trace)); }
void TraceShelf::drop_running() { running_.remove(running_key()); }

void TraceShelf::put_running_aside() {
  const std::string* text = running();
  if (text == nullptr) return;
  int free = 1;
  while (running_.find(running_key() + "/unread-" + std::to_string(free)) != nullptr) ++free;
  running_.store(running_key() + "/unread-" + std::to_string(free), *text);
}

void TraceShelf::read_kept_traces() {
  kept_.clear();
  if (circuit_.none()) return read_loose();
  if (const vehicle::PlacedCircuit* placed = notebook_.find(circuit_)) kept_.assign(placed->traces.rbegin(), placed->traces.rend());
}

void TraceShelf::read_loose() {
  for (const auto& [key, text] : loose_.all()) {
    if (!key.starts_with(kLoose)) continue;
    const auto number = counted_number(std::string_view(key).substr(kLoose.size()));
    auto kept = read_kept(text);
    if (!number || !kept) continue;
    kept->number = *number;
    kept_.push_back(std::move(*kept));
  }
  std::sort(kept_.begin(), kept_.end(), [](const KeptTrace& a, const KeptTrace& b) { return a.number > b.number; });
}

const KeptTrace* TraceShelf::find_kept(std::uint32_t number) const {
  for (const KeptTrace& kept : kept_) {
    if (kept.number == number) return &kept;
  }
  return nullptr;
}

// Not a step of undo: a trace is what was seen, and going back in the plan does not unsee it.
bool TraceShelf::change(const vehicle::Edit& edit) {
  const Stored* stored = notebook_.find(circuit_.vehicle);
  if (stored == nullptr) return false;
  vehicle::EditResult result = vehicle::apply(stored->vehicle, edit);
  if (!result.vehicle || document::too_long_to_read(document::write_vehicle(*result.vehicle))) return false;
  notebook_.replace(circuit_.vehicle, *result.vehicle);
  read_kept_traces();
  return true;
}

std::uint32_t TraceShelf::keep(KeptTrace trace) {
  if (circuit_.none()) return keep_loose(std::move(trace));
  if (!change(vehicle::AddTrace{circuit_.circuit, clipped(std::move(trace))})) return 0;
  return kept_.front().number;
}

std::uint32_t TraceShelf::keep_loose(KeptTrace trace) {
  trace.number = kept_.empty() ? 1 : kept_.front().number + 1;
  while (loose_.find(loose_key(trace.number)) != nullptr) ++trace.number;   // one that can not be read stays, too
  loose_.store(loose_key(trace.number), write_kept(trace));
  kept_.insert(kept_.begin(), std::move(trace));
  return kept_.front().number;
}

void TraceShelf::forget(std::uint32_t number) {
  const KeptTrace* kept = find_kept(number);
  if (kept == nullptr) return;
  forgotten_ = Forgotten{circuit_, *kept};
  if (!circuit_.none()) {
    change(vehicle::RemoveTrace{circuit_.circuit, number});
    return;
  }
  loose_.remove(loose_key(number));
  read_kept_traces();
}

bool TraceShelf::put_back_forgotten() {
  if (!forgotten_) return false;
  const Forgotten back = *std::exchange(forgotten_, std::nullopt);
  const CircuitRef now = std::exchange(circuit_, back.circuit);
  bool done = true;
  if (circuit_.none()) loose_.store(loose_key(back.trace.number), write_kept(back.trace));
  else done = change(vehicle::PutTrace{circuit_.circuit, back.trace});
  open(now);
  return done;
}

}  // namespace app
