// What the page is told after a frame: nothing, one offset per region, or everything.
#include "mirror/feed.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace {

ui::Record record(std::uint32_t id, ui::Role role, float y, std::uint32_t region, std::string name) {
  ui::Record made;
  made.id = id;
  made.role = role;
  made.x = 16.0F;
  made.y = y;
  made.width = 300.0F;
  made.height = 48.0F;
  made.region = region;
  made.name = std::move(name);
  return made;
}

std::vector<ui::Record> page(float scrolled = 0.0F) {
  return {record(1, ui::Role::heading, 10.0F, 0, "Bench outlets"),
          record(2, ui::Role::button, 80.0F - scrolled, 7, "Add an outlet"),
          record(3, ui::Role::button, 140.0F - scrolled, 7, "Undo")};
}

using Kind = mirror::News::Kind;

}  // namespace

TEST_CASE("the first frame tells everything, the same frame again nothing") {
  mirror::Feed feed;
  const mirror::News first = feed.after_frame(page());
  CHECK(first.kind == Kind::full);
  CHECK(first.full.find("Bench outlets") != std::string::npos);
  CHECK(feed.after_frame(page()).kind == Kind::nothing);
  feed.forget();
  CHECK(feed.after_frame(page()).kind == Kind::full);
}

TEST_CASE("scrolling tells one offset of the region, however far and however often") {
  mirror::Feed feed;
  (void)feed.after_frame(page());
  for (const float scrolled : {0.1F, 33.3F, 1200.7F, 1200.6F}) {
    CAPTURE(scrolled);
    const mirror::News news = feed.after_frame(page(scrolled));
    CHECK(news.kind == Kind::moves);
    CHECK(news.full.empty());
    CHECK(news.moves.rfind("7\x1F", 0) == 0);
  }
  CHECK(feed.after_frame(page(1200.6F)).kind == Kind::nothing);
}

TEST_CASE("a thing that moves against its region is a new layout") {
  mirror::Feed feed;
  (void)feed.after_frame(page());
  auto records = page(50.0F);
  records[2].y += 10.0F;
  CHECK(feed.after_frame(records).kind == Kind::full);
}

TEST_CASE("every part of a record counts as a change") {
  const auto changed = [](auto change) {
    mirror::Feed feed;
    auto records = page();
    (void)feed.after_frame(records);
    change(records[1]);
    return feed.after_frame(records).kind == Kind::full;
  };
  CHECK(changed([](ui::Record& r) { r.id = 99; }));
  CHECK(changed([](ui::Record& r) { r.role = ui::Role::link; }));
  CHECK(changed([](ui::Record& r) { r.level = 2; }));
  CHECK(changed([](ui::Record& r) { r.state = ui::kDisabled; }));
  CHECK(changed([](ui::Record& r) { r.width += 1.0F; }));
  CHECK(changed([](ui::Record& r) { r.height += 1.0F; }));
  CHECK(changed([](ui::Record& r) { r.region = 8; }));
  CHECK(changed([](ui::Record& r) { r.low = -1.0; }));
  CHECK(changed([](ui::Record& r) { r.high = 1e300; }));
  CHECK(changed([](ui::Record& r) { r.name = "Add"; }));
  CHECK(changed([](ui::Record& r) { r.value = "1"; }));
  CHECK(changed([](ui::Record& r) { r.description = "more"; }));
}

TEST_CASE("words do not run into the next field, and a name can not pretend to be a record") {
  mirror::Feed feed;
  auto records = page();
  (void)feed.after_frame(records);
  records[1].name = "Add an outletx";
  records[1].value = "";
  const auto one = feed.after_frame(records);
  CHECK(one.kind == Kind::full);
  records[1].name = "a\x1E" "9\x1F" "2\x1F\n";
  const auto two = feed.after_frame(records);
  std::size_t ends = 0;
  std::size_t fields = 0;
  for (const char c : two.full) {
    ends += c == '\x1E' ? 1U : 0U;
    fields += c == '\x1F' ? 1U : 0U;
  }
  CHECK(ends == records.size());
  CHECK(fields == 14U * records.size());
}

TEST_CASE("an element that closes a group carries no place and moves nothing") {
  mirror::Feed feed;
  auto records = page();
  ui::Record end;
  end.role = ui::Role::end;
  end.region = 7;
  records.insert(records.begin() + 1, end);
  (void)feed.after_frame(records);
  for (std::size_t i = 2; i < records.size(); ++i) {
    records[i].y -= 40.0F;
  }
  CHECK(feed.after_frame(records).kind == Kind::moves);
}
