// Every figure of this room that nobody has measured or published: how sure is sure enough, how far a
// person's word or a usual meter is off, how long things take. One row each, with its reason and where it
// comes from. Rates and minutes that belong to one fault or one check stand in the rows of faults and checks.
// Private to this room.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

#include "diagnosis/fault_size.h"
#include "diagnosis/sources.h"

namespace diagnosis {

// clang-format off
enum class Judged : int {
  // People, meters, batteries.
  slip, meter_part, meter_v, word_part, eye_part, device_part, battery_part, charging_share, charging_rise,
  size_part, load_part, typed_span, word_width,
  // What is built and not known, or guessed.
  wire_unknown, wire_guessed, length_unknown, length_guessed, stand_in_fuse_a,
  // Where one word ends and the next begins.
  full_from, zero_below, no_drop_below, bright_from, dim_from, works_from, weak_from, joined_below_ohm, open_from_ohm,
  live_from_v,
  // Checks that change something, and complaints.
  short_blows_at_once, clips_take_a_new_fuse, overload_shows_again, press_is_felt, neighbour_fuse_is_seen,
  complaint_floor, complaint_unknown, told_reversed_from,
  // Minutes of getting there.
  prove_dead_min, part_splice_min, open_up_min, fuse_change_min, plug_change_min, to_battery_min, to_block_min,
  to_outlet_min, long_lead_min, each_other_min, lead_min_per_m, lead_min_at_most,
  // Physics that no table carries.
  test_device_a, block_load_a, short_ohm, flat_source_ohms,
  // Faults in pairs, and repairs.
  same_slip_twice, repair_misses,
  // Choosing the next check.
  covered, most_scenarios, cheap_products, starts, seconds, price_of_minutes, least_start_bits, rare_answer,
  sure_by_then, all_outlets, cuts, suspected, parted, weighed_from,
  // When to stop, and what to say then.
  sure, least_bits, none_fits, some_weight, most_to_try, unsure_of_likely, unsure_of_any, likely, far_better,
  // Telling what an answer would mean, and what speaks for a suspect.
  outlook_from, outlook_before, outlook_after, cleared_below, raised_above, raised_from, most_named, evidence_ratio,
  pair_told_from,
  // Typed readings, and the re-test.
  most_per_nominal, minus_under_load_v, above_battery, retest_part, retest_v,
};
// clang-format on
inline constexpr std::size_t kJudgedCount = static_cast<std::size_t>(Judged::retest_v) + 1;

struct Judgement {
  Judged which;
  double value;
  std::string_view unit;  // "V", "ohm", "min", "bit"; empty: a share, a factor, a count
  std::string_view reason;
  const tables::Citation* citation;
};

// clang-format off
inline constexpr std::array<Judgement, kJudgedCount> kJudgements{{
    {Judged::slip, 0.03, "", "one answer in about thirty is wrong: the wrong clip, the wrong outlet, a slip of the thumb; "
     "then any other answer is as likely", &kJudgement},
    {Judged::meter_part, 0.005, "", "a usual handheld meter on direct volts is 0.5 % off", &kMeterMemory},
    {Judged::meter_v, 0.02, "V", "and two digits of its last place", &kMeterMemory},
    {Judged::word_part, 0.012, "of the battery", "how sharply a person tells 'about' from 'in between'", &kJudgement},
    {Judged::eye_part, 0.05, "of nominal", "how sharply a person tells a bright lamp from a dim one", &kJudgement},
    {Judged::device_part, 0.04, "of nominal", "devices differ in the volts at which they stop", &kJudgement},
    {Judged::battery_part, 0.03, "", "a lead-acid battery rests at 12.0 to 12.8 V by its state of charge", &kTradePractice},
    {Judged::charging_share, 0.2, "", "one vehicle in five is on charge while somebody looks for the fault", &kJudgement},
    {Judged::charging_rise, 0.10, "", "alternator, solar or charger hold 13.3 to 14.6 V, a tenth above rest; that is sound",
     &kTradePractice},
    {Judged::size_part, 0.55, "of x (1 - x)", "sizes of a joint stand a factor of about four apart: a divided voltage x "
     "moves by this much between two of them", &kJudgement},
    {Judged::load_part, 0.20, "of x (1 - x)", "a lamp's ohms and a device's current are known to about a fifth", &kJudgement},
    {Judged::typed_span, 2.4, "of the battery", "what a slip may type: from minus to plus the battery and some", &kJudgement},
    {Judged::word_width, 0.25, "of the battery", "scale only: it cancels in every ratio", &kJudgement},

    {Judged::wire_unknown, 0.5, "ln", "a branch of unknown wire is 16 to 10 AWG (1.5 to 6 mm2): four times in ohms from end "
     "to end, about this much to each side of the middle", &kJudgement},
    {Judged::wire_guessed, 0.25, "ln", "a guess is one size off at most: a factor of 1.6 in ohms", &kJudgement},
    {Judged::length_unknown, 0.5, "ln", "a run nobody measured is within two thirds more or less", &kJudgement},
    {Judged::length_guessed, 0.2, "ln", "paces and arm lengths are a fifth off", &kJudgement},
    {Judged::stand_in_fuse_a, 15.0, "A", "for the milliohms of a fuse whose rating nobody told; no words name it", &kJudgement},

    {Judged::full_from, 0.93, "of the battery", "'about 12.6 V' begins here", &kJudgement},
    {Judged::zero_below, 0.04, "of the battery", "'near 0 V' ends here, minus begins as far below", &kJudgement},
    {Judged::no_drop_below, 0.008, "of the battery", "along one side, under a load: what a sound joint may lose", &kJudgement},
    {Judged::bright_from, 0.80, "of nominal", "a filament lamp looks bright from here", &kJudgement},
    {Judged::dim_from, 0.20, "of nominal", "below it a filament does not glow in daylight", &kJudgement},
    {Judged::works_from, 0.88, "of nominal", "10.5 V of 12: most devices work from here", &kJudgement},
    {Judged::weak_from, 0.45, "of nominal", "below it a device shows nothing", &kJudgement},
    {Judged::joined_below_ohm, 5.0, "ohm", "leads, clips and a joint of copper come to less", &kJudgement},
    {Judged::open_from_ohm, 1e5, "ohm", "no wire or joint that joins anything has so much", &kJudgement},
    {Judged::live_from_v, 1.0, "V", "what is proved dead reads less: the bound that the steps tell", &kTradePractice},

    {Judged::short_blows_at_once, 0.97, "", "a new fuse on a shorted pair", &kJudgement},
    {Judged::clips_take_a_new_fuse, 0.5, "", "a new fuse goes home in worn clips about as often as not", &kJudgement},
    {Judged::overload_shows_again, 0.7, "", "the same things are plugged in again while somebody waits", &kJudgement},
    {Judged::press_is_felt, 0.92, "", "a fuse that was not home is felt to move, or pressed far enough", &kJudgement},
    {Judged::neighbour_fuse_is_seen, 0.97, "", "the outlet comes on as the other fuse goes in", &kJudgement},
    {Judged::complaint_floor, 0.004, "", "people tell the complaint wrongly, too", &kJudgement},
    {Judged::complaint_unknown, 0.15, "", "how well an unknown fault goes with any complaint", &kJudgement},
    {Judged::told_reversed_from, 0.3, "of nominal", "so much minus is told as plus and minus changed over", &kJudgement},

    {Judged::prove_dead_min, 0.4, "min", "tester on the part, on a live point, and back", &kMinutesEstimate},
    {Judged::part_splice_min, 2.5, "min", "two splices opened, ends apart, and closed again later", &kMinutesEstimate},
    {Judged::open_up_min, 1.5, "min", "an outlet unscrewed and drawn forward", &kMinutesEstimate},
    {Judged::fuse_change_min, 0.4, "min", "a fuse pulled or put back", &kMinutesEstimate},
    {Judged::plug_change_min, 0.2, "min", "a plug pulled or put in", &kMinutesEstimate},
    {Judged::to_battery_min, 1.0, "min", "a cover or a seat stands before the battery", &kMinutesEstimate},
    {Judged::to_block_min, 0.4, "min", "to the fuse block and its lid off", &kMinutesEstimate},
    {Judged::to_outlet_min, 0.3, "min", "to the next outlet", &kMinutesEstimate},
    {Judged::long_lead_min, 0.8, "min", "a lead clipped on, from one place to the other", &kMinutesEstimate},
    {Judged::each_other_min, 0.4, "min", "another outlet tried", &kMinutesEstimate},
    {Judged::lead_min_per_m, 0.05, "min", "a long lead laid, per metre", &kMinutesEstimate},
    {Judged::lead_min_at_most, 1.0, "min", "nobody lays more lead than a vehicle is long", &kMinutesEstimate},

    {Judged::test_device_a, 0.5, "A", "a phone charger with a light takes about so much at 12 V", &kTradeMemory},
    {Judged::block_load_a, 1.0, "A", "what is switched on to see whether the block works", &kTradeMemory},
    {Judged::short_ohm, 1e-3, "ohm", "a chafed pair, red on black", &kJudgement},
    {Judged::flat_source_ohms, 10.0, "", "times the inner resistance, of a flat battery", &kJudgement},

    {Judged::same_slip_twice, 0.08, "", "the same slip on plus and on minus: stripped alike, pulled alike", &kJudgement},
    {Judged::repair_misses, 0.03, "", "a repair that did not help was made badly, or at the wrong place", &kJudgement},

    {Judged::covered, 0.99, "", "of the probability: enough to choose by; the inference itself leaves nothing out", &kTuned},
    {Judged::most_scenarios, 100, "", "weighed in the choice at most", &kTuned},
    {Judged::cheap_products, 60'000, "", "scenarios x candidates up to which two steps are looked ahead", &kTuned},
    {Judged::starts, 5, "", "first checks looked ahead from", &kTuned},
    {Judged::seconds, 24, "", "second checks tried after each", &kTuned},
    {Judged::price_of_minutes, 2.0 / 3.0, "", "of the best first check's bits per minute: less than all of it, because the "
     "last bits of a trace cost more minutes than the first; between a half and all of it little changes", &kTuned},
    {Judged::least_start_bits, 1e-3, "bit", "a first check that tells less is not looked past", &kTuned},
    {Judged::rare_answer, 0.02, "", "an answer less likely than this is not looked past", &kTuned},
    {Judged::sure_by_then, 0.15, "bit", "with no more than this left nothing more is asked", &kTuned},
    {Judged::all_outlets, 8, "", "outlets up to which every one is weighed", &kTuned},
    {Judged::cuts, 7, "", "of a longer circuit: cuts into parts of equal suspicion, where halving begins", &kTuned},
    {Judged::suspected, 4, "", "and the outlets most suspected", &kTuned},
    {Judged::parted, 2, "", "outlets at which parting a splice is weighed", &kTuned},
    {Judged::weighed_from, 1e-7, "", "less likely scenarios are left out of the choice", &kTuned},

    {Judged::sure, 0.97, "", "one remedy at one place: sure enough to start", &kJudgement},
    {Judged::least_bits, 0.02, "bit", "a check that promises less is not worth its minutes", &kJudgement},
    {Judged::none_fits, 0.5, "", "more likely than not that no fault known here explains the answers", &kJudgement},
    {Judged::some_weight, 0.01, "", "a suspect with less is not advised", &kJudgement},
    {Judged::most_to_try, 5, "", "remedies told in order", &kJudgement},
    {Judged::unsure_of_likely, 3, "", "'not sure' so many times running, with one remedy likely: trying it tells more than "
     "one more question", &kJudgement},
    {Judged::unsure_of_any, 6, "", "'not sure' so many times running, whatever is likely", &kJudgement},
    {Judged::likely, 0.5, "", "likelier than not", &kJudgement},
    {Judged::far_better, 8.0, "", "times as well one fault fits without the answer that is called odd", &kJudgement},

    {Judged::outlook_from, 1e-6, "", "less likely scenarios move nothing that is told", &kJudgement},
    {Judged::outlook_before, 0.01, "", "a suspect with less is not told as cleared", &kJudgement},
    {Judged::outlook_after, 0.05, "", "or with less after the answer as raised", &kJudgement},
    {Judged::cleared_below, 0.1, "", "times what it was: cleared", &kJudgement},
    {Judged::raised_above, 2.0, "", "times what it was: raised", &kJudgement},
    {Judged::raised_from, 0.02, "", "and at least so likely then", &kJudgement},
    {Judged::most_named, 3, "", "suspects named in one sentence", &kJudgement},
    {Judged::evidence_ratio, 2.0, "", "times as likely as the average: it speaks for; the inverse: against", &kJudgement},
    {Judged::pair_told_from, 0.5, "", "of a suspect's weight, from which its second fault is told", &kJudgement},

    {Judged::most_per_nominal, 1.5, "of nominal", "a 12 V system on charge stays below 15 V; more than half above nominal "
     "is a slip of the decimal point or of the range", &kTradePractice},
    {Judged::minus_under_load_v, 1.0, "V", "a drop under load read from the wrong end shows as a small minus", &kJudgement},
    {Judged::above_battery, 1.25, "of the battery", "more than the battery alone gives", &kJudgement},
    {Judged::retest_part, 0.01, "", "allowed to the meter at the re-test", &kMeterMemory},
    {Judged::retest_v, 0.02, "V", "and so many digits", &kMeterMemory},
}};
// clang-format on
constexpr bool judgements_complete() {
  for (std::size_t i = 0; i < kJudgements.size(); ++i) {
    const Judgement& row = kJudgements[i];
    if (static_cast<std::size_t>(row.which) != i || !(row.value > 0.0) || row.reason.empty() || row.citation == nullptr)
      return false;
  }
  return true;
}
static_assert(judgements_complete());

constexpr double judged(Judged which) { return kJudgements[static_cast<std::size_t>(which)].value; }
constexpr std::size_t judged_count(Judged which) { return static_cast<std::size_t>(judged(which)); }

// Sizes of a fault that is not open or shorted outright: a few points over its range, log-uniform, a factor of
// about four apart, with their shares. A joint that went bad far enough to be noticed has at least the ohm or
// so that the usual load feels.
inline constexpr std::array<Size, 1> kOpen{{{kOpenOhm, 1.0}}};
inline constexpr std::array<Size, 5> kPoorJoint{{{0.5, 0.2}, {2.0, 0.2}, {7.0, 0.2}, {25.0, 0.2}, {110.0, 0.2}}};
inline constexpr std::array<Size, 4> kLooseClamp{{{kOpenOhm, 0.4}, {2.0, 0.2}, {12.0, 0.2}, {80.0, 0.2}}};
inline constexpr std::array<Size, 4> kFeederJoint{{{0.15, 0.25}, {0.45, 0.25}, {1.3, 0.25}, {3.5, 0.25}}};
inline constexpr std::array<Size, 3> kFlatSource{{{0.73, 1.0 / 3.0}, {0.82, 1.0 / 3.0}, {0.90, 1.0 / 3.0}}};
inline constexpr std::array<Size, 3> kThinWire{{{5.0, 1.0 / 3.0}, {9.0, 1.0 / 3.0}, {16.0, 1.0 / 3.0}}};

constexpr bool sizes_sum_to_one(std::span<const Size> sizes) {
  double sum = 0.0;
  for (const Size& size : sizes) sum += size.share;
  return sum > 1.0 - 1e-12 && sum < 1.0 + 1e-12;
}
static_assert(sizes_sum_to_one(kPoorJoint) && sizes_sum_to_one(kLooseClamp) && sizes_sum_to_one(kFeederJoint) &&
              sizes_sum_to_one(kFlatSource) && sizes_sum_to_one(kThinWire));

}  // namespace diagnosis
