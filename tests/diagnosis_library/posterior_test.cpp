// The tracer's posterior against exact inference by dlib's join tree, from the same priors and the same
// likelihoods. What is compared is the tracer's own arithmetic: logarithms, sizes and pairs kept apart until
// the end, the complaint, answers in words and typed, answers that tell nothing, and what the next check promises.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <memory>
#include <random>
#include <utility>

#include "diagnosis/model.h"
#include "diagnosis/tracer.h"
#include "diagnosis_library/belief_net.h"

using namespace diagnosis;

namespace {

constexpr std::uint64_t kSeed = 20;

// A scenario's place in the network: which fault or pair, which of its sizes.
struct Cell {
  std::size_t fault, size;
};

class Net {
 public:
  explicit Net(const Case& the_case) : model_(std::make_shared<const Model>(the_case)) {
    std::map<std::pair<int, int>, std::size_t> known;
    for (const Scenario& scenario : model_->scenarios) {
      const auto [at, added] = known.emplace(std::pair(scenario.first, scenario.second), pairs_.size());
      if (added) {
        pairs_.emplace_back(scenario.first, scenario.second);
        shares_.emplace_back();
      }
      cells_.push_back({at->second, shares_[at->second].size()});
      shares_[at->second].push_back(scenario.prior);
    }
    std::size_t sizes = 0;
    for (const library::Row& row : shares_) sizes = std::max(sizes, row.size());
    double all = 0.0;
    for (library::Row& row : shares_) {
      double sum = 0.0;
      for (const double each : row) sum += each;
      for (double& each : row) each /= sum;
      row.resize(sizes, 0.0);
      tables.fault.push_back(sum);
      all += sum;
    }
    for (double& each : tables.fault) each /= all;
    tables.size = shares_;
    // How likely somebody with this fault comes with this complaint, which was made.
    add(2, 0, [&](Look& look) {
      const double chance = model_->likelihood.complaint(look);
      return library::Row{chance, 1.0 - chance};
    });
  }

  void see(const Check& told, const Answer& answer) {
    const Check& check = own(told);
    if (answer.kind == AnswerKind::reading) {
      // A density stands as the chance of a yes, scaled below one.
      double most = 0.0;
      Look look(model_->plant);
      for (const Scenario& scenario : model_->scenarios) {
        model_->likelihood.aim(look, scenario, 0u);
        most = std::max(most, model_->likelihood.density(check, look, answer.reading));
      }
      add(2, 0, [&](Look& at) {
        const double yes = 0.5 * model_->likelihood.density(check, at, answer.reading) / most;
        return library::Row{yes, 1.0 - yes};
      });
      return;
    }
    int seen = -1;   // not sure, can't reach: a node that nobody looked at
    for (std::size_t c = 0; c < check.choices.size(); ++c) {
      if (answer.kind == AnswerKind::word && check.choices[c].key == answer.key) seen = static_cast<int>(c);
    }
    add(check.choices.size(), seen, [&](Look& look) {
      const Chances chances = model_->likelihood.chances(check, look);
      return library::Row(chances.begin(), chances.begin() + static_cast<std::ptrdiff_t>(check.choices.size()));
    });
  }

  // By hypothesis: alone, and as the first still to be put right, alone or in a pair.
  struct Posterior {
    std::vector<double> alone, first;
    std::vector<library::Row> observables;
  };
  [[nodiscard]] Posterior solve() const {
    const library::Beliefs beliefs = library::join_tree(tables);
    Posterior found{std::vector<double>(model_->hypotheses.size(), 0.0), {}, beliefs.observables};
    found.first = found.alone;
    for (std::size_t f = 0; f < pairs_.size(); ++f) {
      const auto first = static_cast<std::size_t>(pairs_[f].first);
      found.first[first] += beliefs.fault[f];
      if (pairs_[f].second < 0) found.alone[first] += beliefs.fault[f];
    }
    return found;
  }
  [[nodiscard]] const std::vector<Hypothesis>& hypotheses() const { return model_->hypotheses; }
  [[nodiscard]] std::size_t pairs() const {
    return static_cast<std::size_t>(std::count_if(pairs_.begin(), pairs_.end(), [](const auto& each) { return each.second >= 0; }));
  }

  library::Tables tables;

 private:
  const Check& own(const Check& told) const {
    return model_->checks[static_cast<std::size_t>(model_->check_index.at(told.id))];
  }
  template <class RowOf>
  void add(std::size_t values, int seen, RowOf row_of) {
    library::Observable made;
    const library::Row any(values, 1.0 / static_cast<double>(values));   // of sizes that there are not
    made.given.assign(tables.fault.size(), std::vector<library::Row>(tables.size.front().size(), any));
    made.seen = seen;
    Look look(model_->plant);
    for (std::size_t s = 0; s < model_->scenarios.size(); ++s) {
      model_->likelihood.aim(look, model_->scenarios[s], 0u);
      library::Row row = row_of(look);
      double sum = 0.0;
      for (const double each : row) sum += each;
      REQUIRE(std::fabs(sum - 1.0) < 1e-9);   // or it is no table of chances
      made.given[cells_[s].fault][cells_[s].size] = std::move(row);
    }
    tables.observables.push_back(std::move(made));
  }

  std::shared_ptr<const Model> model_;
  std::vector<std::pair<int, int>> pairs_;
  std::vector<library::Row> shares_;
  std::vector<Cell> cells_;
};

Case chain(std::size_t outlets, Complaint complaint) {
  Case made = generic_case(tables::GaugeSystem::awg);
  made.circuit.outlets.resize(outlets);
  made.complaint = std::move(complaint);
  made.tools = {true, true, true, true};
  return made;
}

double apart(const Tracer& tracer, const Net& net) {
  const Net::Posterior exact = net.solve();
  std::vector<double> first(net.hypotheses().size(), 0.0);
  for (const Suspect& suspect : tracer.suspects(100'000)) {
    for (std::size_t h = 0; h < first.size(); ++h) {
      if (net.hypotheses()[h].fault == suspect.fault) first[h] += suspect.probability;
    }
  }
  double worst = 0.0;
  for (std::size_t h = 0; h < first.size(); ++h) {
    worst = std::max(worst, std::fabs(tracer.probability(net.hypotheses()[h].fault) - exact.alone[h]));
    worst = std::max(worst, std::fabs(first[h] - exact.first[h]));
  }
  return worst;
}

Answer any_answer(std::mt19937_64& random, const Check& check) {
  switch (random() % 8) {
    case 0: return not_sure();
    case 1:
      if (check.kind == CheckKind::volts) return reading(static_cast<double>(random() % 270) * 0.1 - 13.0);
      break;
    default: break;
  }
  return word(check.choices[random() % check.choices.size()].key);
}

constexpr double kSame = 1e-9;

}  // namespace

TEST_CASE("before any answer: priors, sizes, pairs and the complaint") {
  for (const Symptom symptom : {Symptom::one_dead, Symptom::weak, Symptom::all_dead, Symptom::blows_at_once, Symptom::reversed}) {
    const Case the_case = chain(2, {symptom, {{2}}});
    REQUIRE(problems(the_case).empty());
    const Net net(the_case);
    CHECK(net.pairs() > 0);
    CHECK(apart(Tracer(the_case), net) < kSame);
  }
}

TEST_CASE("whatever is answered, in words, typed or not at all") {
  MESSAGE("seed ", kSeed);
  std::mt19937_64 random(kSeed);
  const int runs = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 2 : 9;
  double least_moved = 1.0;
  for (int run = 0; run < runs; ++run) {
    CAPTURE(run);
    const std::size_t outlets = run % 3 == 0 ? 2 : 1;
    const Case the_case = chain(outlets, {run % 2 == 0 ? Symptom::weak : Symptom::one_dead, {{static_cast<std::uint32_t>(outlets)}}});
    Tracer tracer(the_case);
    Net net(the_case);
    const std::vector<Check> checks = tracer.all_checks();
    for (int step = 0; step < 5; ++step) {
      // Half of them as advised, where the probabilities are large; the rest anywhere.
      const Advice advice = tracer.next();
      const Check check = step % 2 == 0 && advice.check ? *advice.check : checks[random() % checks.size()];
      const Answer answer = any_answer(random, check);
      REQUIRE(tracer.observe(check.id, answer).taken);
      net.see(check, answer);
    }
    CHECK(apart(tracer, net) < kSame);
    // The comparison sees a single answer left out.
    Net less = net;
    const auto last_seen = std::find_if(less.tables.observables.rbegin(), less.tables.observables.rend(),
                                        [](const library::Observable& each) { return each.seen >= 0; });
    last_seen->seen = -1;
    least_moved = std::min(least_moved, apart(tracer, less));
  }
  CHECK(least_moved > 1e3 * kSame);
}

TEST_CASE("what each answer to the next check promises") {
  // Weighed with coarser likelihoods than the posterior (a sixtieth of battery volts), so only near.
  constexpr double kNear = 0.02;
  const Case the_case = chain(1, {Symptom::one_dead, {{1}}});
  Tracer tracer(the_case);
  Net net(the_case);
  int compared = 0;
  for (int step = 0; step < 6; ++step) {
    const Advice advice = tracer.next();
    if (!advice.check) break;
    Net ahead = net;
    ahead.see(*advice.check, not_sure());
    const library::Row promised = ahead.solve().observables.back();
    REQUIRE(promised.size() == advice.outlooks.size());
    std::size_t least = 0;
    for (std::size_t c = 0; c < promised.size(); ++c) {
      INFO(advice.check->id, " ", answer_text(advice.outlooks[c].key));
      CHECK(std::fabs(advice.outlooks[c].probability - promised[c]) < kNear);
      if (promised[c] > 0.1 && (promised[least] <= 0.1 || promised[c] < promised[least])) least = c;
    }
    ++compared;
    const Answer answer = word(advice.outlooks[least].key);   // unlikely, but not a slip: the trace stays long
    REQUIRE(tracer.observe(advice.check->id, answer).taken);
    net.see(*advice.check, answer);
    CHECK(apart(tracer, net) < kSame);
  }
  CHECK(compared >= 3);
}
