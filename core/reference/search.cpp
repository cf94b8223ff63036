#include "reference/search.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "calculators/calculator.h"
#include "reference/search_words.h"

namespace reference {
namespace {

constexpr float kTitle = 3.0F, kKeyword = 2.0F, kText = 1.0F;

std::string joined(const std::vector<std::string>& cells, std::size_t from, std::string_view between) {
  std::string text;
  for (std::size_t i = from; i < cells.size(); ++i) {
    if (cells[i].empty()) continue;
    if (!text.empty()) text += between;
    text += cells[i];
  }
  return text;
}

}  // namespace

void SearchIndex::add(Hit hit, double weight, std::string_view keywords, std::string_view text) {
  const auto number = static_cast<std::uint32_t>(entries_.size());
  const std::vector<std::string> title = search_words(hit.title);
  const auto post = [&](const std::vector<std::string>& all, float strength, bool in_title) {
    for (const std::string& word : all) words_.push_back({word, {Posting{number, strength, in_title}}});
  };
  post(title, kTitle, true);
  post(search_words(keywords), kKeyword, false);
  post(search_words(text), kText, false);
  const auto weighty = static_cast<std::size_t>(
      std::count_if(title.begin(), title.end(), [](const std::string& word) { return !is_small(word); }));
  entries_.push_back({std::move(hit), weight, std::max<std::size_t>(1, weighty)});
}

// One entry per word, with the strongest posting for each place it stands in.
void SearchIndex::finish() {
  std::map<std::string, std::map<std::uint32_t, Posting>> all;
  for (const Word& word : words_) {
    const Posting& posting = word.postings.front();
    Posting& kept = all[word.text][posting.entry];
    kept.entry = posting.entry;
    kept.in_title = kept.in_title || posting.in_title;
    kept.weight = std::max(kept.weight, posting.weight);
  }
  words_.clear();
  for (auto& [text, postings] : all) {
    Word word{text, {}};
    for (const auto& [entry, posting] : postings) word.postings.push_back(posting);
    words_.push_back(std::move(word));
  }
}

SearchIndex::SearchIndex(const Book& book) {
  for (std::size_t p = 0; p < book.pages.size(); ++p) {
    const Page& page = book.pages[p];
    const std::string address = "#tables/" + std::string(page.key);
    add({HitKind::page, p, 0, address, std::string(page.title), std::string(page.about), 0.0}, 1.1, page.keywords, page.about);
    for (std::size_t r = 0; r < page.rows.size(); ++r) {
      const Row& row = page.rows[r];
      // The first page with a figure goes before those that repeat its name.
      const double weight = 1.0 - 0.005 * static_cast<double>(p) - 0.0001 * static_cast<double>(r);
      add({HitKind::row, p, r, address + "/" + row.key, row.cells.empty() ? row.key : row.cells[0],
           std::string(page.title) + ": " + joined(row.cells, 1, ", "), 0.0},
          weight, row.keywords, joined(row.cells, 1, " ") + " " + std::string(page.title));
    }
  }
  const auto all = calculators::calculators();
  for (std::size_t i = 0; i < all.size(); ++i) {
    add({HitKind::calculator, 0, i, "#quick/" + std::string(all[i].key), std::string(all[i].title),
         std::string(all[i].question), 0.0}, 1.25, all[i].keywords, all[i].question);
  }
  for (std::size_t i = 0; i < book.cards.size(); ++i) {
    const Card& card = book.cards[i];
    add({HitKind::card, 0, i, "#tables/how/" + std::string(card.key), std::string(card.title), std::string(card.when), 0.0},
        1.15, card.keywords, joined(card.tools, 0, " "));
  }
  finish();
}

std::vector<Hit> SearchIndex::find(std::string_view query, std::size_t at_most) const {
  const std::vector<std::string> asked = search_words(query.substr(0, kMaxQueryBytes));
  const std::size_t count = entries_.size();
  std::vector<float> score(count, 0.0F), in_title(count, 0.0F), best(count), best_title(count);
  std::vector<int> met(count, 0);
  std::vector<std::size_t> exact(count, 0);   // words asked for that stand in the title as asked
  int needed = 0;
  const bool ends_open = !query.empty() && query.back() != ' ';
  for (std::size_t a = 0; a < asked.size(); ++a) {
    const bool unfinished = a + 1 == asked.size() && ends_open;
    // A number before it makes "a" the unit, else it is the small word.
    const bool unit = a > 0 && is_number(asked[a - 1]);
    const bool small = is_small(asked[a]) && !unit && asked.size() > 1;
    std::fill(best.begin(), best.end(), 0.0F);
    std::fill(best_title.begin(), best_title.end(), 0.0F);
    for (const Word& word : words_) {
      const double near = nearness(asked[a], word.text, unfinished);
      if (near <= 0.0) continue;
      const double rare = std::log(1.0 + static_cast<double>(count) / static_cast<double>(word.postings.size()));
      for (const Posting& posting : word.postings) {
        const float strength = static_cast<float>(near * (0.5 + rare)) * posting.weight;
        best[posting.entry] = std::max(best[posting.entry], strength);
        if (posting.in_title) best_title[posting.entry] = std::max(best_title[posting.entry], static_cast<float>(near));
      }
    }
    if (!small) ++needed;
    for (std::size_t e = 0; e < count; ++e) {
      if (best[e] <= 0.0F) continue;
      score[e] += small ? 0.1F * best[e] : best[e];
      if (!small) {
        ++met[e];
        in_title[e] += best_title[e];
        if (best_title[e] >= 1.0F) ++exact[e];
      }
    }
  }
  std::vector<Hit> hits;
  for (int missing = 0; missing <= 1 && hits.empty() && needed - missing > 0; ++missing) {
    for (std::size_t e = 0; e < count; ++e) {
      if (met[e] < needed - missing) continue;
      Hit hit = entries_[e].hit;
      // How much of the title was asked for: "10awg" is the size itself, not a fuse of 10 A for it.
      const double covered = std::min(1.0, static_cast<double>(in_title[e]) / static_cast<double>(entries_[e].title_words));
      hit.score = static_cast<double>(score[e]) * entries_[e].weight * (0.6 + 0.6 * covered);
      if (exact[e] == entries_[e].title_words && static_cast<int>(exact[e]) == needed) hit.score *= 1.4;
      hits.push_back(std::move(hit));
    }
  }
  std::stable_sort(hits.begin(), hits.end(), [](const Hit& a, const Hit& b) { return a.score > b.score; });
  if (hits.size() > at_most) hits.resize(at_most);
  return hits;
}

}  // namespace reference
