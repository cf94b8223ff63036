// Kinds of device with what they usually draw: where to start while the device is not at hand. The
// label on the device goes first.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

enum class DeviceGroup { charging, cooling, heating, water, lighting, air, mains, motors, media };
// What it keeps while the volts change: its amperes, its watts, or its resistance.
enum class DrawsAs { amperes, watts, heat };
enum class RunsFor { hours, while_used, moments };

struct PresetStart {
  double times;              // of the running current, 1 and more
  units::Seconds lasting;
};

struct DevicePreset {
  std::string_view key;      // stable key in files
  std::string_view name;     // "Cool box with compressor"
  std::string_view keywords; // what else it is called
  DeviceGroup group;
  DrawsAs draws;
  units::Watts running;      // taken from the supply, at its nominal voltage
  RunsFor runs;
  std::optional<PresetStart> start;              // nullopt: none that counts
  std::optional<units::Volts> minimum_per_12v;   // below it such a device stops; nullopt: usually none
  bool common;               // offered first
  const Citation* citation;
};
std::span<const DevicePreset> device_presets();
const DevicePreset* device_preset_by_key(std::string_view key);   // nullptr when there is none

}  // namespace tables
