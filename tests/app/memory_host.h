// A host in memory: keeps what is stored, the log of every write, and the page's history of
// addresses as a browser keeps it.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "platform/platform.h"

namespace test_app {

struct Write {
  std::string key;
  std::optional<std::string> text;   // nullopt: removed
};

struct SavedFile {
  std::string name;
  std::string text;
};

class MemoryHost final : public platform::Host {
 public:
  std::map<std::string, std::string> records;
  std::vector<Write> log;
  std::vector<SavedFile> files;
  std::vector<std::string> addresses{""};
  std::string title;
  int asked_for_file = 0;
  bool dark = false;
  bool awake = false;
  // What the page tells the app after a step back.
  std::function<void(std::string_view)> on_route;
  // Told at once instead of storing: "the device is full".
  std::function<void(std::string_view key)> on_full;

  void store(std::string_view key, std::string_view text) override {
    if (on_full) return on_full(key);
    log.push_back({std::string(key), std::string(text)});
    records[std::string(key)] = std::string(text);
  }
  void remove(std::string_view key) override {
    if (on_full) return on_full(key);
    log.push_back({std::string(key), std::nullopt});
    records.erase(std::string(key));
  }
  void save_file(std::string_view name, std::string_view, std::string_view text) override {
    files.push_back({std::string(name), std::string(text)});
  }
  void ask_for_file() override { ++asked_for_file; }
  void push_route(std::string_view route) override { addresses.emplace_back(route); }
  void replace_route(std::string_view route) override { addresses.back() = std::string(route); }
  void go_back() override {
    if (addresses.size() < 2) return;
    addresses.pop_back();
    if (on_route) on_route(addresses.back());
  }
  void set_title(std::string_view text) override { title = std::string(text); }
  void set_dark(bool wanted) override { dark = wanted; }
  void announce(std::string_view) override {}
  void keep_awake(bool wanted) override { awake = wanted; }
  void wake() override {}
  void wake_after(int) override {}
  [[nodiscard]] std::string today() const override { return "2026-11-25"; }
  [[nodiscard]] double now_ms() const override { return 0.0; }

  [[nodiscard]] std::vector<platform::StoredRecord> stored() const { return stored_after(log.size()); }
  // What is on the device when the app is stopped after so many writes of the log.
  [[nodiscard]] std::vector<platform::StoredRecord> stored_after(std::size_t writes) const {
    std::map<std::string, std::string> kept = before_log;
    for (std::size_t i = 0; i < writes; ++i) {
      if (log[i].text) kept[log[i].key] = *log[i].text;
      else kept.erase(log[i].key);
    }
    std::vector<platform::StoredRecord> list;
    for (const auto& [key, text] : kept) list.push_back({key, text});
    return list;
  }
  std::map<std::string, std::string> before_log;   // what a first run left
};

}  // namespace test_app
