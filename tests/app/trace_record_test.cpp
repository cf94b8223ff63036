// What Trace stores, read back, and read from what no app wrote.
#include <doctest/doctest.h>

#include "app/route.h"
#include "app/trace_frame.h"
#include "app/trace_record.h"

TEST_CASE("what is fitted comes back as it was told; what can not be is not known") {
  for (const app::FittedTold& told : {app::FittedTold{"14awg", 15.0}, {"2.5mm2", 7.5}, {"", 10.0}, {"1/0awg", 0.0}, {}})
    CHECK(app::read_fitted(app::write_fitted(told)) == told);
  for (const char* text : {"", "size 99awg\nfuse 0\n", "size\nfuse -5\n", "fuse nan\n", "fuse inf\n", "fuse 1e9\n", "fuse 15 A\n"})
    CHECK(app::read_fitted(text) == app::FittedTold{});
  CHECK(app::read_fitted("colour red\nfuse 15\n") == app::FittedTold{"", 15.0});   // a newer app's line
}

TEST_CASE("a fuse protects only a wire that is known, by the rules of Size") {
  using diagnosis::Protection;
  const circuit::Circuit circuit = circuit::demo_circuit();
  CHECK(app::protection_of(circuit, {"10awg", 15.0}) == Protection::protects);
  CHECK(app::protection_of(circuit, {"18awg", 30.0}) == Protection::too_large);   // no table here gives 18 AWG as much
  CHECK(app::protection_of(circuit, {"", 1.0}) == Protection::not_judged);
  CHECK(app::protection_of(circuit, {"10awg", 0.0}) == Protection::not_judged);
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
  for (const char* text : {"trace/suspect/1", "trace/fitted"}) CHECK(app::route_text(app::parse_route(text)) == text);
  for (const char* text : {"trace/suspect", "trace/suspect/0", "trace/fitted/3"})
    CHECK(app::route_text(app::parse_route(text)) == "trace");
}

TEST_CASE("outlets picked come back, and what can not be read is none") {
  const std::vector<circuit::OutletId> picked{{1}, {3}, {12}};
  CHECK(app::read_outlets(app::write_outlets(picked)) == picked);
  for (const char* text : {"", "x", "1 x", "-1", "1,3"}) CHECK(app::read_outlets(text).empty());
}
