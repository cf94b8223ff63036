// Plain words for what the core names: choices with a line of help, and short remarks.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/app_state.h"
#include "sizing/answer.h"
#include "ui/theme.h"

namespace screens {

struct Words {
  std::string_view name;
  std::string_view help;
};
std::span<const Words> load_kind_words();    // in the order of circuit::LoadKind
std::span<const Words> setting_words();      // in the order of circuit::Setting
std::span<const Words> source_words();       // in the order of vehicle::SourceKind
std::span<const Words> use_words();          // in the order of circuit::Use
std::span<const Words> point_words();        // in the order of circuit::PointKind
std::span<const Words> joint_words();        // in the order of circuit::Joint
std::span<const Words> return_words();       // in the order of circuit::ReturnPath
std::string_view in_line_name(circuit::InLineKind kind);           // "Inline fuse"
std::string_view criterion_name(sizing::Criterion criterion);      // "Voltage drop"
std::string_view criterion_failed(sizing::Criterion criterion);    // "drops too much", for a ladder row
std::vector<std::string> names_of(std::span<const Words> words);
std::vector<std::string> helps_of(std::span<const Words> words);

std::string size_text(const tables::Conductor& size);   // "10 AWG", "2.5 mm²"
std::string size_unit(const tables::Conductor& size);   // "AWG · 5.3 mm²", "mm²"
std::string fuse_text(const circuit::Circuit& circuit, units::Amperes fuse);   // "15 A blade fuse, blue"
std::string load_text(const circuit::Load& load);       // "10 A", "36 W", "no load yet"
// "10 A", "3 devices, 7.5 A", "only joins wires".
std::string what_runs_text(const circuit::Circuit& circuit, const circuit::Outlet& outlet);
// "1.1 m from B", "3.2 m from the fuse block".
std::string run_text(const app::AppState& app, const circuit::Outlet& outlet);
std::string feeder_text(const circuit::Circuit& circuit, circuit::OutletId from);   // "B", "the fuse block"
std::string letter_of(const circuit::Circuit& circuit, circuit::OutletId id);
std::string limit_text(const sizing::Judgement& judgement, double number);   // by its measure; empty: none
std::string source_text(const tables::Citation& citation);   // "ASTM B258, 2018, table 1 (seen once)"
std::string trimmed(double number);                          // "105", "0.5"

}  // namespace screens
