#include "ui/hyphen.h"

#include <array>
#include <string>

namespace ui {
namespace {

constexpr std::size_t kLeastBefore = 2, kLeastAfter = 3;   // letters on either side

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool is_vowel(char c) { return std::string_view("aeiouy").find(c) != std::string_view::npos; }

constexpr std::array<std::string_view, 12> kEndings{"ment", "ments", "tion", "tions", "sion", "ness",
                                                    "able", "less", "ance", "ence", "ture", "tures"};
// Two consonants that are one sound or begin a syllable together.
constexpr std::array<std::string_view, 24> kTogether{"ch", "sh", "th", "ph", "gh", "ck", "wh", "qu", "bl", "br", "cl", "cr",
                                                     "dr", "fl", "fr", "gl", "gr", "pl", "pr", "tr", "st", "sp", "sk", "ng"};

template <class List>
bool has(const List& list, std::string_view text) {
  for (const std::string_view known : list) {
    if (known == text) return true;
  }
  return false;
}

// 2: a good place before letter `at` of a run of letters, 1: one that will do, 0: none.
int place(std::string_view run, std::size_t at) {
  if (at < kLeastBefore || run.size() - at < kLeastAfter) return 0;
  if (has(kEndings, run.substr(at))) return 2;
  if (is_vowel(run[at]) || !is_vowel(run[at + 1])) return 0;
  if (is_vowel(run[at - 1])) return 1;
  return is_vowel(run[at - 2]) && !has(kTogether, run.substr(at - 1, 2)) ? 2 : 0;
}

void part_run(std::string_view run, std::size_t begins, int least, std::vector<Parting>& partings) {
  for (std::size_t at = kLeastBefore; at + kLeastAfter <= run.size(); ++at) {
    if (place(run, at) >= least) partings.push_back({begins + at, true});
  }
}

std::vector<Parting> partings_of(std::string_view word, int least) {
  std::vector<Parting> partings;
  std::string run;
  for (std::size_t i = 0; i <= word.size(); ++i) {
    if (i < word.size() && is_letter(word[i])) {
      run += lower(word[i]);
      continue;
    }
    part_run(run, i - run.size(), least, partings);
    run.clear();
  }
  return partings;
}

}  // namespace

std::vector<Parting> own_partings(std::string_view word) {
  std::vector<Parting> partings;
  for (std::size_t i = 1; i + 2 < word.size(); ++i) {
    if (word[i] == '-' || word[i] == '/') partings.push_back({i + 1, false});
  }
  return partings;
}

std::vector<Parting> syllable_partings(std::string_view word) {
  std::vector<Parting> good = partings_of(word, 2);
  return good.empty() ? partings_of(word, 1) : good;
}

}  // namespace ui
