// Kinds of device against what handbooks and labels give: wide bounds, so that a slip of a digit shows.
#include <cctype>

#include <doctest/doctest.h>

#include "tables/device_preset.h"

using tables::DevicePreset;

namespace {

double amperes_at_12v(const char* key) {
  const DevicePreset* preset = tables::device_preset_by_key(key);
  REQUIRE(preset != nullptr);
  return preset->running.number() / 12.0;
}

}  // namespace

TEST_CASE("devices draw what such devices usually draw: common practice, no source") {
  struct Bound { const char* key; double low_a, high_a; };
  for (const Bound& each : {Bound{"phone-charger", 0.5, 3.0}, {"laptop-usb-c", 4.0, 9.0}, {"cool-box", 2.5, 6.0}, {"fridge", 3.5, 7.0},
                            {"diesel-heater", 1.0, 4.0}, {"water-pump", 3.0, 8.0}, {"bilge-pump", 2.0, 6.0}, {"led-strip", 0.5, 5.0},
                            {"reading-light", 0.1, 0.5}, {"roof-fan", 1.0, 5.0}, {"tyre-inflator", 7.0, 15.0}, {"windlass", 50.0, 120.0},
                            {"bow-thruster", 100.0, 250.0}, {"router", 0.5, 2.0}, {"television", 1.5, 5.0}, {"kettle", 10.0, 15.0},
                            {"toilet-pump", 12.0, 25.0}, {"fridge-absorption", 8.0, 14.0}}) {
    CAPTURE(each.key);
    CHECK(amperes_at_12v(each.key) >= each.low_a);
    CHECK(amperes_at_12v(each.key) <= each.high_a);
  }
}

// Ohm's law and an efficiency of 85 % at full load, which makers give as 85 to 92 %.
TEST_CASE("an inverter draws its watts over its efficiency") {
  for (const auto& [key, watts] : {std::pair{"inverter-300", 300.0}, {"inverter-600", 600.0}, {"inverter-1000", 1000.0},
                                   {"inverter-1500", 1500.0}, {"inverter-2000", 2000.0}})
    CHECK(amperes_at_12v(key) * 12.0 == doctest::Approx(watts / 0.85).epsilon(0.002));
}

TEST_CASE("a heater's glow pin takes about 10 A for minutes, and motors start with more than they run on") {
  const DevicePreset* heater = tables::device_preset_by_key("diesel-heater");
  REQUIRE(heater != nullptr);
  REQUIRE(heater->start);
  CHECK(amperes_at_12v("diesel-heater") * heater->start->times >= 8.0);
  CHECK(amperes_at_12v("diesel-heater") * heater->start->times <= 12.0);
  CHECK(heater->start->lasting.number() >= 60.0);
  for (const DevicePreset& preset : tables::device_presets()) {
    if (preset.group == tables::DeviceGroup::motors || preset.group == tables::DeviceGroup::water) CHECK(preset.start.has_value());
    if (preset.start) CHECK(preset.start->times > 1.0);
    CHECK(preset.citation->standing == tables::Standing::memory);
    for (const char c : preset.key) CHECK((std::islower(static_cast<unsigned char>(c)) || std::isdigit(static_cast<unsigned char>(c)) || c == '-'));
  }
  CHECK(tables::device_preset_by_key("nothing") == nullptr);
}
