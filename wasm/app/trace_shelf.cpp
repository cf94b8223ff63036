#include "app/trace_shelf.h"

#include <algorithm>
#include <utility>

#include "app/lines.h"

namespace app {

TraceShelf::TraceShelf(Records& records, const std::vector<platform::StoredRecord>& stored)
    : texts_(records, stored, "trace") {}

std::string TraceShelf::kept_key(std::uint32_t number) const { return running_key() + "/" + std::to_string(number); }

void TraceShelf::open(std::uint32_t circuit) {
  circuit_ = circuit;
  read_kept_traces();
}

const std::string* TraceShelf::running() const { return texts_.find(running_key()); }
void TraceShelf::store_running(const RunningTrace& trace) { texts_.store(running_key(), write_running(trace)); }
void TraceShelf::drop_running() { texts_.remove(running_key()); }

void TraceShelf::put_running_aside() {
  const std::string* text = running();
  if (text == nullptr) return;
  int free = 1;
  while (texts_.find(running_key() + "/unread-" + std::to_string(free)) != nullptr) ++free;
  texts_.store(running_key() + "/unread-" + std::to_string(free), *text);
}

void TraceShelf::read_kept_traces() {
  kept_.clear();
  const std::string start = running_key() + "/";
  for (const auto& [key, text] : texts_.all()) {
    if (!key.starts_with(start)) continue;
    const auto number = counted_number(std::string_view(key).substr(start.size()));
    auto kept = read_kept(text);
    if (!number || !kept) continue;
    kept->number = *number;
    kept_.push_back(std::move(*kept));
  }
  std::sort(kept_.begin(), kept_.end(), [](const KeptTrace& a, const KeptTrace& b) { return a.number > b.number; });
}

const KeptTrace* TraceShelf::find_kept(std::uint32_t number) const {
  for (const KeptTrace& kept : kept_)
    if (kept.number == number) return &kept;
  return nullptr;
}

std::uint32_t TraceShelf::keep(KeptTrace trace) {
  trace.number = kept_.empty() ? 1 : kept_.front().number + 1;
  while (texts_.find(kept_key(trace.number)) != nullptr) ++trace.number;   // one that can not be read stays, too
  texts_.store(kept_key(trace.number), write_kept(trace));
  kept_.insert(kept_.begin(), std::move(trace));
  return kept_.front().number;
}

void TraceShelf::forget(std::uint32_t number) {
  const std::string key = kept_key(number);
  const std::string* text = texts_.find(key);
  if (text == nullptr) return;
  forgotten_key_ = key;
  forgotten_text_ = *text;
  texts_.remove(key);
  std::erase_if(kept_, [number](const KeptTrace& kept) { return kept.number == number; });
}

bool TraceShelf::put_back_forgotten() {
  if (forgotten_key_.empty()) return false;
  texts_.store(forgotten_key_, std::move(forgotten_text_));
  forgotten_key_.clear();
  forgotten_text_.clear();
  read_kept_traces();
  return true;
}

}  // namespace app
