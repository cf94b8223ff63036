// The app walked as a person walks it, by role and name.
#include "circuits.h"
#include "document/circuit_file.h"
#include "support.h"

using screens_test::arrange;
using ui::Role;

namespace {

void open_with(AppWalker& walker, circuit::Circuit (*circuit)(), const std::string& route = "size") {
  walker.host.records["preferences"] = "caution-seen yes\n";
  screens_test::Scene scene;
  scene.circuit = circuit;
  scene.route = route;
  arrange(walker, scene);
}

}  // namespace

TEST_CASE("first start: one caution card, once, over the demo's answer") {
  AppWalker walker;
  walker.start();
  CHECK(walker.shows("Before you start"));
  CHECK(walker.find(Role::heading, "Bench outlets") != nullptr);
  CHECK(walker.shows("10 AWG"));
  CHECK(walker.shows("15 A"));
  CHECK(walker.shows("Wire is protected"));
  REQUIRE(walker.press("I understand"));
  CHECK_FALSE(walker.shows("Before you start"));
  walker.restart();
  CHECK_FALSE(walker.shows("Before you start"));
}

TEST_CASE("loads and lengths change the answer, and are kept") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  CHECK(walker.shows("10 AWG"));
  CHECK(walker.find(Role::status, "Wire, red and black: 10 AWG · 5.3 mm²") != nullptr);
  REQUIRE(walker.set(Role::spin, "At most at once", "2 A"));
  CHECK(stored_circuit(walker, "2").at_most_at_once->number() == 2.0);
  CHECK_FALSE(walker.find(Role::status, "Wire, red and black: 10 AWG · 5.3 mm²") != nullptr);
  REQUIRE(walker.set(Role::spin, "Load of C", "60 W"));
  CHECK(stored_circuit(walker, "2").outlets[2].devices.front().load.rating_in_watts);
  CHECK(stored_circuit(walker, "2").outlets[2].devices.front().load.rating == 60.0);
  REQUIRE(walker.set(Role::spin, "Length to C", "7,5"));
  CHECK(stored_circuit(walker, "2").outlets[2].run.length.number() == doctest::Approx(7.5));
  REQUIRE(walker.act(Role::spin, "Length to C", ui::Action::Kind::step_up));
  CHECK(stored_circuit(walker, "2").outlets[2].run.length.number() == doctest::Approx(7.6));
  REQUIRE(walker.press("Undo"));
  CHECK(stored_circuit(walker, "2").outlets[2].run.length.number() == doctest::Approx(7.5));
  walker.restart();
  CHECK(walker.find(Role::spin, "Length to C")->value == "7.5 m");
}

TEST_CASE("a bad value says what is allowed and keeps the last good one") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  const std::string before = walker.host.records["vehicle/2"];
  for (const char* bad : {"-3", "0", "500", "nan", "inf", "3 kg", "", "1e999", "twelve"}) {
    CAPTURE(bad);
    walker.set(Role::spin, "Length to C", bad);
    CHECK(walker.host.records["vehicle/2"] == before);
    walker.shell().key("Escape", true);
    walker.shell().key("Escape", false);
    walker.settle();
  }
  walker.set(Role::spin, "Length to C", "500");
  CHECK_MESSAGE(walker.shows("0.05 m to 100 m"), walker.all());
  CHECK(walker.host.records["vehicle/2"] == before);
}

TEST_CASE("lengths and temperatures in US units") {
  AppWalker walker;
  walker.around.prefers_us_units = true;
  open_with(walker, screens_test::demo);
  REQUIRE(walker.set(Role::spin, "Length to C", "10 ft 6 in"));
  CHECK(stored_circuit(walker, "2").outlets[2].run.length.number() == doctest::Approx(10.5 * 0.3048));
  CHECK(walker.find(Role::spin, "Length to C")->value == "10 ft 6 in");
  REQUIRE(walker.act(Role::spin, "Length to C", ui::Action::Kind::step_up));
  CHECK(stored_circuit(walker, "2").outlets[2].run.length.number() == doctest::Approx(11.0 * 0.3048));
  walker.go("size/place");
  REQUIRE(walker.set(Role::spin, "Air where it lies", "122"));
  CHECK(stored_circuit(walker, "2").wiring.around.ambient.number() == doctest::Approx(50.0));
}

TEST_CASE("the shop lacks the size: fixes, and one taken over gives an answer") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  REQUIRE(walker.press("What the shop has"));
  CHECK(walker.address() == "size/what-if");
  for (const char* size : {"10 AWG", "8 AWG", "6 AWG", "4 AWG", "3 AWG", "2 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG"}) {
    CAPTURE(size);
    REQUIRE(walker.press(Role::checkbox, std::string(size) + ", in the shop"));
  }
  CHECK(walker.shows("The shop has nothing that fits"));
  REQUIRE_MESSAGE(walker.press("Use this: Carry less"), walker.all());
  CHECK(walker.address() == "size");
  CHECK(walker.find(Role::button, "Undo") != nullptr);
  CHECK(stored_circuit(walker, "2").at_most_at_once->number() < 10.0);
  CHECK(walker.shows("Wire is protected"));
  CHECK(walker.shows("12 AWG"));
}

TEST_CASE("a size on the ladder tells every judgement with its source") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "size/why/12awg");
  CHECK(walker.shows("Voltage drop: fails"));
  CHECK(walker.shows("Heat in the wire: passes"));
  CHECK(walker.shows("Source: "));
  CHECK(walker.shows("How sure: "));
  std::size_t sources = 0;
  for (const ui::Record& r : walker.records()) sources += r.name.starts_with("Source: ") ? 1U : 0U;
  CHECK(sources == 15);
}

TEST_CASE("outlets: add, name, branch, move, remove and take back") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  REQUIRE(walker.press("Add an outlet"));
  CHECK(walker.address() == "size/outlet/4");
  REQUIRE(walker.set(Role::textbox, "Name", "Fan"));
  REQUIRE(walker.set(Role::spin, "Load", "1.5"));
  CHECK(stored_circuit(walker, "2").outlets[3].name == "Fan");
  CHECK(stored_circuit(walker, "2").outlets[3].devices.front().load.rating == 1.5);
  REQUIRE(walker.press("Move outlet D up"));
  CHECK(stored_circuit(walker, "2").outlets[2].name == "Fan");
  REQUIRE(walker.press("Branch from outlet C"));
  CHECK(walker.address() == "size/outlet/5");
  REQUIRE(walker.press("Insert an outlet before E"));
  CHECK(stored_circuit(walker, "2").outlets.size() == 6);
  walker.go("size/outlet/4");
  REQUIRE(walker.press("Remove outlet C"));
  CHECK(walker.address() == "size");
  CHECK(stored_circuit(walker, "2").outlets.size() == 5);
  REQUIRE_MESSAGE(walker.press("Undo"), walker.all());
  CHECK(stored_circuit(walker, "2").outlets.size() == 6);
}

TEST_CASE("a bad name stays in the field with its reason; the last good one is kept") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "size/outlet/3");
  REQUIRE(walker.set(Role::textbox, "Name", std::string(41, 'W')));
  CHECK(stored_circuit(walker, "2").outlets[2].name == "Tyre inflator");
  CHECK_MESSAGE(walker.shows("40"), walker.all());
  REQUIRE(walker.set(Role::textbox, "Name", "Inflator"));
  CHECK(stored_circuit(walker, "2").outlets[2].name == "Inflator");
}

TEST_CASE("back closes what lies on top, one after the other") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  REQUIRE(walker.press("C, Tyre inflator") == false);
  REQUIRE(walker.press("Outlet C, Tyre inflator"));
  REQUIRE(walker.press(Role::spin, "Load"));
  CHECK(walker.shell().widgets().sheets_open() == 2);
  walker.host.go_back();
  walker.settle();
  CHECK(walker.shell().widgets().sheets_open() == 1);
  CHECK(walker.address() == "size/outlet/3");
  walker.host.go_back();
  walker.settle();
  CHECK(walker.shell().widgets().sheets_open() == 0);
  CHECK(walker.address() == "size");
  // The same with the page's own means.
  REQUIRE(walker.press("Outlet C, Tyre inflator"));
  REQUIRE(walker.press(Role::spin, "Load"));
  walker.shell().key("Escape", true);
  walker.settle();
  CHECK(walker.address() == "size/outlet/3");
  REQUIRE(walker.press("Close"));
  CHECK(walker.address() == "size");
  CHECK(walker.host.addresses.size() == 1);
}

TEST_CASE("the notebook: new, duplicate, delete with one question, put back") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  REQUIRE_MESSAGE(walker.press("Open the circuits"), walker.all());
  CHECK(walker.address() == "circuits");
  CHECK(walker.shows("can't be read"));
  const std::string before = walker.host.records["vehicle/1"];
  REQUIRE(walker.press("Awning"));
  REQUIRE(walker.press("Delete Awning"));
  REQUIRE(walker.press("Keep it"));
  CHECK(walker.host.records["vehicle/1"] == before);
  REQUIRE(walker.press("Delete Awning"));
  REQUIRE(walker.press("Delete"));
  CHECK(walker.host.records["vehicle/1"].find("Awning") == std::string::npos);
  CHECK(walker.address() == "circuits");
  REQUIRE_MESSAGE(walker.press("Put back"), walker.all());
  CHECK(walker.host.records["vehicle/1"] == before);
  REQUIRE(walker.press("Awning"));
  REQUIRE(walker.press("Duplicate Awning"));
  CHECK(walker.address() == "size");
  CHECK(walker.find(Role::heading, "Awning (copy)") != nullptr);
  walker.go("circuits/unread/1");
  CHECK(walker.shows("This record can't be read"));
  REQUIRE(walker.press("Export as it is"));
  CHECK(walker.host.files.back().text == "{\"broken\"");
  walker.go("circuits");
  REQUIRE(walker.press("New circuit"));
  CHECK(walker.shows("What will run on this circuit?"));
}

TEST_CASE("a hostile file is told and changes nothing; a good one is added") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "circuits");
  const auto before = walker.host.records;
  REQUIRE(walker.press("Import a file"));
  CHECK(walker.host.asked_for_file == 1);
  walker.shell().file_opened("x.json", "{\"format\":");
  walker.settle();
  CHECK(walker.shows("The file was not taken in"));
  CHECK(walker.host.records == before);
  check_layout(walker);
  walker.shell().file_opened("y.json", document::write_circuit(screens_test::tree()));
  walker.settle();
  CHECK(walker.address() == "size");
  CHECK(walker.host.records.size() == before.size() + 1);
}

TEST_CASE("a change that could not be saved is told until it is") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  walker.host.on_full = [&walker](std::string_view key) { walker.shell().store_failed(key, "the device is full"); };
  walker.set(Role::spin, "At most at once", "5");
  CHECK(walker.shows("Not saved: the device is full."));
  REQUIRE(walker.press("Try again"));
  CHECK(walker.shows("Not saved: the device is full."));
  check_layout(walker);
  walker.host.on_full = nullptr;
  REQUIRE(walker.press("Try again"));
  CHECK_FALSE(walker.shows("Not saved"));
  CHECK(stored_circuit(walker, "2").at_most_at_once->number() == 5.0);
}

TEST_CASE("settings of the place, the supply and the parts change the circuit") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "size/place");
  REQUIRE(walker.press(Role::radio, "Boat"));
  CHECK(stored_circuit(walker, "2").setting == circuit::Setting::boat);
  REQUIRE(walker.press(Role::switch_, "Through a hot space"));
  CHECK(stored_circuit(walker, "2").wiring.around.hot_space);
  REQUIRE(walker.set(Role::spin, "Circuits tied together", "4"));
  CHECK(stored_circuit(walker, "2").wiring.around.circuits_bundled == 4);
  walker.go("size/supply");
  REQUIRE(walker.press(Role::radio, "24 V"));
  CHECK(stored_circuit(walker, "2").supply.nominal.number() == 24.0);
  REQUIRE(walker.press(Role::switch_, "Volts of my own battery"));
  REQUIRE(walker.set(Role::spin, "Rested", "26"));
  CHECK(stored_circuit(walker, "2").supply.resting->number() == 26.0);
  walker.go("size/parts");
  REQUIRE(walker.press(Role::switch_, "Ferrules at the clamp"));
  CHECK(stored_circuit(walker, "2").wiring.ferrule);
  REQUIRE(walker.press(Role::radio, "mm²"));
  CHECK(stored_circuit(walker, "2").wiring.gauge == tables::GaugeSystem::metric);
  REQUIRE(walker.press(Role::radio, "SAE"));
  CHECK(stored_circuit(walker, "2").wiring.gauge == tables::GaugeSystem::sae);
  walker.go("size");
  CHECK_MESSAGE(walker.shows("SAE"), walker.all());
  walker.go("size/why/8sae");   // the page of one size opens by its address, whatever the system
  CHECK_MESSAGE(walker.shows("8 SAE"), walker.all());
}

TEST_CASE("twist-on connectors are not offered for what moves (common practice, no source)") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "size/parts");
  REQUIRE_MESSAGE(walker.press("Splice: "), walker.all());
  CHECK_FALSE(walker.shows("wist"));
  walker.go("size/place");
  REQUIRE(walker.press(Role::radio, "Fixed"));
  walker.go("size/parts");   // still unfolded
  CHECK_MESSAGE(walker.shows("wist"), walker.all());
}

TEST_CASE("the question turned round") {
  AppWalker walker;
  open_with(walker, screens_test::demo, "size/reach");
  CHECK(walker.shows("The fuse protects the wire"));
  REQUIRE(walker.press(Role::checkbox, "Wire 18 AWG"));
  REQUIRE(walker.press(Role::checkbox, "Fuse 40 A"));
  CHECK(walker.shows("The fuse does not protect the wire"));
  CHECK(stored_circuit(walker, "2").in_hand->size == "18awg");
}

TEST_CASE("nothing is drawn while nothing changes") {
  AppWalker walker;
  open_with(walker, screens_test::demo);
  for (const char* route : {"size", "size/outlet/2", "size/why/10awg", "circuits", "preferences"}) {
    CAPTURE(route);
    REQUIRE(walker.go(route));
    CHECK_FALSE(walker.frame());
  }
}
