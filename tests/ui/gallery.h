// One page with every widget in it, for tests that ask something of all of them.
#pragma once

#include <string>

#include "ui/ui.h"

namespace gallery {

struct Model {
  double amperes = 15, metres = 5.7;
  bool on = true, ticked = true, hot = false;
  std::size_t units = 0, setting = 2, temperature = 0;
  std::string name = "Bench outlets";
  int pressed = 0;
  std::size_t place = 0;
  std::size_t size = 2;
  ui::Knowledge wire = ui::Knowledge::guessed, fuse = ui::Knowledge::known, tail = ui::Knowledge::unknown;
  std::size_t tile = 2;
  bool shelf[5] = {true, true, true, false, false};
};

// A chain of outlets as a sketch would have it; `outlets` wide.
drawing::Picture chain(int outlets);
void answers(Model& m);
void inputs(Model& m);
void others(Model& m);
void vehicle(Model& m);
void page(Model& m);
void vehicle_page(Model& m);      // what vehicle() shows, alone

}  // namespace gallery
