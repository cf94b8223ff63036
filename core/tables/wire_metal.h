// What a wire is made of.
#pragma once

namespace tables {

enum class WireMetal { copper, tinned_copper, copper_clad_aluminium };
struct WireMetalRow { WireMetal metal; double resistance_factor; double ampacity_factor; };
inline WireMetalRow wire_metal(WireMetal metal) {
  return metal == WireMetal::copper ? WireMetalRow{metal, 1.0, 1.0}
       : metal == WireMetal::tinned_copper ? WireMetalRow{metal, 1.03, 0.98} : WireMetalRow{metal, 1.6, 0.78};
}

}  // namespace tables
