// Random and hostile queries: any bytes, any length; answers stay sound.
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>
#include <string>

#include "reference/search.h"
#include "reference/search_words.h"

TEST_CASE("Search stands any bytes") {
  const reference::Book book = reference::make_book(units::Preference::us);
  const reference::SearchIndex index(book);
  constexpr std::uint64_t kSeed = 20261125;
  std::mt19937_64 random(kSeed);
  MESSAGE("seed " << kSeed);
  const int count = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 200 : 4000;
  const std::string pieces[] = {"10", "awg", "2,5", "mm²", "fuse", "1/0", " ", "%", "ö", "\xff", "red", "crimp", "..", ",", "/"};
  for (int i = 0; i < count; ++i) {
    std::string query;
    const std::size_t length = random() % 12;
    for (std::size_t k = 0; k < length; ++k) {
      if (random() % 3 == 0) query += static_cast<char>(random() % 256);
      else query += pieces[random() % std::size(pieces)];
    }
    double last = 1e300;
    for (const reference::Hit& hit : index.find(query)) {
      CHECK(hit.score <= last);
      CHECK(hit.score > 0.0);
      last = hit.score;
      CHECK(!hit.address.empty());
      if (hit.kind == reference::HitKind::row) CHECK(hit.index < book.pages.at(hit.page).rows.size());
    }
  }
  (void)index.find(std::string(100000, 'a'));
  (void)index.find(std::string(100000, '9'));
}

TEST_CASE("Words: joined units come apart, spellings and signs to one form") {
  using Words = std::vector<std::string>;
  CHECK(reference::search_words("10awg") == Words{"10", "awg"});
  CHECK(reference::search_words("AWG10") == Words{"awg", "10"});
  CHECK(reference::search_words("2,5 mm²") == Words{"2.5", "mm"});
  CHECK(reference::search_words("2.50mm2") == Words{"2.5", "mm"});
  CHECK(reference::search_words("15 Amps") == Words{"15", "a"});
  CHECK(reference::search_words("1/0 gauge") == Words{"1/0", "awg"});
  CHECK(reference::search_words("colors") == Words{"colour"});
  CHECK(reference::nearness("crimp", "crimp", false) == 1.0);
  CHECK(reference::nearness("cirmp", "crimp", false) > 0.0);    // a swap
  CHECK(reference::nearness("continuty", "continuity", false) > 0.0);
  CHECK(reference::nearness("12.5", "12.6", true) == 0.0);      // numbers never by resemblance
  CHECK(reference::nearness("red", "rod", false) == 0.0);       // too short to guess
}
