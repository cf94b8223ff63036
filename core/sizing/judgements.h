// Each criterion on its own: value, limit, where the rule comes from, and a sentence.
// docs/sizing-rules.md gives formula and source of each.
#pragma once

#include <optional>
#include <vector>

#include "sizing/answer.h"
#include "sizing/context.h"
#include "sizing/protection.h"
#include "sizing/worst_outlets.h"

namespace sizing {

// What is judged: one size, its tail, the fuse that would go with it.
struct Judging {
  const Context& context;
  const tables::Conductor& size;
  const tables::Conductor* tail;
  const FuseCeiling& ceiling;
  std::optional<units::Amperes> fuse;   // nullopt: the family has none for this current
  bool fuse_carries;                    // rated for `need` or more
  units::Amperes design;                // most that may flow
  units::Amperes need;                  // what that asks of the fuse: Context::fuse_need()
};

// A judgement to be filled in: it has not passed.
[[nodiscard]] inline Judgement judgement(Criterion criterion, Measure measure, const tables::Citation* citation) {
  Judgement made;
  made.criterion = criterion;
  made.measure = measure;
  made.citation = citation;
  return made;
}

Judgement judge_ampacity(const Judging& judging);
Judgement judge_fuse_rating(const Judging& judging);
Judgement judge_fuse_voltage(const Judging& judging);
Judgement judge_part_rating(const Judging& judging);
Judgement judge_fit(const Judging& judging);
Judgement judge_mechanical_minimum(const Judging& judging);

struct CannotRun {
  std::optional<std::size_t> outlet;
  bool only_when_low = false;
  bool unsettled = false;
};
Judgement judge_operating_point(const Judging& judging, const CannotRun& cannot_run);
Judgement judge_drop(const Judging& judging, const OutletsFound& found);
Judgement judge_device_minimum(const Judging& judging, const std::vector<double>& low_v);
using FarShorts = std::vector<std::optional<FarShort>>;   // by zone
Judgement judge_far_short(const Judging& judging, const FarShorts& shorts);
Judgement judge_withstand(const Judging& judging, const FarShorts& shorts);

// What flows at most through the fuse of a zone, and what that asks of its rating.
struct ZoneCurrent {
  units::Amperes rated;         // at nominal voltage, within the cap
  units::Amperes most;          // between a low battery and a charging one
  units::Amperes lasting;       // of `rated`: on for hours
  units::Amperes lasting_most;  // of `most`
  units::Amperes need;          // as Context::fuse_need()
};
ZoneCurrent zone_current(const Context& context, const Zone& zone, const std::vector<OutletResult>& outlets);
Judgement judge_inner_fuses(const Judging& judging, const std::vector<OutletResult>& outlets);
// What flows at most while this device starts and all else runs.
units::Amperes start_peak(const Context& context, units::Amperes design, const circuit::Device& device);
Judgement judge_inrush(const Judging& judging);
// The feeder lies in the surroundings that the circuit is told to lie in, by itself: not bundled, and
// clipped to a surface where a building's table is used. nullopt: no feeder, or no figure.
std::optional<tables::DeratedAmpacity> feeder_ampacity(const Context& context);
Judgement judge_feeder(const Judging& judging);
Judgement judge_feeder_drop(const Judging& judging, const network::Fitted& fitted);

}  // namespace sizing
