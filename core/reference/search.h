// Search over pages, rows, calculators and how-to cards: forgiving of spelling, of units
// joined or apart ("10awg", "2,5 mm2", "fuse 15a") and of word order, with the trade's
// synonyms. An index is a value made once from a book; asking it changes nothing.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "reference/book.h"

namespace reference {

enum class HitKind { page, row, calculator, card };

struct Hit {
  HitKind kind = HitKind::page;
  std::size_t page = 0;        // index in Book::pages, for page and row
  std::size_t index = 0;       // row in its page, calculator in calculators::calculators(), card in Book::cards
  std::string address;         // "#tables/wire/10awg", "#quick/drop-of-a-run", "#tables/how/crimp"
  std::string title;           // "10 AWG"
  std::string detail;          // "Wire: 5.26 mm², 3.3 mΩ/m"
  double score = 0.0;          // higher is nearer
};

inline constexpr std::size_t kMaxQueryBytes = 80;   // the rest of a longer query is not looked at

class SearchIndex {
 public:
  explicit SearchIndex(const Book& book);
  // Best first, at most `at_most`. Every word of the query must be met, small ones like "the"
  // aside; the last one may be unfinished. Where nothing meets all, what meets all but one.
  // Nothing for a query without letters or digits.
  [[nodiscard]] std::vector<Hit> find(std::string_view query, std::size_t at_most = 40) const;

 private:
  void add(Hit hit, double weight, std::string_view keywords, std::string_view text);
  void finish();
  struct Entry {
    Hit hit;                   // score is 0 here
    double weight = 1.0;       // a calculator or page goes before its rows when as near
    std::size_t title_words = 1;
  };
  struct Posting {
    std::uint32_t entry = 0;
    float weight = 0.0F;       // title words weigh more than keywords, keywords more than text
    bool in_title = false;
  };
  struct Word {
    std::string text;
    std::vector<Posting> postings;
  };
  std::vector<Entry> entries_;
  std::vector<Word> words_;    // ascending text
};

}  // namespace reference
