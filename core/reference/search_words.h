// Private to this room: text to words that compare, and how near two words are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace reference {

// Lower case, numbers and letters apart ("10awg": 10, awg), decimal comma to point, units and
// spellings to one form (amps: a, mm²: mm, gauge: awg, color: colour), plural s dropped.
std::vector<std::string> search_words(std::string_view text);
bool is_number(std::string_view word);
// "the", "for", "how": met when they can be, never missed.
bool is_small(std::string_view word);
// 0 none, 1 the same; `unfinished`: the word may go on. Numbers never by resemblance.
double nearness(std::string_view asked, std::string_view word, bool unfinished);

}  // namespace reference
