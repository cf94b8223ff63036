// What holds for every circuit: what the person prefers, what the device prefers where the person
// leaves it to the device, and the window.
#pragma once

#include <string_view>
#include <vector>

#include "app/preferences.h"
#include "app/records.h"
#include "app/revision.h"
#include "platform/platform.h"
#include "units/format.h"

namespace app {

inline constexpr std::string_view kPreferencesKey = "preferences";

class Settings {
 public:
  Settings(platform::Host& host, Records& records, Revision& revision, const std::vector<platform::StoredRecord>& stored);
  Settings(const Settings&) = delete;
  Settings& operator=(const Settings&) = delete;

  [[nodiscard]] const Preferences& preferences() const { return preferences_; }
  void set_preferences(Preferences preferences);     // stored before it returns
  [[nodiscard]] const platform::Surroundings& surroundings() const { return surroundings_; }
  void surroundings_changed(const platform::Surroundings& surroundings);   // told by the host
  [[nodiscard]] bool dark() const;
  [[nodiscard]] units::Preference units() const;

 private:
  platform::Host& host_;
  Records& records_;
  Revision& revision_;
  Preferences preferences_;
  platform::Surroundings surroundings_;
};

}  // namespace app
