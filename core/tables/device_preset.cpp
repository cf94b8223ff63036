#include "tables/device_preset.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

constexpr std::optional<PresetStart> kNoStart;
constexpr std::optional<units::Volts> kNoMinimum;
constexpr std::optional<PresetStart> start(double times, double seconds) { return PresetStart{times, units::Seconds(seconds)}; }
constexpr std::optional<units::Volts> volts(double per_12v) { return units::Volts(per_12v); }

// Chargers and inverters: what comes out over an efficiency of 85 to 90 %. Motors: a start of two to three
// times the running current. A diesel heater's glow pin: about 120 W for some minutes; two are the longest that a start is told as.
constexpr std::array kPresets = std::to_array<DevicePreset>({
    {"phone-charger", "Phone charger", "usb mobile telephone", DeviceGroup::charging, DrawsAs::watts, units::Watts(20.0),
     RunsFor::hours, kNoStart, kNoMinimum, true, &kTypicalDevices},
    {"laptop-usb-c", "Laptop over USB-C", "computer notebook power delivery 65", DeviceGroup::charging, DrawsAs::watts, units::Watts(72.0),
     RunsFor::hours, kNoStart, kNoMinimum, true, &kTypicalDevices},
    {"cool-box", "Cool box, compressor", "fridge refrigerator freezer", DeviceGroup::cooling, DrawsAs::watts, units::Watts(45.0),
     RunsFor::hours, start(2.5, 1), volts(10.4), true, &kTypicalDevices},
    {"diesel-heater", "Diesel heater", "air heater parking glow", DeviceGroup::heating, DrawsAs::watts, units::Watts(30.0),
     RunsFor::hours, start(4, 120), volts(10.5), true, &kTypicalDevices},
    {"water-pump", "Water pump", "pressure tap shower fresh", DeviceGroup::water, DrawsAs::amperes, units::Watts(60.0),
     RunsFor::while_used, start(2.5, 0.3), kNoMinimum, true, &kTypicalDevices},
    {"led-strip", "LED strip, 3 m", "light tape", DeviceGroup::lighting, DrawsAs::amperes, units::Watts(30.0),
     RunsFor::hours, kNoStart, kNoMinimum, true, &kTypicalDevices},
    {"reading-light", "Reading light", "led lamp spot", DeviceGroup::lighting, DrawsAs::amperes, units::Watts(3.0),
     RunsFor::hours, kNoStart, kNoMinimum, true, &kTypicalDevices},
    {"roof-fan", "Roof fan", "vent ventilator", DeviceGroup::air, DrawsAs::amperes, units::Watts(35.0),
     RunsFor::hours, start(2, 0.5), kNoMinimum, true, &kTypicalDevices},
    {"inverter-300", "Inverter, 300 W", "mains sine 230 120", DeviceGroup::mains, DrawsAs::watts, units::Watts(353.0),
     RunsFor::hours, start(1.5, 0.5), volts(10.5), true, &kTypicalDevices},
    {"usb-pair", "USB outlet, two ports", "usb-a usb-c double socket", DeviceGroup::charging, DrawsAs::watts, units::Watts(36.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"tablet-charger", "Tablet charger", "usb pad", DeviceGroup::charging, DrawsAs::watts, units::Watts(33.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"tool-charger", "Charger for tool batteries", "drill camera bike", DeviceGroup::charging, DrawsAs::watts, units::Watts(90.0),
     RunsFor::hours, kNoStart, volts(10.5), false, &kTypicalDevices},
    {"fridge", "Fridge, compressor", "refrigerator 100 l", DeviceGroup::cooling, DrawsAs::watts, units::Watts(60.0),
     RunsFor::hours, start(2.5, 1), volts(10.4), false, &kTypicalDevices},
    {"cool-box-thermoelectric", "Cool box, thermoelectric", "peltier", DeviceGroup::cooling, DrawsAs::heat, units::Watts(50.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"fridge-absorption", "Fridge, absorption", "three way gas", DeviceGroup::cooling, DrawsAs::heat, units::Watts(130.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"electric-blanket", "Electric blanket", "heated bed pad", DeviceGroup::heating, DrawsAs::heat, units::Watts(60.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"kettle", "Kettle", "boil water cup", DeviceGroup::heating, DrawsAs::heat, units::Watts(150.0),
     RunsFor::while_used, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"bilge-pump", "Bilge pump", "boat drain", DeviceGroup::water, DrawsAs::amperes, units::Watts(40.0),
     RunsFor::while_used, start(3, 0.3), kNoMinimum, false, &kTypicalDevices},
    {"toilet-pump", "Toilet with macerator", "head wc", DeviceGroup::water, DrawsAs::amperes, units::Watts(200.0),
     RunsFor::moments, start(3, 0.3), kNoMinimum, false, &kTypicalDevices},
    {"ceiling-light", "Ceiling light", "led lamp dome", DeviceGroup::lighting, DrawsAs::amperes, units::Watts(6.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"navigation-lights", "Navigation lights", "boat led masthead", DeviceGroup::lighting, DrawsAs::amperes, units::Watts(10.0),
     RunsFor::hours, kNoStart, kNoMinimum, false, &kTypicalDevices},
    {"small-fan", "Small fan", "cabin", DeviceGroup::air, DrawsAs::amperes, units::Watts(10.0),
     RunsFor::hours, start(2, 0.5), kNoMinimum, false, &kTypicalDevices},
    {"inverter-600", "Inverter, 600 W", "mains sine 230 120", DeviceGroup::mains, DrawsAs::watts, units::Watts(706.0),
     RunsFor::hours, start(1.5, 0.5), volts(10.5), false, &kTypicalDevices},
    {"inverter-1000", "Inverter, 1000 W", "mains sine 230 120", DeviceGroup::mains, DrawsAs::watts, units::Watts(1176.0),
     RunsFor::hours, start(1.5, 0.5), volts(10.5), false, &kTypicalDevices},
    {"inverter-1500", "Inverter, 1500 W", "mains sine 230 120", DeviceGroup::mains, DrawsAs::watts, units::Watts(1765.0),
     RunsFor::hours, start(1.5, 0.5), volts(10.5), false, &kTypicalDevices},
    {"inverter-2000", "Inverter, 2000 W", "mains sine 230 120", DeviceGroup::mains, DrawsAs::watts, units::Watts(2353.0),
     RunsFor::hours, start(1.5, 0.5), volts(10.5), false, &kTypicalDevices},
    {"tyre-inflator", "Tyre inflator", "air compressor tire", DeviceGroup::motors, DrawsAs::amperes, units::Watts(120.0),
     RunsFor::while_used, start(2.5, 0.3), kNoMinimum, false, &kTypicalDevices},
    {"windlass", "Windlass", "anchor winch", DeviceGroup::motors, DrawsAs::amperes, units::Watts(800.0),
     RunsFor::moments, start(3, 0.5), kNoMinimum, false, &kTypicalDevices},
    {"bow-thruster", "Bow thruster", "boat tunnel", DeviceGroup::motors, DrawsAs::amperes, units::Watts(1500.0),
     RunsFor::moments, start(3, 0.5), kNoMinimum, false, &kTypicalDevices},
    {"router", "Router", "internet wifi modem", DeviceGroup::media, DrawsAs::watts, units::Watts(12.0),
     RunsFor::hours, kNoStart, volts(9), false, &kTypicalDevices},
    {"television", "Television", "tv screen", DeviceGroup::media, DrawsAs::watts, units::Watts(30.0),
     RunsFor::hours, kNoStart, volts(10.5), false, &kTypicalDevices},
    {"car-radio", "Radio with amplifier", "stereo music", DeviceGroup::media, DrawsAs::watts, units::Watts(60.0),
     RunsFor::hours, kNoStart, volts(10.5), false, &kTypicalDevices},
    {"vhf-radio", "VHF radio, sending", "marine transceiver", DeviceGroup::media, DrawsAs::watts, units::Watts(72.0),
     RunsFor::moments, kNoStart, volts(10.8), false, &kTypicalDevices},
});

constexpr bool complete() {
  for (std::size_t i = 0; i < kPresets.size(); ++i) {
    const DevicePreset& row = kPresets[i];
    if (row.key.empty() || row.name.empty() || row.keywords.empty() || row.citation == nullptr) return false;
    if (!(row.running > units::Watts(0.0))) return false;
    if (row.start && !(row.start->times >= 1.0 && row.start->lasting > units::Seconds(0.0))) return false;
    for (std::size_t j = 0; j < i; ++j) {
      if (kPresets[j].key == row.key || kPresets[j].name == row.name) return false;
    }
  }
  return true;
}
static_assert(complete(), "a kind of device without a name, a power or a source, or twice");

}  // namespace

std::span<const DevicePreset> device_presets() { return kPresets; }

const DevicePreset* device_preset_by_key(std::string_view key) { return row_by_key(kPresets, key); }

}  // namespace tables
