// Words typed with the phone's own keyboard: drawn here, edited by a real field of the page
// that lies over it while it has the focus.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace ui {

struct TextFieldOptions {
  std::string value{};
  std::string placeholder{};    // only where the label is not enough
  std::string error{};          // sentence under the field; empty: fine
  bool hide_label = false;    // still said
};
// Each change of the text, as typed; the caller checks it (circuit::check_name) and may refuse:
// pass what was typed in `value` and the reason in `error` until it is good.
std::optional<std::string> text_field(std::string_view label, const TextFieldOptions& options);

}  // namespace ui
