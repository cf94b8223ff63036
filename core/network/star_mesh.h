// Solves a linear network by taking its nodes away one at a time: a star of conductances round
// a node is replaced by the mesh that its neighbours could not tell from it. Private to this room.
//
// Between nodes a and b flows, from a to b,   i = g (v_a - v_b) + q.
// Taking away node n with spokes k, D = sum of g_k:
//     g_jk += g_j g_k / D          q_jk += (g_j q_k - g_k q_j) / D
//     v_n   = (sum of g_k v_k - q_k) / D
// D is a sum of conductances, never the difference of a diagonal and its updates, so a 10 Mohm
// meter beside milliohms costs no digits (Grassmann, Taksar and Heyman, 1985, for Markov chains).
// Sources stay on edges, as q, and what leaves one end enters the other exactly: a part that
// hangs on a meter alone does not drift by the rounding of its own large currents.
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace network::detail {

class StarMesh {
 public:
  using Join = std::pair<std::int32_t, std::int32_t>;  // two different nodes

  // `held` nodes stand at 0 V; every set of joined nodes has at least one. The order is by
  // fewest neighbours, so a tree of any size stays a tree: time and space linear in its nodes.
  StarMesh(std::size_t nodes, const std::vector<Join>& joins, const std::vector<bool>& held);

  void clear();
  // Adds to what flows in joins[join], from its first node to its second.
  void add(std::size_t join, double siemens, double amperes);
  // Consumes what was added. False when some D is not above zero: the network, negative slopes
  // of loads included, is not positive definite.
  bool solve(std::vector<double>& voltage_v);

 private:
  struct Spoke { std::int32_t other; std::int32_t edge; double sign; };    // sign: +1 when the edge starts here
  struct Target { std::int32_t edge; double sign; };
  struct Star { std::int32_t node; std::size_t first_spoke; std::size_t spokes; std::size_t first_target; };
  struct Neighbour { std::int32_t node; std::int32_t edge; };

  std::int32_t edge_between(std::int32_t a, std::int32_t b);
  void take_away(std::int32_t node);
  void choose_order(const std::vector<bool>& held);

  std::vector<std::vector<Neighbour>> neighbours_;  // of nodes not yet taken away
  std::vector<Join> edges_;                         // first end, second end
  std::vector<Target> join_edge_;
  std::vector<Star> stars_;                         // in the order taken away
  std::vector<Spoke> spokes_;
  std::vector<Target> targets_;                     // one for each pair of spokes
  std::vector<double> siemens_, amperes_;           // by edge
  std::vector<double> divisor_;                     // by star
};

}  // namespace network::detail
