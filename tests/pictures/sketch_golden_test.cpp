#include <doctest/doctest.h>

#include "drawing/svg.h"
#include "golden/golden.h"
#include "pictures/sample_circuits.h"

using drawing::Palette;
using pictures::SketchOptions;

namespace {

std::string svg(const circuit::Circuit& circuit, const sizing::Candidate* answer, const SketchOptions& options,
                Palette palette) {
  return drawing::to_svg(pictures::sketch(circuit, answer, options),
                         {.palette = palette, .filled_ground = true, .title = circuit.name});
}
SketchOptions view(double width, double text_scale = 1.0) {
  SketchOptions options;
  options.view_width = width;
  options.text_scale = text_scale;
  return options;
}

}  // namespace

TEST_CASE("the demo chain") {
  const circuit::Circuit demo = circuit::demo_circuit();
  const sizing::Candidate answer = samples::answer_for(demo);
  golden::check("sketch-demo-day.svg", svg(demo, &answer, view(364), Palette::day));
  golden::check("sketch-demo-paper.svg", svg(demo, &answer, view(640), Palette::paper));
  golden::check("sketch-demo-320.svg", svg(demo, &answer, view(272), Palette::day));
  golden::check("sketch-demo-large-text.svg", svg(demo, &answer, view(364, 2.0), Palette::day));
  golden::check("sketch-demo-no-answer.svg", svg(demo, nullptr, view(364), Palette::day));
  SketchOptions feet = view(364);
  feet.preference = units::Preference::us;
  golden::check("sketch-demo-us.svg", svg(demo, &answer, feet, Palette::day));
}

TEST_CASE("an outlet ringed, by night, and one beyond its limit") {
  const circuit::Circuit demo = circuit::demo_circuit();
  const sizing::Candidate answer = samples::answer_for(demo, 0.25);
  SketchOptions options = view(364);
  options.ringed = demo.outlets.at(1).id;
  golden::check("sketch-ringed-night.svg", svg(demo, &answer, options, Palette::night));
}

TEST_CASE("a tree, wide and narrow") {
  const circuit::Circuit tree = samples::tree();
  const sizing::Candidate answer = samples::answer_for(tree);
  golden::check("sketch-tree-day.svg", svg(tree, &answer, view(560), Palette::day));
  golden::check("sketch-tree-320.svg", svg(tree, &answer, view(272), Palette::day));
}

TEST_CASE("thirty outlets") {
  const circuit::Circuit thirty = samples::chain(30);
  const sizing::Candidate answer = samples::answer_for(thirty, 0.02);
  golden::check("sketch-thirty-320.svg", svg(thirty, &answer, view(272), Palette::day));
  golden::check("sketch-thirty-wide-night.svg", svg(thirty, &answer, view(780), Palette::night));
}

TEST_CASE("a branching circuit of thirty, at random") {
  std::mt19937_64 random(7);
  const circuit::Circuit bush = samples::random_circuit(random, 30);
  const sizing::Candidate answer = samples::answer_for(bush, 0.02);
  golden::check("sketch-bush.svg", svg(bush, &answer, view(364), Palette::day));
}
