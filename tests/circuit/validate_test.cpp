#include "circuit/validate.h"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <limits>

using namespace circuit;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

std::string first_problem(const Circuit& circuit) {
  const Problems problems = validate(circuit);
  return problems.empty() ? std::string("none") : one_line(problems.front());
}

std::string problem_after(const std::function<void(Circuit&)>& change) {
  Circuit circuit = demo_circuit();
  change(circuit);
  const Problems problems = validate(circuit);
  CHECK(problems.size() == 1);  // one mistake, one sentence
  return first_problem(circuit);
}

// Puts a number where the field lives in a circuit; per-12-V fields: the whole battery's. False: it
// lives in the vehicle, and tests/vehicle holds it there.
bool put(Circuit& c, Field field, double number) {
  Outlet& last = c.outlets[2];
  Device& device = last.devices.front();
  const auto starts = [&device] { return &(device.inrush ? device.inrush : device.inrush = Inrush{units::Amperes(20.0), units::Seconds(1.0)}).value(); };
  switch (field) {
    case Field::run_m: c.outlets[2].run.length = units::Metres(number); return true;
    case Field::load_a: c.outlets[2].devices.front().load.rating = number; return true;
    case Field::load_w: c.outlets[1].devices.front().load.rating = number; return true;
    case Field::at_most_at_once_a: c.at_most_at_once = units::Amperes(number); return true;
    case Field::drop_limit_fraction: c.outlets[2].drop_limit = number; return true;
    case Field::minimum_voltage_per_12v: c.outlets[1].devices.front().load.minimum_voltage = units::Volts(number); return true;
    case Field::ambient_c: c.wiring.around.ambient = units::Celsius(number); return true;
    case Field::wire_temperature_c: c.wiring.wire_temperature = units::Celsius(number); return true;
    case Field::circuits_bundled: c.wiring.around.circuits_bundled = static_cast<int>(number); return true;
    case Field::tail_m: c.wiring.tail = units::Metres(number); return true;
    case Field::feeder_run_m: c.supply.feeder_run = units::Metres(number); return true;
    case Field::main_fuse_a: c.supply.main_fuse = units::Amperes(number); return true;
    case Field::resting_per_12v: c.supply.resting = units::Volts(number); return true;
    case Field::low_per_12v: c.supply.low = units::Volts(number); return true;
    case Field::part_rating_a: c.outlets[2].rating = units::Amperes(number); return true;
    case Field::fuse_position: c.fuse_position = static_cast<int>(number); return true;
    case Field::fuse_a: c.in_hand = InHand{"10awg", units::Amperes(number)}; return true;
    case Field::taps: last.taps = static_cast<int>(number); return true;
    case Field::inrush_a: starts()->current = units::Amperes(number); return true;
    case Field::inrush_s: starts()->lasting = units::Seconds(number); return true;
    case Field::in_line_a: last.run.in_line = {{InLineKind::toggle, units::Amperes(number)}}; return true;
    case Field::highest_per_12v: c.supply.highest = units::Volts(number); return true;
    case Field::internal_ohm: c.supply.internal_resistance = units::Ohms(number); return true;
    case Field::main_fuse_distance_m: c.supply.main_fuse_distance = units::Metres(number); return true;
    case Field::disconnect_a: c.supply.disconnect = units::Amperes(number); return true;
    case Field::block_a: c.supply.block_rating = units::Amperes(number); return true;
    case Field::beside_a: c.supply.beside = units::Amperes(number); return true;
    case Field::capacity_ah:
    case Field::positions:
    case Field::source_a:
    case Field::source_run_m: break;
  }
  return false;
}

}  // namespace

TEST_CASE("every field takes both ends of its range and refuses what is past them, NaN and infinity") {
  for (const Limit& range : limits()) {
    CAPTURE(range.name);
    CHECK_FALSE(check_value(range.field, range.low, ""));
    CHECK_FALSE(check_value(range.field, range.high, ""));
    const double below = range.whole ? range.low - 1 : std::nextafter(range.low, -kInfinity);
    const double above = range.whole ? range.high + 1 : std::nextafter(range.high, kInfinity);
    for (const double bad : {below, above, -1e300, 1e300, kNaN, kInfinity, -kInfinity}) {
      CAPTURE(bad);
      const auto problem = check_value(range.field, bad, "Somewhere");
      REQUIRE(problem);
      CHECK(problem->place == "Somewhere");
      CHECK(problem->field == range.field);
      CHECK(one_line(*problem).size() < 160);
      // Whole numbers are int in a circuit: NaN and the like can not get there.
      if (range.whole && std::fabs(bad) > 1e9) continue;
      if (range.whole && !std::isfinite(bad)) continue;
      Circuit circuit = demo_circuit();
      if (!put(circuit, range.field, bad)) continue;
      const Problems problems = validate(circuit);
      REQUIRE_FALSE(problems.empty());
      CHECK(problems.front().field == range.field);
    }
  }
}

TEST_CASE("the ends of the ranges are valid in a circuit too") {
  for (const Limit& range : limits()) {
    CAPTURE(range.name);
    for (const double good : {range.low, range.high}) {
      Circuit circuit = demo_circuit();
      if (!put(circuit, range.field, good)) continue;
      // Low and resting also bound each other; alone at their ends they may cross.
      if (range.field == Field::resting_per_12v || range.field == Field::low_per_12v) {
        circuit.supply.low = units::Volts(range.field == Field::low_per_12v ? good : 9.0);
        circuit.supply.resting = units::Volts(range.field == Field::resting_per_12v ? good : 14.8);
      }
      CHECK(first_problem(circuit) == "none");
    }
  }
}

TEST_CASE("whole-number fields refuse fractions") {
  CHECK(one_line(*check_value(Field::fuse_position, 1.5, "")) ==
        "Fuse position is 1.5. Give a whole number, 1 to 99.");
}

TEST_CASE("zero is told apart from too small where zero means something") {
  CHECK_FALSE(check_value(Field::load_a, 0.0, ""));
  CHECK_FALSE(check_value(Field::main_fuse_a, 0.0, ""));
  CHECK(one_line(*check_value(Field::load_a, 0.001, "Outlet A, load")) ==
        "Outlet A, load: load is 0.001 A. Give 0.01 A to 300 A, or 0: nothing fitted yet.");
  CHECK(one_line(*check_value(Field::run_m, 0.0, "Outlet A, run")) ==
        "Outlet A, run: length is 0 m. Give 0.05 m to 100 m.");
}

TEST_CASE("sentences say where, what and what is allowed") {
  CHECK(problem_after([](Circuit& c) { c.outlets[2].run.length = units::Metres(-2); }) ==
        "Outlet C (Tyre inflator), run: length is -2 m. Give 0.05 m to 100 m.");
  CHECK(problem_after([](Circuit& c) { c.outlets[0].run.length = units::Metres(kNaN); }) ==
        "Outlet A (Truing-stand light), run: length is not a number. Give 0.05 m to 100 m.");
  CHECK(problem_after([](Circuit& c) { c.outlets[0].run.length = units::Metres(1e300); }) ==
        "Outlet A (Truing-stand light), run: length is far too large. Give 0.05 m to 100 m.");
  CHECK(problem_after([](Circuit& c) { c.outlets[0].run.length = units::Metres(100.00001); }) ==
        "Outlet A (Truing-stand light), run: length is 100.00001 m. Give 0.05 m to 100 m.");
  CHECK(problem_after([](Circuit& c) { c.drop_limit = 0.6; }) ==
        "Drop limit: drop limit is 60 %. Give 0.5 % to 20 %.");
  CHECK(problem_after([](Circuit& c) { c.outlets[1].devices.front().load.rating = 6000; }) ==
        "Outlet B (Tablet charger), load: load is 6000 W. Give 0.1 W to 5000 W, or 0: nothing fitted yet.");
  CHECK(problem_after([](Circuit& c) { c.outlets[2].name = "Outlet C"; c.outlets[2].run.length = units::Metres(0); }) ==
        "Outlet C, run: length is 0 m. Give 0.05 m to 100 m.");
  CHECK(problem_after([](Circuit& c) { c.at_most_at_once = units::Amperes(0); }) ==
        "Most at once: most at once is 0 A. Give 0.1 A to 400 A.");
}

TEST_CASE("voltages are held to the system's voltage and told for the whole battery") {
  CHECK(one_line(*check_value(Field::minimum_voltage_per_12v, 60.0, "Outlet A, lowest voltage", 4)) ==
        "Outlet A, lowest voltage: lowest voltage is 60 V. Give 4 V to 56 V.");
  CHECK_FALSE(check_value(Field::minimum_voltage_per_12v, 44.0, "", 4));
  CHECK(check_value(Field::minimum_voltage_per_12v, 44.0, "", 1));
  CHECK(problem_after([](Circuit& c) { c.supply.nominal = units::Volts(36); }) ==
        "Supply: system voltage is 36 V. Give 12, 24, 48 V.");
  CHECK(problem_after([](Circuit& c) { c.supply.nominal = units::Volts(kNaN); }) ==
        "Supply: system voltage is not a number. Give 12, 24, 48 V.");
  // Lead AGM rests at 12.85 V (tables): a low voltage above it would plan upside down.
  CHECK(problem_after([](Circuit& c) { c.supply.low = units::Volts(13.0); }) ==
        "Supply: low battery voltage 13 V is above the resting voltage 12.85 V. "
        "Give a low voltage of at most 12.85 V, or a higher resting voltage.");
}

TEST_CASE("sizes, parts and kinds have to be known, and of the right sort") {
  CHECK(problem_after([](Circuit& c) { c.supply.battery = "lemon"; }) ==
        "Supply: battery kind \"lemon\" is not known. Give one of lead-flooded, lead-agm, lifepo4.");
  CHECK(problem_after([](Circuit& c) { c.supply.feeder_size = "7awg"; }) ==
        "Supply, feeder: wire size \"7awg\" is not known. Give an AWG size \"18awg\" to \"4/0awg\", an SAE one \"18sae\" to \"4/0sae\" or a metric "
        "one \"0.75mm2\" to \"120mm2\".");
  CHECK(problem_after([](Circuit& c) { c.in_hand = InHand{"", units::Amperes(15)}; }).rfind("In hand: wire size", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.wiring.clamp_part = "splice-lever-6"; })
            .rfind("Fuse block clamp: part \"splice-lever-6\" does not belong here. Give one of clamp-", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.wiring.splice_part = "glue"; })
            .rfind("Splice: part \"glue\" is not known. Give one of splice-", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets[0].outlet_part = "tab-6.3"; })
            .rfind("Outlet A (Truing-stand light), outlet: part \"tab-6.3\" does not belong here.", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets[0].terminal_part = ""; })
            .rfind("Outlet A (Truing-stand light), terminal: part \"\" is not known.", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.wiring.around.insulation = units::Celsius(100); }) ==
        "Wiring, insulation: insulation rating is 100 °C. Give one of 60, 70, 75, 80, 90, 105, 125, 200 °C.");
  CHECK(problem_after([](Circuit& c) { c.shelf.missing_sizes = {"10awg", "11awg", "13awg"}; }).rfind("Shelf: wire size", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.shelf.missing_sizes = {"10awg", "10awg"}; }) ==
        "Shelf: a wire size is listed twice. List each size once.");
  CHECK(problem_after([](Circuit& c) { c.shelf.missing_fuses_a = {15, 15}; }) ==
        "Shelf: a fuse rating is listed twice. List each rating once.");
  CHECK(problem_after([](Circuit& c) { c.shelf.missing_fuses_a = {kNaN, 15}; }) ==
        "Shelf: fuse is not a number. Give 0.5 A to 500 A.");
  CHECK(problem_after([](Circuit& c) { c.shelf.missing_fuses_a.assign(101, 15.0); }) ==
        "Shelf: 101 fuse ratings are listed. List at most 100.");
}

TEST_CASE("shape: known parents, one number each, no loop, not too many") {
  CHECK(problem_after([](Circuit& c) { c.outlets[1].fed_from = OutletId{9}; }) ==
        "Outlet B (Tablet charger): it is fed from outlet number 9, which does not come before it. "
        "Feed it from the block (0) or from an outlet above it in the list.");
  CHECK(problem_after([](Circuit& c) { c.outlets[1].fed_from = OutletId{2}; })
            .rfind("Outlet B (Tablet charger): it is fed from outlet number 2", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets[1].fed_from = OutletId{3}; })
            .rfind("Outlet B (Tablet charger): it is fed from outlet number 3", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets[2].id = OutletId{1}; }) ==
        "Outlet C (Tyre inflator): its number 1 is already taken. Give every outlet a number of its own, 1 or more.");
  CHECK(problem_after([](Circuit& c) { c.outlets[2].id = kBlock; })
            .rfind("Outlet C (Tyre inflator): its number 0 is already taken.", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.next_outlet_id = 3; }) ==
        "The next outlet number is 3. Give a number above every outlet's own, at most 1000000000.");
  CHECK(problem_after([](Circuit& c) { c.next_outlet_id = std::numeric_limits<std::uint32_t>::max(); })
            .rfind("The next outlet number is 4294967295.", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets.clear(); }) == "The circuit has no outlet. Give 1 to 300 outlets.");
}

TEST_CASE("500 outlets: one sentence") {
  Circuit circuit = demo_circuit();
  while (circuit.outlets.size() < 500) {
    Outlet more = circuit.outlets.back();
    more.fed_from = more.id;
    more.id = OutletId{circuit.next_outlet_id++};
    circuit.outlets.push_back(more);
  }
  const Problems problems = validate(circuit);
  REQUIRE(problems.size() == 1);
  CHECK(one_line(problems[0]) == "The circuit has 500 outlets. Give at most 300 outlets in one circuit.");
  circuit.outlets.resize(300);
  CHECK(first_problem(circuit) == "none");
}

TEST_CASE("names are text that fits a label") {
  const auto wrong = [](std::string_view name) {
    const auto problem = check_name(name, "");
    return problem ? one_line(*problem) : std::string("fine");
  };
  CHECK(wrong("Truing-stand light") == "fine");
  CHECK(wrong("Küche, 炊事, مطبخ, 🔌") == "fine");
  CHECK(wrong("<b>&\"'") == "fine");  // data, never markup
  CHECK(wrong(std::string(40, 'x')) == "fine");
  std::string forty_wide;
  for (int i = 0; i < 40; ++i) forty_wide += "é";
  CHECK(wrong(forty_wide) == "fine");  // 40 characters, 80 bytes
  CHECK(wrong(std::string(41, 'x')) == "Name has 41 characters. Give at most 40 characters.");
  CHECK(wrong(forty_wide + "é") == "Name has 41 characters. Give at most 40 characters.");
  CHECK(wrong("") == "Name is empty. Give 1 to 40 characters.");
  CHECK(wrong("   ") == "Name is empty. Give 1 to 40 characters.");
  CHECK(wrong("\xC2\xA0\xE3\x80\x80\xE2\x80\x8B") == "Name is empty. Give 1 to 40 characters.");
  for (const char* control : {"a\nb", "a\tb", "\x7F", "a\xC2\x85", "a\xE2\x80\xA8", "a\xE2\x80\xAE", "a\xE2\x81\xA7"}) {
    CHECK(wrong(control) == "Name holds a character that can not be printed. Give letters, digits and signs.");
  }
  CHECK(wrong(std::string_view("a\0b", 3)) == "Name holds a character that can not be printed. Give letters, digits and signs.");
  // Not UTF-8 by RFC 3629: a lone tail, a cut head, overlong, a surrogate, past U+10FFFF, Latin-1.
  for (const char* bytes : {"\x80", "a\xC3", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "caf\xE9 x", "\xFF\xFE"}) {
    CHECK(wrong(bytes) == "Name is not readable text. Give letters, digits and signs.");
  }
  CHECK(problem_after([](Circuit& c) { c.name = ""; }) == "Circuit name: name is empty. Give 1 to 40 characters.");
  CHECK(problem_after([](Circuit& c) { c.place = "a\nb"; }).rfind("Place: name holds", 0) == 0);
  CHECK(problem_after([](Circuit& c) { c.outlets[1].name = "\xFF"; }) ==
        "Outlet B, name: name is not readable text. Give letters, digits and signs.");
}

TEST_CASE("foreign text in a sentence is quoted, shortened and made printable") {
  CHECK(quoted("10awg") == "\"10awg\"");
  CHECK(quoted("a\nb\xFF") == "\"a?b?\"");
  CHECK(quoted(std::string(1000, 'x')) == "\"" + std::string(40, 'x') + "...\"");
}
