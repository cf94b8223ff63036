#include "screens/places.h"

#include <array>

#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::array kScreens{app::Screen::size, app::Screen::trace, app::Screen::quick, app::Screen::tables};

}  // namespace

void end_page_at(app::AppState& app, app::Screen here) {
  static const std::array<ui::Place, kScreens.size()> places{
      {{"Size", ui::Icon::ruler}, {"Trace", ui::Icon::pulse}, {"Quick", ui::Icon::sums}, {"Tables", ui::Icon::table}}};
  std::size_t current = 0;
  for (std::size_t i = 0; i < kScreens.size(); ++i)
    if (kScreens[i] == here) current = i;
  const auto pressed = ui::end_page(places, current);
  if (!pressed) return;
  const app::Route wanted = app::Route::at(kScreens[*pressed]);
  if (app.navigator().route() == wanted) return ui::scroll_page_to_top();
  app.navigator().go(wanted);
}

}  // namespace screens
