#include "trace_scenes.h"

#include "circuits.h"
#include "document/circuit_file.h"

namespace screens_test {
namespace {

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts{""};
  for (const char c : text) {
    if (c == at) parts.emplace_back();
    else parts.back().push_back(c);
  }
  return parts;
}

bool there(const AppWalker& walker, const std::string& name) {
  for (const ui::Role role : {ui::Role::button, ui::Role::checkbox, ui::Role::link})
    if (walker.find(role, name) != nullptr) return true;
  return false;
}

bool press_any(AppWalker& walker, const std::vector<std::string>& names) {
  for (const std::string& name : names)
    for (const ui::Role role : {ui::Role::button, ui::Role::checkbox, ui::Role::radio})
      if (walker.press(role, name)) return true;
  return false;
}

bool follow(AppWalker& walker, const std::string& press) {
  const std::size_t until = press.find('>');
  const std::vector<std::string> names = split(press.substr(0, until), '|');
  if (until == std::string::npos) return press_any(walker, names);
  const std::string goal = press.substr(until + 1);
  for (int i = 0; i < 60 && !there(walker, goal); ++i)
    if (!press_any(walker, names)) return false;
  return there(walker, goal);
}

}  // namespace

bool arrange(AppWalker& walker, const TraceScene& scene) {
  std::vector<platform::StoredRecord> stored{{"trace-tools", scene.tools}};
  if (scene.circuit != nullptr) {
    for (platform::StoredRecord& each : two_vehicles(scene.circuit())) stored.push_back(std::move(each));
  } else {
    stored.push_back({"vehicles", "next 4\n"});
  }
  if (walker.host.records.count("preferences") != 0) stored.push_back({"preferences", walker.host.records["preferences"]});
  walker.start(stored, "trace");
  for (const std::string& press : scene.presses)
    if (!follow(walker, press)) return false;
  walker.settle();
  return true;
}

std::vector<TraceScene> trace_scenes() {
  const std::string unsure = "Not sure|Can't reach it>It works now";
  return {
      {"trace-start", demo, "meter lamp", {}},
      {"trace-none", nullptr, "", {}},
      {"trace-where", demo, "meter", {"Several outlets are dead"}},
      {"trace-check", demo, "meter lamp", {"One outlet is dead", "C"}},
      {"trace-volts", demo, "meter lamp", {"One outlet is dead", "C", "Not sure>Type the reading"}},
      {"trace-volts-2", demo, "meter", {"One outlet is dead", "C", "Not sure>Type the reading", "Near 0 V", "Not sure>Type the reading"}},
      {"trace-typing", demo, "meter lamp", {"One outlet is dead", "C", "Not sure>Type the reading", "Type the reading"}},
      {"trace-found", demo, "meter fuse", {"Everything on this fuse is dead", "Blown|Within the fuse|Now it works|Yes, as always|None works|On, and whole|Not sure>It works now"}},
      {"trace-done", demo, "meter fuse", {"Everything on this fuse is dead", "Blown|Within the fuse|Now it works|Yes, as always|None works|On, and whole|Not sure>It works now", "It works now"}},
      {"trace-cannot-tell", demo, "", {"One outlet is dead", "C", unsure}},
      {"trace-thirty", thirty, "meter lamp", {"One outlet is dead", "AC", "Not sure>Type the reading"}},
      {"trace-longest", longest_names, "meter lamp", {"One outlet is dead", "C", "Not sure>Type the reading"}},
      {"trace-tree", tree, "meter lamp", {"One outlet is dead", "E", "Not sure>Type the reading"}},
      {"trace-suspect", demo, "meter", {"One outlet is dead", "C", "Dead|Not sure>Type the reading", "The fuse is blown"}},
      {"trace-fitted", demo, "meter", {"Wire and fuse there", "Wire 14 AWG", "Fuse 30 A"}},
      {"trace-why", demo, "meter", {"One outlet is dead", "C", "Why this check"}},
  };
}

}  // namespace screens_test
