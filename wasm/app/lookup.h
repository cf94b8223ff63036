// What is looked up: the reference pages in the person's units, the search over them, and what the
// quick calculators were asked last.
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "app/messages.h"
#include "app/quick_inputs.h"
#include "app/records.h"
#include "app/settings.h"
#include "platform/platform.h"
#include "reference/search.h"

namespace app {

inline constexpr std::string_view kQuickKey = "quick";

class Lookup {
 public:
  Lookup(platform::Host& host, Records& records, Messages& messages, const Settings& settings,
         const std::vector<platform::StoredRecord>& stored);
  Lookup(const Lookup&) = delete;
  Lookup& operator=(const Lookup&) = delete;

  // Makes the book and its index in the person's units, unless they are made. Before a frame that
  // shows them, and where an address asks what there is.
  const reference::Book& make_book();
  [[nodiscard]] const reference::Book& book() const;                  // made before
  [[nodiscard]] const reference::SearchIndex& search_index() const;   // of that book

  // What was asked last, kept from start to start.
  [[nodiscard]] calculators::Values quick_values(const calculators::Calculator& calculator) const;
  void set_quick_values(const calculators::Calculator& calculator, const calculators::Values& values);

 private:
  struct Made {
    explicit Made(units::Preference preference) : book(reference::make_book(preference)), index(book) {}
    reference::Book book;
    reference::SearchIndex index;
  };
  platform::Host& host_;
  Records& records_;
  Messages& messages_;
  const Settings& settings_;
  QuickInputs quick_;
  std::unique_ptr<Made> made_;
};

}  // namespace app
