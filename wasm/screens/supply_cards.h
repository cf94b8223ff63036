// The cards that tell what feeds a fuse block: its battery, the way from it, and what guards that.
#pragma once

#include "screens/screens.h"
#include "ui/ui.h"

namespace screens {

// The block of a stored vehicle that they are about.
struct Feeding {
  app::AppState& app;
  std::uint32_t vehicle = 0;
  vehicle::BlockId block;

  void tell(const circuit::Supply& supply) const;
  void tell(const circuit::Supply& supply, std::string join_key, const ui::Changed& changed) const;
};
bool draw_supply_cards(const Feeding& at);   // true when something was told: what was drawn is of before

}  // namespace screens
