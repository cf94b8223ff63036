// Every figure on every page has a source; taps lead somewhere; cells match their columns.
#include <doctest/doctest.h>

#include <set>
#include <string>

#include "calculators/calculator.h"
#include "circuit/edit.h"
#include "reference/book.h"
#include "tables/fact.h"
#include "tables/terminal.h"

using reference::Book;

namespace {

Book metric() { return reference::make_book(units::Preference::metric); }

bool is_registered(const tables::Citation* citation) { return tables::citation_by_id(citation->id) == citation; }

void check_sources(const std::vector<const tables::Citation*>& citations, const std::string& where) {
  CHECK_MESSAGE(!citations.empty(), where);
  for (const tables::Citation* citation : citations) {
    REQUIRE_MESSAGE(citation != nullptr, where);
    CHECK_MESSAGE(is_registered(citation), where);
    CHECK_MESSAGE(!citation->document.empty(), where);
  }
}

}  // namespace

TEST_CASE("Every row and card of every page names its source") {
  for (const auto preference : {units::Preference::metric, units::Preference::us}) {
    const Book book = reference::make_book(preference);
    std::set<std::string> addresses;
    std::size_t rows = 0;
    for (const auto& page : book.pages) {
      const std::string at(page.key);
      CHECK_MESSAGE(!page.title.empty(), at);
      CHECK_MESSAGE(!page.about.empty(), at);
      CHECK_MESSAGE(!page.rows.empty(), at);
      CHECK_MESSAGE(page.columns.size() >= 2, at);
      CHECK(book.page(page.key) == &page);
      for (const auto& row : page.rows) {
        const std::string where = at + "/" + row.key;
        ++rows;
        CHECK_MESSAGE(addresses.insert(where).second, where);
        CHECK_MESSAGE(row.cells.size() == page.columns.size(), where);
        CHECK_MESSAGE(!row.cells[0].empty(), where);
        check_sources(row.citations, where);
        for (const std::string& cell : row.cells) CHECK_MESSAGE(cell.find('?') == std::string::npos, where);
      }
    }
    MESSAGE(book.pages.size() << " pages, " << rows << " rows, " << book.cards.size() << " cards");
    CHECK(book.cards.size() >= 7);
    for (const auto& card : book.cards) {
      const std::string at(card.key);
      check_sources(card.citations, at);
      CHECK_MESSAGE(card.steps.size() >= 3, at);
      CHECK_MESSAGE(card.steps.size() <= 7, at);
      CHECK_MESSAGE(!card.tools.empty(), at);
      CHECK_MESSAGE(!card.cautions.empty(), at);
      CHECK(book.card(card.key) == &card);
    }
  }
  CHECK(metric().page("none") == nullptr);
  CHECK(metric().card("none") == nullptr);
}

TEST_CASE("The pages the trade looks for are there") {
  const Book book = metric();
  for (const char* key : {"wire", "ampacity-boat", "ampacity-conduit", "ampacity-clipped", "ampacity-factors", "fuses",
                          "fuse-times", "fuse-kinds", "splices", "crimps", "tabs", "rings", "ferrules", "strip", "pull",
                          "outlets", "colours", "batteries", "meter", "joints", "cautions", "drop-limits", "fuse-places"}) {
    CHECK_MESSAGE(book.page(key) != nullptr, key);
  }
}

TEST_CASE("A row is never surer than the figures in it; what is remembered says so") {
  const Book book = metric();
  for (const auto& row : book.page("batteries")->rows) CHECK(row.standing == tables::Standing::memory);
  for (const auto& row : book.page("fuses")->rows) CHECK(row.standing == tables::Standing::memory);  // colours
  // Weakest of all (resting lithium): under no standard's name.
  for (const tables::RestCurve& curve : tables::rest_curves()) {
    for (const char* body : {"ISO", "IEC", "SAE", "UL ", "ABYC", "DIN"}) {
      CHECK(curve.citation->document.find(body) == std::string_view::npos);
    }
  }
  for (const tables::Fact& fact : tables::facts(tables::Topic::colour_code)) CHECK(fact.citation->standing == tables::Standing::memory);
  for (const auto& row : book.page("fuse-times")->rows) {
    if (row.key.rfind("bolt-on", 0) == 0) CHECK(row.standing == tables::Standing::memory);
  }
}

TEST_CASE("Every tap opens a calculator with values it accepts, or makes an edit that applies") {
  const circuit::Circuit demo = circuit::demo_circuit();
  std::size_t taps = 0, edits = 0;
  for (const auto& page : metric().pages) {
    for (const auto& row : page.rows) {
      const std::string where = std::string(page.key) + "/" + row.key;
      if (!row.tap.calculator.empty()) {
        ++taps;
        CHECK_MESSAGE(!row.tap.label.empty(), where);
        const auto* calculator = calculators::calculator_by_key(row.tap.calculator);
        REQUIRE_MESSAGE(calculator != nullptr, where);
        auto values = calculators::normal_values(*calculator);
        for (const auto& given : row.tap.with) {   // no structured binding: clang 14 can not capture one
          const auto& key = given.first;
          const auto& value = given.second;
          const auto input = calculators::input_index(*calculator, key);
          REQUIRE_MESSAGE(input.has_value(), where << " " << key);
          values[*input] = value;
        }
        const auto evaluation = calculators::evaluate(*calculator, values, units::Preference::metric);
        CHECK_MESSAGE(evaluation.result.has_value(), where << " " << (evaluation.problem ? circuit::one_line(*evaluation.problem) : ""));
      }
      if (row.tap.into != reference::Tap::Into::nothing) {
        ++edits;
        CHECK_MESSAGE(!row.tap.label.empty(), where);
        const auto edit = reference::edit_for(row.tap, demo);
        REQUIRE_MESSAGE(edit.has_value(), where);
        CHECK_MESSAGE(circuit::apply(demo, *edit).circuit.has_value(), where);
      }
    }
  }
  CHECK(taps > 100);
  CHECK(edits >= 10);
  CHECK_FALSE(reference::edit_for({}, demo).has_value());
}

TEST_CASE("A table that ends says so on its page") {
  const Book book = metric();
  bool found = false;
  for (const auto& row : book.page("ampacity-conduit")->rows) {
    if (row.key != "120mm2") continue;
    found = true;
    CHECK(row.cells[1] == "table ends");
    CHECK(row.note == "The table ends before this size.");
  }
  CHECK(found);
}

TEST_CASE("Published figures on the pages") {
  const Book book = metric();
  const auto cells = [&](const char* page, const std::string& key) {
    for (const auto& row : book.page(page)->rows) {
      if (row.key == key) return row.cells;
    }
    return std::vector<std::string>{};
  };
  // ASTM B258: 10 AWG is 2.588 mm and 5.26 mm2.
  CHECK(cells("wire", "10awg").at(1) == "5.26 mm²");
  CHECK(cells("wire", "10awg").at(2) == "2.59 mm");
  // 33 CFR 183.425 Table 5: 10 AWG at 105 degC 60 A; column 5 of 60, 75, 80, 90, 105.
  CHECK(cells("ampacity-boat", "10awg").at(5) == "60 A");
  // Boat rule, note 2: six to twelve conductors are in the 0.5 step.
  CHECK(cells("ampacity-factors", "tied-4").at(1) == "x 0.5");
  CHECK(cells("fuses", "blade-15").at(1) == "blue");
  // ABYC E-11 as remembered: 10 AWG holds 40 lbf, 178 N.
  CHECK(cells("pull", "10awg").at(1) == "178 N");
  // DIN 46228-4: 2.5 mm2 is blue.
  CHECK(cells("ferrules", "2.5mm2").at(1) == "blue");
  CHECK(cells("batteries", "lead-agm-50").at(2) == "12.3 V");
}

TEST_CASE("Resting curves fall with charge, and reading them back is monotonic") {
  for (const tables::RestCurve& curve : tables::rest_curves()) {
    for (std::size_t i = 1; i < curve.points.size(); ++i) {
      CHECK(curve.points[i].volts < curve.points[i - 1].volts);
      CHECK(curve.points[i].charge < curve.points[i - 1].charge);
    }
    double last = -1.0;
    for (double v = 9.0; v < 14.5; v += 0.01) {
      const double charge = tables::charge_at_rest(curve, units::Volts(v));
      CHECK(charge >= last);
      CHECK(charge >= 0.0);
      CHECK(charge <= 1.0);
      last = charge;
    }
    for (const tables::RestVoltage& point : curve.points) {
      CHECK(tables::charge_at_rest(curve, point.volts) == doctest::Approx(point.charge));
    }
  }
}
