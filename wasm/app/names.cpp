#include "app/names.h"

namespace app {
namespace {

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

}  // namespace

std::string first_characters(std::string_view text, std::size_t most) {
  std::size_t end = 0;
  for (std::size_t count = 0; end < text.size() && count < most; ++count) {
    ++end;
    while (end < text.size() && continues_character(text[end])) ++end;
  }
  return std::string(text.substr(0, end));
}

std::string file_stem(std::string_view name) {
  std::string stem;
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool plain = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain) stem += upper ? static_cast<char>(c - 'A' + 'a') : c;
    else if (!stem.empty() && stem.back() != '-') stem += '-';
  }
  while (!stem.empty() && stem.back() == '-') stem.pop_back();
  return stem.empty() ? "circuit" : stem;
}

}  // namespace app
