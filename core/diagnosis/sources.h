// Where the weights, rates and minutes of this room come from. Nobody has published counts of such
// faults that we know of, so every one is an estimate, and says so. Private to this room.
#pragma once

#include "tables/citation.h"

namespace diagnosis {

inline constexpr tables::Citation kPriorEstimate{
    .id = "trace-priors", .document = "Our estimate from trade sense", .edition = "2026",
    .where = "table of fault kinds", .note = "relative weights, not counted failures",
    .standing = tables::Standing::our_choice};
// That it happens, and often, is told by everybody who does this work; how often is our estimate.
inline constexpr tables::Citation kPriorPractice{
    .id = "trace-priors-practice", .document = "Common practice, no source", .edition = "",
    .where = "everyday faults of small 12 V circuits", .note = "that it is common; the weight itself is our estimate",
    .standing = tables::Standing::common_practice};
inline constexpr tables::Citation kNoticeEstimate{
    .id = "trace-notice", .document = "Our estimate from trade sense", .edition = "2026",
    .where = "how often looking, pulling or moving shows a fault", .note = "no trial was made",
    .standing = tables::Standing::our_choice};
inline constexpr tables::Citation kMinutesEstimate{
    .id = "trace-minutes", .document = "Our estimate from doing it", .edition = "2026",
    .where = "minutes of a check, by one person on site", .note = "not timed; only their ratios steer the choice",
    .standing = tables::Standing::our_choice};

}  // namespace diagnosis
