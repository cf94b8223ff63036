// What Trace stores, read back, and read from what no app wrote.
#include <doctest/doctest.h>

#include "app/route.h"
#include "screens/places.h"
#include "app/trace_record.h"
#include "vehicle/validate.h"

TEST_CASE("what version 1 kept as fitted is read; what can not be is not known") {
  CHECK(app::read_fitted("size 14awg\nfuse 15\n") == app::FittedTold{"14awg", 15.0});
  CHECK(app::read_fitted("size unknown\nfuse 7.5\n") == app::FittedTold{"", 7.5});
  for (const char* text : {"", "size 99awg\nfuse 0\n", "size\nfuse -5\n", "fuse nan\n", "fuse inf\n", "fuse 1e9\n", "fuse 15 A\n"})
    CHECK(app::read_fitted(text) == app::FittedTold{});
  CHECK(app::read_fitted("colour red\nfuse 15\n") == app::FittedTold{"", 15.0});   // a newer app's line
}

TEST_CASE("a trace is cut to what a vehicle keeps") {
  app::KeptTrace trace;
  trace.outcome = std::string(5000, 'x');
  trace.told.assign(400, {"q", std::string(3000, 'y')});
  const app::KeptTrace cut = app::clipped(trace);
  CHECK(cut.outcome.size() <= vehicle::kMaxTextBytes);
  CHECK(cut.told.size() == vehicle::kMaxTold);
  CHECK(cut.told.front().answer.size() <= vehicle::kMaxTextBytes);
  CHECK(app::clipped(cut) == cut);
}

TEST_CASE("a kept trace as a page of text holds all of it") {
  app::KeptTrace kept;
  kept.date = "2026-11-25";
  kept.circuit = "Bench outlets";
  kept.complaint = "Outlet C is dead";
  kept.told = {{"Does it run?", "Dead"}, {"Look at position 4.", "Blown"}};
  kept.outcome = "The fuse is blown. Put right, and it works.";
  CHECK(app::readable_text(kept) == "Trace of Bench outlets, 2026-11-25\nOutlet C is dead\n\n1. Does it run?\n   Dead\n"
                                    "2. Look at position 4.\n   Blown\n\nThe fuse is blown. Put right, and it works.\n");
  const auto read = app::read_kept(app::write_kept(kept));
  REQUIRE(read);
  CHECK(app::readable_text(*read) == app::readable_text(kept));
}

TEST_CASE("the addresses of a suspect and of what is fitted") {
  for (const char* text : {"trace/suspect/1", "trace/fitted"}) CHECK(screens::places().address(screens::places().read(text)) == text);
  for (const char* text : {"trace/suspect", "trace/suspect/0", "trace/fitted/3"})
    CHECK(screens::places().address(screens::places().read(text)) == "trace");
}

TEST_CASE("outlets picked come back, and what can not be read is none") {
  const std::vector<circuit::OutletId> picked{{1}, {3}, {12}};
  CHECK(app::read_outlets(app::write_outlets(picked)) == picked);
  for (const char* text : {"", "x", "1 x", "-1", "1,3"}) CHECK(app::read_outlets(text).empty());
}
