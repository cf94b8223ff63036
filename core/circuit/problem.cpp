#include "circuit/problem.h"

namespace circuit {
namespace {

bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }

// After a colon a sentence goes on in lower case; "JSON ..." keeps its capitals.
std::string after_colon(std::string sentence) {
  if (sentence.size() > 1 && is_upper(sentence[0]) && (is_lower(sentence[1]) || sentence[1] == ' ')) {
    sentence[0] = static_cast<char>(sentence[0] - 'A' + 'a');
  }
  return sentence;
}

}  // namespace

std::string one_line(const Problem& problem) {
  std::string line = problem.place.empty() ? problem.sentence
                                           : problem.place + ": " + after_colon(problem.sentence);
  if (!problem.allowed.empty()) {
    line += ' ';
    line += problem.allowed;
  }
  return line;
}

}  // namespace circuit
