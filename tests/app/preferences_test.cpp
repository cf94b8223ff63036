#include <doctest/doctest.h>

#include "app/app_state.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

TEST_CASE("preferences survive a restart") {
  MemoryHost host;
  {
    AppState state(host, screens::places(), {}, "");
    app::Preferences wanted = state.settings().preferences();
    wanted.theme = app::Theme::night;
    wanted.units = app::UnitChoice::us;
    wanted.text_size = 175;
    wanted.caution_seen = true;
    state.settings().set_preferences(wanted);
    CHECK(host.dark);
  }
  MemoryHost again;
  AppState state(again, screens::places(), host.stored(), "");
  CHECK(state.settings().preferences().theme == app::Theme::night);
  CHECK(state.settings().units() == units::Preference::us);
  CHECK(state.settings().preferences().text_size == 175);
  CHECK(state.settings().preferences().caution_seen);
  CHECK(state.settings().dark());
}

TEST_CASE("what a newer app wrote is kept, what makes no sense is left at its start") {
  const app::Preferences read = app::read_preferences("theme sepia\ntext-size 5000\nunits us\nvoice on\r\ncaution-seen yes\n\n");
  CHECK(read.theme == app::Theme::automatic);
  CHECK(read.text_size == 100);
  CHECK(read.units == app::UnitChoice::us);
  CHECK(read.caution_seen);
  CHECK(app::write_preferences(read).find("voice on\n") != std::string::npos);
  CHECK(app::write_preferences(app::read_preferences(app::write_preferences(read))) == app::write_preferences(read));
}

TEST_CASE("automatic follows the device") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  platform::Surroundings around;
  around.prefers_dark = true;
  around.prefers_us_units = true;
  state.settings().surroundings_changed(around);
  CHECK(state.settings().dark());
  CHECK(host.dark);
  CHECK(state.settings().units() == units::Preference::us);
  around.prefers_dark = false;
  state.settings().surroundings_changed(around);
  CHECK_FALSE(state.settings().dark());
}
