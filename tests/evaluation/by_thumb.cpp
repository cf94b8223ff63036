// Rules of thumb: from the battery outward, from the outlet back, or by halves. Each
// reads along the red chain, then the black, until it has one place between a good reading and a bad
// one; then it repairs what sits there, cheapest first, and tries again.
#include <algorithm>
#include <map>

#include "evaluation/chain.h"

namespace evaluation {
namespace {

using diagnosis::Check;
using diagnosis::CheckKind;
using diagnosis::Fault;
using diagnosis::FaultKind;
using diagnosis::Symptom;
using enum diagnosis::FaultKind;

enum class Read { good, bad, minus, unknown };

class FixedOrder {
 public:
  FixedOrder(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run)
      : policy_(policy), case_(breakdown.the_case), person_(person), options_(options), run_(run), chain_(case_),
        target_(chain_.target()), path_(chain_.path()) {}

  void go() {
    const Symptom symptom = case_.complaint.symptom;
    if (symptom == Symptom::blows_at_once || symptom == Symptom::blows_later) blown_again();
    else if (symptom == Symptom::something_else_alive) other_pair();
    else if (symptom == Symptom::only_when_moved) moved();
    else if (case_.tools.meter || case_.tools.lamp) by_points();
    else by_eye();
    everything_left();
    if (!over_) run_.gave_up = true;
  }

 private:
  std::string ask(const Check& check) {
    if (!diagnosis::has_tools(check, case_.tools)) return {};
    run_.minutes += chain_.minutes(check);
    ++run_.checks;
    chain_.done(check);
    const std::string word = Chain::word_of(check, person_.answer(check));
    if (options_.keep_story) run_.story.push_back(check.id + " -> " + word);
    return word;
  }
  Read read(const Point& point) {
    for (const Check& check : point.checks) {
      const std::string word = ask(check);
      if (word.empty()) continue;
      if (word == "minus") return Read::minus;
      return word == "full" || word == "bright" ? Read::good : Read::bad;
    }
    return Read::unknown;
  }

  void attempt(const Fault& fault) {
    if (over_ || run_.remedies >= 10) return;
    const std::string id = diagnosis::remedy_id(fault);
    if (std::find(tried_.begin(), tried_.end(), id) != tried_.end()) return;
    tried_.push_back(id);
    diagnosis::RetestResult result{};
    over_ = book_remedy(case_, person_, diagnosis::remedy_for(case_, fault), run_, result);
  }
  void attempt(const std::vector<Fault>& faults) {
    for (const Fault& fault : faults) attempt(fault);
  }

  // Index of the first bad point; the size when all are good. Notes where minus was first read.
  std::size_t first_bad(const std::vector<Point>& points) {
    std::map<std::size_t, Read> seen;
    const auto bad = [&](std::size_t k) {
      if (!seen.contains(k)) seen[k] = read(points[k]);
      if (seen[k] == Read::minus) minus_at_ = std::min(minus_at_, k);
      return seen[k] == Read::bad || seen[k] == Read::minus;
    };
    const auto unknown = [&](std::size_t k) { return seen.contains(k) && seen[k] == Read::unknown; };
    const std::size_t n = points.size();
    if (policy_ == Policy::thumb_outward) {
      for (std::size_t k = 0; k < n; ++k) {
        if (bad(k)) return k;
      }
      return n;
    }
    if (policy_ == Policy::thumb_back) {
      std::size_t worst = n;
      for (std::size_t k = n; k-- > 0;) {
        if (bad(k)) worst = k;
        else if (!unknown(k)) break;
      }
      return worst;
    }
    std::size_t low = 0, high = n;   // all below low are good; high is bad, or the end
    if (!bad(n - 1) && !unknown(n - 1)) return n;
    high = n - 1;
    while (low < high) {
      const std::size_t middle = (low + high) / 2;
      if (bad(middle)) high = middle;
      else low = middle + 1;
    }
    return high;
  }

  void by_points() {
    const std::vector<Point> red = chain_.red_points(), black = chain_.black_points();
    const std::size_t red_bad = first_bad(red);
    if (minus_at_ < red.size()) {
      const OutletId where = minus_at_ >= 5 && minus_at_ - 5 < path_.size() ? path_[minus_at_ - 5] : target_;
      if (minus_at_ - 5 < path_.size()) attempt({reversed_from, where});
      else attempt({reversed_here, where});
      attempt({reversed_from, where});
      return;
    }
    if (red_bad < red.size()) return attempt(red[red_bad].before_it);
    const std::size_t black_bad = first_bad(black);
    if (black_bad < black.size()) return attempt(black[black_bad].before_it);
    attempt({device_dead});
  }

  // With nothing to measure by: look and pull along the way.
  void by_eye() {
    std::vector<std::pair<const Check*, std::vector<Fault>>> looks;
    looks.push_back({chain_.find(CheckKind::block_alive), {{main_open}, {source_flat}}});
    looks.push_back({chain_.find(CheckKind::fuse_look), {{fuse_blown}, {fuse_elsewhere}}});
    looks.push_back({chain_.find(CheckKind::fuse_press), {{fuse_loose}}});
    looks.push_back({chain_.find(CheckKind::tug_clamps), {}});
    for (const OutletId outlet : path_) {
      looks.push_back({chain_.find(CheckKind::look_behind, outlet), {}});
      looks.push_back({chain_.find(CheckKind::tug, outlet), {}});
    }
    looks.push_back({chain_.find(CheckKind::device_elsewhere), {{device_dead}}});
    if (policy_ == Policy::thumb_back) std::reverse(looks.begin(), looks.end());
    if (policy_ == Policy::thumb_half) {   // where does it stop working? then look beyond the last that works
      std::size_t low = 0, high = path_.size();
      while (low < high) {
        const std::size_t middle = (low + high) / 2;
        const Check* check = chain_.find(CheckKind::other_device, path_[middle]);
        if (check != nullptr && ask(*check) == "works") low = middle + 1;
        else high = middle;
      }
      if (low > 0) {
        const auto from = static_cast<std::ptrdiff_t>(4 + 2 * (low - 1));
        std::rotate(looks.begin(), looks.begin() + from, looks.end());
      }
    }
    for (const auto& [check, faults] : looks) {
      if (check != nullptr && !over_) seen_by_eye(*check, ask(*check), faults);
    }
  }
  void seen_by_eye(const Check& check, const std::string& word, const std::vector<Fault>& faults) {
    const bool quiet = word.empty() || word == "yes" || word == "whole" || word == "same" || word == "holds" ||
                       word == "fine" || word == "live" || (check.kind == CheckKind::device_elsewhere && word == "works");
    if (quiet) return;
    const Side side = word.starts_with("red") ? Side::positive : Side::negative;
    if (word == "red" || word == "black") attempt({clamp_loose, circuit::kBlock, side});
    else if (word.ends_with("-splice") && word != "crossed-splice") attempt({splice_open, check.outlet, side});
    else if (word.ends_with("-tab")) attempt({tab_off, check.outlet, side});
    else if (word == "crossed-tabs") attempt({reversed_here, check.outlet});
    else if (word == "crossed-splice") attempt({reversed_from, check.outlet});
    else if (word == "damaged") attempt({pair_shorted, check.outlet});
    else if (word == "other-cable") neighbours_at(check.outlet);
    else attempt(faults);
  }
  void neighbours_at(OutletId outlet) {
    for (std::size_t n = 0; n < case_.neighbours.size(); ++n) {
      if (case_.neighbours[n].same_loom) {
        attempt({wrong_branch_unfused, outlet, Side::positive, static_cast<int>(n)});
      }
    }
  }

  void blown_again() {
    if (const Check* sum = chain_.find(CheckKind::add_up); sum != nullptr && ask(*sum) == "over") attempt({overload});
    std::vector<OutletId> order = ids();
    if (policy_ == Policy::thumb_back) std::reverse(order.begin(), order.end());
    for (const OutletId outlet : order) {
      if (over_) return;
      const Check* look = chain_.find(CheckKind::look_behind, outlet);
      if (look != nullptr && ask(*look) == "damaged") attempt({pair_shorted, outlet});
    }
    for (const OutletId outlet : order) attempt({pair_shorted, outlet});
  }
  void other_pair() {
    std::vector<OutletId> order = ids();
    if (policy_ == Policy::thumb_back) std::reverse(order.begin(), order.end());
    for (const OutletId outlet : order) {
      if (over_) return;
      const Check* look = chain_.find(CheckKind::look_behind, outlet);
      if (look != nullptr && ask(*look) == "other-cable") neighbours_at(outlet);
    }
    for (const OutletId outlet : order) neighbours_at(outlet);
  }
  void moved() {
    std::vector<OutletId> order = path_;
    if (policy_ == Policy::thumb_back) std::reverse(order.begin(), order.end());
    for (const OutletId outlet : order) {
      if (over_) return;
      const Check* tug = chain_.find(CheckKind::tug, outlet);
      if (tug != nullptr) seen_by_eye(*tug, ask(*tug), {});
    }
  }

  // The order found nothing, or the wrong thing: what is left, cheap and likely first.
  void everything_left() {
    attempt({fuse_blown});
    attempt({fuse_loose});
    attempt({device_dead});
    for (const Side side : {Side::positive, Side::negative}) attempt({clamp_loose, circuit::kBlock, side});
    for (auto at = path_.rbegin(); at != path_.rend(); ++at) {
      for (const Side side : {Side::positive, Side::negative}) attempt({splice_open, *at, side});
    }
    attempt({overload});
    attempt({wire_thin});
  }

  std::vector<OutletId> ids() const {
    std::vector<OutletId> all;
    for (const circuit::Outlet& outlet : case_.circuit.outlets) all.push_back(outlet.id);
    return all;
  }

  Policy policy_;
  const diagnosis::Case& case_;
  Person& person_;
  const RunOptions& options_;
  Run& run_;
  Chain chain_;
  OutletId target_;
  std::vector<OutletId> path_;
  std::vector<std::string> tried_;
  std::size_t minus_at_ = 1000;
  bool over_ = false;
};

}  // namespace

void run_by_thumb(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run) {
  FixedOrder(policy, breakdown, person, options, run).go();
}

}  // namespace evaluation
