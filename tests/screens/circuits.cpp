#include "circuits.h"

#include "document/vehicle_file.h"

namespace screens_test {
namespace {

circuit::Outlet chained(std::uint32_t id, std::uint32_t from, double run_m, double amperes, std::string name) {
  circuit::Outlet outlet;
  outlet.id = circuit::OutletId{id};
  outlet.fed_from = circuit::OutletId{from};
  outlet.run.length = units::Metres(run_m);
  outlet.devices.front().load.rating = amperes;
  outlet.name = std::move(name);
  return outlet;
}

std::string wide(std::size_t letters) {
  std::string text;
  for (std::size_t i = 0; i < letters; ++i) text += i % 9 == 8 ? "M" : "W";
  return text;
}

}  // namespace

circuit::Circuit demo() { return circuit::demo_circuit(); }

circuit::Circuit long_run() {
  circuit::Circuit c = demo();
  c.name = "Far pump";
  c.at_most_at_once = std::nullopt;
  c.outlets[2].run.length = units::Metres(60.0);
  c.outlets[2].devices.front().load.rating = 25.0;
  c.drop_limit = 0.03;
  return c;
}

circuit::Circuit not_on_shelf() {
  circuit::Circuit c = demo();
  c.shelf.missing_sizes = {"10awg", "8awg", "6awg", "4awg", "3awg", "2awg", "1awg", "1/0awg", "2/0awg", "3/0awg", "4/0awg"};
  return c;
}

circuit::Circuit no_load() {
  circuit::Circuit c = circuit::new_circuit(tables::GaugeSystem::awg);
  return c;
}

circuit::Circuit thirty() {
  circuit::Circuit c = demo();
  c.name = "Ceiling lights";
  c.outlets.clear();
  for (std::uint32_t i = 1; i <= 30; ++i) c.outlets.push_back(chained(i, i - 1, 0.4, 0.3, "Light " + std::to_string(i)));
  c.next_outlet_id = 31;
  c.at_most_at_once = std::nullopt;
  return c;
}

circuit::Circuit longest_names() {
  circuit::Circuit c = demo();
  c.name = wide(40);
  c.place = wide(40);
  c.fuse_position = 99;
  for (circuit::Outlet& outlet : c.outlets) outlet.name = wide(40);
  return c;
}

circuit::Circuit tree() {
  circuit::Circuit c = demo();
  c.name = "Awning";
  c.outlets.push_back(chained(4, 1, 2.0, 1.0, "Step light"));
  c.outlets.push_back(chained(5, 4, 0.8, 1.0, "Door light"));
  c.outlets.push_back(chained(6, 0, 1.0, 0.5, "Alarm"));
  c.next_outlet_id = 7;
  return c;
}

circuit::Circuit metric_24v() {
  circuit::Circuit c = circuit::new_circuit(tables::GaugeSystem::metric);
  c.name = "Cabin heater";
  c.place = "Boat";
  c.setting = circuit::Setting::boat;
  c.supply.nominal = units::Volts(24.0);
  c.outlets[0].devices.front().load = {circuit::LoadKind::resistive, true, 120.0, units::Volts(21.0)};
  c.outlets[0].run.length = units::Metres(6.0);
  return c;
}

std::vector<Scene> scenes() {
  return {
      {"first", nullptr, "", false, 0},
      {"first-whole", nullptr, "", true, 2700},
      {"size", demo, "size", false, 0},
      {"size-whole", demo, "size", true, 2300},
      {"none-fits", long_run, "size", true, 2300},
      {"shelf-out", not_on_shelf, "size", true, 2300},
      {"no-load", no_load, "size", true, 1500},
      {"thirty", thirty, "size", true, 4200},
      {"longest", longest_names, "size", true, 3000},
      {"tree", tree, "size", true, 2600},
      {"metric", metric_24v, "size", true, 1900},
      {"outlet", demo, "size/outlet/3", true, 1800},
      {"why", demo, "size/why/10awg", true, 3400},
      {"why-not", demo, "size/why/12awg", true, 3400},
      {"what-if", demo, "size/what-if/12awg", true, 2200},
      {"what-if-out", not_on_shelf, "size/what-if", true, 2600},
      {"place", demo, "size/place", true, 1600},
      {"supply", demo, "size/supply", true, 1500},
      {"parts", demo, "size/parts", true, 2600},
      {"reach", demo, "size/reach", true, 1300},
      {"label", demo, "size/label", true, 900},
      {"more", demo, "size/more", false, 0},
      {"circuits", demo, "circuits", false, 0},
      {"vehicle", demo, "circuits/2", true, 1700},
      {"stored", demo, "circuits/circuit/2/2", false, 0},
      {"block", demo, "circuits/block/2/1", true, 1900},
      {"unread", demo, "circuits/unread/1", false, 0},
      {"built", demo, "size/built", true, 1600},
      {"preferences", demo, "preferences", true, 1100},
      {"sources", demo, "preferences/sources", false, 0},
  };
}

std::vector<platform::StoredRecord> two_vehicles(const circuit::Circuit& open) {
  return {{"vehicle/2", document::write_vehicle(vehicle::around(open))},
          {"vehicle/1", document::write_vehicle(vehicle::around(tree()))},
          {"vehicles", "order 2 1\nopen 2 2\nnext 4\n"}};
}

void arrange(AppWalker& walker, const Scene& scene) {
  if (scene.circuit == nullptr) {
    walker.host.records["preferences"] = "";
    return walker.start({}, scene.route);
  }
  std::vector<platform::StoredRecord> stored = two_vehicles(scene.circuit());
  stored.push_back({"vehicle/3", "{\"broken\""});
  if (walker.host.records.count("preferences") != 0)
    stored.push_back({"preferences", walker.host.records["preferences"]});
  walker.start(stored, scene.route);
  walker.settle();
}

}  // namespace screens_test
