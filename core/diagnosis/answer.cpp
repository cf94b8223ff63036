#include "diagnosis/answer.h"

#include <algorithm>
#include <array>

namespace diagnosis {
namespace {

struct Text {
  AnswerKey key;
  std::string_view text;
};
constexpr std::array<Text, kAnswerKeys> kTexts{{
    {AnswerKey::full, "full"},
    {AnswerKey::between, "between"},
    {AnswerKey::zero, "zero"},
    {AnswerKey::minus, "minus"},
    {AnswerKey::bright, "bright"},
    {AnswerKey::dim, "dim"},
    {AnswerKey::dark, "dark"},
    {AnswerKey::joined, "joined"},
    {AnswerKey::some, "some"},
    {AnswerKey::open, "open"},
    {AnswerKey::works, "works"},
    {AnswerKey::weak, "weak"},
    {AnswerKey::dead, "dead"},
    {AnswerKey::all, "all"},
    {AnswerKey::none, "none"},
    {AnswerKey::steady, "steady"},
    {AnswerKey::flickers, "flickers"},
    {AnswerKey::fine, "fine"},
    {AnswerKey::plus_splice, "red-splice"},
    {AnswerKey::minus_splice, "black-splice"},
    {AnswerKey::plus_tab, "red-tab"},
    {AnswerKey::minus_tab, "black-tab"},
    {AnswerKey::crossed_tabs, "crossed-tabs"},
    {AnswerKey::crossed_splice, "crossed-splice"},
    {AnswerKey::other_cable, "other-cable"},
    {AnswerKey::damaged, "damaged"},
    {AnswerKey::holds, "holds"},
    {AnswerKey::plus_clamp, "red"},
    {AnswerKey::minus_clamp, "black"},
    {AnswerKey::live, "live"},
    {AnswerKey::as_drawn, "as-drawn"},
    {AnswerKey::thinner, "thinner"},
    {AnswerKey::yes, "yes"},
    {AnswerKey::no, "no"},
    {AnswerKey::whole, "whole"},
    {AnswerKey::blown, "blown"},
    {AnswerKey::missing, "missing"},
    {AnswerKey::elsewhere, "elsewhere"},
    {AnswerKey::same, "same"},
    {AnswerKey::blows_at_once, "blows-at-once"},
    {AnswerKey::blows_later, "blows-later"},
    {AnswerKey::dies, "dies"},
    {AnswerKey::stays, "stays"},
    {AnswerKey::was_dead, "was-dead"},
    {AnswerKey::on, "on"},
    {AnswerKey::off, "off"},
    {AnswerKey::within, "within"},
    {AnswerKey::over, "over"},
    {AnswerKey::cant, "cant"},
    {AnswerKey::unknown, ""},
}};
constexpr bool each_answer_complete() {
  for (std::size_t i = 0; i < kTexts.size(); ++i) {
    if (static_cast<std::size_t>(kTexts[i].key) != i) return false;
    if (kTexts[i].text.empty() != (kTexts[i].key == AnswerKey::unknown)) return false;
    for (std::size_t j = 0; j < i; ++j) {
      if (kTexts[i].text == kTexts[j].text) return false;
    }
  }
  return true;
}
static_assert(each_answer_complete());

}  // namespace

std::string_view answer_text(AnswerKey key) { return kTexts[static_cast<std::size_t>(key)].text; }

std::optional<AnswerKey> answer_key(std::string_view text) {
  const auto* found = std::find_if(kTexts.begin(), kTexts.end(), [&](const Text& each) { return each.text == text; });
  if (found == kTexts.end() || found->key == AnswerKey::unknown) return std::nullopt;
  return found->key;
}

Answer word(AnswerKey key) { return {AnswerKind::word, key, 0.0}; }
Answer word(std::string_view text) { return word(answer_key(text).value_or(AnswerKey::unknown)); }
Answer reading(double number) { return {AnswerKind::reading, AnswerKey::unknown, number}; }
Answer cant_reach() { return {AnswerKind::cant_reach, AnswerKey::unknown, 0.0}; }
Answer not_sure() { return {AnswerKind::not_sure, AnswerKey::unknown, 0.0}; }

}  // namespace diagnosis
