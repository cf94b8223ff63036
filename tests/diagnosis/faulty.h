// A faulted circuit built out of the general network, and read with the instrument in place: what the
// tracer's own quick model is held against. Shares nothing with core/diagnosis but the names.
#pragma once

#include <optional>

#include "diagnosis/tracer.h"
#include "network/branch_network.h"
#include "network/probe.h"

namespace diagnosis_test {

// The fault of one size (ohm where it has one) as an edit of the network, in the state of the check.
// `lamp_at`, `device_at`: what State says is plugged in.
struct Faulty {
  network::BranchNetwork branch;
  [[nodiscard]] network::NodeId node(const diagnosis::Spot& spot, bool fuse_in) const;
};
Faulty build_faulty(const diagnosis::Case& the_case, const diagnosis::Fault& fault, double ohm,
                    const diagnosis::State& state);

// Volts between the check's points, meter or lamp in place; nullopt for other kinds.
std::optional<double> read(const diagnosis::Case& the_case, const diagnosis::Fault& fault, double ohm,
                           const diagnosis::Check& check);
// What a case says is built, as one size throughout; it has to be told.
network::Fitted fitted_there(const diagnosis::Case& the_case);
// A case to try things on: three outlets of 2 A in a chain, 12 AWG behind 15 A, one neighbour, every tool.
diagnosis::Case three_outlets(diagnosis::Symptom symptom, std::vector<std::uint32_t> outlets);

}  // namespace diagnosis_test
