// How large a fuse may be: the least of what it protects carries: wire, tail, clamp, splice,
// terminals, outlets, what is in the line, and the ceiling of the practice chosen. And what a short does: current at the far end, time
// to open, heat let through.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sizing/context.h"
#include "sizing/zones.h"
#include "tables/ampacity.h"

namespace sizing {

enum class Link { wire, wire_there, tail, clamp, splice, terminal, outlet, in_line, practice_ceiling };

struct LinkRating {
  Link link;
  units::Amperes most;
  std::optional<std::size_t> outlet;      // for terminals, outlets, what is in the line, wire that is there
  const tables::Citation* citation = nullptr;
};
// Everything that the fuse of a zone must protect, for runs of `size` with `tail` at the outlets,
// and the wire that is there already. Where the same link occurs often, the weakest stands for all.
struct FuseCeiling {
  std::vector<LinkRating> links;
  tables::AmpacityResult wire;
  const LinkRating* least = nullptr;      // into links
  const LinkRating* least_part = nullptr; // of clamp, splice, terminal, outlet, what is in the line; nullptr: none
  [[nodiscard]] units::Amperes most() const { return least->most; }
};
void find_ceiling(const Context& context, const tables::Conductor& size, const tables::Conductor* tail,
                  FuseCeiling& into, std::size_t zone = kBranchZone);
// What one run of wire carries where it lies: its size, metal, sheath, surroundings.
tables::AmpacityResult run_ampacity(const circuit::Circuit& circuit, const tables::Conductor& size,
                                    tables::WireMetal metal, bool two_core);
std::string link_text(const Context& context, const LinkRating& link);     // "outlet C", "wire"
std::string chain_text(const Context& context, const FuseCeiling& ceiling);// "wire 45 A, clamp 30 A, ..."

// Smallest standard rating of the family from `least` up; nullopt past its end. Ratings in
// `missing` are passed over.
std::optional<units::Amperes> standard_fuse(const tables::FuseFamily& family, units::Amperes least,
                                            const std::vector<double>& missing = {});

// Tail: the run's own size where every terminal behind a splice takes it, else the largest smaller one that all
// take and the splice too; nullptr when there is none.
const tables::Conductor* choose_tail(const Context& context, const tables::Conductor& size);
// What goes into an outlet's terminals: the wire that is there, the run itself where it is not spliced, else the tail.
const tables::Conductor& wire_at_terminal(const circuit::Outlet& outlet, const tables::Conductor& size,
                                          const tables::Conductor* tail);

struct FarShort {
  std::size_t outlet = 0;
  units::Amperes current;    // battery low, wire at its insulation rating: the least there can be
};
// By zone, the short that draws the least there: at the outlet of the zone with the most
// resistance before it. nullopt: no outlet lies in that zone.
std::vector<std::optional<FarShort>> far_shorts(const Context& context, const network::Fitted& fitted);

// The fuses that a short in a zone flows through: its own, then each before it. Any of them ends it.
struct FuseBefore {
  const tables::FuseFamily* family;
  units::Amperes rating;
};
std::vector<FuseBefore> fuses_before(const Context& context, std::size_t zone, units::Amperes branch_fuse);

// Most I^2 t the fuse may let through over all short currents from `least` up, by its slowest
// gates held as steps; above the last gate the melting energy stays that of the last gate.
// nullopt: no gate promises that it opens at `least`.
std::optional<units::AmpereSquaredSeconds> let_through(const tables::FuseFamily& family, units::Amperes rating,
                                                       units::Amperes least);

// k^2 S^2 of a conductor from its insulation rating to the short-time temperature.
units::AmpereSquaredSeconds withstands(const tables::Conductor& size, units::Celsius insulation,
                                       tables::WireMetal metal = tables::WireMetal::copper);

}  // namespace sizing
