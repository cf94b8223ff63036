// Names are data typed by a person: text, of a length that fits a label.
#include <string>

#include "circuit/validate.h"

namespace circuit {
namespace {

constexpr char32_t kNotText = 0xFFFFFFFF;

struct Read {
  char32_t character = kNotText;  // kNotText: the bytes at this place are not UTF-8
  std::size_t bytes = 1;
};

// One character of UTF-8 by RFC 3629: no overlong forms, no surrogates, none past U+10FFFF.
Read read_character(std::string_view text) {
  const auto byte = [text](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1};
  std::size_t length = 0;
  char32_t least = 0;
  char32_t character = 0;
  if ((first & 0xE0) == 0xC0) { length = 2; least = 0x80; character = first & 0x1Fu; }
  else if ((first & 0xF0) == 0xE0) { length = 3; least = 0x800; character = first & 0x0Fu; }
  else if ((first & 0xF8) == 0xF0) { length = 4; least = 0x10000; character = first & 0x07u; }
  if (length == 0 || text.size() < length) return {};
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return {};
    character = (character << 6) | (byte(i) & 0x3Fu);
  }
  const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
  if (character < least || character > 0x10FFFF || surrogate) return {};
  return {character, length};
}

bool is_within(char32_t c, char32_t low, char32_t high) { return c >= low && c <= high; }

// Controls, line and paragraph ends, and the marks that turn the direction of what follows:
// none of them belongs on a label, and the last can make one read as another.
bool is_control(char32_t c) {
  return c < 0x20 || is_within(c, 0x7F, 0x9F) || is_within(c, 0x2028, 0x202E) ||
         is_within(c, 0x2066, 0x2069) || is_within(c, 0x200E, 0x200F) || c == 0x061C;
}

bool is_blank(char32_t c) {
  return c == 0x20 || c == 0xA0 || c == 0x1680 || is_within(c, 0x2000, 0x200D) || c == 0x202F ||
         c == 0x205F || c == 0x2060 || c == 0x3000 || c == 0xFEFF || c == 0xAD;
}

}  // namespace

std::optional<Problem> check_name(std::string_view name, std::string_view place) {
  const std::string most = std::to_string(kMaxNameCharacters) + " characters";
  const auto wrong = [&](std::string sentence, std::string allowed) {
    return Problem{std::string(place), std::move(sentence), std::move(allowed)};
  };
  std::size_t characters = 0;
  bool blank = true;
  for (std::string_view left = name; !left.empty(); ++characters) {
    const Read read = read_character(left);
    if (read.character == kNotText) return wrong("Name is not readable text.", "Give letters, digits and signs.");
    if (is_control(read.character)) {
      return wrong("Name holds a character that can not be printed.", "Give letters, digits and signs.");
    }
    blank = blank && is_blank(read.character);
    left.remove_prefix(read.bytes);
  }
  if (blank) return wrong("Name is empty.", "Give 1 to " + most + ".");
  if (characters > kMaxNameCharacters) {
    return wrong("Name has " + std::to_string(characters) + " characters.", "Give at most " + most + ".");
  }
  return std::nullopt;
}

std::optional<Problem> check_text(std::string_view text, std::size_t most_bytes, std::string_view place) {
  if (text.size() > most_bytes) {
    return Problem{std::string(place), "Text is " + std::to_string(text.size()) + " bytes long.",
                   "Give at most " + std::to_string(most_bytes) + "."};
  }
  while (!text.empty()) {
    const Read read = read_character(text);
    if (read.character == kNotText || is_control(read.character)) {
      return Problem{std::string(place), "Text holds what can not be printed.", "Give letters, digits and signs."};
    }
    text.remove_prefix(read.bytes);
  }
  return std::nullopt;
}

std::string quoted(std::string_view text) {
  std::string shown = "\"";
  for (std::size_t characters = 0; !text.empty(); ++characters) {
    if (characters == kMaxNameCharacters) {
      shown += "...";
      break;
    }
    const Read read = read_character(text);
    if (read.character == kNotText || is_control(read.character)) shown += '?';
    else shown += text.substr(0, read.bytes);
    text.remove_prefix(read.bytes);
  }
  return shown + '"';
}

}  // namespace circuit
