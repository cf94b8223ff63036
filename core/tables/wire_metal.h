// What a wire is made of.
#pragma once

namespace tables {

enum class WireMetal { copper, tinned_copper, copper_clad_aluminium };

}  // namespace tables
