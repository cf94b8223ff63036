#include "app/notebook.h"

#include <algorithm>

#include "app/lines.h"
#include "circuit/limits.h"
#include "document/circuit_file.h"

namespace app {
namespace {

constexpr std::string_view kCircuitPrefix = "circuit/";

std::optional<std::uint32_t> number_in_key(std::string_view key) {
  if (!key.starts_with(kCircuitPrefix)) return std::nullopt;
  const auto number = counted_number(key.substr(kCircuitPrefix.size()));
  // "circuit/007" is not a key of ours: we would write "circuit/7" and lose the link.
  return number && circuit_key(*number) == key ? number : std::nullopt;
}

std::vector<std::uint32_t> numbers_in(std::string_view text) {
  std::vector<std::uint32_t> numbers;
  while (!text.empty())
    if (const auto number = counted_number(take_word(text))) numbers.push_back(*number);
  return numbers;
}

}  // namespace

std::string circuit_key(std::uint32_t number) { return std::string(kCircuitPrefix) + std::to_string(number); }

Notebook::Notebook(Records& records, const std::vector<platform::StoredRecord>& stored) : records_(records) {
  std::string_view index;
  bool has_index = false;
  for (const platform::StoredRecord& record : stored) {
    if (record.key == kNotebookKey) {
      index = record.text;
      has_index = true;
    } else {
      read_record(record);
    }
  }
  // Newest first where the index does not say otherwise.
  std::sort(circuits_.begin(), circuits_.end(),
            [](const Stored& a, const Stored& b) { return a.number > b.number; });
  for (const Stored& each : circuits_) next_number_ = std::max(next_number_, each.number + 1);
  if (has_index) read_index(index);
  if (!has_index && circuits_.empty()) put_in_demo();
  if (!has_index && circuits_.size() == 1) demo_ = circuits_.front().number;  // is_untouched_demo() decides
  if (open() == nullptr) open_first_readable();
}

void Notebook::read_record(const platform::StoredRecord& record) {
  const auto number = number_in_key(record.key);
  if (!number || find(*number) != nullptr) return;   // someone else's record: left alone
  Stored stored;
  stored.number = *number;
  stored.text = record.text;
  document::ReadResult read = document::read_circuits(record.text);
  if (read.problems.empty() && read.circuits.size() == 1) stored.circuit = std::move(read.circuits.front());
  else if (!read.problems.empty()) stored.why_unreadable = circuit::one_line(read.problems.front());
  else stored.why_unreadable = "The record does not hold exactly one circuit.";
  circuits_.push_back(std::move(stored));
}

// "order 3 1 2", "open 3", "demo 1", "next 4". Circuits it does not name come first: they were
// stored just before the app was stopped.
void Notebook::read_index(std::string_view text) {
  std::vector<std::uint32_t> order;
  for (const Line& line : split_lines(text)) {
    if (line.word == "order") order = numbers_in(line.rest);
    if (line.word == "open") open_ = counted_number(line.rest).value_or(0);
    if (line.word == "demo") demo_ = counted_number(line.rest).value_or(0);
    if (line.word == "next") next_number_ = std::max(next_number_, counted_number(line.rest).value_or(1));
  }
  const auto place = [&order](const Stored& stored) {
    const auto at = std::find(order.begin(), order.end(), stored.number);
    return at == order.end() ? std::ptrdiff_t{-1} : at - order.begin();
  };
  std::stable_sort(circuits_.begin(), circuits_.end(),
                   [&place](const Stored& a, const Stored& b) { return place(a) < place(b); });
}

void Notebook::put_in_demo() {
  demo_ = insert(circuit::demo_circuit(), 0);
  open_ = demo_;
  store_index();
}

void Notebook::open_first_readable() {
  open_ = 0;
  for (const Stored& stored : circuits_)
    if (stored.readable() && open_ == 0) open_ = stored.number;
}

const Stored* Notebook::find(std::uint32_t number) const {
  for (const Stored& stored : circuits_)
    if (stored.number == number) return &stored;
  return nullptr;
}

Stored* Notebook::find_mutable(std::uint32_t number) {
  for (Stored& stored : circuits_)
    if (stored.number == number) return &stored;
  return nullptr;
}

bool Notebook::is_untouched_demo(const Stored& stored) const {
  return stored.number == demo_ && stored.readable() &&
         stored.text == document::write_circuit(circuit::demo_circuit());
}

bool Notebook::full() const { return circuits_.size() >= circuit::kMaxCircuitsInFile; }

circuit::History* Notebook::history(std::uint32_t number) {
  Stored* stored = find_mutable(number);
  return stored != nullptr ? &stored->history : nullptr;
}

void Notebook::store(const Stored& stored) { records_.store(circuit_key(stored.number), stored.text); }

void Notebook::store_index() {
  std::string text = "order";
  for (const Stored& stored : circuits_) text.append(" ").append(std::to_string(stored.number));
  text.append("\nopen ").append(std::to_string(open_));
  if (demo_ != 0) text.append("\ndemo ").append(std::to_string(demo_));
  text.append("\nnext ").append(std::to_string(next_number_)).append("\n");
  records_.store(kNotebookKey, text);
}

bool Notebook::open(std::uint32_t number) {
  const Stored* stored = find(number);
  if (stored == nullptr || !stored->readable()) return false;
  if (open_ == number) return true;
  open_ = number;
  store_index();
  return true;
}

std::uint32_t Notebook::insert(const circuit::Circuit& circuit, std::size_t place) {
  Stored stored;
  stored.number = next_number_++;
  stored.circuit = circuit;
  stored.text = document::write_circuit(circuit);
  store(stored);
  const std::uint32_t number = stored.number;
  circuits_.insert(circuits_.begin() + static_cast<std::ptrdiff_t>(place), std::move(stored));
  return number;
}

// The order of the writes matters: the new circuit is safe before the demo goes.
std::uint32_t Notebook::add(const circuit::Circuit& circuit, bool own) {
  open_ = insert(circuit, 0);
  if (own) make_room_for_own();
  store_index();
  return open_;
}

void Notebook::add_all(const std::vector<circuit::Circuit>& circuits) {
  for (std::size_t i = 0; i < circuits.size(); ++i) {
    const std::uint32_t number = insert(circuits[i], i);
    if (i == 0) open_ = number;
  }
  make_room_for_own();
  store_index();
}

void Notebook::make_room_for_own() {
  const Stored* demo = find(demo_);
  if (demo == nullptr || !is_untouched_demo(*demo)) return;
  records_.remove(circuit_key(demo_));
  std::erase_if(circuits_, [this](const Stored& stored) { return stored.number == demo_; });
  demo_ = 0;
}

bool Notebook::replace_open(const circuit::Circuit& circuit) { return replace(open_, circuit); }

bool Notebook::replace(std::uint32_t number, const circuit::Circuit& circuit) {
  Stored* stored = find_mutable(number);
  if (stored == nullptr || !stored->readable()) return false;
  std::string text = document::write_circuit(circuit);
  if (text == stored->text) return false;
  stored->circuit = circuit;
  stored->text = std::move(text);
  store(*stored);
  return true;
}

void Notebook::remove(std::uint32_t number) {
  const auto at = std::find_if(circuits_.begin(), circuits_.end(),
                               [number](const Stored& stored) { return stored.number == number; });
  if (at == circuits_.end()) return;
  records_.remove(circuit_key(number));
  const auto place = static_cast<std::size_t>(at - circuits_.begin());
  deleted_.push_back({std::move(*at), place});
  circuits_.erase(at);
  if (open_ == number) open_first_readable();
  store_index();
}

bool Notebook::put_back(std::uint32_t number) {
  const auto at = std::find_if(deleted_.begin(), deleted_.end(),
                               [number](const Deleted& each) { return each.stored.number == number; });
  if (at == deleted_.end() || full()) return false;
  const std::size_t place = std::min(at->place, circuits_.size());
  store(at->stored);
  circuits_.insert(circuits_.begin() + static_cast<std::ptrdiff_t>(place), std::move(at->stored));
  deleted_.erase(at);
  if (open() == nullptr && find(number)->readable()) open_ = number;
  store_index();
  return true;
}

void Notebook::move(std::uint32_t number, int by) {
  for (std::size_t i = 0; i < circuits_.size(); ++i) {
    if (circuits_[i].number != number) continue;
    const auto to = static_cast<std::ptrdiff_t>(i) + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(circuits_.size())) return;
    std::swap(circuits_[i], circuits_[static_cast<std::size_t>(to)]);
    return store_index();
  }
}

}  // namespace app
