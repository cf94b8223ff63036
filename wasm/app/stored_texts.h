// Records that belong to circuits, held as they are stored: "trace/3", "trace/3/1", "fitted/3". The
// number after the first slash is the circuit's.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "app/records.h"

namespace app {

class StoredTexts {
 public:
  // Those of `stored` whose key starts with "<word>/".
  StoredTexts(Records& records, const std::vector<platform::StoredRecord>& stored, std::string_view word);

  [[nodiscard]] std::string key(std::uint32_t circuit) const;          // "fitted/3"
  [[nodiscard]] const std::string* find(std::string_view key) const;   // nullptr: none
  [[nodiscard]] const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }
  void store(const std::string& key, std::string text);
  void remove(const std::string& key);
  // What belongs to circuits that are gone goes with them. Kept with no circuit stays.
  void forget_circuits_but(const std::vector<std::uint32_t>& numbers);

 private:
  Records& records_;
  std::string prefix_;
  std::map<std::string, std::string, std::less<>> texts_;
};

}  // namespace app
