// Small helpers for drawing at random, all from one seeded engine.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string_view>

namespace evaluation {

using Engine = std::mt19937_64;

inline double uniform(Engine& engine, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(engine);
}
inline bool chance(Engine& engine, double probability) { return uniform(engine, 0.0, 1.0) < probability; }
inline std::size_t index_below(Engine& engine, std::size_t size) {
  return std::uniform_int_distribution<std::size_t>(0, size - 1)(engine);
}
inline double log_uniform(Engine& engine, double low, double high) {
  return std::exp(uniform(engine, std::log(low), std::log(high)));
}
template <class Range>
const auto& one_of(Engine& engine, const Range& range) {
  return range[index_below(engine, std::size(range))];
}
// The same words give the same number on every machine (FNV-1a), so that a person asked the same
// question twice has the same eyes both times, whoever asks.
inline std::uint64_t hash_of(std::string_view text, std::uint64_t seed) {
  std::uint64_t hash = 1469598103934665603ull ^ (seed * 0x9E3779B97F4A7C15ull);
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ull;
  return hash ^ (hash >> 29);
}

}  // namespace evaluation
