#include "app/lookup.h"

#include "units/expect.h"

namespace app {

Lookup::Lookup(platform::Host& host, Records& records, Messages& messages, const Settings& settings,
               const std::vector<platform::StoredRecord>& stored)
    : host_(host), records_(records), messages_(messages), settings_(settings), quick_(text_of(stored, kQuickKey)) {}

const reference::Book& Lookup::make_book() {
  if (made_ == nullptr || made_->book.preference != settings_.units()) made_ = std::make_unique<Made>(settings_.units());
  return made_->book;
}

const reference::Book& Lookup::book() const {
  BRANCHLIGHT_EXPECT(made_ != nullptr);
  return made_->book;
}

const reference::SearchIndex& Lookup::search_index() const {
  BRANCHLIGHT_EXPECT(made_ != nullptr);
  return made_->index;
}

calculators::Values Lookup::quick_values(const calculators::Calculator& calculator) const {
  return quick_.values(calculator);
}

void Lookup::set_quick_values(const calculators::Calculator& calculator, const calculators::Values& values) {
  const std::string before = quick_.record();
  quick_.set(calculator, values);
  if (quick_.record() == before) return;
  records_.store(kQuickKey, quick_.record());
  messages_.clear_problem();
  host_.wake();
}

}  // namespace app
