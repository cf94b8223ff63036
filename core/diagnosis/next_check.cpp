// Which checks are worth weighing: tools and reach, and on long circuits where suspicion is.
#include "diagnosis/judgement_constants.h"
#include "diagnosis/trace_work.h"

namespace diagnosis {

bool Tracer::Work::within_reach(const Check& one) const {
  return std::none_of(one.sites.begin(), one.sites.end(), [&](const Site& site) {
    return std::find(unreachable.begin(), unreachable.end(), site) != unreachable.end();
  });
}

// On a long circuit not every outlet is weighed: only the most suspected, and those that cut the suspicion into
// equal parts, where halving begins. `parted`: where parting a splice is weighed.
std::vector<char> Tracer::Work::outlets_worth_a_look(std::vector<char>& parted) const {
  constexpr std::size_t kAll = judged_count(Judged::all_outlets), kCuts = judged_count(Judged::cuts);
  constexpr std::size_t kSuspected = judged_count(Judged::suspected), kParted = judged_count(Judged::parted);
  const std::size_t n = model->plant.outlets();
  std::vector<char> worth(n, n <= kAll ? 1 : 0);
  parted.assign(n, n <= kParted ? 1 : 0);
  if (n <= kParted) return worth;
  std::vector<double> mass(n, 0.0);
  double sum = 0.0;
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    const int k = model->plant.outlet_index(model->hypotheses[static_cast<std::size_t>(open_fault(s))].fault.outlet);
    if (k >= 0) sum += (mass[static_cast<std::size_t>(k)] += probability[s], probability[s]);
  }
  double so_far = 0.0;
  for (std::size_t k = 0, cut = 1; k < n; ++k) {
    so_far += mass[k];
    for (; cut <= kCuts && so_far * (kCuts + 1) >= sum * static_cast<double>(cut); ++cut) worth[k] = 1;
  }
  std::vector<std::size_t> order(n);
  for (std::size_t k = 0; k < n; ++k) order[k] = k;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return mass[a] > mass[b]; });
  for (std::size_t i = 0; i < std::min(kSuspected, n); ++i) {
    worth[order[i]] = 1;
    if (i < kParted) parted[order[i]] = 1;
  }
  // A short is halved by parting: the cut in the middle too.
  so_far = 0.0;
  for (std::size_t k = 0; k < n; ++k) {
    if (so_far < 0.5 * sum && so_far + mass[k] >= 0.5 * sum) parted[k] = 1;
    so_far += mass[k];
  }
  worth[static_cast<std::size_t>(complaint_outlets(model->the_case, model->plant).front())] = 1;
  return worth;
}

std::vector<Candidate> Tracer::Work::candidates() const {
  std::vector<Candidate> all;
  std::vector<char> parted;
  const std::vector<char> worth = outlets_worth_a_look(parted);
  const auto left_out = [&](const Check& one) {
    for (const Site& site : one.sites) {
      const int k = model->plant.outlet_index(site.outlet);
      if (k >= 0 && worth[static_cast<std::size_t>(k)] == 0) return true;
    }
    return one.state.parted_at &&
           parted[static_cast<std::size_t>(model->plant.outlet_index(*one.state.parted_at))] == 0;
  };
  const bool no_new_fuse = cause_first();
  for (std::size_t c = 0; c < model->checks.size(); ++c) {
    const Check& one = model->checks[c];
    if (no_new_fuse && one.kind == CheckKind::fuse_swap) continue;
    if (asked[c] != 0 || !has_tools(one, record.tools) || !within_reach(one) || left_out(one)) continue;
    all.push_back({static_cast<int>(c), minutes_for(one, setup, model->plant)});
  }
  return all;
}

NextChoice Tracer::Work::next_check() const {
  std::vector<Weighed> weighed;
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (probability[s] < judged(Judged::weighed_from)) continue;
    weighed.push_back({&scenarios[s], repaired[s], group(s), probability[s]});
  }
  return choose(*model, std::move(weighed), candidates(), setup);
}

}  // namespace diagnosis
