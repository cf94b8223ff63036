#include "ui/icon.h"

#include "ui/icon_pen.h"

namespace ui {
namespace {

void places(const Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::ruler:                  // a rule laid aslant, with its marks
      pen.line({{-9, 5}, {5, -9}, {9, -5}, {-5, 9}}, true);
      pen.line({{-5.5F, 1.5F}, {-3.5F, 3.5F}});
      pen.line({{-2, -2}, {1, 1}});
      pen.line({{1.5F, -5.5F}, {3.5F, -3.5F}});
      break;
    case Icon::wire:                   // a wire with a stripped end, bent round
      pen.line({{-9, -6}, {-1, -6}});
      pen.arc({-1, -1}, 5, -kPi / 2, 0);
      pen.line({{4, -1}, {4, 4}});
      pen.line({{2, 4}, {6, 4}});
      pen.line({{4, 4}, {4, 9}});
      break;
    case Icon::check: pen.line({{-8, 0.5F}, {-2.5F, 6}, {8, -5.5F}}); break;
    case Icon::pulse: pen.line({{-10, 1}, {-5, 1}, {-2, -8}, {2, 8}, {5, 1}, {10, 1}}); break;
    case Icon::table:
      pen.line({{-9, -8}, {9, -8}, {9, 8}, {-9, 8}}, true);
      pen.line({{-9, -2.5F}, {9, -2.5F}});
      pen.line({{-9, 2.8F}, {9, 2.8F}});
      pen.line({{-2.5F, -8}, {-2.5F, 8}});
      break;
    case Icon::sums:                   // plus, minus, equals: sums to do
      pen.line({{-8.5F, -5}, {-2.5F, -5}});
      pen.line({{-5.5F, -8}, {-5.5F, -2}});
      pen.line({{3, -5}, {9, -5}});
      pen.line({{-8, 3}, {-3, 8}});
      pen.line({{-8, 8}, {-3, 3}});
      pen.line({{3, 4}, {9, 4}});
      pen.line({{3, 7.5F}, {9, 7.5F}});
      break;
    default: break;
  }
}

void arrows(const Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::back:
      pen.line({{-2, -7}, {-9, 0}, {-2, 7}});
      pen.line({{-9, 0}, {9, 0}});
      break;
    case Icon::chevron: pen.line({{-3, -6}, {3, 0}, {-3, 6}}); break;
    case Icon::expand: pen.line({{-6, -3}, {0, 3}, {6, -3}}); break;
    case Icon::collapse: pen.line({{-6, 3}, {0, -3}, {6, 3}}); break;
    case Icon::up:
      pen.line({{-6, -2}, {0, -8}, {6, -2}});
      pen.line({{0, -8}, {0, 8}});
      break;
    case Icon::down:
      pen.line({{-6, 2}, {0, 8}, {6, 2}});
      pen.line({{0, -8}, {0, 8}});
      break;
    case Icon::undo:
      pen.line({{-4, -9}, {-9, -4}, {-4, 1}});
      pen.line({{-9, -4}, {3, -4}});
      pen.arc({3, 1.5F}, 5.5F, -kPi / 2, kPi / 2);
      pen.line({{3, 7}, {-2, 7}});
      break;
    case Icon::redo:
      pen.line({{4, -9}, {9, -4}, {4, 1}});
      pen.line({{9, -4}, {-3, -4}});
      pen.arc({-3, 1.5F}, 5.5F, kPi / 2, 3 * kPi / 2);
      pen.line({{-3, 7}, {2, 7}});
      break;
    case Icon::share:
      pen.line({{-5, -4}, {0, -9}, {5, -4}});
      pen.line({{0, -9}, {0, 3}});
      pen.line({{-8, -1}, {-8, 8}, {8, 8}, {8, -1}});
      break;
    default: break;
  }
}

}  // namespace

void draw_icon(Icon icon, float x, float y, float size, std::uint32_t colour, float weight) {
  const Pen pen(x - 0.5F, y - 0.5F, size, colour, weight * size / 24.0F);
  switch (icon) {
    case Icon::none: break;
    case Icon::more:
      pen.dot({-7.5F, 0}, 1.9F);
      pen.dot({0, 0}, 1.9F);
      pen.dot({7.5F, 0}, 1.9F);
      break;
    case Icon::close:
      pen.line({{-6.5F, -6.5F}, {6.5F, 6.5F}});
      pen.line({{-6.5F, 6.5F}, {6.5F, -6.5F}});
      break;
    case Icon::plus: pen.line({{0, -7}, {0, 7}}); [[fallthrough]];
    case Icon::minus: pen.line({{-7, 0}, {7, 0}}); break;
    case Icon::warning:
      pen.line({{0, -9}, {10, 8}, {-10, 8}}, true);
      pen.line({{0, -3}, {0, 2.5F}});
      pen.dot({0, 5.3F}, 1.2F);
      break;
    case Icon::stop:                   // eight corners, as on a road
      pen.line({{-4, -9.5F}, {4, -9.5F}, {9.5F, -4}, {9.5F, 4}, {4, 9.5F}, {-4, 9.5F}, {-9.5F, 4}, {-9.5F, -4}}, true);
      pen.line({{-3.2F, -3.2F}, {3.2F, 3.2F}});
      pen.line({{-3.2F, 3.2F}, {3.2F, -3.2F}});
      break;
    case Icon::backspace:
      pen.line({{-10, 0}, {-4, -7}, {10, -7}, {10, 7}, {-4, 7}}, true);
      pen.line({{-0.5F, -2.7F}, {5, 2.7F}});
      pen.line({{-0.5F, 2.7F}, {5, -2.7F}});
      break;
    case Icon::book:
      pen.line({{-8, -9}, {8, -9}, {8, 9}, {-8, 9}}, true);
      pen.line({{-4, -9}, {-4, 9}});
      pen.line({{0, -4}, {4.5F, -4}});
      break;
    case Icon::search:
      pen.arc({-1.5F, -1.5F}, 6.5F, 0, 2 * kPi);
      pen.line({{3.4F, 3.4F}, {9, 9}});
      break;
    case Icon::steps:                  // three lines, each with its mark
      for (const float at : {-7.0F, 0.0F, 7.0F}) {
        pen.dot({-7.5F, at}, 1.8F);
        pen.line({{-2.5F, at}, {9, at}});
      }
      break;
    case Icon::tag:                    // a label with its hole
      pen.line({{-9, -9}, {0, -9}, {9, 0}, {0, 9}, {-9, 0}}, true);
      pen.dot({-4.5F, -4.5F}, 1.6F);
      break;
    case Icon::sliders:                // what is set, each where it stands
      pen.line({{-9, -6}, {9, -6}});
      pen.line({{-9, 0}, {9, 0}});
      pen.line({{-9, 6}, {9, 6}});
      pen.dot({-4, -6}, 2.6F);
      pen.dot({4, 0}, 2.6F);
      pen.dot({-1, 6}, 2.6F);
      break;
    case Icon::folder: pen.line({{-9, -7}, {-3, -7}, {0, -4}, {9, -4}, {9, 8}, {-9, 8}}, true); break;
    default:
      places(pen, icon);
      arrows(pen, icon);
      draw_thing(pen, icon);
  }
}

}  // namespace ui
