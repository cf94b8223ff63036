#include "document/json_value.h"

#include <algorithm>
#include <cstdint>
#include <nlohmann/json.hpp>

#include "circuit/limits.h"
#include "circuit/validate.h"

namespace document {
namespace {

using circuit::Problem;

constexpr std::string_view kSaveAgain = "Save or copy it again.";
constexpr std::string_view kOpenOurs = "Open a file that Branchlight saved.";

// Receives the parts of the text in order and builds the tree. Returning false ends the parse.
class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
 public:
  bool null() override { return add({}); }
  bool boolean(bool value) override { return add({value}); }
  bool number_integer(std::int64_t value) override { return add({static_cast<double>(value)}); }
  bool number_unsigned(std::uint64_t value) override { return add({static_cast<double>(value)}); }
  bool number_float(double value, const std::string& /*as written*/) override { return add({value}); }
  bool string(std::string& value) override { return add({std::move(value)}); }
  bool binary(nlohmann::json::binary_t& /*value*/) override { return refuse("The file holds binary data."); }
  bool start_object(std::size_t /*elements*/) override { return open({JsonObject{}}); }
  bool start_array(std::size_t /*elements*/) override { return open({JsonArray{}}); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(std::string& name) override {
    const JsonObject& object = std::get<JsonObject>(open_.back().held);
    if (find_key(object, name) != nullptr) return refuse("Key " + circuit::quoted(name) + " stands twice in one object.");
    if (object.size() >= kMaxKeys) return refuse("One object has more than " + std::to_string(kMaxKeys) + " keys.");
    keys_.push_back(std::move(name));
    return true;
  }

  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::detail::exception& error) override {
    constexpr int kNumberTooLarge = 406;  // the library's id for a number past the range of a double
    broken_at_ = position;
    number_too_large_ = error.id == kNumberTooLarge;
    return false;
  }

  std::optional<JsonValue> root;
  std::string refusal;                        // why the tree was given up; empty: it was not
  [[nodiscard]] std::optional<std::size_t> broken_at() const { return broken_at_; }  // bytes read by then
  [[nodiscard]] bool number_too_large() const { return number_too_large_; }

 private:
  bool refuse(std::string why) {
    refusal = std::move(why);
    return false;
  }

  bool open(JsonValue container) {
    if (open_.size() >= kMaxDepth) return refuse("The file is nested more than " + std::to_string(kMaxDepth) + " deep.");
    if (!count()) return false;
    open_.push_back(std::move(container));
    return true;
  }

  bool close() {
    JsonValue closed = std::move(open_.back());
    open_.pop_back();
    place(std::move(closed));
    return true;
  }

  bool add(JsonValue value) {
    if (!count()) return false;
    place(std::move(value));
    return true;
  }

  bool count() {
    return ++values_ <= kMaxValues || refuse("The file holds more than " + std::to_string(kMaxValues) + " values.");
  }

  void place(JsonValue value) {
    if (open_.empty()) {
      root = std::move(value);
    } else if (auto* array = std::get_if<JsonArray>(&open_.back().held)) {
      array->push_back(std::move(value));
    } else {
      std::get<JsonObject>(open_.back().held).push_back({std::move(keys_.back()), std::move(value)});
      keys_.pop_back();
    }
  }

  std::vector<JsonValue> open_;      // containers begun and not ended
  std::vector<std::string> keys_;    // keys waiting for their value
  std::size_t values_ = 0;
  std::optional<std::size_t> broken_at_;
  bool number_too_large_ = false;
};

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

std::string_view without_mark_and_spaces(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

// `position`: bytes read when the parser gave up, the offending one included; one past the
// end when it was the end that offended.
Problem broken(std::string_view text, std::size_t position, bool number_too_large) {
  const std::size_t last = text.find_last_not_of(" \t\r\n");
  if (!number_too_large && position > last + 1) {
    return {"", "The file is cut short.", std::string(kSaveAgain)};
  }
  const std::string_view before = text.substr(0, position == 0 ? 0 : position - 1);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  return {"Line " + std::to_string(line), number_too_large ? "A number is too large." : "The text is broken here.",
          std::string(kSaveAgain)};
}

}  // namespace

const JsonValue* find_key(const JsonObject& object, std::string_view key) {
  const auto found = std::find_if(object.begin(), object.end(), [key](const JsonMember& entry) { return entry.key == key; });
  return found == object.end() ? nullptr : &found->value;
}

JsonResult read_json(std::string_view text) {
  if (text.size() > circuit::kMaxFileBytes) {
    return {std::nullopt, Problem{"", "The file is larger than " + std::to_string(circuit::kMaxFileBytes >> 20) + " MiB.",
                                  std::string(kOpenOurs)}};
  }
  const std::string_view content = without_mark_and_spaces(text);
  if (content.empty()) return {std::nullopt, Problem{"", "The file is empty.", std::string(kOpenOurs)}};
  if (content.front() != '{' && content.front() != '[') {
    return {std::nullopt, Problem{"", "This is not a Branchlight file.", std::string(kOpenOurs)}};
  }
  TreeBuilder builder;
  const bool read = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  if (read && builder.root) return {std::move(builder.root), std::nullopt};
  if (!builder.refusal.empty()) return {std::nullopt, Problem{"", builder.refusal, std::string(kOpenOurs)}};
  return {std::nullopt, broken(text, builder.broken_at().value_or(0), builder.number_too_large())};
}

}  // namespace document
