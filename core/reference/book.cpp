#include "reference/book.h"

#include "calculators/calculator.h"
#include "reference/pages.h"
#include "tables/conductor.h"

namespace reference {
namespace {

template <class Item>
const Item* find(const std::vector<Item>& items, std::string_view key) {
  for (const Item& item : items) {
    if (item.key == key) return &item;
  }
  return nullptr;
}

// How far a figure can be trusted, surest first.
int doubt(tables::Standing standing) {
  switch (standing) {
    case tables::Standing::computed: return 0;
    case tables::Standing::seen_twice: return 1;
    case tables::Standing::seen: return 2;
    case tables::Standing::our_choice: return 3;
    case tables::Standing::common_practice: return 4;
    case tables::Standing::memory: return 5;
  }
  return 5;
}

}  // namespace

const Page* Book::page(std::string_view key) const { return find(pages, key); }
const Card* Book::card(std::string_view key) const { return find(cards, key); }

Book make_book(units::Preference preference) {
  Book book;
  book.preference = preference;
  for (auto* group : {&wire_pages, &fuse_pages, &terminal_pages, &practice_pages}) {
    for (Page& page : group(preference)) book.pages.push_back(std::move(page));
  }
  book.cards = how_to_cards();
  return book;
}

tables::Standing least_sure(const std::vector<const tables::Citation*>& citations) {
  tables::Standing worst = tables::Standing::computed;
  for (const tables::Citation* citation : citations) {
    if (doubt(citation->standing) > doubt(worst)) worst = citation->standing;
  }
  return worst;
}

Row make_row(std::string key, std::vector<std::string> cells, std::vector<const tables::Citation*> citations,
             tables::Standing standing, std::string keywords) {
  Row row;
  row.key = std::move(key);
  row.cells = std::move(cells);
  row.citations = std::move(citations);
  row.standing = standing;
  row.keywords = std::move(keywords);
  return row;
}
Row make_row(std::string key, std::vector<std::string> cells, std::vector<const tables::Citation*> citations,
             std::string keywords) {
  const tables::Standing standing = least_sure(citations);
  return make_row(std::move(key), std::move(cells), std::move(citations), standing, std::move(keywords));
}

Tap calculator_tap(std::string_view calculator, const std::vector<Fill>& fills, std::string label) {
  Tap tap;
  const calculators::Calculator* found = calculators::calculator_by_key(calculator);
  if (found == nullptr) return tap;
  tap.calculator = found->key;
  tap.label = std::move(label);
  for (const Fill& fill : fills) {
    const auto input = calculators::input_index(*found, fill.input);
    if (!input) continue;
    const auto choice = calculators::choice_index(found->inputs[*input], fill.choice);
    if (!fill.choice.empty() && !choice) continue;
    tap.with.emplace_back(found->inputs[*input].key, choice ? static_cast<double>(*choice) : fill.value);
  }
  return tap;
}

std::string number(double value, int digits) { return units::number_text(value, digits); }
std::string with(double value, std::string_view unit, int digits) {
  return number(value, digits) + " " + std::string(unit);
}
std::string small_length(units::Millimetres length, units::Preference preference) {
  if (preference == units::Preference::us) return with(length.number() / 25.4, "in", 2);
  return with(length.number(), "mm", 3);
}
std::string range_text(double low, double high, std::string_view unit, int digits) {
  return number(low, digits) + " to " + with(high, unit, digits);
}
std::string wire_name(std::string_view conductor_id) {
  const tables::Conductor* wire = tables::conductor_by_id(conductor_id);
  if (wire == nullptr) return "?";
  return std::string(wire->size) + " " + std::string(tables::gauge_system_suffix(wire->system));
}

}  // namespace reference
