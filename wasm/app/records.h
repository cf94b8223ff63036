// The stored records as the app writes them: every write goes straight to the host, and one
// that failed is remembered and tried again with the next write until it is through.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "platform/platform.h"

namespace app {

class Records {
 public:
  explicit Records(platform::Host& host) : host_(host) {}
  Records(const Records&) = delete;
  Records& operator=(const Records&) = delete;

  void store(std::string_view key, std::string_view text);
  void remove(std::string_view key);

  void failed(std::string_view key, std::string_view why);   // told by the host, any time later
  void retry();                                              // writes what failed once more
  [[nodiscard]] bool all_saved() const { return failures_.empty(); }
  // "Not saved: the device is full." Empty when all is saved.
  [[nodiscard]] std::string trouble() const;

 private:
  void write(const std::string& key);
  void write_failed_others(std::string_view but);

  platform::Host& host_;
  std::map<std::string, std::optional<std::string>, std::less<>> latest_;  // nullopt: removed
  std::map<std::string, std::string, std::less<>> failures_;               // key -> why
};

// The text under a key among what the host kept; empty: none.
std::string text_of(const std::vector<platform::StoredRecord>& stored, std::string_view key);

}  // namespace app
