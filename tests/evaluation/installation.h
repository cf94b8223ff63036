// Random installations and random faults, by what the trade would find; every figure here is our
// estimate from trade sense, written without looking at the engine's own table.
#pragma once

#include <optional>
#include <string>

#include "evaluation/world.h"

namespace evaluation {

// What a person has in hand: the settings of the evaluation.
enum class Kit { meter, lamp, device_only };
std::string kit_name(Kit kit);

struct Breakdown {
  diagnosis::Case the_case;   // complaint and tools included
  World world;
};

// 1 to `most_outlets` outlets in a chain or a tree, wire and fuse from sizing, and one fault that
// somebody would notice and complain of. `pair_share`: cases with a second fault as well.
Breakdown draw_breakdown(Engine& engine, Kit kit, std::size_t most_outlets, double pair_share = 0.0);

// The same circuit with this fault, and what is complained of then; nullopt when nobody would notice.
std::optional<diagnosis::Complaint> complaint_of(const World& world, const diagnosis::Tools& tools, Engine& engine);

// Weight of a kind at one place, in the table with the reasoning.
double true_prior(diagnosis::FaultKind kind);

}  // namespace evaluation
