// The sizes around the answer, thin to thick: how much each drops against the limit, and why
// those that fail do. A tap tells all about one size.
#include <algorithm>

#include "screens/pages.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr double kLimitMark = 0.5;    // the limit stands half way along the bar
constexpr std::size_t kBelow = 2;     // rows shown under and over the answer
constexpr std::size_t kAbove = 1;

bool fails_only_elsewhere(const sizing::Candidate& candidate) {
  const sizing::Judgement* failure = candidate.first_failure();
  if (failure == nullptr) return false;
  for (const sizing::Judgement& judgement : candidate.judgements)
    if (!judgement.passes && judgement.criterion == sizing::Criterion::drop) return false;
  return true;
}

bool runs(const sizing::Candidate& candidate) {
  return std::all_of(candidate.outlets.begin(), candidate.outlets.end(),
                     [](const sizing::OutletResult& outlet) { return outlet.runs; });
}

ui::LadderRow row_of(const sizing::Candidate& candidate, bool chosen) {
  ui::LadderRow row;
  row.label = std::string(candidate.size->size);
  row.unit = std::string(tables::gauge_system_suffix(candidate.size->system));
  row.chosen = chosen;
  row.struck = !candidate.on_shelf;
  const bool can_run = runs(candidate) && !candidate.outlets.empty();
  if (can_run) {
    const sizing::OutletResult& worst = candidate.outlets[candidate.worst_outlet];
    row.fill = worst.drop_limit > 0.0 ? kLimitMark * worst.drop_fraction / worst.drop_limit : 1.0;
    row.value = units::percent_text(worst.drop_fraction);
  } else {
    row.fill = 1.0;
    row.value = "won't run";
  }
  const sizing::Judgement* failure = candidate.first_failure();
  row.tone = ui::Tone::good;
  if (failure != nullptr) row.tone = can_run && fails_only_elsewhere(candidate) ? ui::Tone::caution : ui::Tone::stop;
  if (failure != nullptr && row.tone == ui::Tone::caution) row.note = std::string(criterion_failed(failure->criterion));
  if (!candidate.on_shelf) row.note = "not in the shop";
  row.said = size_text(*candidate.size) + ": " + row.value + " drop, " +
             (failure != nullptr ? std::string(criterion_failed(failure->criterion)) : std::string("fits")) +
             (candidate.on_shelf ? "" : ", not in the shop") + (chosen ? ", the answer" : "");
  return row;
}

// The row to gather round: the answer, or what would be it, or the one to look for fixes with.
std::size_t middle(const sizing::Answer& answer, const tables::Conductor* nearest) {
  if (answer.chosen) return *answer.chosen;
  if (answer.best_ignoring_shelf) return *answer.best_ignoring_shelf;
  for (std::size_t i = 0; i < answer.ladder.size(); ++i)
    if (answer.ladder[i].size == nearest) return i;
  return 0;
}

void draw_rows(app::AppState& app, std::string_view id, std::size_t first, std::size_t last) {
  const sizing::Answer& answer = app.results().answer();
  std::vector<ui::LadderRow> rows;
  for (std::size_t i = first; i < last; ++i) rows.push_back(row_of(answer.ladder[i], answer.chosen == i));
  const std::string head =
      std::string(app.editor().circuit().outlets.size() == 1 ? "Drop" : "Drop at the worst outlet") + " · limit " +
      units::percent_text(app.editor().circuit().drop_limit);
  const auto pressed = ui::ladder(id, rows, {.left = "Size", .right = head, .limit = kLimitMark});
  if (pressed) app.navigator().go(app::Route::why(answer.ladder[first + *pressed].size->id));
}

}  // namespace

void draw_ladder_card(app::AppState& app) {
  const sizing::Answer& answer = app.results().answer();
  const bool has_ladder = answer.verdict != sizing::Verdict::no_load && answer.verdict != sizing::Verdict::invalid;
  if (!has_ladder || answer.ladder.empty()) return;
  const std::size_t at = middle(answer, app.results().nearest());
  const std::size_t first = at > kBelow ? at - kBelow : 0;
  const std::size_t last = std::min(answer.ladder.size(), std::max(at + kAbove + 1, first + kBelow + kAbove + 1));
  ui::begin_card("ladder", {.name = "Wire sizes", .tone = ui::Tone::plain});
  draw_rows(app, "near", first, last);
  if (ui::disclosure("All sizes", false, "tap a size to see why")) draw_rows(app, "all", 0, answer.ladder.size());
  ui::end_card();
}

}  // namespace screens
