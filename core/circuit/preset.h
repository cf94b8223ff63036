// A device begun as one of a known kind. Everything in it can be told better afterwards.
#pragma once

#include "circuit/circuit.h"
#include "tables/device_preset.h"

namespace circuit {

// For a system of this nominal voltage: in watts, with what it takes at its start and the least it runs at.
Device device_from(const tables::DevicePreset& preset, units::Volts nominal);

}  // namespace circuit
