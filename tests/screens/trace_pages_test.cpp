// Every page of Trace at every width, and what Trace does with what goes wrong: answers that do
// not fit, an edited circuit, a repair that did not help, records that can not be read. By role
// and name.
#include <algorithm>
#include <random>

#include "document/vehicle_file.h"
#include "circuits.h"
#include "pictures/sketch.h"
#include "screens/trace_place.h"
#include "sizing/sizing.h"
#include "support.h"
#include "trace_scenes.h"

namespace {

using screens_test::TraceScene;

void large(AppWalker& walker, int text_size) {
  walker.host.records["preferences"] = "theme auto\ntext-size " + std::to_string(text_size) + "\ncaution-seen yes\n";
}

// The answers of the check on screen, not the typed one and what follows it.
std::vector<std::string> answers(const AppWalker& walker) {
  std::vector<std::string> names;
  bool within = false;
  for (const ui::Record& r : walker.records()) {
    if (r.role == ui::Role::group && r.name == "Check") within = true;
    if (r.role != ui::Role::button || !within) continue;
    if (r.name == "Type the reading" || r.name == "Can't reach it") break;
    names.push_back(r.name);
  }
  return names;
}

// Answers at random, as nobody would, until a button of that name is there.
bool wander_to(AppWalker& walker, const TraceScene& scene, const std::string& button) {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    walker.host.records.clear();
    large(walker, 100);
    if (!screens_test::arrange(walker, scene)) return false;
    std::mt19937_64 random(seed);
    for (int i = 0; i < 25 && walker.find(ui::Role::button, button) == nullptr; ++i) {
      if (walker.press("Still the same")) continue;
      const auto names = answers(walker);
      if (names.empty() || !walker.press(names[random() % names.size()])) break;
    }
    if (walker.find(ui::Role::button, button) != nullptr) return true;
  }
  return false;
}

std::string stored(const AppWalker& walker, const std::string& key) {
  const auto found = walker.host.records.find(key);
  return found == walker.host.records.end() ? std::string() : found->second;
}

// As one answers whose fuse is blown, until the remedy is there.
const std::string kBlownFuse =
    "Blown|Within the fuse|Now it works|Yes, as always|None works|On, and whole|Not sure|Can't reach it>It works now";

const TraceScene kDeadC{"dead-c", screens_test::demo, "meter lamp fuse", {"One outlet is dead", "C"}, false};

}  // namespace

TEST_CASE("every page of a trace is whole at every width, and draws nothing at rest") {
  struct Window { float width, height; int text; bool dark; };
  for (const Window& window : {Window{320, 640, 100, true}, {320, 700, 200, false}, {412, 915, 100, false}, {740, 360, 100, true},
                               {820, 1100, 100, true}, {1280, 900, 100, false}}) {
    for (const TraceScene& scene : screens_test::trace_scenes()) {
      AppWalker walker;
      large(walker, window.text);
      walker.around.width = window.width;
      walker.around.height = window.height;
      walker.around.prefers_dark = window.dark;
      CAPTURE(scene.name);
      CAPTURE(window.width);
      const bool arranged = screens_test::arrange(walker, scene);
      INFO(walker.all());
      REQUIRE(arranged);
      check_layout(walker);
      CHECK_FALSE(walker.frame());
    }
  }
}

TEST_CASE("on a phone the answers stand in the lower half, 48 px and more, whatever is scrolled") {
  for (const auto& [width, height] : {std::pair{320.0F, 640.0F}, {360.0F, 740.0F}, {412.0F, 915.0F}}) {
    AppWalker walker;
    large(walker, 100);
    walker.around.width = width;
    walker.around.height = height;
    const TraceScene volts{"volts", screens_test::thirty, "meter lamp", {"One outlet is dead", "AC", "Not sure>Type the reading"}, false};
    REQUIRE(screens_test::arrange(walker, volts));
    std::vector<std::string> names = answers(walker);
    CHECK(names.size() == 4);
    names.insert(names.end(), {"Type the reading", "Can't reach it", "Not sure"});
    for (const std::string& name : names) {
      CAPTURE(name);
      const ui::Record* button = walker.find(ui::Role::button, name);
      REQUIRE(button != nullptr);
      CHECK(button->y >= height * 0.42F);
      CHECK(button->y + button->height <= height);
      CHECK(button->height >= 48.0F);
      CHECK(button->region == 0);   // not moved by the scrolling page
    }
  }
}

TEST_CASE("a suspect tells its place, its share, and what speaks for it and against") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"s", screens_test::demo, "meter fuse", {"Everything on this fuse is dead"}, false}));
  REQUIRE(walker.press("The fuse is blown"));
  CHECK(walker.address() == "trace/suspect/1");
  CHECK(walker.shows("At the block, position 4"));
  CHECK(walker.shows("Nothing is answered yet"));
  REQUIRE(walker.go("trace"));
  for (int i = 0; i < 12 && !walker.shows("It works now"); ++i)
    if (!walker.press("Blown") && !walker.press("Not sure")) break;
  REQUIRE(walker.press("The fuse is blown"));
  INFO(walker.all());
  CHECK(walker.shows("Speaks for it"));
  REQUIRE(walker.go("trace/suspect/99"));
  CHECK(walker.shows("There is no such suspect now."));
}

TEST_CASE("a fuse rating is named only for a known wire that it protects") {
  AppWalker walker;
  large(walker, 100);
  const TraceScene told{"told", screens_test::demo, "meter fuse", {"Wire and fuse there"}, false};
  REQUIRE(screens_test::arrange(walker, told));
  CHECK(walker.shows("Trace will name no fuse rating"));
  REQUIRE(walker.press(ui::Role::checkbox, "Wire 14 AWG"));
  REQUIRE(walker.press(ui::Role::checkbox, "Fuse 30 A"));
  CHECK(walker.shows("This fuse is too large for this wire"));
  const auto built = [&walker] { return document::read_vehicles(stored(walker, "vehicle/2")).vehicles.at(0).circuits.at(0).built; };
  REQUIRE(built());
  CHECK(built()->fuse == units::Amperes(30.0));
  const auto told_so_far = built();
  for (const circuit::Outlet& outlet : told_so_far->circuit.outlets) CHECK(outlet.run.size == "14awg");
  const auto to_the_fuse = [&] {
    REQUIRE(walker.go("trace"));
    REQUIRE(walker.press("Everything on this fuse is dead"));
    for (int i = 0; i < 40 && walker.find(ui::Role::button, "It works now") == nullptr; ++i) {
      for (const ui::Record& r : walker.records()) CHECK(r.name.find("30 A") == std::string::npos);
      REQUIRE((walker.press("Blown") || walker.press("Now it works") || walker.press("Open") || walker.press("Within the fuse") || walker.press("Yes, as always") ||
               walker.press("On, and whole") || walker.press("Not sure") || walker.press("Can't reach it")));
    }
    INFO(walker.all());
    for (const ui::Record& r : walker.records()) CHECK(r.name.find("30 A") == std::string::npos);
    CHECK(walker.shows("that Size gives for this wire"));   // the block's label may say 30 A as well
  };
  to_the_fuse();
  REQUIRE(walker.go("trace/fitted"));
  REQUIRE(walker.press(ui::Role::checkbox, "Fuse 10 A"));
  CHECK(walker.shows("This fuse protects this wire"));
  REQUIRE(walker.go("trace"));
  CHECK(walker.find(ui::Role::button, "It works now") != nullptr);   // the answers so far are kept
  CHECK(walker.shows("10 A"));
  REQUIRE(walker.go("trace/fitted"));
  REQUIRE(walker.press(ui::Role::checkbox, "Wire: I don't know"));
  REQUIRE(walker.press(ui::Role::checkbox, "Fuse: I don't know"));
  CHECK(built()->fuse_knowledge == vehicle::Knowledge::unknown);
  const auto told_no_more = built();
  for (const circuit::Outlet& outlet : told_no_more->circuit.outlets) CHECK_FALSE(outlet.run.size.has_value());
  REQUIRE(walker.press("Forget all this"));
  CHECK_FALSE(built().has_value());
}

TEST_CASE("no wire, fuse or volts stand in a trace because Size would choose them") {
  for (const auto make : {screens_test::demo, screens_test::metric_24v}) {
    AppWalker walker;
    large(walker, 100);
    REQUIRE(screens_test::arrange(walker, TraceScene{"n", make, "meter fuse", {}, false}));
    CHECK(walker.shows("not told"));
    const sizing::Answer sized = sizing::size_circuit(make());
    REQUIRE(sized.choice() != nullptr);
    const std::string wire = std::string(sized.choice()->size->size) + " " + std::string(tables::gauge_system_suffix(sized.choice()->size->system));
    const std::string fuse = units::amperes_text(*sized.choice()->fuse);
    const auto names_none = [&] {
      for (const ui::Record& r : walker.records())
        for (const std::string& text : {r.name, r.value, r.description}) {
          CAPTURE(text);
          CHECK(text.find(wire) == std::string::npos);
          CHECK(text.find(fuse) == std::string::npos);
        }
    };
    names_none();
    REQUIRE(walker.press("Everything on this fuse is dead"));
    for (int i = 0; i < 40 && walker.find(ui::Role::button, "It works now") == nullptr; ++i) {
      names_none();
      REQUIRE((walker.press("Blown") || walker.press("Now it works") || walker.press("Open") || walker.press("Within the fuse") ||
               walker.press("Yes, as always") || walker.press("On, and whole") || walker.press("Not sure") || walker.press("Can't reach it")));
    }
    names_none();
    CHECK(walker.shows("label"));
  }
}

TEST_CASE("the outlets ticked before Start are there after a kill, and gone once it began") {
  AppWalker walker;
  large(walker, 100);
  REQUIRE(screens_test::arrange(walker, TraceScene{"p", screens_test::demo, "meter", {"Several outlets are dead"}, false}));
  REQUIRE(walker.press(ui::Role::checkbox, "Outlet A"));
  REQUIRE(walker.press(ui::Role::checkbox, "Outlet C"));
  CHECK(stored(walker, "picked/2/2") == "1 3");
  walker.restart();
  REQUIRE(walker.go("trace/start/several-dead"));
  const auto ticked = [&walker](std::string_view name) {
    const ui::Record* box = walker.find(ui::Role::checkbox, name);
    return box != nullptr && (box->state & ui::kChecked) != 0U;
  };
  CHECK(ticked("Outlet A"));
  CHECK_FALSE(ticked("Outlet B"));
  CHECK(ticked("Outlet C"));
  REQUIRE(walker.press("Start"));
  CHECK(stored(walker, "running/2/2").find("outlets 1 3") != std::string::npos);
  CHECK(stored(walker, "picked/2/2").empty());
}

TEST_CASE("a circuit that is not known in full can be traced, with no fuse named until it is told") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"g", nullptr, "", {"One outlet is dead", "C"}, false}));
  INFO(walker.all());
  CHECK(walker.shows("Check 1"));
  CHECK_FALSE(walker.host.records["running/0/0"].empty());
  REQUIRE(walker.go("trace/fitted"));
  CHECK(walker.shows("There is no circuit to tell it of"));
}

TEST_CASE("answers that fit no fault: said plainly, the odd one named, taken again in two taps") {
  AppWalker walker;
  REQUIRE(wander_to(walker, kDeadC, "Take it again"));
  INFO(walker.all());
  check_layout(walker);
  CHECK(walker.shows("The odd one:"));
  const std::string before = stored(walker, "running/2/2");
  const auto entries = std::count(before.begin(), before.end(), '\n');
  REQUIRE(walker.press("Take it again"));
  CHECK(walker.shows("You said:"));
  REQUIRE(walker.press("Not sure"));
  CHECK(walker.address() == "trace");
  const std::string after = stored(walker, "running/2/2");
  CHECK(std::count(after.begin(), after.end(), '\n') == entries);   // one answer is another, none is lost
  CHECK(after != before);
}

TEST_CASE("a repair that did not help: the trace goes on with all its evidence") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"f", screens_test::demo, "meter lamp fuse",
                                         {"Everything on this fuse is dead", kBlownFuse, "Still the same"}, false}));
  INFO(walker.all());
  CHECK(stored(walker, "running/2/2").find("word blown fuse-look") != std::string::npos);
  CHECK(stored(walker, "running/2/2").find("remedy word same") != std::string::npos);
  CHECK(walker.shows("Suspects"));
  REQUIRE(walker.press("Undo last"));
  CHECK(walker.find(ui::Role::button, "It works now") != nullptr);
}

TEST_CASE("a minus is taken with its sign, and told") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"m", screens_test::demo, "meter",
                                         {"One outlet is dead", "C", "Not sure>Type the reading", "Type the reading", "Minus", "1", "2", "OK"}, false}));
  INFO(walker.all());
  CHECK(stored(walker, "running/2/2").find("reading -12 volts") != std::string::npos);
  CHECK(walker.shows("A minus: plus and minus are changed over"));
}

TEST_CASE("the circuit edited in the middle: what no longer counts is named, the rest goes on") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"e", screens_test::demo, "meter", {"One outlet is dead", "C", "Dead|No, nothing|Near 0 V>Type the reading"}, false}));
  circuit::Circuit edited = screens_test::demo();
  edited.outlets[1].fed_from = circuit::kBlock;
  edited.outlets[2].fed_from = circuit::kBlock;
  edited.outlets.erase(edited.outlets.begin());   // A is gone; B and C stay
  walker.host.records["running/2/2"] += "check word dead other-device 1\n";
  walker.host.records["vehicle/2"] = document::write_vehicle(vehicle::around(edited));
  walker.restart();
  REQUIRE(walker.go("trace"));
  INFO(walker.all());
  CHECK(walker.shows("The circuit was edited. These answers no longer count:"));
  check_layout(walker);
  REQUIRE(walker.press("Go on without them"));
  CHECK_FALSE(walker.shows("The circuit was edited"));
  CHECK(walker.shows("Check "));
}

TEST_CASE("a kept record is read, deleted after a question, and put back") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"k", screens_test::demo, "meter fuse",
                                         {"Everything on this fuse is dead", kBlownFuse, "It works now", "Done", "2026-11-25"}, false}));
  CHECK(walker.shows("Put right, and it works."));
  const std::string kept = stored(walker, "vehicle/2");
  const auto count = [&walker] { return document::read_vehicles(stored(walker, "vehicle/2")).vehicles.at(0).circuits.at(0).traces.size(); };
  CHECK(count() == 1);
  REQUIRE(walker.press("Save as a text file"));
  REQUIRE(walker.host.files.size() == 1);
  CHECK(walker.host.files[0].name == "trace-bench-outlets-2026-11-25.txt");
  CHECK(walker.host.files[0].text.find("Put right, and it works.") != std::string::npos);
  CHECK(walker.host.files[0].text.find("Blown") != std::string::npos);
  REQUIRE(walker.press("Delete this record"));
  REQUIRE(walker.press("Keep it"));
  CHECK(stored(walker, "vehicle/2") == kept);
  REQUIRE(walker.press("Delete this record"));
  REQUIRE(walker.press("Delete"));
  CHECK(count() == 0);
  REQUIRE(walker.press("Put back"));
  CHECK(stored(walker, "vehicle/2") == kept);
  CHECK(walker.shows("Traces of this circuit"));
}

TEST_CASE("a trace that can not be read is told and never written over") {
  AppWalker walker;
  std::vector<platform::StoredRecord> records = screens_test::two_vehicles(screens_test::demo());
  records.push_back({"running/2/2", "symptom from-a-newer-app\n"});
  walker.start(records, "trace");
  CHECK(walker.shows("A trace was left off here that can't be read"));
  REQUIRE(walker.press("Everything on this fuse is dead"));
  CHECK(stored(walker, "running/2/2/unread-1") == "symptom from-a-newer-app\n");
  CHECK(stored(walker, "running/2/2").find("symptom all-dead") != std::string::npos);
}

TEST_CASE("what belongs to a deleted circuit stays while it can be put back, and goes at the next start") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"d", screens_test::demo, "meter", {"One outlet is dead", "C", "Not sure"}, false}));
  walker.host.records["picked/7/1"] = "1 2";
  REQUIRE(walker.go("circuits/circuit/2/2"));
  REQUIRE(walker.press("Delete"));
  REQUIRE(walker.press("Delete"));
  CHECK_FALSE(stored(walker, "running/2/2").empty());
  walker.restart();
  CHECK(stored(walker, "running/2/2").empty());
  CHECK(stored(walker, "picked/7/1").empty());
}

TEST_CASE("the screen stays awake while a trace runs, and only then") {
  AppWalker walker;
  REQUIRE(screens_test::arrange(walker, TraceScene{"w", screens_test::demo, "meter", {}, false}));
  CHECK_FALSE(walker.host.awake);
  REQUIRE(walker.press("Everything on this fuse is dead"));
  CHECK(walker.host.awake);
  REQUIRE(walker.go("size"));
  CHECK_FALSE(walker.host.awake);
}

TEST_CASE("the part of each fault is marked within the sketch, and never our fuse for a fault before the block") {
  for (const auto make : {screens_test::demo, screens_test::tree, screens_test::thirty}) {
    diagnosis::Case the_case = diagnosis::generic_case(tables::GaugeSystem::awg);
    the_case.circuit = make();
    pictures::SketchOptions plain;
    const std::size_t unmarked = pictures::sketch(the_case.circuit, nullptr, plain).shapes.size();
    for (const diagnosis::Hypothesis& hypothesis : diagnosis::hypotheses(the_case)) {
      const screens::Marked marked = screens::marked_by(the_case, hypothesis.fault);
      CAPTURE(diagnosis::fault_key(hypothesis.fault));
      pictures::SketchOptions options;
      options.marks = marked.marks;
      const drawing::Picture picture = pictures::sketch(the_case.circuit, nullptr, options);
      CHECK(picture.shapes.size() == unmarked + 2 * marked.marks.size());   // each with what parts it from the wires
      const bool before_block = hypothesis.fault.kind == diagnosis::FaultKind::main_open ||
                                hypothesis.fault.kind == diagnosis::FaultKind::feeder_resistive ||
                                hypothesis.fault.kind == diagnosis::FaultKind::source_flat;
      for (const pictures::SketchMark& mark : marked.marks) {
        if (before_block) CHECK(mark.place != pictures::MarkPlace::fuse);
        if (hypothesis.fault.outlet != circuit::kBlock) CHECK(mark.outlet == hypothesis.fault.outlet);
      }
      for (std::size_t i = unmarked; i < picture.shapes.size(); ++i) {
        if (const auto* ring = std::get_if<drawing::Circle>(&picture.shapes[i].form)) {
          CHECK(ring->centre.x - ring->radius >= 0.0);
          CHECK(ring->centre.x + ring->radius <= picture.width);
          CHECK(ring->centre.y + ring->radius <= picture.height);
        }
      }
    }
  }
}

TEST_CASE("two leads stand at their two points: the ring at the red one, the square at the black one") {
  diagnosis::Case the_case = diagnosis::generic_case(tables::GaugeSystem::awg);
  diagnosis::Check check;
  check.kind = diagnosis::CheckKind::volts;
  check.red = {diagnosis::SpotKind::splice, {3}, network::Side::positive};
  check.black = {diagnosis::SpotKind::bus, circuit::kBlock, network::Side::negative};
  const screens::Marked marked = screens::marked_by(the_case, check);
  REQUIRE(marked.marks.size() == 2);
  CHECK(marked.marks[0] == pictures::SketchMark{pictures::MarkPlace::splice, true, {3}, pictures::MarkShape::ring});
  CHECK(marked.marks[1] == pictures::SketchMark{pictures::MarkPlace::bus, false, circuit::kBlock, pictures::MarkShape::square});
  CHECK(marked.words == "the red splice at C; the negative bus");
}
