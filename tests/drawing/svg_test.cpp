#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

#include "drawing/svg.h"

using namespace drawing;

namespace {
bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
}  // namespace

TEST_CASE("hostile names are data, never markup") {
  Picture picture{100, 50, 1.0, {}, "\"><script>alert(1)</script>"};
  picture.shapes.push_back({Text{{10, 10}, "<script>&'\"", Anchor::left, TextSize::text, false, Ink::text}, {}});
  const std::string svg = to_svg(picture, {.title = "A & B </title><script>"});
  CHECK_FALSE(has(svg, "<script"));
  CHECK(has(svg, ">&lt;script&gt;&amp;&#39;&quot;</text>"));
  CHECK(has(svg, "<title>A &amp; B &lt;/title&gt;&lt;script&gt;</title>"));
}

TEST_CASE("bytes that are not text cannot break the file") {
  CHECK(escape_xml(std::string("a\0b\x01\x1F\x7F", 6)) == "ab");
  CHECK(escape_xml("tab\there") == "tab here");
  CHECK(escape_xml("\xFF") == "\xEF\xBF\xBD");
  CHECK(escape_xml("\xC0\xBC") == "\xEF\xBF\xBD\xEF\xBF\xBD");          // overlong '<'
  CHECK(escape_xml("\xED\xA0\x80") == "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");  // a lone surrogate
  CHECK(escape_xml("\xE2\x82") == "\xEF\xBF\xBD\xEF\xBF\xBD");          // cut short
  CHECK(escape_xml("mm\xC2\xB2 \xF0\x9F\x94\x8B") == "mm\xC2\xB2 \xF0\x9F\x94\x8B");
}

TEST_CASE("colours follow the palette, and paper has none") {
  Picture picture{10, 10, 1.0, {}, ""};
  picture.shapes.push_back({Line{{0, 0}, {10, 0}, 2, Ink::positive}, {}});
  CHECK(has(to_svg(picture, {.palette = Palette::day}), "#c2281c"));
  CHECK(has(to_svg(picture, {.palette = Palette::night}), "#ff6a5c"));
  CHECK(has(to_svg(picture, {.palette = Palette::paper}), "stroke=\"#000000\""));
}

TEST_CASE("numbers carry two decimals and never a comma, an exponent or a nan") {
  Picture picture{10, 10, 1.0, {}, ""};
  picture.shapes.push_back({Line{{-0.001, 1.005}, {1e12, std::nan("")}, 0.1, Ink::text}, {}});
  const std::string svg = to_svg(picture, {});
  CHECK(has(svg, "x1=\"0\""));
  CHECK(has(svg, "x2=\"1000000000\""));
  CHECK(has(svg, "y2=\"0\""));
  CHECK(has(svg, "stroke-width=\"0.1\""));
  CHECK_FALSE(has(svg, "nan"));
}

TEST_CASE("text grows with the text size") {
  Picture picture{10, 10, 2.0, {}, ""};
  picture.shapes.push_back({Text{{0, 0}, "A", Anchor::right, TextSize::caption, true, Ink::text}, {}});
  const std::string svg = to_svg(picture, {});
  CHECK(has(svg, "font-size=\"26\""));
  CHECK(has(svg, "font-weight=\"600\""));
  CHECK(has(svg, "text-anchor=\"end\""));
}
