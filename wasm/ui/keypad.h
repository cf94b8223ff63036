// Our own large keys for numbers, as a sheet. stepper and number_row use it; alone it is opened
// by open_sheet(name). Hardware digits work too. OK with a bad value says what is wrong and stays.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ui/stepper.h"

namespace ui {

struct KeypadOptions {
  std::string title{};          // "Longest run"
  std::string first_text{};     // what stands there; the first key replaces it
  std::string allowed{};        // "0.05 m to 100 m"
  std::string unit{};           // of a bare number, shown beside it; empty: none
  Reader read{};
  std::vector<UnitKey> unit_keys{};
  bool minus_sign = false;
  std::function<std::string(double)> preview{};   // what follows from a good value, as it is typed
};
// Once, when OK was pressed with a good value.
std::optional<Changed> keypad(std::string_view name, const KeypadOptions& options);

}  // namespace ui
