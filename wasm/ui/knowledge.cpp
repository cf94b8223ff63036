#include "ui/knowledge.h"

#include <algorithm>
#include <array>
#include <span>

#include <imgui.h>

#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row.h"
#include "ui/row_parts.h"
#include "ui/segments.h"

namespace ui {

namespace {

std::optional<Knowledge> as_list(std::string_view label, const std::string& sub, Knowledge current, std::span<const std::string> words) {
  const auto chosen = choice(label, words, static_cast<std::size_t>(current), {.sub = sub, .as_list = true});
  return chosen ? std::optional(static_cast<Knowledge>(*chosen)) : std::nullopt;
}

}  // namespace

std::optional<Knowledge> knowledge_row(std::string_view label, Knowledge current, const KnowledgeOptions& options) {
  static const std::array<std::string, 3> words{"Known", "Guessed", "Unknown"};   // in the order of Knowledge
  const std::string sub = current == Knowledge::unknown ? std::string() : options.value;
  const std::string said = options.said.empty() ? joined(label, sub) : options.said;
  const Type type = Type::caption;
  const float own = segments_width(words, type, Share::own);
  const bool beside = own <= column().width * 0.57F;          // plan_row leaves the words two fifths
  if (!beside && segments_width(words, type, Share::even) > column().width) return as_list(label, sub, current, words);
  const float width = beside ? own : column().width;
  const float height = std::max(kTarget, line_height(type) + 24);
  ImGui::PushID(label.data(), label.data() + label.size());
  const std::size_t group = record(words_id("knowledge"), {column().left, column().y, column().width, height},
                                   {.role = Role::group, .name = said});
  const RowPlan plan = plan_row(label, sub, width, height);
  now().recorder.at(group).y = plan.row.y;
  now().recorder.at(group).height = plan.row.h;
  paint_row_words(plan, label, sub);
  const auto chosen = segments(plan.control, words, static_cast<std::size_t>(current), type, beside ? Share::own : Share::even);
  record_end();
  ImGui::PopID();
  return chosen ? std::optional(static_cast<Knowledge>(*chosen)) : std::nullopt;
}

}  // namespace ui
