// Sizes one circuit. Pure: same circuit, same answer.
#pragma once

#include "circuit/circuit.h"
#include "sizing/answer.h"

namespace sizing {

Answer size_circuit(const circuit::Circuit& circuit);

// One size judged on its own, whatever the shelf says; fuse chosen as size_circuit does, or
// the one given.
Candidate judge(const circuit::Circuit& circuit, const tables::Conductor& size,
                std::optional<units::Amperes> fuse = std::nullopt);

}  // namespace sizing
