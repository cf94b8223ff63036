#include "app/stored_texts.h"

#include <algorithm>
#include <utility>

#include "app/lines.h"

namespace app {

StoredTexts::StoredTexts(Records& records, const std::vector<platform::StoredRecord>& stored, std::string_view word)
    : records_(records), prefix_(std::string(word) + "/") {
  for (const platform::StoredRecord& record : stored)
    if (record.key.starts_with(prefix_)) texts_[record.key] = record.text;
}

std::string StoredTexts::key(std::uint32_t circuit) const { return prefix_ + std::to_string(circuit); }

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

void StoredTexts::forget_circuits_but(const std::vector<std::uint32_t>& numbers) {
  std::vector<std::string> gone;
  for (const auto& [key, text] : texts_) {
    std::string_view rest = std::string_view(key).substr(prefix_.size());
    const auto number = counted_number(take_part(rest, '/'));
    if (number && std::find(numbers.begin(), numbers.end(), *number) == numbers.end()) gone.push_back(key);
  }
  for (const std::string& key : gone) remove(key);
}

}  // namespace app
