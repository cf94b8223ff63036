#include "network/star_mesh.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <queue>

namespace network::detail {
namespace {

constexpr std::size_t at(std::int32_t index) { return static_cast<std::size_t>(index); }
// Below this part of the plain sum of sizes, positive and negative conductances have cancelled.
constexpr double kCancelled = 1e-13;

}  // namespace

StarMesh::StarMesh(std::size_t nodes, const std::vector<Join>& joins, const std::vector<bool>& held)
    : neighbours_(nodes) {
  join_edge_.reserve(joins.size());
  for (const Join& join : joins) {
    const std::int32_t edge = edge_between(join.first, join.second);
    join_edge_.push_back({edge, edges_[at(edge)].first == join.first ? 1.0 : -1.0});
  }
  choose_order(held);
  siemens_.assign(edges_.size(), 0.0);
  amperes_.assign(edges_.size(), 0.0);
  divisor_.assign(stars_.size(), 0.0);
  neighbours_ = {};
}

std::int32_t StarMesh::edge_between(std::int32_t a, std::int32_t b) {
  auto& of_a = neighbours_[at(a)];
  auto& of_b = neighbours_[at(b)];
  const bool a_is_smaller = of_a.size() <= of_b.size();
  for (const Neighbour& each : a_is_smaller ? of_a : of_b) {
    if (each.node == (a_is_smaller ? b : a)) return each.edge;
  }
  const auto edge = static_cast<std::int32_t>(edges_.size());
  edges_.emplace_back(a, b);
  of_a.push_back({b, edge});
  of_b.push_back({a, edge});
  return edge;
}

void StarMesh::take_away(std::int32_t node) {
  const std::vector<Neighbour> around = std::move(neighbours_[at(node)]);
  neighbours_[at(node)].clear();
  stars_.push_back({node, spokes_.size(), around.size(), targets_.size()});
  for (const Neighbour& each : around) {
    spokes_.push_back({each.node, each.edge, edges_[at(each.edge)].first == node ? 1.0 : -1.0});
    auto& theirs = neighbours_[at(each.node)];
    const auto here = std::find_if(theirs.begin(), theirs.end(), [&](const Neighbour& n) { return n.node == node; });
    *here = theirs.back();
    theirs.pop_back();
  }
  for (std::size_t j = 0; j < around.size(); ++j) {
    for (std::size_t k = j + 1; k < around.size(); ++k) {
      const std::int32_t edge = edge_between(around[j].node, around[k].node);
      targets_.push_back({edge, edges_[at(edge)].first == around[j].node ? 1.0 : -1.0});
    }
  }
}

void StarMesh::choose_order(const std::vector<bool>& held) {
  using Waiting = std::pair<std::size_t, std::int32_t>;  // neighbours, node
  std::priority_queue<Waiting, std::vector<Waiting>, std::greater<>> queue;
  std::vector<bool> gone(held);
  for (std::size_t n = 0; n < held.size(); ++n) {
    if (!held[n]) queue.emplace(neighbours_[n].size(), static_cast<std::int32_t>(n));
  }
  while (!queue.empty()) {
    const auto [count, node] = queue.top();
    queue.pop();
    if (gone[at(node)] || count != neighbours_[at(node)].size()) continue;  // told again further down
    gone[at(node)] = true;
    take_away(node);
    const Star& star = stars_.back();
    for (std::size_t s = 0; s < star.spokes; ++s) {
      const std::int32_t other = spokes_[star.first_spoke + s].other;
      if (!gone[at(other)]) queue.emplace(neighbours_[at(other)].size(), other);
    }
  }
}

void StarMesh::clear() {
  std::fill(siemens_.begin(), siemens_.end(), 0.0);
  std::fill(amperes_.begin(), amperes_.end(), 0.0);
}

void StarMesh::add(std::size_t join, double siemens, double amperes) {
  const Target& target = join_edge_[join];
  siemens_[at(target.edge)] += siemens;
  amperes_[at(target.edge)] += target.sign * amperes;
}

bool StarMesh::solve(std::vector<double>& voltage_v) {
  for (std::size_t s = 0; s < stars_.size(); ++s) {
    const Star& star = stars_[s];
    const Spoke* spokes = spokes_.data() + star.first_spoke;
    double sum = 0.0, sizes = 0.0;
    for (std::size_t k = 0; k < star.spokes; ++k) {
      sum += siemens_[at(spokes[k].edge)];
      sizes += std::abs(siemens_[at(spokes[k].edge)]);
    }
    if (!(sum > kCancelled * sizes)) return false;
    divisor_[s] = sum;
    const Target* target = targets_.data() + star.first_target;
    for (std::size_t j = 0; j < star.spokes; ++j) {
      const double g_j = siemens_[at(spokes[j].edge)] / sum;
      const double q_j = spokes[j].sign * amperes_[at(spokes[j].edge)] / sum;
      for (std::size_t k = j + 1; k < star.spokes; ++k, ++target) {
        const double g_k = siemens_[at(spokes[k].edge)];
        const double q_k = spokes[k].sign * amperes_[at(spokes[k].edge)];
        siemens_[at(target->edge)] += g_j * g_k;
        amperes_[at(target->edge)] += target->sign * (g_j * q_k - g_k * q_j);
      }
    }
  }
  std::fill(voltage_v.begin(), voltage_v.end(), 0.0);
  for (std::size_t s = stars_.size(); s-- > 0;) {
    const Star& star = stars_[s];
    double sum = 0.0;
    for (std::size_t k = 0; k < star.spokes; ++k) {
      const Spoke& spoke = spokes_[star.first_spoke + k];
      sum += siemens_[at(spoke.edge)] * voltage_v[at(spoke.other)] - spoke.sign * amperes_[at(spoke.edge)];
    }
    voltage_v[at(star.node)] = sum / divisor_[s];
  }
  return true;
}

}  // namespace network::detail
