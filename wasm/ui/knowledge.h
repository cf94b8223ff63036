// How well something that is built is known: a compact row, three words side by side.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace ui {

enum class Knowledge : std::uint8_t { known, guessed, unknown };

struct KnowledgeOptions {
  std::string value{};          // what is told, under the label: "10 AWG"; not shown for unknown
  std::string said{};           // name of the group for a screen reader; empty: label and value
};
// Gives a new choice.
std::optional<Knowledge> knowledge_row(std::string_view label, Knowledge current, const KnowledgeOptions& options = {});

}  // namespace ui
