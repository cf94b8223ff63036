// One vehicle, one pair of colours: the answer, the sketch and every sentence of a trace name and
// show the same wire. A hand follows the word to the wire in the picture.
#include <algorithm>

#include "circuits.h"
#include "document/vehicle_file.h"
#include "drawing/palette.h"
#include "pictures/sketch.h"
#include "screens/places.h"
#include "support.h"
#include "tables/conductor_colours.h"

namespace {

struct Pair { std::string plus, minus; };

drawing::Ink ink_of(const std::string& colour) {
  if (colour == "red") return drawing::Ink::positive;
  return colour == "black" ? drawing::Ink::negative : drawing::swatch(colour);
}

// Ink of the conductor drawn highest, and of the one drawn lowest: plus lies above minus.
std::pair<drawing::Ink, drawing::Ink> drawn(const circuit::Circuit& circuit) {
  std::vector<const drawing::Polyline*> wires;
  const drawing::Picture picture = pictures::sketch(circuit, nullptr, {});
  for (const drawing::Shape& shape : picture.shapes)
    if (const auto* line = std::get_if<drawing::Polyline>(&shape.form)) wires.push_back(line);
  const auto level = [](const drawing::Polyline* w) { return w->points.front().y; };
  std::erase_if(wires, [](const drawing::Polyline* w) { return w->fill != drawing::Ink::none || w->ink == drawing::Ink::text; });
  REQUIRE_FALSE(wires.empty());
  const auto [top, bottom] = std::minmax_element(wires.begin(), wires.end(), [&](auto* a, auto* b) { return level(a) < level(b); });
  return {(*top)->ink, (*bottom)->ink};
}

void check_one_pair(circuit::Circuit circuit, const Pair& expected) {
  CAPTURE(circuit.colours);
  AppWalker walker;
  walker.host.records["preferences"] = "caution-seen yes\n";
  walker.start(screens_test::two_vehicles(circuit), "size");
  CHECK(walker.find(ui::Role::status, "Wire, " + expected.plus + " and " + expected.minus + ": 10 AWG · 5.3 mm²") != nullptr);
  CHECK(drawn(circuit) == std::pair(ink_of(expected.plus), ink_of(expected.minus)));
  test_app::MemoryHost host;
  app::AppState state(host, screens::places(), screens_test::two_vehicles(circuit), "trace");
  state.settle();
  const diagnosis::Case& frame = state.trace_desk().frame();
  CHECK(frame.plus_colour == expected.plus);
  CHECK(frame.minus_colour == expected.minus);
}

}  // namespace

TEST_CASE("the answer, the sketch and the words of a trace have the same colours") {
  circuit::Circuit circuit = screens_test::demo();
  check_one_pair(circuit, {"red", "black"});   // nobody told: a trailer's may be black and white, may not
  for (const tables::ConductorColours& row : tables::conductor_colours()) {
    circuit.colours = row.key;
    check_one_pair(circuit, {std::string(row.plus), std::string(row.minus)});
  }
  circuit.colours.clear();
  circuit.practice = tables::Practice::us_rv;   // told, so its colours hold: in words and picture
  check_one_pair(circuit, {"black", "white"});
}
