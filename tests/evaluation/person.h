// The person in the van: does what a check asks on the true installation and answers in words or in
// a typed figure, with a meter's error, eyes that miss things, and a share of plain wrong answers.
#pragma once

#include <cstdint>

#include "diagnosis/tracer.h"
#include "evaluation/world.h"

namespace evaluation {

class Person {
 public:
  // The same seed and question give the same answer, whoever asks and however often.
  Person(const World& world, const diagnosis::Case& told, double wrong_share, std::uint64_t seed);

  // `again`: asked to take it again, and so with care: never plain wrong.
  diagnosis::Answer answer(const diagnosis::Check& check, bool again = false);
  // Carries the remedy out and tries again. `right`: it put the true fault right, kind and place.
  diagnosis::RetestResult try_remedy(const diagnosis::Remedy& remedy, bool& right);

  [[nodiscard]] const World& world() const { return world_; }
  // Times that hands were asked for where, fuse out, it was live all the same. The proving found it.
  [[nodiscard]] int found_live() const { return found_live_; }

 private:
  struct Seen { std::string word; std::optional<double> reading; };
  [[nodiscard]] std::optional<Seen> look(const diagnosis::Check& check, Engine& engine);
  [[nodiscard]] std::optional<Seen> measure(const diagnosis::Check& check, Engine& engine) const;
  [[nodiscard]] Seen hands_behind(const diagnosis::Check& check, Engine& engine);
  [[nodiscard]] Seen at_block(const diagnosis::Check& check, Engine& engine) const;
  [[nodiscard]] Seen pull_fuse(const diagnosis::Check& check) const;
  [[nodiscard]] Runs failed_device(const Setup& setup, OutletId at) const;
  [[nodiscard]] bool out_of_reach(const diagnosis::Site& site) const;
  [[nodiscard]] Setup setup_of(const diagnosis::Check& check) const;

  World world_;
  diagnosis::Case told_;
  double wrong_share_;
  std::uint64_t seed_;
  OutletId complained_;
  double meter_gain_ = 1.0, meter_digit_v_ = 0.02;   // this meter's own error
  int found_live_ = 0;
};

}  // namespace evaluation
