// Devices, sources and parts. Those with a symbol in circuit diagrams (IEC 60617, from memory) are
// drawn as it.
#include "ui/icon_pen.h"

namespace ui {
namespace {

void box(const Pen& pen, float left, float top, float right, float bottom) {
  pen.line({{left, top}, {right, top}, {right, bottom}, {left, bottom}}, true);
}
void circle(const Pen& pen, ImVec2 centre, float radius) { pen.arc(centre, radius, 0, 2 * kPi); }
void wave(const Pen& pen, float x, float y) { pen.line({{x - 3.4F, y}, {x - 1.7F, y - 1.9F}, {x, y}, {x + 1.7F, y + 1.9F}, {x + 3.4F, y}}); }
void direct(const Pen& pen, float x, float y) {
  pen.line({{x - 3, y - 1.3F}, {x + 3, y - 1.3F}});
  pen.line({{x - 3, y + 1.7F}, {x - 1.6F, y + 1.7F}});
  pen.line({{x + 1.6F, y + 1.7F}, {x + 3, y + 1.7F}});
}

void devices(const Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::lamp:
      pen.arc({0, -2.5F}, 6.5F, 0.75F * kPi, 2.25F * kPi);
      pen.line({{-4.6F, 2.1F}, {-3, 5}, {3, 5}, {4.6F, 2.1F}});
      pen.line({{-2.2F, 8.8F}, {2.2F, 8.8F}});
      break;
    case Icon::socket:                 // the round one of a dashboard
      circle(pen, {0, 0}, 9);
      circle(pen, {0, 0}, 5);
      pen.dot({0, 0}, 1.6F);
      break;
    case Icon::usb:                    // the port, seen from the front
      box(pen, -9, -4.5F, 9, 4.5F);
      pen.line({{-4.5F, 0}, {4.5F, 0}});
      break;
    case Icon::phone:
      box(pen, -5, -9.5F, 5, 9.5F);
      pen.line({{-1.2F, 6.5F}, {1.2F, 6.5F}});
      break;
    case Icon::laptop:
      box(pen, -7, -7, 7, 3);
      pen.line({{-10, 7}, {10, 7}});
      break;
    case Icon::cool_box:
      box(pen, -8.5F, -7.5F, 8.5F, 8.5F);
      pen.line({{-8.5F, -3.5F}, {8.5F, -3.5F}});
      pen.line({{0, -0.8F}, {0, 5.8F}});
      pen.line({{-2.9F, 0.8F}, {2.9F, 4.2F}});
      pen.line({{-2.9F, 4.2F}, {2.9F, 0.8F}});
      break;
    case Icon::heater:                 // warm air over a grille
      for (const float x : {-6.0F, 0.0F, 6.0F}) pen.line({{x, -9}, {x + 1.8F, -6}, {x - 1.8F, -2}, {x, 1}});
      pen.line({{-9, 5}, {9, 5}});
      pen.line({{-9, 9}, {9, 9}});
      break;
    case Icon::pump:                   // the sign of a pump: a circle with its direction
      circle(pen, {0, 0}, 9);
      pen.line({{-4, -5.5F}, {6.5F, 0}, {-4, 5.5F}}, true);
      break;
    case Icon::fan:
      pen.dot({0, 0}, 1.8F);
      pen.arc({0, -5.2F}, 3.8F, 0.6F * kPi, 2.2F * kPi);
      pen.arc({4.5F, 2.6F}, 3.8F, 1.27F * kPi, 2.87F * kPi);
      pen.arc({-4.5F, 2.6F}, 3.8F, -0.07F * kPi, 1.53F * kPi);
      break;
    case Icon::motor:
      circle(pen, {0, 0}, 9);
      pen.line({{-4, 4}, {-4, -4}, {0, 1.2F}, {4, -4}, {4, 4}});
      break;
    case Icon::inverter:               // direct to alternating
      box(pen, -9, -9, 9, 9);
      pen.line({{-9, 9}, {9, -9}});
      direct(pen, -4.2F, -4.6F);
      wave(pen, 4.2F, 4.6F);
      break;
    case Icon::radio:
      box(pen, -9.5F, -4, 9.5F, 8);
      pen.line({{2, -4}, {7.5F, -9.5F}});
      circle(pen, {-4, 2}, 3);
      pen.line({{2.5F, 0.5F}, {6.5F, 0.5F}});
      pen.line({{2.5F, 3.8F}, {6.5F, 3.8F}});
      break;
    default: break;
  }
}

void parts(const Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::battery:
      box(pen, -9.5F, -5, 9.5F, 8.5F);
      pen.line({{-5.5F, -8.5F}, {-5.5F, -5}});
      pen.line({{5.5F, -8.5F}, {5.5F, -5}});
      pen.line({{-7, 1.5F}, {-3.5F, 1.5F}});
      pen.line({{3.5F, 1.5F}, {7, 1.5F}});
      pen.line({{5.25F, -0.25F}, {5.25F, 3.25F}});
      break;
    case Icon::sun:
      circle(pen, {0, 0}, 4.4F);
      for (const ImVec2 ray : {ImVec2{0, 1}, {0.7071F, 0.7071F}, {1, 0}, {0.7071F, -0.7071F}}) {
        pen.line({{ray.x * 7.2F, ray.y * 7.2F}, {ray.x * 10, ray.y * 10}});
        pen.line({{-ray.x * 7.2F, -ray.y * 7.2F}, {-ray.x * 10, -ray.y * 10}});
      }
      break;
    case Icon::alternator:
      circle(pen, {0, 0}, 9);
      pen.line({{-5.4F, 0}, {-2.7F, -3.2F}, {0, 0}, {2.7F, 3.2F}, {5.4F, 0}});
      break;
    case Icon::charger:                // direct to direct
      box(pen, -9, -9, 9, 9);
      pen.line({{-9, 9}, {9, -9}});
      direct(pen, -4.2F, -4.6F);
      direct(pen, 4.2F, 4.6F);
      break;
    case Icon::fuse:
      box(pen, -6.5F, -3.5F, 6.5F, 3.5F);
      pen.line({{-10.5F, 0}, {10.5F, 0}});
      break;
    case Icon::switch_:
      pen.line({{-10, 3}, {-5, 3}, {4.5F, -5.5F}});
      pen.line({{5, 3}, {10, 3}});
      pen.dot({-5, 3}, 1.7F);
      pen.dot({5, 3}, 1.7F);
      break;
    default: break;
  }
}

}  // namespace

void draw_thing(const Pen& pen, Icon icon) {
  devices(pen, icon);
  parts(pen, icon);
}

}  // namespace ui
