// Records that belong to circuits, held as they are stored: "running/3/5", "picked/3/5". After the word
// come the vehicle's number and the circuit's.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "app/circuit_ref.h"
#include "app/records.h"

namespace app {

class StoredTexts {
 public:
  // Those of `stored` whose key starts with "<word>/".
  StoredTexts(Records& records, const std::vector<platform::StoredRecord>& stored, std::string_view word);

  [[nodiscard]] std::string key(CircuitRef circuit) const;             // "picked/3/5"
  [[nodiscard]] const std::string* find(std::string_view key) const;   // nullptr: none
  [[nodiscard]] const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }
  void store(const std::string& key, std::string text);
  void remove(const std::string& key);
  // What belongs to circuits that are gone goes with them. Kept with no circuit stays.
  void forget_but(const std::function<bool(CircuitRef)>& is_there);

 private:
  Records& records_;
  std::string prefix_;
  std::map<std::string, std::string, std::less<>> texts_;
};

}  // namespace app
