#include "diagnosis/model.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/check_words.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/safety.h"

namespace diagnosis {
namespace {

bool fuse_gone(FaultKind kind) {
  return kind == FaultKind::fuse_blown || kind == FaultKind::fuse_missing || kind == FaultKind::fuse_elsewhere;
}
bool at_an_outlet(FaultKind kind) {
  const PlacedAt placed = fault_row(kind).placed_at;
  return placed != PlacedAt::circuit && placed != PlacedAt::circuit_side && placed != PlacedAt::run_neighbour;
}

std::vector<Check> safe_checks(const Case& the_case, const Plant& plant) {
  std::vector<Check> all = make_checks(the_case, plant);
  std::erase_if(all, [](const Check& check) { return !unsafe(check).empty(); });
  for (std::size_t c = 0; c < all.size(); ++c) all[c].index = static_cast<int>(c);
  return all;
}

}  // namespace

Model::Model(Case given)
    : the_case(std::move(given)),
      plant(the_case),
      hypotheses(diagnosis::hypotheses(the_case)),
      checks(safe_checks(the_case, plant)),
      likelihood(the_case, plant, hypotheses, checks) {
  for (std::size_t c = 0; c < checks.size(); ++c) check_index.emplace(checks[c].id, static_cast<int>(c));
  make_groups();
  make_scenarios();
  make_likely_pairs();
  Look look(plant);
  for (const Scenario& scenario : scenarios) {
    likelihood.aim(look, scenario, 0);
    log_prior.push_back(std::log(scenario.prior) + std::log(likelihood.complaint(look)));
  }
}

Check Model::worded(const Check& check) const {
  Check made = check;
  word_check(the_case, plant, made);
  return made;
}

void Model::make_groups() {
  std::unordered_map<std::string, int> known;
  for (const Hypothesis& each : hypotheses) {
    const std::string id = remedy_id(each.fault);
    const auto [at, added] = known.emplace(id, static_cast<int>(group_ids.size()));
    if (added) {
      group_ids.push_back(id);
      group_minutes.push_back(fault_row(each.fault.kind).repair_minutes);
      group_kinds.push_back(fault_row(each.fault.kind).remedy);
    }
    group_of.push_back(at->second);
    if (each.fault.kind == FaultKind::none_of_these) unknown_group = at->second;
  }
}

void Model::make_scenarios() {
  for (std::size_t h = 0; h < hypotheses.size(); ++h) {
    const std::vector<Sample> samples = samples_of(plant, hypotheses[h].fault);
    for (const Sample& sample : samples) {
      Scenario made;
      made.first = static_cast<int>(h);
      made.edits[0] = sample.edits;
      made.spread = sample.spread;
      made.prior = hypotheses[h].prior * sample.share;
      scenarios.push_back(made);
    }
    // The port from the source, the middle size.
    const auto largest = std::max_element(samples.begin(), samples.end(),
                                          [](const Sample& a, const Sample& b) { return a.share < b.share; });
    Scenario middle;
    middle.first = static_cast<int>(h);
    const bool poor_joint = hypotheses[h].fault.kind == FaultKind::splice_resistive;
    middle.edits[0] = poor_joint ? samples[kPoorJoint.size() / 2].edits : largest->edits;
    middle.spread = largest->spread;
    middle.prior = hypotheses[h].prior;
    typical.push_back(middle);
  }
}

Scenario Model::pair_of(int first, int second, double prior) const {
  Scenario made;
  made.first = first;
  made.second = second;
  made.edits[0] = typical[static_cast<std::size_t>(first)].edits[0];
  made.edits[1] = typical[static_cast<std::size_t>(second)].edits[0];
  made.spread = typical[static_cast<std::size_t>(first)].spread || typical[static_cast<std::size_t>(second)].spread;
  made.prior = prior;
  return made;
}

// A fuse gone and something at an outlet on the way to the complaint; both sides of one splice or outlet.
void Model::make_likely_pairs() {
  const int target = complaint_outlets(the_case, plant).front();
  const auto on_the_way = [&](const Fault& fault) { return plant.feeds(plant.outlet_index(fault.outlet), target); };
  for (std::size_t a = 0; a < hypotheses.size(); ++a) {
    const Fault& one = hypotheses[a].fault;
    for (std::size_t b = 0; b < hypotheses.size(); ++b) {
      const Fault& other = hypotheses[b].fault;
      if (!at_an_outlet(other.kind) || !on_the_way(other)) continue;
      double prior = 0.0;
      if (fuse_gone(one.kind) && other.kind != FaultKind::pair_shorted) {
        prior = hypotheses[a].prior * hypotheses[b].prior;
      } else if (a < b && one.kind == other.kind && one.outlet == other.outlet) {
        prior = hypotheses[a].prior * judged(Judged::same_slip_twice);
      }
      if (prior > 0.0) scenarios.push_back(pair_of(static_cast<int>(a), static_cast<int>(b), prior));
    }
  }
}

void Model::add_pairs_with(int first, std::vector<Scenario>& into) const {
  const double own = hypotheses[static_cast<std::size_t>(first)].prior;
  for (std::size_t h = 0; h < hypotheses.size(); ++h) {
    const int second = static_cast<int>(h);
    if (second == first || hypotheses[h].fault.kind == FaultKind::none_of_these) continue;
    const bool there = std::any_of(into.begin(), into.end(), [&](const Scenario& each) {
      return each.second >= 0 && std::min(each.first, each.second) == std::min(first, second) &&
             std::max(each.first, each.second) == std::max(first, second);
    });
    if (!there) into.push_back(pair_of(first, second, own * hypotheses[h].prior));
  }
}

}  // namespace diagnosis
