// What must hold for any circuit: nothing overlaps, nothing is cut off, everything can be tapped.
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>
#include <set>
#include <string>

#include "drawing/hit_test.h"
#include "drawing/measure.h"
#include "pictures/sample_circuits.h"

using drawing::Picture;
using drawing::Rectangle;
using pictures::SketchOptions;

namespace {

constexpr std::uint64_t kSeed = 20261125;

int cases() { return std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 40 : 800; }

// Texts against texts, circles and boxes they do not stand in.
void check_no_overlap(const Picture& picture) {
  std::vector<Rectangle> texts;
  for (const drawing::Shape& shape : picture.shapes) {
    if (std::get_if<drawing::Text>(&shape.form)) texts.push_back(drawing::bounds(shape, picture.text_scale));
  }
  for (std::size_t a = 0; a < texts.size(); ++a) {
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      const bool overlap = texts[a].overlaps(texts[b]);
      if (overlap) FAIL_CHECK("texts overlap near " << texts[a].left << ", " << texts[a].top);
    }
    for (const drawing::Shape& shape : picture.shapes) {
      if (!std::get_if<drawing::Circle>(&shape.form) && !std::get_if<drawing::Box>(&shape.form)) continue;
      const Rectangle body = drawing::bounds(shape, picture.text_scale);
      if (!texts[a].overlaps(body) || texts[a].inside(body)) continue;
      FAIL_CHECK("a text is cut by a shape near " << texts[a].left << ", " << texts[a].top);
    }
  }
}

// No wire runs through a text: each straight piece against each text, lettering apart.
void check_wires_pass_texts(const Picture& picture) {
  for (const drawing::Shape& shape : picture.shapes) {
    if (!std::get_if<drawing::Text>(&shape.form)) continue;
    const Rectangle text = drawing::bounds(shape, picture.text_scale);
    for (const drawing::Shape& other : picture.shapes) {
      const auto* wire = std::get_if<drawing::Polyline>(&other.form);
      if (!wire || wire->closed) continue;
      for (std::size_t i = 1; i < wire->points.size(); ++i) {
        const drawing::Shape piece{drawing::Line{wire->points[i - 1], wire->points[i], wire->width, wire->ink}, {}};
        const Rectangle line = drawing::bounds(piece, picture.text_scale);
        if (text.overlaps(line)) {
          // The battery, fuse and outlet boxes are filled and drawn over their wires.
          bool covered = false;
          for (const drawing::Shape& box : picture.shapes) {
            const bool body = std::get_if<drawing::Circle>(&box.form) || std::get_if<drawing::Box>(&box.form);
            if (body && text.inside(drawing::bounds(box, picture.text_scale))) covered = true;
          }
          if (!covered) FAIL_CHECK("a wire runs through a text near " << text.left << ", " << text.top);
        }
      }
    }
  }
}

void check_inside(const Picture& picture) {
  const Rectangle page{0, 0, picture.width, picture.height};
  for (const drawing::Shape& shape : picture.shapes) {
    const Rectangle body = drawing::bounds(shape, picture.text_scale);
    if (!body.inside(page)) FAIL_CHECK("a shape leaves the picture at " << body.left << ", " << body.top);
  }
}

void check_each_outlet_answers(const Picture& picture, const circuit::Circuit& circuit) {
  std::set<std::uint32_t> tapped;
  for (const drawing::Shape& shape : picture.shapes) {
    const auto* circle = std::get_if<drawing::Circle>(&shape.form);
    if (!circle || circle->fill != drawing::Ink::card) continue;
    const drawing::Subject subject = drawing::hit_test(picture, circle->centre, 8.0);
    if (subject.kind == static_cast<std::uint32_t>(pictures::SketchSubject::outlet)) tapped.insert(subject.number);
  }
  CHECK(tapped.size() == circuit.outlets.size());
}

}  // namespace

TEST_CASE("random circuits, widths and text sizes: readable, whole and tappable") {
  MESSAGE("seed " << kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < cases(); ++i) {
    const std::size_t outlets = 1 + static_cast<std::size_t>(random() % 60);
    const circuit::Circuit circuit = samples::random_circuit(random, outlets);
    const sizing::Candidate answer = samples::answer_for(circuit, 0.03);
    SketchOptions options;
    options.view_width = 280.0 + static_cast<double>(random() % 621);
    options.text_scale = 1.0 + static_cast<double>(random() % 101) / 100.0;
    options.preference = random() % 2 == 0 ? units::Preference::metric : units::Preference::us;
    options.ringed = circuit.outlets[random() % outlets].id;
    CAPTURE(i);
    CAPTURE(outlets);
    CAPTURE(options.view_width);
    CAPTURE(options.text_scale);
    const Picture picture = pictures::sketch(circuit, random() % 4 == 0 ? nullptr : &answer, options);
    // Wider than the view, and so scrolled sideways, only where huge text meets a tiny window.
    const bool tiny = options.view_width < 210.0 * options.text_scale;
    CHECK(picture.width <= options.view_width * (tiny ? 1.35 : 1.0) + 0.001);
    check_no_overlap(picture);
    check_wires_pass_texts(picture);
    check_inside(picture);
    check_each_outlet_answers(picture, circuit);
  }
}

TEST_CASE("the largest circuit allowed still lays out") {
  const circuit::Circuit chain = samples::chain(300);
  SketchOptions options;
  options.view_width = 272.0;
  const Picture picture = pictures::sketch(chain, nullptr, options);
  check_inside(picture);
  check_each_outlet_answers(picture, chain);
}

TEST_CASE("the same circuit gives the same picture") {
  std::mt19937_64 random(kSeed);
  const circuit::Circuit circuit = samples::random_circuit(random, 25);
  const Picture first = pictures::sketch(circuit, nullptr, {});
  const Picture second = pictures::sketch(circuit, nullptr, {});
  CHECK(first.shapes.size() == second.shapes.size());
  CHECK(first.height == second.height);
}
