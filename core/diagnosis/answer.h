// What can be answered to a check. Each answer has a key of its own: rows, likelihoods and records are bound
// by it, never by its place in a list. The texts are stable: stored traces hold them.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace diagnosis {

// clang-format off
enum class AnswerKey : int {
  full, between, zero, minus,                 // volts
  bright, dim, dark,                          // lamp
  joined, some, open,                         // ohms; some: others_work too
  works, weak, dead,                          // a device; weak: block_alive too
  all, none,                                  // others_work
  steady, flickers,                           // wiggle
  fine, plus_splice, minus_splice, plus_tab, minus_tab, crossed_tabs, crossed_splice, other_cable, damaged,
  holds, plus_clamp, minus_clamp,             // tug, tug_clamps
  live,                                       // still live: hands off
  as_drawn, thinner,                          // read_gauge
  yes, no,                                    // block_alive
  whole, blown, missing, elsewhere,           // fuse_look
  same, blows_at_once, blows_later,           // what a fuse put in or pressed does, and a repair in vain
  dies, stays, was_dead,                      // pull_fuse
  on, off,                                    // main_look
  within, over,                               // add_up
  cant,                                       // a repair that could not be done
  unknown,                                    // a text that no answer has; no check takes it
};
// clang-format on
inline constexpr std::size_t kAnswerKeys = static_cast<std::size_t>(AnswerKey::unknown) + 1;

// Stable in files: "red-splice" for plus_splice, whatever the wires' colours are. No two keys share a text.
std::string_view answer_text(AnswerKey key);                 // empty for `unknown`
std::optional<AnswerKey> answer_key(std::string_view text);  // nullopt: no answer has this text

enum class AnswerKind { word, reading, cant_reach, not_sure };
struct Answer {
  AnswerKind kind = AnswerKind::not_sure;
  AnswerKey key = AnswerKey::unknown;  // AnswerKind::word
  double reading = 0.0;                // AnswerKind::reading: volts as shown, with its sign, or ohms (infinity: open)
  friend bool operator==(const Answer&, const Answer&) = default;
};
Answer word(AnswerKey key);
Answer word(std::string_view text);  // key `unknown` where no answer has this text
Answer reading(double number);
Answer cant_reach();
Answer not_sure();

}  // namespace diagnosis
