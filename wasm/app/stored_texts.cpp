#include "app/stored_texts.h"

#include <utility>

#include "app/lines.h"

namespace app {

StoredTexts::StoredTexts(Records& records, const std::vector<platform::StoredRecord>& stored, std::string_view word)
    : records_(records), prefix_(std::string(word) + "/") {
  for (const platform::StoredRecord& record : stored)
    if (record.key.starts_with(prefix_)) texts_[record.key] = record.text;
}

std::string StoredTexts::key(CircuitRef circuit) const { return prefix_ + ref_text(circuit); }

const std::string* StoredTexts::find(std::string_view key) const {
  const auto found = texts_.find(key);
  return found == texts_.end() ? nullptr : &found->second;
}

void StoredTexts::store(const std::string& key, std::string text) {
  records_.store(key, text);
  texts_[key] = std::move(text);
}

void StoredTexts::remove(const std::string& key) {
  if (texts_.erase(key) > 0) records_.remove(key);
}

void StoredTexts::forget_but(const std::function<bool(CircuitRef)>& is_there) {
  std::vector<std::string> gone;
  for (const auto& [key, text] : texts_) {
    std::string_view rest = std::string_view(key).substr(prefix_.size());
    const auto vehicle = counted_number(take_part(rest, '/'));
    const auto circuit = counted_number(take_part(rest, '/'));
    if (vehicle && circuit && !is_there({*vehicle, vehicle::CircuitId{*circuit}})) gone.push_back(key);
  }
  for (const std::string& key : gone) remove(key);
}

}  // namespace app
