#include "sizing/reference_ampacity.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "reference/reference.h"

namespace reference_ampacity {
namespace {

struct Wire {
  std::string id;
  double ohm_per_km;     // at 20 degC; AWG with 2 % for the lay, metric class 5
};

const std::vector<Wire>& wires() {
  static const std::vector<Wire> all = [] {
    std::vector<Wire> made;
    for (const auto& row : reference::read("awg_copper").at("rows")) {
      const double ohm = 1000.0 / 58.0 * 1.02 / row.at("area_mm2").get<double>();
      made.push_back({row.at("awg").get<std::string>() + "awg", ohm});
    }
    for (const auto& row : reference::read("metric_copper").at("rows")) {
      const double area = row.at("area_mm2").get<double>();
      std::string text = std::to_string(area);
      text.erase(text.find_last_not_of('0') + 1);
      if (text.back() == '.') text.pop_back();
      made.push_back({text + "mm2", row.at("class5_plain").get<double>()});
    }
    return made;
  }();
  return all;
}
double ohm_of(const std::string& id) {
  for (const Wire& wire : wires()) {
    if (wire.id == id) return wire.ohm_per_km;
  }
  return 0.0;
}

struct Row {
  std::string id;
  std::vector<double> amperes;   // by column
  double class2 = 0.0;
};
struct Table {
  std::vector<double> columns_c;
  std::vector<Row> rows;         // ascending size
};

const Table& marine() {
  static const Table table = [] {
    Table made{{60, 75, 80, 90, 105, 125, 200}, {}};
    for (const auto& row : reference::read("ampacity_marine_us").at("rows")) {
      Row read{row.at("awg").get<std::string>() + "awg", {}, 0.0};
      for (const double c : made.columns_c) {
        read.amperes.push_back(row.at("outside_engine_space").at(std::to_string(static_cast<int>(c))).get<double>());
      }
      made.rows.push_back(std::move(read));
    }
    return made;
  }();
  return table;
}

// IEC 60204-1 Table 6, PVC, air of 40 degC (from memory): the lists for buildings begin at 1 mm2.
Table with_thinnest(Table table, double amperes) {
  Row thinnest{"0.75mm2", {amperes, amperes}, 24.5};   // IEC 60228 class 2, from memory
  table.rows.insert(table.rows.begin(), std::move(thinnest));
  return table;
}

const Table& iec(tables::AmpacityTableId id) {
  static const auto read_table = [](const char* pvc, const char* xlpe) {
    Table made{{70, 90}, {}};
    const auto& file = reference::read("ampacity_iec");
    for (const auto& row : file.at("base_two_loaded_single_core_pvc70")) {
      const double area = row.at("area_mm2").get<double>();
      Row read;
      read.amperes.push_back(row.at(pvc).get<double>());
      for (const auto& other : file.at("base_two_loaded_single_core_xlpe90")) {
        if (other.at("area_mm2").get<double>() == area) read.amperes.push_back(other.at(xlpe).get<double>());
      }
      for (const auto& metric : reference::read("metric_copper").at("rows")) {
        if (metric.at("area_mm2").get<double>() != area) continue;
        read.class2 = metric.at("class2_plain").get<double>();
        const double class5 = metric.at("class5_plain").get<double>();
        for (const Wire& wire : wires()) {
          if (wire.id.ends_with("mm2") && wire.ohm_per_km == class5) read.id = wire.id;
        }
      }
      made.rows.push_back(std::move(read));
    }
    return made;
  };
  static const Table in_conduit = read_table("method_B1", "method_B");
  static const Table british = read_table("method_C", "method_C");
  static const Table clipped = [] {
    Table made = british;   // the same rows, with the figures of IEC's own method C
    const auto& file = reference::read("ampacity_iec");
    const auto& small = file.at("base_two_core_1mm2");
    made.rows.front().amperes = {small.at("pvc70_C").get<double>(), small.at("xlpe90_C").get<double>()};
    for (std::size_t i = 1; i < made.rows.size(); ++i) {
      const auto& row = file.at("base_two_loaded_iec_methods").at(i - 1);
      made.rows[i].amperes = {row.at("pvc70_C").get<double>(), row.at("xlpe90_C").get<double>()};
    }
    return made;
  }();
  static const Table whole_in_conduit = with_thinnest(in_conduit, 8.6);
  static const Table whole_british = with_thinnest(british, 9.8);
  static const Table whole_clipped = with_thinnest(clipped, 9.8);
  if (id == tables::AmpacityTableId::enclosed_iec) return whole_in_conduit;
  return id == tables::AmpacityTableId::clipped_bs ? whole_british : whole_clipped;
}

double bundling_marine(int circuits) {
  const int conductors = 2 * circuits;   // red and black
  return conductors <= 2 ? 1.0 : conductors <= 3 ? 0.7 : conductors <= 6 ? 0.6 : conductors <= 24 ? 0.5 : 0.4;
}
double bundling_iec(int circuits) {
  for (const auto& row : reference::read("ampacity_iec").at("grouping_enclosed_or_bundled")) {
    if (row.at("circuits").get<int>() >= circuits) return row.at("factor").get<double>();
  }
  return 0.0;
}
double engine_factor(double column_c) {
  for (const auto& row : reference::read("ampacity_marine_us").at("engine_space_factor_50C")) {
    if (row.at("insulation_C").get<double>() == column_c) return row.at("factor").get<double>();
  }
  return 0.0;
}

}  // namespace

std::optional<double> derated_a(tables::AmpacityTableId id, const std::string& size_id,
                                const tables::Surroundings& around, tables::WireBuild build) {
  const bool is_marine = id == tables::AmpacityTableId::marine_us;
  const Table& table = is_marine ? marine() : iec(id);
  std::size_t column = table.columns_c.size();
  for (std::size_t i = 0; i < table.columns_c.size(); ++i) {
    if (table.columns_c[i] <= around.insulation.number()) column = i;
  }
  if (column == table.columns_c.size()) return std::nullopt;
  const double wire_ohm = ohm_of(size_id);
  const Row* row = nullptr;
  for (const Row& candidate : table.rows) {
    if (candidate.id == size_id) row = &candidate;
  }
  if (row == nullptr) {
    // Another list's size: the largest row that has no more copper, and none past the last row.
    for (const Row& candidate : table.rows) {
      if (ohm_of(candidate.id) >= wire_ohm) row = &candidate;
    }
    // (a wire within 5 % of its resistance is practically that row's size)
    if (row == &table.rows.back() && wire_ohm < 0.95 * ohm_of(row->id)) row = nullptr;
  }
  if (row == nullptr) return std::nullopt;
  const double top_c = table.columns_c[column];
  const double ambient_c = around.hot_space ? std::max(50.0, around.ambient.number()) : around.ambient.number();
  if (ambient_c >= top_c) return std::nullopt;
  double factor = std::min(1.0, std::sqrt((top_c - ambient_c) / (top_c - 30.0)));
  if (is_marine && around.hot_space) factor = std::min(factor, engine_factor(top_c));
  factor *= is_marine ? bundling_marine(around.circuits_bundled) : bundling_iec(around.circuits_bundled);
  if (!is_marine) factor *= std::min(1.0, std::sqrt(row->class2 / wire_ohm));
  // Aluminium carries 0.78 of copper's current (IEC 60364-5-52: the ratio of the columns, from memory).
  if (build.metal == tables::WireMetal::copper_clad_aluminium) factor *= 0.78;
  // In one sheath: 0.9 in free air (ABYC, two conductors, from memory); the building tables are for two
  // loaded conductors already, so there 1 is the most it can be.
  if (build.two_core && is_marine) factor *= 0.9;
  return row->amperes[column] * factor;
}

std::optional<double> road_ceiling_a(const std::string& awg_id) {
  for (const auto& row : reference::read("low_voltage_fuse_ceilings").at("rows")) {
    if (row.at("awg").get<std::string>() + "awg" == awg_id) return row.at("max_overcurrent_A").get<double>();
  }
  return std::nullopt;
}

}  // namespace reference_ampacity
