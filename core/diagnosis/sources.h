// Where the weights, rates and minutes of this room come from. Nobody has published counts of such
// faults that we know of, so every one is an estimate, and says so. Private to this room.
#pragma once

#include "tables/citation.h"

namespace diagnosis {

inline constexpr tables::Citation kPriorEstimate{.id = "trace-priors",
                                                 .document = "Our estimate from trade sense",
                                                 .edition = "2026",
                                                 .where = "table of fault kinds",
                                                 .note = "relative weights, not counted failures",
                                                 .standing = tables::Standing::our_choice};
// That it happens, and often, is told by everybody who does this work; how often is our estimate.
inline constexpr tables::Citation kPriorPractice{.id = "trace-priors-practice",
                                                 .document = "Common practice, no source",
                                                 .edition = "",
                                                 .where = "everyday faults of small 12 V circuits",
                                                 .note = "that it is common; the weight itself is our estimate",
                                                 .standing = tables::Standing::common_practice};
inline constexpr tables::Citation kNoticeEstimate{.id = "trace-notice",
                                                  .document = "Our estimate from trade sense",
                                                  .edition = "2026",
                                                  .where = "how often looking, pulling or moving shows a fault",
                                                  .note = "no trial was made",
                                                  .standing = tables::Standing::our_choice};
inline constexpr tables::Citation kMinutesEstimate{.id = "trace-minutes",
                                                   .document = "Our estimate from doing it",
                                                   .edition = "2026",
                                                   .where = "minutes of a check or a repair, by one person on site",
                                                   .note = "not timed; only their ratios steer the choice",
                                                   .standing = tables::Standing::our_choice};
inline constexpr tables::Citation kJudgement{.id = "trace-judgement",
                                             .document = "Our estimate from trade sense",
                                             .edition = "2026",
                                             .where = "table of judgements",
                                             .note = "no trial was made; the reason stands beside each",
                                             .standing = tables::Standing::our_choice};
// Chosen so that the simulated cases of the evaluation took few minutes: docs/diagnosis-tuning.md.
inline constexpr tables::Citation kTuned{.id = "trace-tuned",
                                         .document = "Our choice, by simulated cases",
                                         .edition = "2026",
                                         .where = "table of judgements",
                                         .note = "how much is weighed, for few minutes and little computing",
                                         .standing = tables::Standing::our_choice};
inline constexpr tables::Citation kMeterMemory{.id = "trace-meter",
                                               .document = "Tolerance of a usual handheld meter",
                                               .edition = "",
                                               .where = "direct volts",
                                               .note = "from memory",
                                               .standing = tables::Standing::memory};
inline constexpr tables::Citation kTradeMemory{.id = "trace-memory",
                                               .document = "Usual small devices at 12 V",
                                               .edition = "",
                                               .where = "current",
                                               .note = "typical, from memory",
                                               .standing = tables::Standing::memory};
inline constexpr tables::Citation kTradePractice{.id = "trace-practice",
                                                 .document = "Common practice, no source",
                                                 .edition = "",
                                                 .where = "volts of a small system, and how one reads them",
                                                 .note = "told by everybody who does this work",
                                                 .standing = tables::Standing::common_practice};

}  // namespace diagnosis
