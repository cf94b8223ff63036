#include "document/writer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace document {
namespace {

// Each item of these lists, and each of these objects, on a line of its own. All else is spread.
constexpr std::array<std::string_view, 5> kOnOneLine{"outlets", "told", "runs", "main", "feeder"};

bool is_on_one_line(std::string_view key) { return std::find(kOnOneLine.begin(), kOnOneLine.end(), key) != kOnOneLine.end(); }

void append(std::string& out, const Json& value, std::string_view key, bool flat, int depth) {
  if (!value.is_structured()) {
    // Texts are valid UTF-8 by validate(); anything else is replaced, never thrown about.
    out += value.dump(-1, ' ', false, Json::error_handler_t::replace);
    return;
  }
  const bool list_of_objects = value.is_array() && !value.empty() && value.front().is_object();
  const bool inside_flat = flat || is_on_one_line(key);
  const bool spread = value.is_object() ? !inside_flat : list_of_objects && !flat;
  const auto new_line = [&out](int indent) { out.append("\n").append(static_cast<std::size_t>(2 * indent), ' '); };
  out += value.is_object() ? '{' : '[';
  bool first = true;
  for (auto entry = value.begin(); entry != value.end(); ++entry) {
    if (!first) out += spread ? "," : ", ";
    first = false;
    if (spread) new_line(depth + 1);
    const std::string name = value.is_object() ? entry.key() : std::string();
    if (value.is_object()) out += Json(name).dump() + ": ";
    append(out, *entry, name, inside_flat, depth + 1);
  }
  if (spread && !first) new_line(depth);
  out += value.is_object() ? '}' : ']';
}

}  // namespace

bool Writer::is(double value, double usual) { return value == usual && std::signbit(value) == std::signbit(usual); }

Json json_number(double number) {
  constexpr double kExactlyWhole = 1e15;
  const bool whole = number == std::floor(number) && std::fabs(number) < kExactlyWhole;
  if (whole && !std::signbit(number)) return Json(static_cast<std::int64_t>(number));
  return Json(number);
}

std::string text_of(const Json& root) {
  std::string text;
  append(text, root, {}, false, 0);
  text += '\n';
  return text;
}

}  // namespace document
