#include "ui/wrap.h"

#include <algorithm>
#include <cctype>
#include <cfloat>
#include <cmath>

#include <imgui.h>

#include "ui/hyphen.h"
#include "ui/parts.h"
#include "units/measure.h"

namespace ui {
namespace {

float leading(Type type) {
  switch (type) {
    case Type::caption: return 1.38F;
    case Type::text: return 1.40F;
    case Type::title: return 1.28F;
    case Type::question: return 1.25F;
    case Type::answer: return 1.10F;
  }
  return 1.4F;
}

bool begins_with_unit(std::string_view word, std::string_view unit) {
  return !unit.empty() && word.starts_with(unit) &&
         (word.size() == unit.size() || std::ispunct(static_cast<unsigned char>(word[unit.size()])) != 0);
}

// A unit of the table of measures, or of one of its keys; a comma or full stop may follow.
bool is_unit(std::string_view word) {
  for (std::size_t i = 0; i < units::kMeasures; ++i) {
    for (const units::Preference preference : {units::Preference::metric, units::Preference::us}) {
      const units::MeasureRow& row = units::row(static_cast<units::Measure>(i), preference);
      if (begins_with_unit(word, row.unit)) return true;
      for (const units::UnitKey& key : row.keys) {
        if (begins_with_unit(word, key.label)) return true;
      }
    }
  }
  return false;
}

// A figure and its unit stay on one line: no break at a blank between a digit and a unit
// ("5.3 mm²", "12 V"; "7 to" may break).
bool glued(std::string_view line, std::size_t blank) {
  if (blank == 0 || line[blank - 1] < '0' || line[blank - 1] > '9') return false;
  return is_unit(line.substr(blank + 1, line.find(' ', blank + 1) - blank - 1));
}

// Bytes of `line` that fit the width, up to a blank; 0 where its first word is wider.
std::size_t fitting(std::string_view line, Type type, bool semibold, float width) {
  std::size_t best = 0, second = 0;          // second: a break between figure and unit
  for (std::size_t at = line.find(' '); at != std::string_view::npos; at = line.find(' ', at + 1)) {
    if (line_width(line.substr(0, at), type, semibold) > width) break;
    (glued(line, at) ? second : best) = at;
  }
  return best > 0 ? best : second;
}

// As many characters as fit, at least one.
std::size_t fitting_characters(std::string_view line, Type type, bool semibold, float width) {
  std::size_t fits = 0;
  for (std::size_t at = 1; at <= line.size(); ++at) {
    const bool inside = at < line.size() && (static_cast<unsigned char>(line[at]) & 0xC0U) == 0x80U;   // whole characters
    if (inside) continue;
    if (fits > 0 && line_width(line.substr(0, at), type, semibold) > width) break;
    fits = at;
  }
  return fits;
}

// The part of a word, wider than the line, that stays on it.
Line parted(std::string_view word, Type type, bool semibold, float width) {
  const float hyphen = line_width("-", type, semibold);
  Line best;
  const auto try_each = [&](const std::vector<Parting>& partings) {
    for (const Parting& parting : partings) {
      const std::string_view part = word.substr(0, parting.at);
      if (line_width(part, type, semibold) + (parting.hyphen ? hyphen : 0.0F) <= width) best = {part, parting.hyphen};
    }
    return !best.words.empty();
  };
  if (try_each(own_partings(word)) || try_each(syllable_partings(word))) return best;
  return {word.substr(0, fitting_characters(word, type, semibold, width)), false};
}

void wrap_paragraph(std::string_view line, Type type, bool semibold, float width, std::vector<Line>& lines) {
  do {
    const bool fits = width >= FLT_MAX || line_width(line, type, semibold) <= width;
    const std::size_t used = fits ? line.size() : fitting(line, type, semibold, width);
    lines.push_back(used > 0 || line.empty() ? Line{line.substr(0, used)}
                                             : parted(line.substr(0, line.find(' ')), type, semibold, width));
    line.remove_prefix(lines.back().words.size());
    while (!line.empty() && line.front() == ' ') line.remove_prefix(1);
  } while (!line.empty());
}

}  // namespace

float imgui_size(float em_px) {
  constexpr float kHeightOverEm = 1.2102F;   // (ascender - descender) / unitsPerEm of our fonts' hhea table
  // Whole px: glyphs are baked at whole sizes, anything else is resampled and blurs.
  return std::round(em_px * kHeightOverEm);
}

float line_width(std::string_view line, Type type, bool semibold) {
  if (line.empty()) return 0.0F;
  return now().font(semibold)->CalcTextSizeA(imgui_size(type_px(type)), FLT_MAX, 0.0F, line.data(), line.data() + line.size()).x;
}

float line_height(Type type) { return std::round(type_px(type) * leading(type)); }

float text_width(std::string_view text, Type type, bool semibold) {
  float widest = 0.0F;
  for (const Line& line : wrap(text, type, semibold, FLT_MAX)) {
    widest = std::max(widest, line_width(line.words, type, semibold));
  }
  return std::ceil(widest);
}

float longest_word(std::string_view text, Type type, bool semibold) {
  float widest = 0.0F;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    widest = std::max(widest, line_width(text.substr(0, end), type, semibold));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return std::ceil(widest);
}

std::vector<Line> wrap(std::string_view text, Type type, bool semibold, float width) {
  std::vector<Line> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    wrap_paragraph(text.substr(0, end), type, semibold, width, lines);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

float text_height(std::string_view text, Type type, bool semibold, float width) {
  return static_cast<float>(wrap(text, type, semibold, width).size()) * line_height(type);
}

}  // namespace ui
