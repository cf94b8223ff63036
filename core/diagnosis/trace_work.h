// What a trace knows at one time: the posterior over scenarios, what was asked and where the person is.
// posterior.cpp weighs answers, next_check.cpp picks what to ask, advice.cpp says when to stop and what then.
// Private to this room.
#pragma once

#include <algorithm>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "diagnosis/choice.h"
#include "diagnosis/model.h"
#include "diagnosis/tracer.h"

namespace diagnosis {

struct Tracer::Work {
  std::shared_ptr<const Model> model;
  Record record;
  std::vector<Scenario> scenarios;
  std::vector<double> log_weight;
  std::vector<unsigned> repaired;
  std::vector<double> probability;
  std::vector<char> asked;  // by check
  std::vector<Site> unreachable;
  std::vector<int> could_not;  // groups whose remedy could not be made
  std::vector<int> in_vain;    // groups whose remedy was made and did not help
  Setup setup;
  bool finished = false;
  mutable std::optional<Advice> advice;

  void start();
  void rebuild();
  void normalise();
  void apply(const Entry& entry, std::size_t index);
  void apply_check(const Entry& entry);
  void apply_remedy(const Entry& entry, std::size_t index);
  void add_pairs(int group, std::size_t up_to);
  void weigh_new_fuse(const Entry& entry, int group);
  double log_chance(const Entry& entry, Look& look) const;
  [[nodiscard]] int group(std::size_t s) const;
  [[nodiscard]] int open_fault(std::size_t s) const;  // hypothesis still to be put right, first
  [[nodiscard]] std::vector<double> group_probability() const;
  [[nodiscard]] bool within_reach(const Check& check) const;
  [[nodiscard]] std::vector<char> outlets_worth_a_look(std::vector<char>& parted) const;
  [[nodiscard]] std::vector<Candidate> candidates() const;
  [[nodiscard]] NextChoice next_check() const;
  [[nodiscard]] int likeliest_in(int group) const;  // hypothesis
  [[nodiscard]] bool was_tried(std::size_t group) const;
  [[nodiscard]] bool cause_first() const;               // a new fuse blew, and what blew it is still there
  [[nodiscard]] bool not_now(std::size_t group) const;  // could not be made, or only feeds a fault with fuses
  [[nodiscard]] std::string warning() const;
  [[nodiscard]] std::vector<std::size_t> groups_to_try(const std::vector<double>& groups) const;  // in that order
  [[nodiscard]] std::vector<Remedy> remedies_of(const std::vector<std::size_t>& order) const;
  [[nodiscard]] std::optional<std::size_t> odd_entry() const;
  [[nodiscard]] Advice advise() const;
  void offer(Advice& advice, const NextChoice& choice) const;
  [[nodiscard]] std::vector<Outlook> outlooks(const Check& check) const;
  [[nodiscard]] const Check* check(std::string_view id) const {
    const auto found = model->check_index.find(id);
    return found == model->check_index.end() ? nullptr : &model->checks[static_cast<std::size_t>(found->second)];
  }
};

}  // namespace diagnosis
