#include "diagnosis_library/belief_net.h"

#include <dlib/bayes_utils.h>
#include <dlib/directed_graph.h>
#include <dlib/graph.h>
#include <dlib/graph_utils.h>
#include <dlib/set.h>

namespace library {
namespace {

using Net = dlib::directed_graph<dlib::bayes_node>::kernel_1a_c;
using Clique = dlib::set<unsigned long>::compare_1b_c;
using JoinTree = dlib::graph<Clique, Clique>::kernel_1a_c;
namespace nodes = dlib::bayes_node_utils;

constexpr unsigned long kFault = 0, kSize = 1, kFirstObservable = 2;

Row row_of(const dlib::matrix<double, 1>& from) {
  Row row;
  for (long i = 0; i < from.size(); ++i) row.push_back(from(i));
  return row;
}

}  // namespace

Beliefs join_tree(const Tables& tables) {
  Net net;
  net.set_number_of_nodes(kFirstObservable + tables.observables.size());
  net.add_edge(kFault, kSize);
  nodes::set_node_num_values(net, kFault, tables.fault.size());
  nodes::set_node_num_values(net, kSize, tables.size.front().size());
  const dlib::assignment no_parents;
  for (std::size_t f = 0; f < tables.fault.size(); ++f) {
    nodes::set_node_probability(net, kFault, f, no_parents, tables.fault[f]);
    dlib::assignment parents;
    parents.add(kFault, f);
    for (std::size_t s = 0; s < tables.size[f].size(); ++s) nodes::set_node_probability(net, kSize, s, parents, tables.size[f][s]);
  }
  for (std::size_t o = 0; o < tables.observables.size(); ++o) {
    const Observable& from = tables.observables[o];
    const unsigned long node = kFirstObservable + o;
    net.add_edge(kFault, node);
    net.add_edge(kSize, node);
    nodes::set_node_num_values(net, node, from.given[0][0].size());
    for (std::size_t f = 0; f < from.given.size(); ++f) {
      for (std::size_t s = 0; s < from.given[f].size(); ++s) {
        dlib::assignment parents;
        parents.add(kFault, f);
        parents.add(kSize, s);
        for (std::size_t v = 0; v < from.given[f][s].size(); ++v) {
          nodes::set_node_probability(net, node, v, parents, from.given[f][s][v]);
        }
      }
    }
    if (from.seen < 0) continue;
    nodes::set_node_value(net, node, static_cast<unsigned long>(from.seen));
    nodes::set_node_as_evidence(net, node);
  }
  JoinTree tree;
  dlib::create_moral_graph(net, tree);
  dlib::create_join_tree(tree, tree);
  const dlib::bayesian_network_join_tree solved(net, tree);
  Beliefs beliefs;
  beliefs.fault = row_of(solved.probability(kFault));
  for (std::size_t o = 0; o < tables.observables.size(); ++o) beliefs.observables.push_back(row_of(solved.probability(kFirstObservable + o)));
  return beliefs;
}

}  // namespace library
