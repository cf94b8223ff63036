// A device begun as one of a known kind, on 12, 24 and 48 V.
#include <doctest/doctest.h>

#include "circuit/edit.h"
#include "circuit/preset.h"
#include "circuit/validate.h"

TEST_CASE("every kind of device is valid at every nominal voltage, with the same watts and start") {
  for (const tables::DevicePreset& preset : tables::device_presets()) {
    for (const double nominal : {12.0, 24.0, 48.0}) {
      CAPTURE(preset.key);
      CAPTURE(nominal);
      circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
      made.supply.nominal = units::Volts(nominal);
      const circuit::Device device = circuit::device_from(preset, made.supply.nominal);
      const auto told = circuit::apply(made, circuit::SetDevices{made.outlets.front().id, {device}, 1});
      REQUIRE(told.circuit.has_value());
      CHECK(circuit::validate(*told.circuit).empty());
      CHECK(circuit::rated_current(device.load, made.supply.nominal).number() == doctest::Approx(preset.running.number() / nominal));
      CHECK(device.inrush.has_value() == preset.start.has_value());
      if (preset.minimum_per_12v) CHECK(device.load.minimum_voltage->number() == doctest::Approx(preset.minimum_per_12v->number() * nominal / 12.0));
    }
  }
}
