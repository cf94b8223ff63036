// The words of the file for every choice, once: word_of() a value, from_word() back, all_words().
// A value without a word does not compile (-Wswitch).
#pragma once

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "vehicle/vehicle.h"

namespace document {

constexpr std::string_view word_of(circuit::LoadKind kind) {
  switch (kind) {
    case circuit::LoadKind::constant_current: return "constant-current";
    case circuit::LoadKind::constant_power: return "constant-power";
    case circuit::LoadKind::resistive: return "resistive";
  }
  return {};
}
constexpr std::string_view word_of(circuit::Use use) {
  switch (use) {
    case circuit::Use::continuous: return "continuous";
    case circuit::Use::intermittent: return "intermittent";
    case circuit::Use::momentary: return "momentary";
  }
  return {};
}
constexpr std::string_view word_of(circuit::InLineKind kind) {
  switch (kind) {
    case circuit::InLineKind::toggle: return "switch";
    case circuit::InLineKind::fuse: return "fuse";
    case circuit::InLineKind::breaker: return "breaker";
    case circuit::InLineKind::relay: return "relay";
  }
  return {};
}
constexpr std::string_view word_of(circuit::ReturnPath path) {
  switch (path) {
    case circuit::ReturnPath::wire: return "wire";
    case circuit::ReturnPath::chassis: return "chassis";
  }
  return {};
}
constexpr std::string_view word_of(circuit::PointKind point) {
  switch (point) {
    case circuit::PointKind::outlet: return "outlet";
    case circuit::PointKind::junction: return "junction";
    case circuit::PointKind::sub_block: return "sub-block";
  }
  return {};
}
constexpr std::string_view word_of(circuit::Joint joint) {
  switch (joint) {
    case circuit::Joint::splice: return "splice";
    case circuit::Joint::direct: return "direct";
  }
  return {};
}
constexpr std::string_view word_of(circuit::Setting setting) {
  switch (setting) {
    case circuit::Setting::van: return "van";
    case circuit::Setting::trailer: return "trailer";
    case circuit::Setting::boat: return "boat";
    case circuit::Setting::fixed: return "fixed";
  }
  return {};
}
constexpr std::string_view word_of(tables::GaugeSystem gauge) {
  switch (gauge) {
    case tables::GaugeSystem::awg: return "awg";
    case tables::GaugeSystem::metric: return "metric";
    case tables::GaugeSystem::sae: return "sae";
  }
  return {};
}
constexpr std::string_view word_of(vehicle::SourceKind kind) {
  switch (kind) {
    case vehicle::SourceKind::alternator: return "alternator";
    case vehicle::SourceKind::dc_charger: return "dc-charger";
    case vehicle::SourceKind::mains_charger: return "mains-charger";
    case vehicle::SourceKind::solar: return "solar";
    case vehicle::SourceKind::other: return "other";
  }
  return {};
}
constexpr std::string_view word_of(vehicle::Knowledge knowledge) {
  switch (knowledge) {
    case vehicle::Knowledge::known: return "known";
    case vehicle::Knowledge::guessed: return "guessed";
    case vehicle::Knowledge::unknown: return "unknown";
  }
  return {};
}
// Keys of core/tables.
inline std::string_view word_of(tables::AmpacityTableId id) { return tables::ampacity_table(id).key; }
inline std::string_view word_of(tables::FuseFamilyId id) { return tables::fuse_family(id).key; }
inline std::string_view word_of(tables::WireMetal metal) { return tables::wire_metal(metal).key; }
inline std::string_view word_of(tables::Practice id) { return tables::practice(id).key; }

// The values of a choice, in their order: 0 and up until one has no word.
template <class T>
std::vector<T> all_values() {
  std::vector<T> values;
  for (int i = 0; !word_of(static_cast<T>(i)).empty(); ++i) values.push_back(static_cast<T>(i));
  return values;
}
template <class Rows, class Member>
auto values_of(const Rows& rows, Member member) {
  std::vector<std::decay_t<decltype(rows[0].*member)>> values;
  for (const auto& row : rows) values.push_back(row.*member);
  return values;
}
template <>
inline std::vector<tables::AmpacityTableId> all_values() {
  return values_of(tables::ampacity_tables(), &tables::AmpacityTable::id);
}
template <>
inline std::vector<tables::FuseFamilyId> all_values() {
  std::vector<tables::FuseFamilyId> ids = values_of(tables::fuse_families(), &tables::FuseFamily::id);
  for (const tables::FuseFamily* main : tables::main_fuse_kinds()) {
    if (std::find(ids.begin(), ids.end(), main->id) == ids.end()) ids.push_back(main->id);
  }
  return ids;
}
template <>
inline std::vector<tables::WireMetal> all_values() {
  return values_of(tables::wire_metals(), &tables::WireMetalRow::metal);
}
template <>
inline std::vector<tables::Practice> all_values() {
  return values_of(tables::practices(), &tables::PracticeRow::id);
}

template <class T>
std::optional<T> from_word(std::string_view word) {
  for (const T value : all_values<T>()) {
    if (word_of(value) == word) return value;
  }
  return std::nullopt;
}

template <class T>
std::vector<std::string_view> all_words() {
  std::vector<std::string_view> words;
  for (const T value : all_values<T>()) words.push_back(word_of(value));
  return words;
}

}  // namespace document
