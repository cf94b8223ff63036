// Where the volts go on the way to one outlet, part by part, and what a plain table that counts
// the wire alone would have said: so that an answer one size thicker than such a table is
// understood, not doubted.
#pragma once

#include <optional>
#include <vector>

#include "circuit/circuit.h"
#include "sizing/answer.h"
#include "tables/citation.h"
#include "tables/conductor.h"

namespace sizing {

enum class ShareKind { feeder, fuse, wire, in_line, joints };
struct VoltShare {
  ShareKind kind;
  std::string_view name;          // "Wire", "Feeder and main fuse"
  units::Volts volts;             // lost there, both conductors
};
struct VoltShares {
  std::size_t outlet = 0;         // index in circuit.outlets: the one nearest its limit
  units::Volts at_battery;        // its posts
  units::Volts at_device;
  std::vector<VoltShare> shares;  // largest first; they add up to at_battery - at_device
};
// Of a judged candidate, at its worst outlet under its worst loading, battery resting.
VoltShares where_volts_go(const circuit::Circuit& circuit, const Candidate& candidate);

// The size that the formula of the trade's wire-only tables gives for the same current, length and
// limit: area = K x I x L / V, loop length, copper at about 29 degC.
struct WireOnly {
  const tables::Conductor* size = nullptr;   // nullptr: the list ends before it
  units::Amperes current;
  units::Metres one_way;
  const tables::Citation* citation = nullptr;
};
WireOnly wire_only_size(const circuit::Circuit& circuit, const Candidate& candidate);

}  // namespace sizing
