#include "sizing/rules.h"

#include <array>

namespace sizing {
namespace {

using tables::Citation;
using tables::Standing;

constexpr Citation kFuseMarginCitation{
    "rule-fuse-margin", "Fuse makers' application notes", "", "rating should exceed normal current by 25 %",
    "The same 125 % as NEC 210.20(A) for continuous loads, of the current marked on them (from memory).",
    Standing::seen};
constexpr Citation kStartCitation{
    "rule-start", "Common practice", "", "starts of a minute or more count as load, those under a second do not",
    "A heater glows for minutes and its wire and fuse are for that; a motor's start is over before a fuse warms. No "
    "source.", Standing::common_practice};
constexpr Citation kFuseCeilingCitation{
    "rule-fuse-ceiling", "IEC 60364-4-43, coordination of conductor and fuse", "", "Ib <= In <= Iz",
    "From memory. 33 CFR 183.455(c) would allow 150 % of the ampacity below 50 V; the stricter rule is used, "
    "and no part in the path is asked for more than its own rating either.", Standing::memory};
constexpr Citation kFarShortCitation{
    "rule-far-short", "Branchlight", "", "a short at the far outlet opens the fuse within 5 s",
    "Worst case: battery low, wire as hot as its insulation allows, slowest published gate. 5 s is the end of "
    "the range of the adiabatic rule.", Standing::our_choice};
constexpr Citation kWithstandCitation{
    "rule-withstand", "IEC 60364-4-43, adiabatic rule, k by IEC 60364-5-54 Annex A", "", "I^2 t <= k^2 S^2",
    "Formula computed; constants from memory. The wire starts at its insulation rating and may reach 160 °C, or "
    "250 °C where the insulation is rated above 105 °C.", Standing::memory};
constexpr Citation kBoatAwgCitation{
    "rule-minimum-boat-awg", "33 CFR 183.425", "", "(d) to (f)",
    "A single conductor is at least 16 AWG.", Standing::seen_twice};
constexpr Citation kBoatMetricCitation{
    "rule-minimum-boat-metric", "ISO 10133", "2012", "7.7",
    "A single conductor longer than 200 mm is at least 1 mm².", Standing::seen};
constexpr Citation kVehicleCitation{
    "rule-minimum-vehicle", "NFPA 70 (NEC) 552.10(B)(2)", "", "sizes listed from 18 AWG",
    "Metric: 0.75 mm², the nearest listed size, is this project's choice.", Standing::seen_twice};
constexpr Citation kFixedCitation{
    "rule-minimum-fixed", "Branchlight", "", "the smallest size of the list",
    "No rule was found for extra-low voltage in a building; thinner wire breaks when handled.",
    Standing::our_choice};
constexpr Citation kDropCitation{
    "rule-drop", "ABYC E-11; ISO 10133 4", "", "3 % where it matters, 10 % elsewhere, of nominal voltage",
    "The 3 % limits were read, the 10 % of ISO is from memory. 5 % is this project's middle; it is yours to set.",
    Standing::seen_twice};
constexpr Citation kOperatingPointCitation{
    "rule-operating-point", "Ohm's and Kirchhoff's laws", "", "solved for each load's own law",
    "A load that draws constant power finds no voltage to run at when the wire is too long.",
    Standing::computed};
constexpr Citation kDeviceMinimumCitation{
    "rule-device-minimum", "The device's own marking", "", "lowest voltage, as typed",
    "Judged with the battery low and the worst loading.", Standing::computed};
constexpr Citation kFuseVoltageCitation{
    "rule-fuse-voltage", "33 CFR 183.455(d)", "", "voltage rating at least the circuit's nominal voltage",
    "This project asks for more: the highest volts that the battery or any source brings.", Standing::seen};
constexpr Citation kVibrationCitation{
    "rule-vibration", "Common practice", "", "no twist-on connectors in anything that moves",
    "Vibration works them loose.", Standing::common_practice};

constexpr std::array<const Citation*, 14> kAll{
    &kFuseMarginCitation, &kStartCitation, &kFuseCeilingCitation, &kFarShortCitation, &kWithstandCitation, &kBoatAwgCitation,
    &kBoatMetricCitation, &kVehicleCitation, &kFixedCitation, &kDropCitation, &kOperatingPointCitation,
    &kDeviceMinimumCitation, &kFuseVoltageCitation, &kVibrationCitation};

struct MinimumRow {
  circuit::Setting setting;
  tables::GaugeSystem gauge;
  double area_mm2;  // a little below 16 AWG's 1.31, 18 AWG's 0.82 and 18 SAE's 0.779, so that those pass
  const Citation* citation;
};
constexpr std::array<MinimumRow, 11> kMinimum{{
    {circuit::Setting::van, tables::GaugeSystem::awg, 0.82, &kVehicleCitation},
    {circuit::Setting::van, tables::GaugeSystem::metric, 0.75, &kVehicleCitation},
    {circuit::Setting::van, tables::GaugeSystem::sae, 0.77, &kVehicleCitation},
    {circuit::Setting::trailer, tables::GaugeSystem::awg, 0.82, &kVehicleCitation},
    {circuit::Setting::trailer, tables::GaugeSystem::metric, 0.75, &kVehicleCitation},
    {circuit::Setting::trailer, tables::GaugeSystem::sae, 0.77, &kVehicleCitation},
    {circuit::Setting::boat, tables::GaugeSystem::awg, 1.30, &kBoatAwgCitation},
    {circuit::Setting::boat, tables::GaugeSystem::metric, 1.0, &kBoatMetricCitation},
    {circuit::Setting::fixed, tables::GaugeSystem::awg, 0.82, &kFixedCitation},
    {circuit::Setting::fixed, tables::GaugeSystem::metric, 0.75, &kFixedCitation},
    {circuit::Setting::fixed, tables::GaugeSystem::sae, 0.77, &kFixedCitation},
}};

}  // namespace

const Citation& fuse_margin_citation() { return kFuseMarginCitation; }
const Citation& start_citation() { return kStartCitation; }
const Citation& fuse_ceiling_citation() { return kFuseCeilingCitation; }
const Citation& far_short_citation() { return kFarShortCitation; }
const Citation& withstand_citation() { return kWithstandCitation; }
const Citation& drop_citation() { return kDropCitation; }
const Citation& operating_point_citation() { return kOperatingPointCitation; }
const Citation& device_minimum_citation() { return kDeviceMinimumCitation; }
const Citation& fuse_voltage_citation() { return kFuseVoltageCitation; }
const Citation& vibration_citation() { return kVibrationCitation; }

units::Celsius short_time_temperature(units::Celsius insulation_rating) {
  // IEC 60364-4-43: 160 °C for PVC grades, 250 °C for cross-linked. A 90 or 105 °C wire may be
  // either, so it is taken as the weaker.
  return insulation_rating > units::Celsius(105.0) ? units::Celsius(250.0) : units::Celsius(160.0);
}

MechanicalMinimum mechanical_minimum(circuit::Setting setting, tables::GaugeSystem gauge) {
  for (const MinimumRow& row : kMinimum) {
    if (row.setting == setting && row.gauge == gauge) {
      return {units::SquareMillimetres(row.area_mm2), row.citation};
    }
  }
  return {units::SquareMillimetres(1.30), &kBoatAwgCitation};  // the strictest, for a setting unknown here
}

std::span<const Citation* const> rule_citations() { return kAll; }

}  // namespace sizing
