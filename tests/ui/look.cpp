// Pictures of the gallery, to be looked at: test_ui_look FOLDER. Not a test.
#include <string>

#include "gallery.h"
#include "headless.h"

namespace {

struct Shot {
  const char* name;
  float width, height;
  double text;
  bool dark;
  const char* open;         // sheet to open, "keypad", or "vehicle": that page alone
  float scroll;             // px down
};

void take(const std::string& folder, const Shot& shot) {
  Headless h;
  h.window.width = shot.width;
  h.window.height = shot.height;
  h.window.pixel_ratio = shot.width > 700 ? 1.0F : 2.0F;
  h.window.text_scale = shot.text;
  h.window.dark = shot.dark;
  gallery::Model model;
  const std::string open = shot.open;
  const bool vehicle = open == "vehicle";
  h.draw = [&] { vehicle ? gallery::vehicle_page(model) : gallery::page(model); };
  h.settle();
  if (open == "keypad") h.press(ui::Role::spin, "At most at once");
  if (open == "wrong") {
    h.press(ui::Role::spin, "At most at once");
    for (const char* key : {"9", "9", "9", "W", "OK"}) h.press(ui::Role::button, key);
  }
  if (open == "sheet") h.press(ui::Role::button, "Open the sheet");
  if (open == "delete") h.press(ui::Role::button, "Delete circuit");
  if (open == "toast") {
    h.press(ui::Role::button, "Delete circuit");
    h.press(ui::Role::button, "Delete");
  }
  if (shot.scroll > 0) {
    h.state().mouse_move(shot.width / 2, shot.height / 2);
    h.frame();
    h.state().wheel(0, shot.scroll / 36);
    h.settle();
    h.touch(ui::Touch::start, 1, 1);
    h.touch(ui::Touch::cancel, 1, 1);
    h.settle();
  }
  write_png(folder + "/" + shot.name + ".png", h.width(), h.height(), h.picture());
}

}  // namespace

int main(int argc, char** argv) {
  const std::string folder = argc > 1 ? argv[1] : ".";
  const Shot shots[] = {
      {"day-1", 412, 915, 1, false, "", 0},      {"day-2", 412, 915, 1, false, "", 760},    {"day-3", 412, 915, 1, false, "", 9000},
      {"night-1", 412, 915, 1, true, "", 0},     {"night-2", 412, 915, 1, true, "", 760},   {"night-3", 412, 915, 1, true, "", 9000},
      {"keypad", 412, 915, 1, false, "keypad", 0}, {"wrong", 412, 915, 1, true, "wrong", 0},  {"sheet", 412, 915, 1, false, "sheet", 0},
      {"delete", 412, 915, 1, true, "delete", 0}, {"toast", 412, 915, 1, false, "toast", 0}, {"small-1", 320, 640, 1, false, "", 0},
      {"large-1", 320, 900, 2, false, "", 0},    {"large-2", 320, 900, 2, false, "", 1700}, {"large-3", 320, 900, 2, false, "", 3400},
      {"large-keypad", 320, 640, 2, false, "keypad", 0},
      {"vehicle-412-day", 412, 1640, 1, false, "vehicle", 0}, {"vehicle-412-night", 412, 1640, 1, true, "vehicle", 0},
      {"vehicle-320-day", 320, 1900, 1, false, "vehicle", 0}, {"vehicle-320-night", 320, 1900, 1, true, "vehicle", 0},
      {"vehicle-large", 320, 3200, 2, false, "vehicle", 0},
      {"wide", 1280, 900, 1, false, "", 0},      {"low", 740, 360, 1, false, "", 0},        {"low-keypad", 740, 360, 1, true, "keypad", 0},
  };
  for (const Shot& shot : shots) take(folder, shot);
  return 0;
}
