#include "circuit/history.h"

#include <doctest/doctest.h>

using namespace circuit;

namespace {

Circuit named(const std::string& name) {
  Circuit circuit = demo_circuit();
  circuit.name = name;
  return circuit;
}

}  // namespace

TEST_CASE("undo gives back the circuit before, redo the one after") {
  History history;
  CHECK_FALSE(history.can_undo());
  CHECK_FALSE(history.can_redo());
  CHECK(history.undo_what().empty());
  CHECK_FALSE(history.undo(named("x")).has_value());
  CHECK_FALSE(history.redo(named("x")).has_value());

  history.remember(named("1"), "first");
  history.remember(named("2"), "second");
  CHECK(history.undo_what() == "second");
  CHECK(history.undo(named("3"))->name == "2");
  CHECK(history.redo_what() == "second");
  CHECK(history.undo_what() == "first");
  CHECK(history.undo(named("2"))->name == "1");
  CHECK_FALSE(history.can_undo());
  CHECK(history.redo(named("1"))->name == "2");
  CHECK(history.redo(named("2"))->name == "3");
  CHECK_FALSE(history.can_redo());
  CHECK(history.undo_what() == "second");
}

TEST_CASE("a new step after an undo ends what could be redone") {
  History history;
  history.remember(named("1"), "first");
  CHECK(history.undo(named("2")).has_value());
  history.remember(named("1"), "other");
  CHECK_FALSE(history.can_redo());
  CHECK(history.undo_what() == "other");
}

TEST_CASE("a held stepper is one step back") {
  History history;
  history.remember(named("1"), "change the length", "run 2");
  history.remember(named("2"), "change the length", "run 2");
  history.remember(named("3"), "change the length", "run 2");
  CHECK(history.undo(named("4"))->name == "1");
  CHECK_FALSE(history.can_undo());
  CHECK(history.redo(named("1"))->name == "4");
}

TEST_CASE("no joining with another key, without a key, after a pause, after an undo or a redo") {
  History history;
  history.remember(named("1"), "a", "run 2");
  history.remember(named("2"), "b", "run 3");
  history.remember(named("3"), "c");
  history.remember(named("4"), "d");
  CHECK(history.undo(named("5"))->name == "4");
  CHECK(history.undo(named("4"))->name == "3");
  CHECK(history.undo(named("3"))->name == "2");
  history.clear();
  CHECK_FALSE(history.can_undo());
  CHECK_FALSE(history.can_redo());

  history.remember(named("1"), "a", "run 2");
  history.end_join();
  history.remember(named("2"), "a", "run 2");
  CHECK(history.undo(named("3"))->name == "2");
  history.remember(named("2"), "a", "run 2");  // after an undo: not into the step before it
  CHECK(history.undo(named("3"))->name == "2");
  CHECK(history.redo(named("2"))->name == "3");
  history.remember(named("3"), "a", "run 2");  // after a redo
  CHECK(history.undo(named("4"))->name == "3");
  CHECK(history.undo(named("3"))->name == "2");
  CHECK(history.undo(named("2"))->name == "1");
}

TEST_CASE("a hundred steps are kept, the oldest go first") {
  History history;
  for (int i = 0; i < 150; ++i) history.remember(named(std::to_string(i)), "step");
  Circuit current = named("150");
  int steps = 0;
  while (auto before = history.undo(current)) {
    current = *before;
    ++steps;
  }
  CHECK(steps == 100);
  CHECK(current.name == "50");
}
