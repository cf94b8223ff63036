#include "circuit/edit.h"

#include <doctest/doctest.h>

#include <limits>

#include "circuit/limits.h"
#include "circuit/validate.h"

using namespace circuit;

namespace {

const OutletId kA{1};
const OutletId kB{2};
const OutletId kC{3};
const OutletId kD{4};
const OutletId kNone{77};

// The demo with lengths of its own, so that the demo may change.
Circuit bench() {
  Circuit circuit = demo_circuit();
  REQUIRE(circuit.outlets.size() == 3);
  circuit.outlets[0].run.length = units::Metres(3.2);
  circuit.outlets[1].run.length = units::Metres(1.4);
  circuit.outlets[2].run.length = units::Metres(1.1);
  circuit.outlets[2].devices.front().load.rating = 10.0;
  return circuit;
}

Circuit after(const Circuit& circuit, const Edit& edit) {
  EditResult result = apply(circuit, edit);
  REQUIRE_MESSAGE(result.circuit.has_value(), (result.problem ? one_line(*result.problem) : std::string()));
  CHECK_FALSE(result.problem.has_value());
  CHECK(validate(*result.circuit).empty());
  return *result.circuit;
}

std::string refusal(const Circuit& circuit, const Edit& edit) {
  const EditResult result = apply(circuit, edit);
  CHECK_FALSE(result.circuit.has_value());
  REQUIRE(result.problem.has_value());
  return one_line(*result.problem);
}

// "1<0 3.2, 2<1 1.4": number, fed from, length, in the order of the list.
std::string shape(const Circuit& circuit) {
  std::string text;
  for (const Outlet& o : circuit.outlets) {
    if (!text.empty()) text += ", ";
    const int centimetres = static_cast<int>(o.run.length.number() * 100.0 + 0.5);
    text += std::to_string(o.id.number) + "<" + std::to_string(o.fed_from.number) + " " + std::to_string(centimetres);
  }
  return text;
}

// A feeds B and C; B feeds D.
Circuit tree() {
  Circuit circuit = bench();
  circuit.outlets[2].fed_from = kA;
  return after(circuit, AddOutlet{kB});
}

}  // namespace

TEST_CASE("add: at the end of the chain, with a name, the length and parts before it, and no load") {
  Circuit demo = bench();
  demo.outlets[2].rating = units::Amperes(16);
  demo.outlets[2].outlet_part = "socket-iso4165";
  CHECK(next_outlet(demo) == kD);
  const Circuit more = after(demo, AddOutlet{kC});
  CHECK(shape(more) == "1<0 320, 2<1 140, 3<2 110, 4<3 110");
  const Outlet& added = more.outlets[3];
  CHECK(added.name == "Outlet D");
  CHECK(added.devices.front().load.rating == 0.0);
  CHECK(added.outlet_part == "socket-iso4165");
  CHECK(added.rating == units::Amperes(16));
  CHECK_FALSE(added.drop_limit.has_value());
  CHECK(more.next_outlet_id == 5);
}

TEST_CASE("add after one that feeds another: a new branch, the old one stays") {
  CHECK(shape(after(bench(), AddOutlet{kA})) == "1<0 320, 2<1 140, 3<2 110, 4<1 320");
  CHECK(shape(tree()) == "1<0 320, 2<1 140, 4<2 140, 3<1 110");
  CHECK(shape(after(bench(), AddOutlet{kBlock})) == "1<0 320, 2<1 140, 3<2 110, 4<0 110");
}

TEST_CASE("add: unknown place, and a full circuit, are refused") {
  CHECK(refusal(bench(), AddOutlet{kNone}) == "The circuit has no such outlet. Choose one of its outlets.");
  Circuit full = bench();
  while (full.outlets.size() < kMaxOutlets) full = *apply(full, AddOutlet{full.outlets.back().id}).circuit;
  CHECK(refusal(full, AddOutlet{kA}) == "The circuit is full. At most 300 outlets in one circuit.");
  CHECK(refusal(full, InsertOutlet{kA}) == "The circuit is full. At most 300 outlets in one circuit.");
}

TEST_CASE("numbers are never used again, and new names are not taken ones") {
  Circuit circuit = after(bench(), RemoveOutlet{kC});
  circuit = after(circuit, AddOutlet{kB});
  CHECK(circuit.outlets[2].id == kD);
  CHECK(circuit.outlets[2].name == "Outlet C");
  circuit = after(circuit, RemoveOutlet{kA});
  circuit = after(circuit, AddOutlet{kB});
  CHECK(circuit.outlets.back().id == OutletId{5});
  CHECK(circuit.outlets.back().name == "Outlet D");
  circuit.next_outlet_id = kMaxOutletId + 1;
  CHECK(refusal(circuit, AddOutlet{kB}) == "The circuit has used up its outlet numbers. Make a new circuit.");
}

TEST_CASE("insert: splits the run in half, its place in the list before the one it feeds") {
  CHECK(shape(after(bench(), InsertOutlet{kB})) == "1<0 320, 4<1 70, 2<4 70, 3<2 110");
  CHECK(shape(after(bench(), InsertOutlet{kA})) == "4<0 160, 1<4 160, 2<1 140, 3<2 110");
  CHECK(refusal(bench(), InsertOutlet{kBlock}) == "The circuit has no such outlet. Choose one of its outlets.");
  const Circuit tight = after(bench(), SetRun{kB, units::Metres(0.08)});
  CHECK(refusal(tight, InsertOutlet{kB}) ==
        "Outlet B (Tablet charger), run: its length of 0.08 m is too short to split. Make it at least 0.1 m.");
  const Circuit just = after(bench(), SetRun{kB, units::Metres(0.1)});
  CHECK(shape(after(just, InsertOutlet{kB})) == "1<0 320, 4<1 5, 2<4 5, 3<2 110");
}

TEST_CASE("remove: what it fed hangs on its parent, lengths added") {
  CHECK(shape(after(bench(), RemoveOutlet{kB})) == "1<0 320, 3<1 250");
  CHECK(shape(after(bench(), RemoveOutlet{kA})) == "2<0 460, 3<2 110");
  CHECK(shape(after(tree(), RemoveOutlet{kA})) == "2<0 460, 4<2 140, 3<0 430");
  CHECK(refusal(bench(), RemoveOutlet{kNone}) == "The circuit has no such outlet. Choose one of its outlets.");
  const Circuit single = new_circuit(tables::GaugeSystem::awg);
  CHECK(refusal(single, RemoveOutlet{kA}) == "Outlet A: it is the only outlet. A circuit keeps at least one.");
  Circuit longest = after(bench(), SetRun{kA, units::Metres(60)});
  longest = after(longest, SetRun{kB, units::Metres(50)});
  CHECK(refusal(longest, RemoveOutlet{kA}) ==
        "Outlet B (Tablet charger), run: length is 110 m. Give 0.05 m to 100 m.");
}

TEST_CASE("move: number, name, load and parts change places, wire and lengths stay") {
  const Circuit moved = after(bench(), MoveOutlet{kC, -1});
  CHECK(shape(moved) == "1<0 320, 3<1 140, 2<3 110");
  CHECK(moved.outlets[1].name == "Tyre inflator");
  CHECK(moved.outlets[1].devices.front().load.rating == 10.0);
  CHECK(moved.outlets[2].name == "Tablet charger");
  CHECK(shape(after(moved, MoveOutlet{kC, 1})) == shape(bench()));
  CHECK(shape(after(bench(), MoveOutlet{kA, 2})) == "2<0 320, 3<2 140, 1<3 110");
  // In a tree: D and C change places, though neither feeds the other.
  CHECK(shape(after(tree(), MoveOutlet{kC, -1})) == "1<0 320, 2<1 140, 3<2 140, 4<1 110");
  CHECK(shape(after(tree(), MoveOutlet{kA, 1})) == "2<0 320, 1<2 140, 4<1 140, 3<2 110");
}

TEST_CASE("move: past either end, nowhere and unknown are refused") {
  CHECK(refusal(bench(), MoveOutlet{kA, -1}) ==
        "Outlet A (Truing-stand light): it is too near the first place for that. Move it to a place in the list.");
  CHECK(refusal(bench(), MoveOutlet{kC, 1}) ==
        "Outlet C (Tyre inflator): it is too near the last place for that. Move it to a place in the list.");
  CHECK(refusal(bench(), MoveOutlet{kB, 0}) ==
        "Outlet B (Tablet charger): it would stay where it is. Move it to a place in the list.");
  CHECK(refusal(bench(), MoveOutlet{kB, std::numeric_limits<int>::max()}).find("last place") != std::string::npos);
  CHECK(refusal(bench(), MoveOutlet{kB, std::numeric_limits<int>::min()}).find("first place") != std::string::npos);
  CHECK(refusal(bench(), MoveOutlet{kNone, 1}) == "The circuit has no such outlet. Choose one of its outlets.");
}

TEST_CASE("feed from: a branch goes along with its outlet, a loop is refused") {
  CHECK(shape(after(bench(), FeedOutletFrom{kC, kA})) == "1<0 320, 2<1 140, 3<1 110");
  CHECK(shape(after(bench(), FeedOutletFrom{kB, kBlock})) == "1<0 320, 2<0 140, 3<2 110");
  // B with D hangs itself on C, which stood after them.
  CHECK(shape(after(tree(), FeedOutletFrom{kB, kC})) == "1<0 320, 3<1 110, 2<3 140, 4<2 140");
  CHECK(shape(after(bench(), FeedOutletFrom{kB, kA})) == shape(bench()));  // as it was
  CHECK(refusal(bench(), FeedOutletFrom{kA, kC}) ==
        "Outlet A (Truing-stand light): it feeds Outlet C (Tyre inflator) itself. "
        "Feed it from the block or from an outlet that it does not feed.");
  CHECK(refusal(bench(), FeedOutletFrom{kA, kA}).find("itself") != std::string::npos);
  CHECK(refusal(bench(), FeedOutletFrom{kNone, kA}) == "The circuit has no such outlet. Choose one of its outlets.");
  CHECK(refusal(bench(), FeedOutletFrom{kA, kNone}) == "The circuit has no such outlet. Choose one of its outlets.");
}

TEST_CASE("a new system voltage carries along what was told for the old one, and comes back exactly") {
  Circuit circuit = bench();
  circuit.supply.resting = units::Volts(12.8);
  circuit.supply.low = units::Volts(11.9);
  for (const double nominal : {24.0, 48.0}) {
    Supply supply = circuit.supply;
    supply.nominal = units::Volts(nominal);
    const Circuit raised = after(circuit, SetSupply{supply});
    CHECK(raised.supply.resting->number() == doctest::Approx(12.8 * nominal / 12.0));
    CHECK(raised.supply.low->number() == doctest::Approx(11.9 * nominal / 12.0));
    CHECK(raised.outlets[1].devices.front().load.minimum_voltage->number() == doctest::Approx(11.0 * nominal / 12.0));
    Supply lower = raised.supply;
    lower.nominal = units::Volts(12);
    const Circuit back = after(raised, SetSupply{lower});
    CHECK(back.supply.resting == units::Volts(12.8));
    CHECK(back.outlets[1].devices.front().load.minimum_voltage == units::Volts(11.0));
  }
  // Told anew in the same edit: taken as told.
  Supply told = circuit.supply;
  told.nominal = units::Volts(24);
  told.resting = units::Volts(25.0);
  const Circuit raised = after(circuit, SetSupply{told});
  CHECK(raised.supply.resting == units::Volts(25.0));
  CHECK(raised.supply.low == units::Volts(23.8));
}

TEST_CASE("every plain edit takes a good value and refuses a bad one in a sentence") {
  const Circuit demo = bench();
  CHECK(after(demo, SetName{"Awning lights"}).name == "Awning lights");
  CHECK(refusal(demo, SetName{" "}) == "Circuit name: name is empty. Give 1 to 40 characters.");
  CHECK(after(demo, SetPlace{""}).place.empty());
  CHECK(refusal(demo, SetPlace{std::string(41, 'x')}) == "Place: name has 41 characters. Give at most 40 characters.");
  CHECK(after(demo, SetFusePosition{99}).fuse_position == 99);
  CHECK(refusal(demo, SetFusePosition{0}) == "Fuse position: fuse position is 0. Give a whole number, 1 to 99.");
  CHECK(after(demo, SetSetting{Setting::boat}).setting == Setting::boat);
  const Circuit ruled = after(demo, SetPractice{tables::Practice::building, "iec"});
  CHECK(practice_of(ruled) == tables::Practice::building);
  CHECK(colours_of(ruled).key == "iec");
  CHECK(practice_of(after(ruled, SetPractice{})) == practice_of(demo));
  CHECK(refusal(demo, SetPractice{{}, "mauve"}).find("mauve") != std::string::npos);
  Supply supply = demo.supply;
  supply.main_fuse = units::Amperes(0);
  CHECK(after(demo, SetSupply{supply}).supply.main_fuse.number() == 0.0);
  supply.main_fuse = units::Amperes(0.5);
  CHECK(refusal(demo, SetSupply{supply}) == "Supply, main fuse: main fuse is 0.5 A. Give 1 A to 500 A, or 0: none told.");
  supply = demo.supply;
  supply.nominal = units::Volts(0);
  CHECK(refusal(demo, SetSupply{supply}) == "Supply: system voltage is 0 V. Give 12, 24, 48 V.");
  Wiring wiring = demo.wiring;
  wiring.around.circuits_bundled = 20;
  CHECK(after(demo, SetWiring{wiring}).wiring.around.circuits_bundled == 20);
  wiring.around.circuits_bundled = 0;
  CHECK(refusal(demo, SetWiring{wiring}) == "Wiring, bundle: circuits bundled is 0. Give a whole number, 1 to 20.");
  CHECK(after(demo, SetDropLimit{0.03}).drop_limit == 0.03);
  CHECK(refusal(demo, SetDropLimit{0.0}) == "Drop limit: drop limit is 0 %. Give 0.5 % to 20 %.");
  CHECK_FALSE(after(demo, SetAtMostAtOnce{std::nullopt}).at_most_at_once.has_value());
  CHECK(refusal(demo, SetAtMostAtOnce{units::Amperes(401)}) == "Most at once: most at once is 401 A. Give 0.1 A to 400 A.");
  CHECK(after(demo, SetOutletName{kB, "Phone"}).outlets[1].name == "Phone");
  CHECK(refusal(demo, SetOutletName{kB, ""}) == "Outlet B, name: name is empty. Give 1 to 40 characters.");
  CHECK(refusal(demo, SetOutletName{kNone, "Phone"}) == "The circuit has no such outlet. Choose one of its outlets.");
  CHECK(after(demo, SetRun{kB, units::Metres(2.5)}).outlets[1].run.length == units::Metres(2.5));
  CHECK(refusal(demo, SetRun{kB, units::Metres(0)}) == "Outlet B (Tablet charger), run: length is 0 m. Give 0.05 m to 100 m.");
  CHECK(refusal(demo, SetRun{kBlock, units::Metres(1)}) == "The circuit has no such outlet. Choose one of its outlets.");
  CHECK(after(demo, SetLoad{kB, {LoadKind::resistive, true, 0.0, {}}}).outlets[1].devices.front().load.kind == LoadKind::resistive);
  CHECK(refusal(demo, SetLoad{kB, {LoadKind::resistive, false, -3.0, {}}}) ==
        "Outlet B (Tablet charger), load: load is -3 A. Give 0.01 A to 300 A, or 0: nothing fitted yet.");
  CHECK(refusal(demo, SetLoad{kNone, {}}) == "The circuit has no such outlet. Choose one of its outlets.");
  CHECK(after(demo, SetOutletDropLimit{kB, 0.1}).outlets[1].drop_limit == 0.1);
  CHECK(refusal(demo, SetOutletDropLimit{kB, 0.25}) == "Outlet B (Tablet charger), drop limit: drop limit is 25 %. Give 0.5 % to 20 %.");
  CHECK(after(demo, SetOutletParts{kB, "usb-charger", "tab-4.8", {}}).outlets[1].outlet_part == "usb-charger");
  CHECK(refusal(demo, SetOutletParts{kB, "usb-charger", "tab-5", {}}).rfind("Outlet B (Tablet charger), terminal: part \"tab-5\" is not known.", 0) == 0);
  CHECK(after(demo, SetShelf{{{"10awg"}, {15.0}}}).shelf.missing_sizes.size() == 1);
  CHECK(refusal(demo, SetShelf{{{}, {-1.0}}}) == "Shelf: fuse is -1 A. Give 0.5 A to 500 A.");
  CHECK(after(demo, SetInHand{InHand{"12awg", units::Amperes(15)}}).in_hand->size == "12awg");
  CHECK(refusal(demo, SetInHand{InHand{"12awg", units::Amperes(0)}}) == "In hand: fuse is 0 A. Give 0.5 A to 500 A.");
}

TEST_CASE("undo's words name the outlet by its letter at the time") {
  const Circuit demo = bench();
  CHECK(describe(demo, RemoveOutlet{kC}) == "remove outlet C");
  CHECK(describe(demo, AddOutlet{kC}) == "add an outlet");
  CHECK(describe(demo, InsertOutlet{kB}) == "insert an outlet before outlet B");
  CHECK(describe(demo, MoveOutlet{kB, 1}) == "move outlet B");
  CHECK(describe(demo, FeedOutletFrom{kB, kBlock}) == "feed outlet B from the block");
  CHECK(describe(demo, SetRun{kB, units::Metres(1)}) == "change the length to outlet B");
  CHECK(describe(demo, SetLoad{kB, {}}) == "change the load at outlet B");
  CHECK(describe(demo, SetOutletName{kA, "x"}) == "rename outlet A");
  CHECK(describe(demo, SetOutletDropLimit{kA, {}}) == "change the drop limit of outlet A");
  CHECK(describe(demo, SetOutletParts{kA, "", "", {}}) == "change the parts of outlet A");
  CHECK(describe(demo, SetName{"x"}) == "rename the circuit");
  CHECK(describe(demo, SetPlace{"x"}) == "change the place");
  CHECK(describe(demo, SetFusePosition{1}) == "change the fuse position");
  CHECK(describe(demo, SetSetting{Setting::van}) == "change the setting");
  CHECK(describe(demo, SetPractice{}) == "change whose rules bind");
  CHECK(describe(demo, SetSupply{}) == "change the supply");
  CHECK(describe(demo, SetWiring{}) == "change the wiring");
  CHECK(describe(demo, SetDropLimit{0.1}) == "change the drop limit");
  CHECK(describe(demo, SetAtMostAtOnce{}) == "change the most at once");
  CHECK(describe(demo, SetShelf{}) == "change the shelf");
  CHECK(describe(demo, SetInHand{}) == "change what is in hand");
}
