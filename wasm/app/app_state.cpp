#include "app/app_state.h"

namespace app {

AppState::AppState(platform::Host& host, const std::vector<platform::StoredRecord>& stored, std::string_view route)
    : records_(host), messages_(host, records_), notebook_(records_, stored), settings_(host, records_, revision_, stored),
      lookup_(host, records_, messages_, settings_, stored), navigator_(host, notebook_, lookup_, messages_, route),
      editor_(host, notebook_, messages_, navigator_, revision_),
      desk_(host, notebook_, settings_, messages_, navigator_, editor_),
      trace_desk_(host, records_, notebook_, settings_, messages_, navigator_, stored), shown_(navigator_.route()) {}

void AppState::settle() {
  shown_ = navigator_.route();
  settled_ = editor_.current();
  switch (shown_.screen) {
    case Screen::size:
      results_.work_out(settled_, editor_.has_circuit() ? &editor_.circuit() : nullptr, shown_);
      break;
    case Screen::quick:
    case Screen::tables:
    case Screen::cards: lookup_.make_book(); break;
    case Screen::trace: return trace_desk_.settle(settled_, shown_);
    case Screen::circuits:
    case Screen::preferences: break;
  }
  trace_desk_.rest();
}

bool AppState::settled() const {
  const bool trace_waits = shown_.screen == Screen::trace && !trace_desk_.settled();
  return settled_ == editor_.current() && shown_ == navigator_.route() && !trace_waits;
}

void AppState::take_offer() {
  if (!messages_.toast()) return;
  const Toast taken = *messages_.toast();
  messages_.dismiss_toast();
  switch (taken.offer) {
    case Toast::Offer::undo_edit: return editor_.undo();
    case Toast::Offer::put_back: return desk_.put_back_circuit(taken.number);
    case Toast::Offer::put_back_trace: return trace_desk_.put_back_kept();
    case Toast::Offer::none: return;
  }
}

}  // namespace app
