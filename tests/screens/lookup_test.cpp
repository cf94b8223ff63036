// Calculators, tables and how-to cards walked by role and name, whatever the tables hold.
#include <set>

#include "calculators/calculator.h"
#include "circuits.h"
#include "reference/search.h"
#include "screens/lookup.h"
#include "screens/places.h"
#include "support.h"

using ui::Role;

namespace {

struct Look {
  float width;
  float height;
  int text_size;
  bool dark;
  bool us;
};
constexpr Look kLooks[] = {{320, 640, 200, false, true}, {320, 640, 200, true, false}, {412, 915, 100, false, false},
                           {1280, 800, 150, true, true}};

void open_at(AppWalker& walker, const std::string& route, const Look& look = {412, 915, 100, false, false}) {
  walker.around.width = look.width;
  walker.around.height = look.height;
  walker.around.prefers_dark = look.dark;
  walker.around.prefers_us_units = look.us;
  walker.host.records["preferences"] = "text-size " + std::to_string(look.text_size) + "\ncaution-seen yes\n";
  screens_test::Scene scene;
  scene.circuit = screens_test::demo;
  scene.route = route;
  screens_test::arrange(walker, scene);
}

// Every part that folds, opened.
void unfold(AppWalker& walker) {
  for (int round = 0; round < 12; ++round) {
    const ui::Record* folded = nullptr;
    for (const ui::Record& r : walker.records())
      if ((r.state & ui::kCollapsed) != 0U) folded = &r;
    if (folded == nullptr) return;
    walker.shell().act({.id = folded->id, .kind = ui::Action::Kind::press, .text = {}});
    walker.settle();
  }
}

const reference::Book& book() {
  static const reference::Book made = reference::make_book(units::Preference::metric);
  return made;
}

std::string row_address(const reference::Page& page, const reference::Row& row) {
  return screens::places().address(app::Route::page(page.key, row.key));
}

}  // namespace

TEST_CASE("every calculator and every page stands in one group of its list") {
  std::multiset<std::string> listed;
  for (const screens::Group& group : screens::calculator_groups())
    for (const std::string_view key : group.keys) listed.insert(std::string(key));
  CHECK(listed.size() == calculators::calculators().size());
  for (const calculators::Calculator& calculator : calculators::calculators())
    CHECK_MESSAGE(listed.count(std::string(calculator.key)) == 1, calculator.key);
  listed.clear();
  for (const screens::Group& group : screens::page_groups())
    for (const std::string_view key : group.keys) listed.insert(std::string(key));
  CHECK(listed.size() == book().pages.size());
  for (const reference::Page& page : book().pages) CHECK_MESSAGE(listed.count(std::string(page.key)) == 1, page.key);
}

TEST_CASE("from the bar to each calculator: its question, its answer, how it is worked out, back") {
  for (const calculators::Calculator& calculator : calculators::calculators()) {
    CAPTURE(calculator.key);
    AppWalker walker;
    open_at(walker, "size");
    REQUIRE(walker.press(Role::link, "Quick"));
    CHECK(walker.address() == "quick");
    CHECK(walker.shows(calculator.question));
    REQUIRE(walker.press(std::string(calculator.title)));
    CHECK(walker.address() == "quick/" + std::string(calculator.key));
    CHECK(walker.find(Role::heading, calculator.title) != nullptr);
    const auto evaluation = calculators::evaluate(calculator, calculators::normal_values(calculator), units::Preference::metric);
    REQUIRE(evaluation.result);
    CHECK_MESSAGE(walker.shows(evaluation.result->sentence), walker.all());
    for (const calculators::Output& output : evaluation.result->outputs) CHECK_MESSAGE(walker.shows(output.text), output.text);
    REQUIRE(walker.press("How it is worked out"));
    CHECK(walker.address() == "quick/" + std::string(calculator.key) + "/how");
    CHECK(walker.shows(calculator.formula));
    CHECK(walker.shows(calculator.formula_words));
    for (const tables::Citation* citation : evaluation.result->citations) CHECK(walker.shows(citation->document));
    CHECK(walker.shows("How sure: "));
    walker.host.go_back();
    walker.settle();
    CHECK(walker.address() == "quick/" + std::string(calculator.key));
    walker.host.go_back();
    walker.settle();
    CHECK(walker.address() == "quick");
  }
}

TEST_CASE("no calculator cuts a text at 320 px and 200 %, by day and night") {
  for (const Look& look : kLooks) {
    for (const calculators::Calculator& calculator : calculators::calculators()) {
      CAPTURE(calculator.key);
      CAPTURE(look.width);
      AppWalker walker;
      open_at(walker, "quick/" + std::string(calculator.key), look);
      check_layout(walker);
      unfold(walker);
      check_layout(walker);
      walker.go("quick/" + std::string(calculator.key) + "/how");
      check_layout(walker);
    }
  }
}

TEST_CASE("no page, row or card cuts a text at 320 px and 200 %, by day and night") {
  const bool quick = std::getenv("BRANCHLIGHT_QUICK") != nullptr;
  for (const Look& look : kLooks) {
    AppWalker walker;
    open_at(walker, "tables", look);
    check_layout(walker);
    for (const reference::Page& page : book().pages) {
      CAPTURE(page.key);
      CAPTURE(look.width);
      walker.go("tables/" + std::string(page.key));
      CHECK(walker.find(Role::heading, page.title) != nullptr);
      check_layout(walker);
      const std::size_t step = quick ? 7 : look.text_size == 200 && !look.dark ? 1 : 5;
      for (std::size_t i = 0; i < page.rows.size(); i += step) {
        CAPTURE(page.rows[i].key);
        walker.go(row_address(page, page.rows[i]));
        check_layout(walker);
      }
    }
    for (const reference::Card& card : book().cards) {
      CAPTURE(card.key);
      walker.go("cards/" + std::string(card.key));
      CHECK(walker.find(Role::heading, card.title) != nullptr);
      unfold(walker);
      check_layout(walker);
      for (const std::string& step : card.steps) CHECK(walker.shows(step));
      for (const tables::Citation* citation : card.citations) CHECK(walker.shows(citation->document));
    }
  }
}

TEST_CASE("every row opens, shows each of its figures with a source and how sure it is") {
  AppWalker walker;
  open_at(walker, "tables");
  for (const reference::Page& page : book().pages) {
    CAPTURE(page.key);
    walker.go("tables/" + std::string(page.key));
    std::size_t drawn = 0;
    for (const ui::Record& r : walker.records()) drawn += r.role == Role::button ? 1U : 0U;
    CHECK(drawn >= page.rows.size());
    for (const reference::Row& row : page.rows) {
      CAPTURE(row.key);
      CHECK_MESSAGE(walker.find(Role::button, row.cells.front()) != nullptr, walker.all());
    }
    for (const reference::Row& row : page.rows) {
      CAPTURE(row.key);
      REQUIRE(walker.go(row_address(page, row)));
      REQUIRE(walker.address() == row_address(page, row));
      for (const std::string& cell : row.cells) CHECK_MESSAGE(walker.shows(cell), cell);
      std::size_t sources = 0;
      for (const ui::Record& r : walker.records())
        if (r.name.starts_with("Source: ") && r.name.size() > 12) ++sources;
      CHECK(sources == row.citations.size());
      CHECK(walker.shows("How sure: "));
      if (row.standing == tables::Standing::memory) CHECK(walker.shows("From memory"));
      if (!row.tap.label.empty()) CHECK_MESSAGE(walker.shows(row.tap.label), walker.all());
    }
  }
}

TEST_CASE("a row taps into a calculator with its values filled in; they are kept") {
  AppWalker walker;
  open_at(walker, "tables/wire");
  REQUIRE(walker.press("1/0 AWG"));
  CHECK(walker.address() == "tables/wire/1-0awg");
  REQUIRE(walker.press("Drop of a run with 1/0 AWG"));
  CHECK(walker.address() == "quick/drop-of-a-run");
  CHECK(walker.find(Role::spin, "Wire")->value == "1/0 AWG");
  walker.restart();
  walker.go("quick/drop-of-a-run");
  CHECK(walker.find(Role::spin, "Wire")->value == "1/0 AWG");
}

TEST_CASE("a row sets the open circuit, and undo takes it back") {
  AppWalker walker;
  open_at(walker, "tables/drop-limits/three");
  const double before = stored_circuit(walker, "2").drop_limit;
  REQUIRE_MESSAGE(walker.press("Set 3 % in my circuit"), walker.all());
  CHECK(walker.address() == "size");
  CHECK(stored_circuit(walker, "2").drop_limit == 0.03);
  CHECK(walker.shows("Done: "));
  REQUIRE(walker.press("Undo"));
  CHECK(stored_circuit(walker, "2").drop_limit == before);
}

TEST_CASE("a calculator's values go to the outlet picked, in one step of undo") {
  AppWalker walker;
  open_at(walker, "quick/drop-of-a-run");
  REQUIRE(walker.set(Role::spin, "Length, one way", "7,5"));
  REQUIRE(walker.set(Role::spin, "Current", "4"));
  REQUIRE(walker.press(Role::checkbox, "At outlet B"));
  REQUIRE_MESSAGE(walker.press("Use 7.5 m, 4 A at outlet B"), walker.all());
  CHECK(walker.address() == "size");
  CHECK(stored_circuit(walker, "2").outlets[1].run.length.number() == doctest::Approx(7.5));
  CHECK(stored_circuit(walker, "2").outlets[1].devices.front().load.rating == 4.0);
  REQUIRE(walker.press("Undo"));
  CHECK(stored_circuit(walker, "2").outlets[1].run.length.number() != doctest::Approx(7.5));
  CHECK(stored_circuit(walker, "2").outlets[1].devices.front().load.rating != 4.0);
}

TEST_CASE("a bad value says what is allowed and the last good one stays, in every calculator") {
  for (const calculators::Calculator& calculator : calculators::calculators()) {
    CAPTURE(calculator.key);
    AppWalker walker;
    open_at(walker, "quick/" + std::string(calculator.key));
    std::vector<std::pair<std::string, std::string>> spins;
    for (const ui::Record& r : walker.records())
      if (r.role == Role::spin) spins.emplace_back(r.name, r.value);
    for (const auto& spin : spins) {   // no structured binding: clang 14 can not capture one
      const std::string& name = spin.first;
      const std::string& value = spin.second;
      for (const char* bad : {"", "-5000", "1e999", "nan", "3 kg", "99999999", "twelve", "1,200", "\xFF"}) {
        CAPTURE(name);
        CAPTURE(bad);
        walker.set(Role::spin, name, bad);
        CHECK_MESSAGE(walker.find(Role::alert, "") != nullptr, walker.all());
        walker.shell().key("Escape", true);
        walker.shell().key("Escape", false);
        walker.settle();
        REQUIRE(walker.find(Role::spin, name) != nullptr);
        CHECK(walker.find(Role::spin, name)->value == value);
      }
    }
    CHECK(walker.host.records.count("quick") == 0);
  }
}

TEST_CASE("two readings that can not be are refused together") {
  AppWalker walker;
  open_at(walker, "quick/joint");
  const std::string before = walker.find(Role::spin, "Reading after it")->value;
  walker.set(Role::spin, "Reading after it", "13.5");
  CHECK_MESSAGE(walker.shows("higher than the first"), walker.all());
  walker.shell().key("Escape", true);
  walker.shell().key("Escape", false);
  walker.settle();
  CHECK(walker.find(Role::spin, "Reading after it")->value == before);
}

TEST_CASE("what follows is told while a number is typed") {
  AppWalker walker;
  open_at(walker, "quick/drop-of-a-run");
  REQUIRE(walker.press(Role::spin, "Length, one way"));
  REQUIRE(walker.press("8"));
  CHECK_MESSAGE(walker.shows("over 8 m"), walker.all());
}

TEST_CASE("search finds as it is typed, over everything, and opens what it found") {
  struct Query {
    const char* typed;
    const char* first;
    const char* address;
  };
  for (const char* from : {"quick", "tables"}) {
    for (const Query& query : {Query{"10awg", "10 AWG, row", "tables/wire/10awg"},
                               Query{"voltage drop", "Voltage drop of a run, calculator", "quick/drop-of-a-run"},
                               Query{"crimp how", "Crimp a terminal, how to", "cards/crimp"}}) {
      CAPTURE(query.typed);
      AppWalker walker;
      open_at(walker, from);
      std::string typed;
      for (const char* c = query.typed; *c != '\0'; ++c) {
        typed += *c;
        REQUIRE(walker.set(Role::textbox, "Search", typed));
        check_layout(walker);
      }
      CHECK_MESSAGE((walker.shows("found") || walker.shows("The nearest")), walker.all());
      REQUIRE_MESSAGE(walker.press(query.first), walker.all());
      CHECK(walker.address() == query.address);
      walker.host.go_back();
      walker.settle();
      CHECK(walker.address() == from);
      CHECK(walker.find(Role::textbox, "Search")->value == query.typed);
      REQUIRE(walker.press("Clear the search"));
      CHECK(walker.find(Role::textbox, "Search")->value.empty());
    }
  }
  AppWalker walker;
  open_at(walker, "tables", kLooks[0]);
  REQUIRE(walker.set(Role::textbox, "Search", std::string(300, 'W')));
  CHECK(walker.shows("Nothing found"));
  check_layout(walker);
  REQUIRE(walker.set(Role::textbox, "Search", "   "));
  CHECK_FALSE(walker.shows("Nothing found"));
}

TEST_CASE("every result of a search has an address that opens it") {
  const reference::SearchIndex index(book());
  AppWalker walker;
  open_at(walker, "tables");
  std::size_t followed = 0;
  for (const char* query : {"wire", "fuse", "a", "mm", "battery", "how", "current", "red", "0.5"}) {
    for (const reference::Hit& hit : index.find(query, 200)) {
      CAPTURE(hit.address);
      const app::Route route = screens::places().read(hit.address);
      walker.go(screens::places().address(route));
      CHECK(walker.address() == screens::places().address(route));
      CHECK(screens::places().address(route) != "tables");
      CHECK(screens::places().address(route) != "quick");
      ++followed;
    }
  }
  CHECK(followed > 200);
}

TEST_CASE("addresses that lead nowhere lead to the list above them") {
  AppWalker walker;
  open_at(walker, "size");
  for (const auto& address : {std::pair{"quick/nothing", "quick"}, std::pair{"quick//how", "quick"},
                                      std::pair{"quick/joint/nothing", "quick/joint"},
                                      std::pair{"tables/nothing/10awg", "tables"}, std::pair{"tables/wire/9awg", "tables/wire"},
                                      std::pair{"cards", "tables"}, std::pair{"cards/nothing", "tables"},
                                      std::pair{"tables/how/crimp", "cards/crimp"}, std::pair{"tables/\xFF", "tables"}}) {
    const char* typed = address.first;
    const char* landed = address.second;
    CAPTURE(typed);
    walker.go(typed);
    CHECK(walker.address() == landed);
    walker.go("size");
  }
}

TEST_CASE("inputs that can not be read start as new, and others' lines are kept") {
  AppWalker walker;
  walker.host.records["quick"] = "drop-of-a-run wire=99awg run=5000 current=nan system=24 what=1\nfrom-later x=1\njoint before=1 after=60\n";
  walker.start({{"quick", walker.host.records["quick"]}, {"preferences", "caution-seen yes\n"}}, "quick/drop-of-a-run");
  CHECK(walker.find(Role::spin, "Wire")->value == "10 AWG");
  CHECK(walker.find(Role::spin, "Length, one way")->value == "5 m");
  CHECK((walker.find(Role::radio, "24 V")->state & ui::kChecked) != 0U);
  REQUIRE(walker.set(Role::spin, "Current", "3"));
  CHECK(walker.host.records["quick"].find("from-later x=1") != std::string::npos);
  walker.go("quick/joint");
  CHECK(walker.shows("Its resistance"));
}

TEST_CASE("a wire is picked by step, by typing in either list, and from all sizes") {
  AppWalker walker;
  open_at(walker, "quick/drop-of-a-run");
  REQUIRE(walker.act(Role::spin, "Wire", ui::Action::Kind::step_up));
  CHECK(walker.find(Role::spin, "Wire")->value == "8 AWG");
  REQUIRE(walker.set(Role::spin, "Wire", "2.5 mm²"));
  CHECK(walker.find(Role::spin, "Wire")->value == "2.5 mm²");
  REQUIRE(walker.set(Role::spin, "Wire", "4"));
  CHECK(walker.find(Role::spin, "Wire")->value == "4 mm²");
  REQUIRE(walker.press("Pick from all sizes"));
  REQUIRE(walker.press(Role::checkbox, "Wire 2/0 AWG"));
  CHECK(walker.find(Role::spin, "Wire")->value == "2/0 AWG");
}

TEST_CASE("without a circuit the calculators still work, and offer no circuit") {
  AppWalker walker;
  walker.host.records["preferences"] = "caution-seen yes\n";
  walker.start({{"vehicles", "order\nopen 0 0\nnext 2\n"}, {"preferences", "caution-seen yes\n"}}, "quick/drop-of-a-run");
  CHECK(walker.shows("10 AWG loses"));
  CHECK_FALSE(walker.shows("Use in my circuit"));
}
