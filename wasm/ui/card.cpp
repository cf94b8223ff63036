#include <algorithm>

#include <imgui.h>

#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {

void begin_card(std::string_view id, const CardOptions& options) {
  State::Parts& p = now();
  const Rect at = take(0.0F, Last::block);
  ImGui::PushID(id.data(), id.data() + id.size());
  while (p.splitters.size() <= p.cards.size()) p.splitters.emplace_back();
  CardOpen card;
  card.splitter = &p.splitters[p.cards.size()];
  card.top = at.y;
  card.tone = options.tone;
  card.grouped = !options.name.empty();
  if (card.grouped) card.record = record(words_id("card"), at, {.role = Role::group, .name = options.name, .radius = kRadius});
  // What stands on the card is drawn first, the card itself behind it once its height is known.
  card.splitter->Split(ImGui::GetWindowDrawList(), 2);
  card.splitter->SetCurrentChannel(ImGui::GetWindowDrawList(), 1);
  p.cards.push_back(card);
  push_column({.left = at.x + kCardPad, .width = at.w - 2 * kCardPad, .y = at.y + kCardPad, .card = true, .pad = kCardPad});
}

void end_card() {
  State::Parts& p = now();
  const CardOpen card = p.cards.back();
  p.cards.pop_back();
  const Column inner = column();
  pop_column();
  Column& col = column();
  // Rows bring their own air above and below their words.
  const float pad = inner.last == Last::row ? 4.0F : kCardPad;
  const Rect rect{col.left, card.top, col.width, snap(inner.y + pad - card.top)};
  ImDrawList* list = ImGui::GetWindowDrawList();
  card.splitter->SetCurrentChannel(list, 0);
  const bool plain = card.tone == Tone::plain;
  fill(rect, colour(plain ? Ink::card : tone_tint(card.tone)), kRadius);
  outline(rect, plain ? colour(Ink::line) : faded(colour(tone_ink(card.tone)), 0.30F), kRadius);
  card.splitter->Merge(list);
  if (card.grouped) {
    p.recorder.at(card.record).height = rect.h;
    record_end();
  }
  ImGui::PopID();
  col.y = rect.bottom();
  col.last = Last::block;
}

void divider() {
  const Rect rect = take(1.0F, Last::block, 12.0F);
  fill(rect, colour(Ink::line));
}

}  // namespace ui
