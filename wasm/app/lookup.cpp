// AppState's part for what is looked up: calculators, reference pages, how-to cards.
#include <algorithm>

#include "app/app_state.h"

namespace app {

const AppState::Lookup& AppState::lookup() const {
  if (lookup_ == nullptr || lookup_->book.preference != units()) lookup_ = std::make_unique<Lookup>(units());
  return *lookup_;
}
const reference::Book& AppState::book() const { return lookup().book; }
const reference::SearchIndex& AppState::search_index() const { return lookup().index; }

bool AppState::is_there(const Route& route) const {
  if (route.key.empty()) return route.screen != Screen::cards;
  if (route.screen == Screen::trace) return diagnosis::symptom_by_key(route.key) != nullptr;
  if (route.screen == Screen::quick) return calculators::calculator_by_key(route.key) != nullptr;
  if (route.screen == Screen::cards) return book().card(route.key) != nullptr;
  if (route.screen != Screen::tables) return true;
  const reference::Page* page = book().page(route.key);
  if (page == nullptr || route.sheet != Sheet::row) return page != nullptr;
  return std::any_of(page->rows.begin(), page->rows.end(),
                     [&](const reference::Row& row) { return address_word(row.key) == route.row; });
}

std::string AppState::lookup_title() const {
  switch (route_.screen) {
    case Screen::quick:
      if (const auto* calculator = calculators::calculator_by_key(route_.key)) return std::string(calculator->title);
      return "Quick";
    case Screen::tables:
      if (route_.key.empty()) return "Tables";
      if (const reference::Page* page = book().page(route_.key)) return std::string(page->title);
      return "Tables";
    case Screen::cards:
      if (const reference::Card* card = book().card(route_.key)) return std::string(card->title);
      return "Tables";
    case Screen::trace: return "Trace";
    default: return {};
  }
}

calculators::Values AppState::quick_values(const calculators::Calculator& calculator) const {
  return quick_.values(calculator);
}

void AppState::set_quick_values(const calculators::Calculator& calculator, const calculators::Values& values) {
  const std::string before = quick_.record();
  quick_.set(calculator, values);
  if (quick_.record() == before) return;
  records_.store(kQuickKey, quick_.record());
  problem_.clear();
  host_.wake();
}

bool AppState::use_edits(const std::vector<circuit::Edit>& edits, const std::string& what) {
  if (!has_circuit() || edits.empty()) return false;
  const std::uint32_t number = notebook_.open()->number;
  const circuit::Circuit before = circuit();
  circuit::Circuit after = before;
  for (const circuit::Edit& edit : edits) {
    circuit::EditResult result = circuit::apply(after, edit);
    if (!result.circuit) {
      say_problem(result.problem ? circuit::one_line(*result.problem) : "That can not be done.");
      return false;
    }
    after = std::move(*result.circuit);
  }
  const bool differs = notebook_.replace_open(after);
  if (differs) {
    notebook_.history(number)->remember(before, what);
    changed();
  }
  say(differs ? "Done: " + what + "." : "Your circuit has that already.", differs ? Toast::Offer::undo_edit : Toast::Offer::none);
  return true;
}

}  // namespace app
