#include "circuit/preset.h"

#include <algorithm>

#include "circuit/limits.h"
#include "tables/supply.h"

namespace circuit {
namespace {

LoadKind kind_of(tables::DrawsAs draws) {
  switch (draws) {
    case tables::DrawsAs::amperes: return LoadKind::constant_current;
    case tables::DrawsAs::watts: return LoadKind::constant_power;
    case tables::DrawsAs::heat: break;
  }
  return LoadKind::resistive;
}

Use use_of(tables::RunsFor runs) {
  switch (runs) {
    case tables::RunsFor::hours: return Use::continuous;
    case tables::RunsFor::while_used: return Use::intermittent;
    case tables::RunsFor::moments: break;
  }
  return Use::momentary;
}

}  // namespace

Device device_from(const tables::DevicePreset& preset, units::Volts nominal) {
  Device device;
  device.name = std::string(preset.name);
  device.preset = std::string(preset.key);
  device.load.kind = kind_of(preset.draws);
  device.load.rating_in_watts = true;
  device.load.rating = preset.running.number();
  if (preset.minimum_per_12v) {
    device.load.minimum_voltage = *preset.minimum_per_12v * static_cast<double>(tables::blocks_in_series(nominal));
  }
  device.use = use_of(preset.runs);
  if (preset.start) {
    const double most = limit(Field::inrush_a).high;
    const double amperes = rated_current(device.load, nominal).number() * preset.start->times;
    device.inrush = Inrush{units::Amperes(std::min(amperes, most)), preset.start->lasting};
  }
  return device;
}

}  // namespace circuit
