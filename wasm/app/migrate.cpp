#include "app/migrate.h"

#include <algorithm>
#include <map>
#include <utility>

#include "app/circuit_ref.h"
#include "app/lines.h"
#include "app/trace_record.h"
#include "app/vehicle_index.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "vehicle/gather.h"
#include "vehicle/validate.h"

namespace app {
namespace {

constexpr std::string_view kOldIndex = "notebook";

std::string numbered(std::string_view word, std::uint32_t number) {
  return std::string(word) + "/" + std::to_string(number);
}

std::optional<std::uint32_t> circuit_in_key(std::string_view key) {
  constexpr std::string_view kPrefix = "circuit/";
  if (!key.starts_with(kPrefix)) return std::nullopt;
  const auto number = counted_number(key.substr(kPrefix.size()));
  return number && numbered("circuit", *number) == key ? number : std::nullopt;
}

// The order, the open one and the demo's mark of version 1, all by the numbers of circuits.
struct OldIndex {
  std::vector<std::uint32_t> order;
  std::uint32_t open = 0;
  std::uint32_t demo = 0;
};
OldIndex read_old_index(std::string_view text) {
  OldIndex index;
  for (const Line& line : split_lines(text)) {
    std::string_view rest = line.rest;
    if (line.word == "open") index.open = counted_number(rest).value_or(0);
    if (line.word == "demo") index.demo = counted_number(rest).value_or(0);
    while (line.word == "order" && !rest.empty()) {
      if (const auto number = counted_number(take_word(rest))) index.order.push_back(*number);
    }
  }
  return index;
}

class Migration {
 public:
  Migration(Records& records, const std::vector<platform::StoredRecord>& stored) : records_(records) {
    for (const platform::StoredRecord& record : stored) texts_[record.key] = record.text;
  }

  std::vector<platform::StoredRecord> run() {
    const std::string* index = find(std::string(kIndexKey));
    if (index != nullptr) index_ = read_index(*index);
    old_ = read_old_index(find(std::string(kOldIndex)) != nullptr ? *find(std::string(kOldIndex)) : "");
    drop_what_arrived();
    move_circuits();
    move_loose();
    finish(index != nullptr);
    std::vector<platform::StoredRecord> now;
    for (auto& [key, text] : texts_) now.push_back({key, std::move(text)});
    return now;
  }

 private:
  using Numbers = std::vector<std::uint32_t>;

  [[nodiscard]] const std::string* find(const std::string& key) const {
    const auto at = texts_.find(key);
    return at == texts_.end() ? nullptr : &at->second;
  }
  void put(const std::string& key, std::string text) {
    if (const std::string* there = find(key); there != nullptr && *there == text) return;
    records_.store(key, text);
    texts_[key] = std::move(text);
  }
  void drop(const std::string& key) {
    if (texts_.erase(key) > 0) records_.remove(key);
  }

  // Every record of a circuit of version 1, the circuit first.
  [[nodiscard]] std::vector<std::string> keys_of(std::uint32_t circuit) const {
    std::vector<std::string> keys;
    for (const std::string_view word : {"circuit", "fitted", "picked", "trace"}) {
      if (find(numbered(word, circuit)) != nullptr) keys.push_back(numbered(word, circuit));
    }
    const std::string kept = numbered("trace", circuit) + "/";
    for (auto at = texts_.lower_bound(kept); at != texts_.end() && at->first.starts_with(kept); ++at) {
      if (kept_in(at->first, at->second)) keys.push_back(at->first);
    }
    return keys;
  }
  // An ended trace; nullopt: none that this version can read whole.
  static std::optional<vehicle::TraceRecord> kept_in(const std::string& key, const std::string& text) {
    const auto number = counted_number(std::string_view(key).substr(key.rfind('/') + 1));
    auto kept = read_kept(text);
    if (!number || !kept || write_kept(*kept) != text) return std::nullopt;
    kept->number = *number;
    return kept;
  }
  [[nodiscard]] std::uint32_t sum_of(std::uint32_t circuit) const {
    std::string all;
    for (const std::string& key : keys_of(circuit)) all.append(key).append("\n").append(*find(key)).append("\n");
    return text_sum(all);
  }

  // An earlier start put them into vehicles, and those are there now.
  void drop_what_arrived() {
    for (const Moved& moved : index_.moved) {
      const bool there = find(numbered("circuit", moved.circuit)) != nullptr;
      if (there && sum_of(moved.circuit) != moved.sum) continue;   // edited since by an older app: moved anew
      const bool listed = std::find(index_.order.begin(), index_.order.end(), moved.vehicle) != index_.order.end();
      if (listed && find(vehicle_key(moved.vehicle)) == nullptr) continue;   // it never got to the device
      for (const std::string& key : keys_of(moved.circuit)) drop(key);
    }
  }

  // In the order of the old index; those that it does not name first, newest first.
  [[nodiscard]] Numbers circuits_to_move() const {
    Numbers numbers;
    for (const auto& [key, text] : texts_) {
      if (const auto number = circuit_in_key(key)) numbers.push_back(*number);
    }
    std::sort(numbers.rbegin(), numbers.rend());
    const auto place = [this](std::uint32_t number) {
      const auto at = std::find(old_.order.begin(), old_.order.end(), number);
      return at == old_.order.end() ? std::ptrdiff_t{-1} : at - old_.order.begin();
    };
    std::stable_sort(numbers.begin(), numbers.end(),
                     [&place](std::uint32_t a, std::uint32_t b) { return place(a) < place(b); });
    return numbers;
  }

  void move_circuits() {
    Numbers numbers;
    std::vector<circuit::Circuit> circuits;
    for (const std::uint32_t number : circuits_to_move()) {
      document::ReadResult read = document::read_circuits(*find(numbered("circuit", number)));
      if (!read.problems.empty() || read.circuits.size() != 1) continue;
      numbers.push_back(number);
      circuits.push_back(std::move(read.circuits.front()));
    }
    vehicle::Gathered gathered = vehicle::gather(circuits);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      vehicle::Vehicle& into = gathered.vehicles[gathered.where[i].vehicle];
      add_what_was_beside(numbers[i], into, gathered.where[i].circuit);
    }
    Numbers new_order;
    for (std::size_t i = 0; i < gathered.vehicles.size(); ++i) {
      if (!vehicle::validate(gathered.vehicles[i]).empty()) continue;   // why_not_moved() tells
      const std::uint32_t vehicle = write_vehicle(gathered.vehicles[i]);
      if (vehicle == 0) continue;
      new_order.push_back(vehicle);
      for (std::size_t c = 0; c < numbers.size(); ++c) {
        if (gathered.where[c].vehicle == i) moved(numbers[c], {vehicle, gathered.where[c].circuit});
      }
    }
    std::erase_if(index_.order, [&new_order](std::uint32_t each) {
      return std::find(new_order.begin(), new_order.end(), each) != new_order.end();
    });
    index_.order.insert(index_.order.begin(), new_order.begin(), new_order.end());
  }

  void add_what_was_beside(std::uint32_t number, vehicle::Vehicle& into, vehicle::CircuitId id) {
    for (vehicle::PlacedCircuit& placed : into.circuits) {
      if (placed.id != id) continue;
      if (const std::string* text = find(numbered("fitted", number))) {
        const FittedTold told = read_fitted(*text);
        if (told != FittedTold{}) placed.built = vehicle::built_from_v1(placed.plan, told.size, units::Amperes(told.fuse_a));
      }
      const std::string kept = numbered("trace", number) + "/";
      for (auto at = texts_.lower_bound(kept); at != texts_.end() && at->first.starts_with(kept); ++at) {
        if (auto record = kept_in(at->first, at->second)) placed.traces.push_back(clipped(std::move(*record)));
      }
      std::sort(placed.traces.begin(), placed.traces.end(),
                [](const auto& a, const auto& b) { return a.number < b.number; });
      if (placed.traces.size() > vehicle::kMaxTraces)
        placed.traces.erase(placed.traces.begin(), placed.traces.end() - static_cast<std::ptrdiff_t>(vehicle::kMaxTraces));
    }
  }

  // Under a number of its own; where an earlier start was stopped half way, under the one it has. 0: too long.
  std::uint32_t write_vehicle(const vehicle::Vehicle& vehicle) {
    const std::string text = document::write_vehicle(vehicle);
    if (document::too_long_to_read(text)) return 0;
    for (const auto& [key, there] : texts_) {
      const auto number = vehicle_in_key(key);
      if (!number) continue;
      index_.next = std::max(index_.next, *number + 1);
      const bool listed = std::find(index_.order.begin(), index_.order.end(), *number) != index_.order.end();
      if (there == text && !listed && !is_new(*number)) return new_.emplace_back(*number);
    }
    put(vehicle_key(index_.next), text);
    return new_.emplace_back(index_.next++);
  }
  [[nodiscard]] bool is_new(std::uint32_t number) const { return std::find(new_.begin(), new_.end(), number) != new_.end(); }

  void moved(std::uint32_t number, CircuitRef to) {
    const std::uint32_t sum = sum_of(number);
    if (const std::string* running = find(numbered("trace", number))) put("running/" + ref_text(to), *running);
    if (const std::string* picked = find(numbered("picked", number))) put("picked/" + ref_text(to), *picked);
    if (old_.open == number) index_.open = to;
    if (old_.demo == number) index_.demo = to.vehicle;
    std::erase_if(index_.moved, [number](const Moved& each) { return each.circuit == number; });
    index_.moved.push_back({number, to.vehicle, sum});
    for (const std::string& key : keys_of(number)) leaving_.push_back(key);
  }

  // What was told with no circuit open: the records of circuit 0.
  void move_loose() {
    for (const auto& [from, to] : {std::pair{"trace/0", "running/0/0"}, std::pair{"picked/0", "picked/0/0"}}) {
      if (const std::string* text = find(from); text != nullptr && find(to) == nullptr) put(to, *text);
      drop(from);
    }
  }

  void finish(bool had_index) {
    const bool old_index = find(std::string(kOldIndex)) != nullptr;
    if (!new_.empty() || (old_index && !had_index)) put(std::string(kIndexKey), write_index(index_));
    else if (old_index) drop(std::string(kOldIndex));   // read back, so the new one is on the device
    texts_.erase(std::string(kOldIndex));
    for (const std::string& key : leaving_) texts_.erase(key);
  }

  Records& records_;
  std::map<std::string, std::string> texts_;
  VehicleIndex index_;
  OldIndex old_;
  Numbers new_;                        // vehicles written now
  std::vector<std::string> leaving_;   // read no more, but on the device until the next start
};

}  // namespace

std::vector<platform::StoredRecord> migrated(Records& records, const std::vector<platform::StoredRecord>& stored) {
  return Migration(records, stored).run();
}

std::optional<std::string> why_not_moved(const platform::StoredRecord& record) {
  if (!circuit_in_key(record.key)) return std::nullopt;
  const document::ReadResult read = document::read_circuits(record.text);
  if (!read.problems.empty()) return circuit::one_line(read.problems.front());
  if (read.circuits.size() != 1) return "The record does not hold exactly one circuit.";
  return "It is of version 1 and fits in no vehicle.";
}

}  // namespace app
