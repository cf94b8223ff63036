// The checks, one row a kind: tool, what it takes, minutes, words, answers, and how likely each is. A row that
// leaves anything out does not compile. Private to this room, but for tests.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "diagnosis/check.h"
#include "diagnosis/sight.h"
#include "tables/citation.h"

namespace diagnosis {

// The range of the reading that a word stands for.
struct Bounds {
  std::optional<double> low, high;
};
struct AnswerRow {
  AnswerKey key;
  std::string_view words;  // "{Plus} splice wrong"; tokens: words.h, and volts, zero, joined
  Bounds (*bounds)(const Plant& plant, bool drop);
  double (*chance)(const Seen& seen, const Choice& choice);  // slips left out; over a row they sum to one
};

// What of the state is said beside the question: only what matters there.
enum class StateTold { nothing, fuse, everything };

struct CheckKindRow {
  CheckKind kind;
  std::string_view key;   // stable: "volts"
  std::string_view tool;  // "meter", "lamp", "meter on ohms", "eyes", "hands", "device", "spare fuse"
  bool Tools::*needs;     // what has to be in hand; nullptr: nothing
  Act act;
  Takes takes;
  bool proves_dead;  // the question asks for the fuse out and the part proved dead first
  double minutes;    // by itself, at the place
  const tables::Citation* minutes_citation;
  StateTold state_told;
  std::string_view first;     // done before the question; may be empty: `first` of the check begins with the state
  std::string_view question;  // at most kMostQuestionWords, and the caution at most kMostCautionWords, tokens filled
  std::string_view caution;   // may be empty only where it takes neither hands on conductors nor tools on metal
  std::span<const AnswerRow> answers;  // at most kMaxChoices
  Seen (*see)(const Sight& sight);
};
inline constexpr std::size_t kMaxChoices = 10;
// What somebody takes in at a glance, a phone in one hand.
inline constexpr std::size_t kMostQuestionWords = 16, kMostCautionWords = 14;

std::span<const CheckKindRow> check_kind_rows();  // in the order of CheckKind
const CheckKindRow& check_kind_row(CheckKind kind);
const AnswerRow* answer_row(const CheckKindRow& row, AnswerKey key);  // nullptr: not one of its answers

}  // namespace diagnosis
