// Quick: the calculators that need no circuit, by what they are about.
#include <array>

#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "screens/places/quick.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::array<std::string_view, 4> kRun{"drop-of-a-run", "wire-for-a-run", "longest-run", "wire-sizes"};
constexpr std::array<std::string_view, 2> kCarry{"most-current", "fuse-for-a-wire"};
constexpr std::array<std::string_view, 2> kFuse{"fuse-at-n-times", "short-at-the-far-end"};
constexpr std::array<std::string_view, 3> kPower{"watts-amps-volts", "loads-together", "battery-run-time"};
constexpr std::array<std::string_view, 2> kReadings{"joint", "path"};
constexpr std::array<Group, 5> kCalculatorGroups{{{"A run of wire", kRun},
                                        {"What a wire may carry", kCarry},
                                        {"Loads and battery", kPower},
                                        {"From your meter", kReadings},
                                        {"Fuse and short circuit", kFuse}}};

void draw_calculators(app::AppState& app, const Group& group) {
  ui::begin_card(group.name, {.name = std::string(group.name), .tone = ui::Tone::plain});
  ui::card_title(group.name);
  for (const std::string_view key : group.keys) {
    const calculators::Calculator* calculator = calculators::calculator_by_key(key);
    if (calculator == nullptr) continue;
    if (ui::list_row(calculator->title, {.sub = std::string(calculator->question)})) app.navigator().go(app::Route::quick(key));
  }
  ui::end_card();
}

void draw_all_calculators(app::AppState& app, Memory& memory) {
  const ui::PageEvents events =
      ui::begin_page("quick", {.title = "Quick", .subtitle = "One sum at a time, no circuit needed", .back = false, .more = true});
  if (events.more) app.navigator().go(app::Route::at(app::Screen::preferences));
  draw_messages(app);
  if (!draw_search(app, memory)) {
    ui::begin_columns();
    for (std::size_t i = 0; i < kCalculatorGroups.size(); ++i) {
      if (i == 2) ui::next_column();
      draw_calculators(app, kCalculatorGroups[i]);
    }
    ui::end_columns();
  }
  end_page_at(app, app::Screen::quick);
}

}  // namespace

std::span<const Group> calculator_groups() { return kCalculatorGroups; }

void draw_quick_screen(app::AppState& app, Memory& memory) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(app.shown().key);
  if (calculator == nullptr) draw_all_calculators(app, memory);
  else draw_calculator(app, memory, *calculator);
}

}  // namespace screens
