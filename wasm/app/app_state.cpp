#include "app/app_state.h"

#include "app/migrate.h"

namespace app {

AppState::AppState(platform::Host& host, const Places& places, const std::vector<platform::StoredRecord>& stored,
                   std::string_view route)
    : records_(host), start_(migrated(records_, stored)), messages_(host, records_), notebook_(records_, start_),
      settings_(host, records_, revision_, start_), lookup_(host, records_, messages_, settings_, start_),
      navigator_(host, places, {notebook_, lookup_}, messages_, route),
      editor_(host, notebook_, messages_, navigator_, revision_),
      desk_(host, notebook_, settings_, messages_, navigator_, editor_),
      trace_desk_(host, records_, notebook_, settings_, messages_, navigator_, start_), shown_(navigator_.route()) {
  start_ = {};
}

void AppState::settle() {
  shown_ = navigator_.route();
  settled_ = editor_.current();
  const Work work = navigator_.places().at(shown_.screen).shows;
  switch (work) {
    case Work::nothing: break;
    case Work::sizing:
      results_.work_out(settled_, editor_.has_circuit() ? &editor_.circuit() : nullptr, shown_);
      break;
    case Work::book: lookup_.make_book(); break;
    case Work::trace: trace_desk_.settle(settled_, shown_); break;
  }
  if (work != Work::trace) trace_desk_.rest();
}

bool AppState::settled() const {
  const bool trace_waits = navigator_.places().at(shown_.screen).shows == Work::trace && !trace_desk_.settled();
  return settled_ == editor_.current() && shown_ == navigator_.route() && !trace_waits;
}

void AppState::take_offer() {
  if (!messages_.toast()) return;
  const Toast taken = *messages_.toast();
  messages_.dismiss_toast();
  switch (taken.offer) {
    case Toast::Offer::undo_edit: return editor_.undo();
    case Toast::Offer::put_back: return desk_.put_back(taken.number);
    case Toast::Offer::put_back_trace: return trace_desk_.put_back_kept();
    case Toast::Offer::none: return;
  }
}

}  // namespace app
