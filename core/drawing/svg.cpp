#include "drawing/svg.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <optional>

#include "drawing/measure.h"

namespace drawing {
namespace {

// Two decimals at most, by hand: the locale must not turn a point into a comma.
std::string number(double value) {
  if (!std::isfinite(value)) return "0";
  const long long hundredths = std::llround(std::fmin(std::fmax(value, -1e9), 1e9) * 100.0);
  const long long whole = std::llabs(hundredths);
  std::string text = hundredths < 0 ? "-" : "";
  text += std::to_string(whole / 100);
  if (whole % 100 != 0) {
    text += '.';
    text += static_cast<char>('0' + whole % 100 / 10);
    if (whole % 10 != 0) text += static_cast<char>('0' + whole % 10);
  }
  return text;
}

std::string attribute(const char* name, const std::string& value) {
  return std::string(" ") + name + "=\"" + value + "\"";
}

std::string colour_text(Ink ink, Palette palette) {
  const std::optional<Colour> colour = colour_of(ink, palette);
  if (!colour) return "none";
  constexpr char kDigits[] = "0123456789abcdef";
  std::string text = "#";
  for (const std::uint8_t part : {colour->red, colour->green, colour->blue}) {
    text += kDigits[part >> 4U];
    text += kDigits[part & 15U];
  }
  return text;
}

struct Writer {
  const Picture& picture;
  Palette palette;

  [[nodiscard]] std::string pen(Ink ink, double width) const {
    return attribute("stroke", colour_text(ink, palette)) + attribute("stroke-width", number(width));
  }
  [[nodiscard]] std::string fill(Ink ink) const { return attribute("fill", colour_text(ink, palette)); }

  std::string operator()(const Line& line) const {
    return "<line" + attribute("x1", number(line.a.x)) + attribute("y1", number(line.a.y)) +
           attribute("x2", number(line.b.x)) + attribute("y2", number(line.b.y)) + pen(line.ink, line.width) + "/>";
  }
  std::string operator()(const Circle& circle) const {
    return "<circle" + attribute("cx", number(circle.centre.x)) + attribute("cy", number(circle.centre.y)) +
           attribute("r", number(circle.radius)) + pen(circle.ink, circle.width) + fill(circle.fill) + "/>";
  }
  std::string operator()(const Box& box) const {
    return "<rect" + attribute("x", number(box.corner.x)) + attribute("y", number(box.corner.y)) +
           attribute("width", number(box.width)) + attribute("height", number(box.height)) +
           attribute("rx", number(box.radius)) + pen(box.ink, box.line_width) + fill(box.fill) + "/>";
  }
  std::string operator()(const Polyline& line) const {
    std::string points;
    for (const Point& p : line.points) {
      if (!points.empty()) points += ' ';
      points += number(p.x) + "," + number(p.y);
    }
    return std::string(line.closed ? "<polygon" : "<polyline") + attribute("points", points) +
           pen(line.ink, line.width) + fill(line.fill) + "/>";
  }
  std::string operator()(const Text& text) const {
    const double size = size_px(text.size) * picture.text_scale;
    // 0.36 of the size below the middle: where the baseline of capitals and digits lies.
    const char* anchor = text.anchor == Anchor::left ? "start" : text.anchor == Anchor::right ? "end" : "middle";
    return "<text" + attribute("x", number(text.at.x)) + attribute("y", number(text.at.y + 0.36 * size)) +
           attribute("font-size", number(size)) + (text.bold ? attribute("font-weight", "600") : "") +
           attribute("text-anchor", anchor) + fill(text.ink) + ">" + escape_xml(text.text) + "</text>";
  }
};

// Length of the UTF-8 character that starts at `i`; 0 when the bytes are not one.
std::size_t character_length(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
  const unsigned char first = byte(i);
  if (first < 0x80U) return 1;
  const std::size_t length = first >= 0xF0U && first <= 0xF4U ? 4 : first >= 0xE0U && first < 0xF0U ? 3
                             : first >= 0xC2U && first < 0xE0U ? 2 : 0;
  if (length == 0 || i + length > text.size()) return 0;
  std::uint32_t code = first & (0xFFU >> (length + 1));
  for (std::size_t k = 1; k < length; ++k) {
    if ((byte(i + k) & 0xC0U) != 0x80U) return 0;
    code = (code << 6U) | (byte(i + k) & 0x3FU);
  }
  const bool overlong = (length == 3 && code < 0x800U) || (length == 4 && code < 0x10000U);
  const bool forbidden = (code >= 0xD800U && code <= 0xDFFFU) || code == 0xFFFEU || code == 0xFFFFU;
  return overlong || forbidden || code > 0x10FFFFU ? 0 : length;
}

}  // namespace

std::string escape_xml(std::string_view text) {
  std::string safe;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character_length(text, i);
    if (length == 0) {
      safe += "\xEF\xBF\xBD";
      ++i;
      continue;
    }
    const char c = text[i];
    if (length > 1) safe += text.substr(i, length);
    else if (c == '&') safe += "&amp;";
    else if (c == '<') safe += "&lt;";
    else if (c == '>') safe += "&gt;";
    else if (c == '"') safe += "&quot;";
    else if (c == '\'') safe += "&#39;";
    else if (static_cast<unsigned char>(c) >= 0x20U && c != '\x7F') safe += c;
    else if (c == '\t' || c == '\n' || c == '\r') safe += ' ';
    i += length;
  }
  return safe;
}

std::string to_svg(const Picture& picture, const SvgOptions& options) {
  const std::string width = number(picture.width);
  const std::string height = number(picture.height);
  std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"" + attribute("width", width) +
                    attribute("height", height) + attribute("viewBox", "0 0 " + width + " " + height) +
                    " role=\"img\" font-family=\"Inter, system-ui, sans-serif\"" +
                    " stroke-linecap=\"round\" stroke-linejoin=\"round\">\n";
  if (!options.title.empty()) svg += "<title>" + escape_xml(options.title) + "</title>\n";
  if (!picture.description.empty()) svg += "<desc>" + escape_xml(picture.description) + "</desc>\n";
  if (options.filled_ground) {
    svg += "<rect" + attribute("width", width) + attribute("height", height) +
           attribute("fill", colour_text(Ink::card, options.palette)) + "/>\n";
  }
  const Writer writer{picture, options.palette};
  for (const Shape& shape : picture.shapes) svg += std::visit(writer, shape.form) + "\n";
  return svg + "</svg>\n";
}

}  // namespace drawing
