#include <doctest/doctest.h>

#include <algorithm>

#include "drawing/hit_test.h"
#include "drawing/svg.h"
#include "pictures/sample_circuits.h"

using drawing::Ink;
using drawing::Picture;
using drawing::Subject;
using pictures::SketchOptions;
using pictures::SketchSubject;

namespace {

Subject subject(SketchSubject kind, std::uint32_t number) { return {static_cast<std::uint32_t>(kind), number}; }
bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
const drawing::Text* text_of(const Picture& picture, const std::string& words) {
  for (const drawing::Shape& shape : picture.shapes) {
    const auto* text = std::get_if<drawing::Text>(&shape.form);
    if (text && text->text == words) return text;
  }
  return nullptr;
}
drawing::Point centre_of(const Picture& picture, const std::string& words) {
  const drawing::Text* text = text_of(picture, words);
  REQUIRE_MESSAGE(text != nullptr, "no text " << words);
  return text->at;
}

}  // namespace

TEST_CASE("the sketch shows battery, fuse, lengths above and volts below") {
  const circuit::Circuit chain = samples::chain(3);
  const sizing::Candidate answer = samples::answer_for(chain);
  const Picture picture = pictures::sketch(chain, &answer, {});
  const drawing::Point a = centre_of(picture, "A");
  CHECK(centre_of(picture, "12.5 V").x == doctest::Approx(a.x));
  CHECK(centre_of(picture, "12.5 V").y > a.y);
  CHECK(centre_of(picture, units::length_text(chain.outlets[0].run.length, units::Preference::metric)).y < a.y);
  CHECK(centre_of(picture, "15 A").x < a.x);
  CHECK(a.x < centre_of(picture, "B").x);
  CHECK(centre_of(picture, "B").x < centre_of(picture, "C").x);
}

TEST_CASE("a tap finds the outlet, the run, the fuse and the battery") {
  const circuit::Circuit chain = samples::chain(3);
  const sizing::Candidate answer = samples::answer_for(chain);
  const Picture picture = pictures::sketch(chain, &answer, {});
  const auto under = [&](const std::string& words) { return drawing::hit_test(picture, centre_of(picture, words), 10); };
  CHECK(under("B") == subject(SketchSubject::outlet, 2));
  CHECK(under("12.5 V") == subject(SketchSubject::outlet, 1));
  CHECK(under("15 A") == subject(SketchSubject::fuse, 0));
  CHECK(under(units::length_text(chain.outlets[1].run.length, units::Preference::metric)) == subject(SketchSubject::run, 2));
  CHECK(drawing::hit_test(picture, {5, centre_of(picture, "A").y}, 10) == subject(SketchSubject::battery, 0));
}

TEST_CASE("a voltage beyond its limit is marked by shape and ink, the others are not") {
  const circuit::Circuit chain = samples::chain(3);
  sizing::Candidate answer = samples::answer_for(chain);
  const auto triangles = [&] {
    const Picture picture = pictures::sketch(chain, &answer, {});
    return std::count_if(picture.shapes.begin(), picture.shapes.end(), [](const drawing::Shape& shape) {
      const auto* line = std::get_if<drawing::Polyline>(&shape.form);
      return line && line->closed && line->fill == Ink::stop;
    });
  };
  CHECK(triangles() == 0);
  answer.outlets[2].drop_fraction = 0.051;
  CHECK(triangles() == 1);
  CHECK(text_of(pictures::sketch(chain, &answer, {}), "12.3 V")->ink == Ink::stop);
  answer.outlets[1].runs = false;
  CHECK(triangles() == 2);
}

TEST_CASE("the ring goes round the outlet asked for") {
  const circuit::Circuit chain = samples::chain(3);
  SketchOptions options;
  options.ringed = circuit::OutletId{2};
  const Picture picture = pictures::sketch(chain, nullptr, options);
  int rings = 0;
  for (const drawing::Shape& shape : picture.shapes) {
    const auto* circle = std::get_if<drawing::Circle>(&shape.form);
    if (!circle || circle->ink != Ink::accent) continue;
    ++rings;
    CHECK(circle->centre.x == doctest::Approx(centre_of(picture, "B").x));
  }
  CHECK(rings == 1);
}

TEST_CASE("the description reads the circuit aloud, branches after the line they leave") {
  circuit::Circuit tree = samples::tree();
  tree.outlets[1].name = "Bench";
  const sizing::Candidate answer = samples::answer_for(tree);
  SketchOptions options;
  options.ringed = circuit::OutletId{5};
  const std::string words = pictures::sketch(tree, &answer, options).description;
  CHECK(has(words, "15 A fuse, then 2.4 m to A Lamp 1, 12.5 V, then 1.2 m to B Bench, 12.4 V, then"));
  CHECK(has(words, ". Branch from A, then 1.5 m to D Lamp 4"));
  CHECK(has(words, "E Lamp 5, 12.1 V, beyond its limit, marked"));
  CHECK(has(words, ". Branch from B, then 3.1 m to F"));
}

TEST_CASE("without an answer there is no voltage and no rating, and no guess") {
  const circuit::Circuit chain = samples::chain(2);
  const Picture picture = pictures::sketch(chain, nullptr, {});
  CHECK(text_of(picture, "fuse") != nullptr);
  CHECK(has(picture.description, "fuse not chosen yet"));
  int voltages = 0;
  for (const drawing::Shape& shape : picture.shapes) {
    const auto* text = std::get_if<drawing::Text>(&shape.form);
    if (text && has(text->text, " V")) ++voltages;
  }
  CHECK(voltages == 0);
}

TEST_CASE("an answer for an earlier circuit lends its voltages to no other outlet") {
  const circuit::Circuit before = samples::chain(3);
  const sizing::Candidate answer = samples::answer_for(before);
  circuit::Circuit after = before;
  after.outlets.erase(after.outlets.begin());
  after.outlets[0].fed_from = circuit::kBlock;
  CHECK(text_of(pictures::sketch(after, &answer, {}), "12.5 V") == nullptr);
}

TEST_CASE("hostile names stay data in the drawing") {
  circuit::Circuit chain = samples::chain(2);
  chain.outlets[0].name = "<script>alert('x')</script>";
  chain.outlets[1].name = "\"Tom & Ann\"]]>";
  const std::string svg = drawing::to_svg(pictures::sketch(chain, nullptr, {}), {});
  CHECK_FALSE(has(svg, "<script"));
  CHECK(has(svg, "&lt;script&gt;alert(&#39;x&#39;)"));
  CHECK(has(svg, "&quot;Tom &amp; Ann&quot;]]&gt;"));
}

TEST_CASE("a circuit without outlets still shows its battery and fuse") {
  circuit::Circuit empty = samples::chain(0);
  const Picture picture = pictures::sketch(empty, nullptr, {});
  CHECK(text_of(picture, "fuse") != nullptr);
  CHECK(picture.height > 50);
}
