#include "app/records.h"

#include <utility>

namespace app {

void Records::store(std::string_view key, std::string_view text) {
  latest_.insert_or_assign(std::string(key), std::string(text));
  failures_.erase(std::string(key));
  host_.store(key, text);
  write_failed_others(key);
}

void Records::remove(std::string_view key) {
  latest_.insert_or_assign(std::string(key), std::nullopt);
  failures_.erase(std::string(key));
  host_.remove(key);
  write_failed_others(key);
}

void Records::failed(std::string_view key, std::string_view why) {
  failures_.insert_or_assign(std::string(key), std::string(why));
}

void Records::retry() { write_failed_others({}); }

// The host may tell of a new failure while we write, so the list is taken away first.
void Records::write_failed_others(std::string_view but) {
  const auto failures = std::exchange(failures_, {});
  for (const auto& [key, why] : failures) {
    if (key == but || latest_.find(key) == latest_.end()) failures_.insert_or_assign(key, why);
    else write(key);
  }
}

void Records::write(const std::string& key) {
  const auto& text = latest_.find(key)->second;
  if (text) host_.store(key, *text);
  else host_.remove(key);
}

std::string Records::trouble() const {
  if (failures_.empty()) return {};
  std::string why = failures_.begin()->second;
  while (!why.empty() && (why.back() == '.' || why.back() == ' ')) why.pop_back();
  return "Not saved" + (why.empty() ? std::string() : ": " + why) + ".";
}

std::string text_of(const std::vector<platform::StoredRecord>& stored, std::string_view key) {
  for (const platform::StoredRecord& record : stored)
    if (record.key == key) return record.text;
  return {};
}

}  // namespace app
