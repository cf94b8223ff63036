// A conductor that the test is sure of.
#pragma once

#include <doctest/doctest.h>

#include <string>

#include "tables/conductor.h"

inline const tables::Conductor& wire(const std::string& id) {
  const tables::Conductor* found = tables::conductor_by_id(id);
  REQUIRE_MESSAGE(found != nullptr, id);
  return *found;
}
