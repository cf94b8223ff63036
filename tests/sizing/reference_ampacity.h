// The derated ampacity worked out a second time, from the published rows in tests/reference/
// and nothing of the tables room but a size's name.
#pragma once

#include <optional>
#include <string>

#include "tables/ampacity.h"

namespace reference_ampacity {

// nullopt: the table has no figure there.
std::optional<double> derated_a(tables::AmpacityTableId table, const std::string& size_id,
                                const tables::Surroundings& around, tables::WireBuild build = {});
// NEC 552.10(E)(1) for AWG sizes to 10; nullopt where the rule has none.
std::optional<double> road_ceiling_a(const std::string& awg_id);

}  // namespace reference_ampacity
