// Every example of docs/probe.md is asked and its answer compared: words exactly, numbers
// within 1e-6. Run with BRANCHLIGHT_REWRITE=1 to write the present answers into the page,
// and read the difference before you keep it.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>

#include "probe/requests.h"

using requests::Json;

namespace {

constexpr const char* kPage = "docs/probe.md";

bool same(const Json& told, const Json& given) {
  if (told.is_number() && given.is_number()) {
    const double a = told.get<double>();
    const double b = given.get<double>();
    return std::fabs(a - b) <= 1e-6 * std::max(1.0, std::fabs(a));
  }
  if (told.type() != given.type() || told.size() != given.size()) return false;
  if (told.is_array()) {
    for (std::size_t i = 0; i < told.size(); ++i) {
      if (!same(told[i], given[i])) return false;
    }
    return true;
  }
  if (told.is_object()) {
    for (const auto& item : told.items()) {
      if (!given.contains(item.key()) || !same(item.value(), given.at(item.key()))) return false;
    }
    return true;
  }
  return told == given;
}

// Short things on one line, long ones spread.
std::string pretty(const Json& value, std::size_t indent = 0) {
  constexpr std::size_t kLine = 110;
  const std::string flat = value.dump();
  if (!value.is_structured() || flat.size() + indent <= kLine) return flat;
  std::string text(1, value.is_object() ? '{' : '[');
  bool first = true;
  for (const auto& item : value.items()) {
    text += first ? "\n" : ",\n";
    first = false;
    text.append(indent + 2, ' ');
    if (value.is_object()) text += Json(item.key()).dump() + ": ";
    text += pretty(item.value(), indent + 2);
  }
  return text + "\n" + std::string(indent, ' ') + (value.is_object() ? '}' : ']');
}

// The text between a fence line and its end, from `from` on.
struct Block { std::size_t begin; std::size_t size; };
Block block(const std::string& page, const std::string& fence, std::size_t from) {
  const std::size_t open = page.find(fence, from);
  if (open == std::string::npos) return {std::string::npos, 0};
  const std::size_t begin = open + fence.size();
  const std::size_t end = page.find("\n```", begin);
  REQUIRE(end != std::string::npos);
  return {begin, end - begin};
}

}  // namespace

TEST_CASE("the examples of the probe's page give the answers the page shows") {
  std::string page = requests::read(kPage);
  const bool rewrite = std::getenv("BRANCHLIGHT_REWRITE") != nullptr;
  int examples = 0;
  for (std::size_t from = 0;;) {
    const Block asked = block(page, "```json request\n", from);
    if (asked.begin == std::string::npos) break;
    const Block told = block(page, "```json answer\n", asked.begin);
    REQUIRE(told.begin != std::string::npos);
    const Json request = Json::parse(page.substr(asked.begin, asked.size), nullptr, false);
    CAPTURE(page.substr(asked.begin, asked.size));
    REQUIRE(request.is_object());
    const Json given = requests::ask(request);
    if (rewrite) {
      page.replace(told.begin, told.size, pretty(given));
    } else {
      const Json answer = Json::parse(page.substr(told.begin, told.size), nullptr, false);
      CHECK_MESSAGE(same(answer, given), "now: ", pretty(given));
    }
    from = told.begin;
    ++examples;
  }
  CHECK(examples >= 4);
  if (rewrite) std::ofstream(std::string(BRANCHLIGHT_SOURCE_DIR) + "/" + kPage, std::ios::binary) << page;
}
