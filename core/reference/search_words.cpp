#include "reference/search_words.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace reference {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

// Signs beyond ASCII that stand in texts and queries; all else beyond ASCII parts words.
constexpr std::array<std::pair<std::string_view, std::string_view>, 10> kSigns{
    {{"²", "2"}, {"Ω", "ohm"}, {"Ω", "ohm"}, {"ø", " "}, {"×", "x"}, {"°", ""}, {"µ", "u"}, {"é", "e"}, {"ä", "a"}, {"ü", "u"}}};

std::string plain(std::string_view text) {
  std::string made;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (static_cast<unsigned char>(c) < 0x80U) {
      made += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
      ++i;
      continue;
    }
    std::size_t length = 1;
    std::string_view as = " ";
    for (const auto& [sign, word] : kSigns) {
      if (text.substr(i).starts_with(sign)) {
        as = word;
        length = sign.size();
        break;
      }
    }
    made += as;
    i += length;
  }
  return made;
}

constexpr std::array<std::pair<std::string_view, std::string_view>, 38> kSame{{
    {"amp", "a"}, {"ampere", "a"}, {"ma", "a"}, {"volt", "v"}, {"watt", "w"}, {"vdc", "v"}, {"dc", "dc"},
    {"gauge", "awg"}, {"guage", "awg"}, {"gage", "awg"}, {"ga", "awg"}, {"mmq", "mm"}, {"sqmm", "mm"}, {"qmm", "mm"},
    {"millimetre", "mm"}, {"millimeter", "mm"}, {"mil", "mm"}, {"sq", "square"}, {"color", "colour"}, {"gray", "grey"},
    {"ohm", "ohm"}, {"mohm", "mohm"}, {"milliohm", "mohm"}, {"ampacitie", "ampacity"}, {"batterie", "battery"},
    {"foot", "ft"}, {"feet", "ft"}, {"inch", "in"}, {"inche", "in"}, {"purple", "violet"}, {"percent", "%"},
    {"amperage", "current"}, {"wattage", "w"}, {"voltage", "v"}, {"cig", "cigarette"}, {"lfp", "lithium"},
    {"lipo", "lithium"}, {"multimeter", "meter"}}};

std::string one_form(std::string word) {
  if (word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's') word.pop_back();
  for (const auto& [from, to] : kSame) {
    if (word == from) return std::string(to);
  }
  return word;
}

// Optimal string alignment distance (a swap of neighbours counts once), up to `most`; above it, most + 1.
std::size_t distance(std::string_view a, std::string_view b, std::size_t most) {
  constexpr std::size_t kLongest = 24;
  if (a.size() > kLongest || b.size() > kLongest) return most + 1;
  if (a.size() > b.size() + most || b.size() > a.size() + most) return most + 1;
  std::array<std::array<std::size_t, kLongest + 1>, 3> rows{};
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto& now = rows[i % 3];
    const auto& last = rows[(i + 2) % 3];
    const auto& before = rows[(i + 1) % 3];
    now[0] = i;
    std::size_t least = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
      now[j] = std::min({change, last[j] + 1, now[j - 1] + 1});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) now[j] = std::min(now[j], before[j - 2] + 1);
      least = std::min(least, now[j]);
    }
    if (least > most) return most + 1;
  }
  return rows[a.size() % 3][b.size()];
}

}  // namespace

bool is_number(std::string_view word) { return !word.empty() && is_digit(word.front()); }

bool is_small(std::string_view word) {
  constexpr std::array<std::string_view, 26> kSmall{"a", "the", "of", "for", "to", "is", "in", "my", "what", "which", "do", "i",
                                                    "and", "or", "with", "an", "on", "at", "how", "can", "does", "it", "be",
                                                    "by", "from", "should"};
  return std::find(kSmall.begin(), kSmall.end(), word) != kSmall.end();
}

std::vector<std::string> search_words(std::string_view text) {
  const std::string all = plain(text);
  std::vector<std::string> words;
  for (std::size_t i = 0; i < all.size();) {
    std::size_t end = i;
    if (is_digit(all[i])) {
      // 2.5, 2,5, 1/0: the sign belongs to the number when a digit follows.
      while (end < all.size() && (is_digit(all[end]) || ((all[end] == '.' || all[end] == ',' || all[end] == '/') &&
                                                         end + 1 < all.size() && is_digit(all[end + 1])))) ++end;
      std::string number = all.substr(i, end - i);
      std::replace(number.begin(), number.end(), ',', '.');
      if (number.find('.') != std::string::npos && number.find('/') == std::string::npos) {
        number.erase(number.find_last_not_of('0') + 1);
        if (number.back() == '.') number.pop_back();
      }
      const bool square = number == "2" && !words.empty() && words.back() == "mm" && i > 0 &&
                          (is_letter(all[i - 1]) || all[i - 1] == '^');
      if (!square) words.push_back(number);
    } else if (is_letter(all[i])) {
      while (end < all.size() && is_letter(all[end])) ++end;
      words.push_back(one_form(all.substr(i, end - i)));
    } else if (all[i] == '%') {
      words.emplace_back("%");
      end = i + 1;
    } else {
      end = i + 1;
    }
    i = end;
  }
  return words;
}

double nearness(std::string_view asked, std::string_view word, bool unfinished) {
  if (asked == word) return 1.0;
  if (is_number(asked) || is_number(word)) return unfinished && word.starts_with(asked) ? 0.4 : 0.0;
  if (asked.size() >= 2 && word.starts_with(asked) && (unfinished || asked.size() >= 4)) {
    const double share = static_cast<double>(asked.size()) / static_cast<double>(word.size());
    return 0.55 + 0.35 * share;
  }
  if (asked.size() < 4 || word.size() < 3) return 0.0;
  const std::size_t most = asked.size() >= 7 ? 2 : 1;
  std::size_t off = distance(asked, word, most);
  if (off > most && unfinished && word.size() > asked.size()) off = distance(asked, word.substr(0, asked.size()), 1) + 1;
  return off <= most ? 0.7 - 0.2 * static_cast<double>(off) : 0.0;
}

}  // namespace reference
