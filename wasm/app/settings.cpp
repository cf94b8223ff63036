#include "app/settings.h"

#include <utility>

namespace app {

Settings::Settings(platform::Host& host, Records& records, Revision& revision,
                   const std::vector<platform::StoredRecord>& stored)
    : host_(host), records_(records), revision_(revision),
      preferences_(read_preferences(text_of(stored, kPreferencesKey))) {}

void Settings::set_preferences(Preferences preferences) {
  preferences_ = std::move(preferences);
  records_.store(kPreferencesKey, write_preferences(preferences_));
  host_.set_dark(dark());
  revision_.raise();
  host_.wake();
}

void Settings::surroundings_changed(const platform::Surroundings& surroundings) {
  if (surroundings.prefers_us_units != surroundings_.prefers_us_units) revision_.raise();   // lengths read otherwise
  surroundings_ = surroundings;
  host_.set_dark(dark());
  host_.wake();
}

bool Settings::dark() const {
  if (preferences_.theme == Theme::automatic) return surroundings_.prefers_dark;
  return preferences_.theme == Theme::night;
}

units::Preference Settings::units() const {
  if (preferences_.units == UnitChoice::automatic)
    return surroundings_.prefers_us_units ? units::Preference::us : units::Preference::metric;
  return preferences_.units == UnitChoice::us ? units::Preference::us : units::Preference::metric;
}

}  // namespace app
