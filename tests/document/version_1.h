// Circuits as version 1 could tell them, and their text as its writer made it.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "document/circuit_file.h"
#include "document/words.h"
#include "files.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/vehicle.h"

namespace version_1 {

// A word that version 1 knew; else the first of those.
class OldWords {
 public:
  std::string operator()(const std::string& object, const std::string& key, const std::string& word) const {
    const nlohmann::json& known = list(object, key);
    return std::find(known.begin(), known.end(), word) != known.end() ? word : known.front().get<std::string>();
  }
  template <class Choice>
  Choice choice(const std::string& object, const std::string& key, Choice value) const {
    return *document::from_word<Choice>((*this)(object, key, std::string(document::word_of(value))));
  }

 private:
  const nlohmann::json& list(const std::string& object, const std::string& key) const {
    const nlohmann::json& found = schema_.at("$defs").at(object).at("properties").at(key);
    return found.contains("$ref") ? schema_.at("$defs").at("size").at("enum") : found.at("enum");
  }
  nlohmann::json schema_ = files::schema("circuit-v1.schema.json");
};

// One device at an outlet, one wire throughout, a splice everywhere; no key or word that came later.
inline circuit::Circuit told_in_version_1(circuit::Circuit circuit) {
  static const OldWords old;
  circuit.practice.reset();
  circuit.colours.clear();
  const circuit::Supply all = circuit.supply;
  circuit.supply = circuit::Supply{};
  circuit.supply.nominal = all.nominal;
  circuit.supply.battery = old("supply", "battery", all.battery);
  circuit.supply.resting = all.resting;
  circuit.supply.low = all.low;
  circuit.supply.feeder_run = all.feeder_run;
  circuit.supply.main_fuse = all.main_fuse;
  circuit.supply.feeder_size = old("supply", "feeder_size", all.feeder_size);
  circuit::Wiring& wiring = circuit.wiring;
  wiring.gauge = old.choice("wiring", "gauge", wiring.gauge);
  wiring.ampacity_table = old.choice("wiring", "ampacity_table", wiring.ampacity_table);
  wiring.fuse_family = old.choice("wiring", "fuse_family", wiring.fuse_family);
  wiring.clamp_part = old("wiring", "clamp_part", wiring.clamp_part);
  wiring.splice_part = old("wiring", "splice_part", wiring.splice_part);
  std::erase_if(circuit.shelf.missing_sizes, [](const std::string& size) { return size != old("in_hand", "size", size); });
  if (circuit.in_hand) circuit.in_hand->size = old("in_hand", "size", circuit.in_hand->size);
  for (circuit::Outlet& outlet : circuit.outlets) {
    circuit::Outlet made;
    made.id = outlet.id;
    made.name = outlet.name;
    made.fed_from = outlet.fed_from;
    made.run.length = outlet.run.length;
    if (!outlet.devices.empty()) made.devices.front().load = outlet.devices.front().load;
    made.drop_limit = outlet.drop_limit;
    made.outlet_part = old("outlet", "outlet_part", outlet.outlet_part);
    made.terminal_part = old("outlet", "terminal_part", outlet.terminal_part);
    made.rating = outlet.rating;
    outlet = made;
  }
  return circuit;
}

// Version 2 leaves out what version 1 did not know, so that only the number differs; the schema of
// version 1 is asked in the tests whether that is so.
inline std::string text_of(const std::vector<circuit::Circuit>& circuits) {
  std::string text = document::write_circuits(circuits);
  const std::string now = "\"version\": 2,";
  const std::size_t at = text.find(now);
  REQUIRE(at != std::string::npos);
  return text.replace(at, now.size(), "\"version\": 1,");
}

// What a vehicle knows better than version 1 did: what the others draw, and the name of a place
// that had none.
inline circuit::Circuit as_it_was(circuit::Circuit seen, const circuit::Circuit& before) {
  if (before.place.empty()) {
    CHECK(seen.place == before.name);
    seen.place.clear();
  }
  seen.supply.beside = units::Amperes(0.0);
  return seen;
}

}  // namespace version_1
