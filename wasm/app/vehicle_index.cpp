#include "app/vehicle_index.h"

#include <algorithm>
#include <charconv>

#include "app/lines.h"

namespace app {
namespace {

constexpr std::string_view kVehiclePrefix = "vehicle/";

std::vector<std::uint32_t> numbers_in(std::string_view text) {
  std::vector<std::uint32_t> numbers;
  while (!text.empty()) {
    if (const auto number = counted_number(take_word(text))) numbers.push_back(*number);
  }
  return numbers;
}

std::string hexadecimal(std::uint32_t number) {
  char digits[8];
  const auto [end, error] = std::to_chars(digits, digits + sizeof digits, number, 16);
  return error == std::errc{} ? std::string(digits, end) : std::string();
}

std::optional<Moved> moved_in(std::string_view rest) {
  const auto circuit = counted_number(take_word(rest));
  const auto vehicle = counted_number(take_word(rest));
  std::uint32_t sum = 0;
  const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), sum, 16);
  if (!circuit || !vehicle || rest.empty() || error != std::errc{} || end != rest.data() + rest.size()) return std::nullopt;
  return Moved{*circuit, *vehicle, sum};
}

}  // namespace

std::string vehicle_key(std::uint32_t number) { return std::string(kVehiclePrefix) + std::to_string(number); }

std::optional<std::uint32_t> vehicle_in_key(std::string_view key) {
  if (!key.starts_with(kVehiclePrefix)) return std::nullopt;
  const auto number = counted_number(key.substr(kVehiclePrefix.size()));
  // "vehicle/007" is not a key of ours: we would write "vehicle/7" and lose the link.
  return number && vehicle_key(*number) == key ? number : std::nullopt;
}

// FNV-1a, as its authors published it: http://www.isthe.com/chongo/tech/comp/fnv/
std::uint32_t text_sum(std::string_view text) {
  std::uint32_t sum = 2166136261U;
  for (const char c : text) sum = (sum ^ static_cast<unsigned char>(c)) * 16777619U;
  return sum;
}

std::string write_index(const VehicleIndex& index) {
  std::string text = "order";
  for (const std::uint32_t number : index.order) text.append(" ").append(std::to_string(number));
  text.append("\nopen ").append(std::to_string(index.open.vehicle));
  text.append(" ").append(std::to_string(index.open.circuit.number));
  if (index.demo != 0) text.append("\ndemo ").append(std::to_string(index.demo));
  text.append("\nnext ").append(std::to_string(index.next)).append("\n");
  for (const Moved& each : index.moved) {
    text.append("moved ").append(std::to_string(each.circuit)).append(" ").append(std::to_string(each.vehicle));
    text.append(" ").append(hexadecimal(each.sum)).append("\n");
  }
  return text;
}

VehicleIndex read_index(std::string_view text) {
  VehicleIndex index;
  for (const Line& line : split_lines(text)) {
    std::string_view rest = line.rest;
    if (line.word == "order") index.order = numbers_in(rest);
    if (line.word == "open") {
      index.open.vehicle = counted_number(take_word(rest)).value_or(0);
      index.open.circuit.number = counted_number(rest).value_or(0);
    }
    if (line.word == "demo") index.demo = counted_number(rest).value_or(0);
    if (line.word == "next") index.next = std::max(index.next, counted_number(rest).value_or(1));
    if (line.word != "moved") continue;
    if (const auto moved = moved_in(rest)) index.moved.push_back(*moved);
  }
  return index;
}

}  // namespace app
