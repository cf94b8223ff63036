// Outlets, colours, batteries, meters, joints, usual drops, where fuses sit, cautions.
#include <cmath>
#include <utility>

#include "reference/pages.h"
#include "tables/conductor_colours.h"
#include "tables/fact.h"
#include "tables/part.h"
#include "tables/supply.h"

namespace reference {
namespace {

using tables::Topic;

Page fact_page(Topic topic, std::string_view key, std::string_view title, std::string_view about,
               std::vector<std::string> columns, std::string_view caution, std::string_view keywords) {
  Page page{.key = key, .title = title, .about = about, .columns = std::move(columns), .rows = {}, .caution = caution,
            .keywords = keywords, .picture = {}};
  for (const tables::Fact& fact : tables::facts(topic)) {
    std::vector<std::string> cells{std::string(fact.what), std::string(fact.says)};
    Row row = make_row(std::string(fact.key), {}, {fact.citation}, std::string(fact.keywords));
    if (page.columns.size() > 2) cells.push_back(std::string(fact.more));
    else row.note = std::string(fact.more);
    row.cells = std::move(cells);
    page.rows.push_back(std::move(row));
  }
  return page;
}

Row* row_of(Page& page, std::string_view key) {
  for (Row& row : page.rows) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

std::string carries_text(const tables::Part& part) {
  std::string text = units::amperes_text(part.rated) + " typical";
  if (part.continuous < part.rated) text += ", " + units::amperes_text(part.continuous) + " for long";
  return text;
}

Page outlet_page() {
  Page page = fact_page(Topic::outlet_form, "outlets", "Outlets and polarity", "Which contact is which, and what they carry.",
                        {"Outlet", "Polarity", "Carries"}, "Friction contacts get hot: hold lasting loads to 10 A.",
                        "outlet socket polarity lighter usb plug positive negative");
  for (Row& row : page.rows) {
    if (row.key == "lighter" || row.key == "iso4165") row.picture = {Depicts::outlet, row.key};
    if (row.key == "check") row.picture = {Depicts::probes_sign, ""};
  }
  page.picture = {Depicts::outlet, "lighter"};
  for (const tables::Part& part : tables::parts(tables::PartKind::outlet)) {
    Row row = make_row(std::string(part.key),
                       {std::string(part.name), "", carries_text(part)}, {part.citation},
                       part.key.find("lighter") != std::string_view::npos ? "outlet rating amps lighter cigarette" : "outlet rating amps");
    row.note = "A typical part: check the marking on yours.";
    if (part.limits_itself) row.note += " It limits itself: it takes at most " + units::watts_text(*part.rated_power) + ".";
    if (part.wired_in) row.note += " It counts with its own load and fuse.";
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page drop_page() {
  Page page = fact_page(Topic::drop_practice, "drop-limits", "Usual drops", "How much may be lost on the way.",
                        {"Limit", "For", "That is"}, "", "voltage drop limit percent allowed maximum usual");
  for (const auto& [key, limit] : {std::pair{"three", 0.03}, std::pair{"five", 0.05}, std::pair{"ten", 0.10}}) {
    Row* row = row_of(page, key);
    row->tap.into = Tap::Into::drop_limit;
    row->tap.value = limit;
    row->tap.label = "Set " + units::percent_text(limit) + " in my circuit";
  }
  return page;
}

Page colour_page() {
  Page page{.key = "colours", .title = "Conductor colours", .about = "Positive and negative by practice.",
            .columns = {"Where", "Positive", "Negative"}, .rows = {},
            .caution = "Practices differ on the negative: label both ends and prove it with the meter.",
            .keywords = "colour color wire red black yellow brown white positive negative", .picture = {}};
  for (const tables::ConductorColours& colours : tables::conductor_colours()) {
    Row row = make_row(std::string(colours.key),
                       {std::string(colours.where), std::string(colours.plus_words), std::string(colours.minus_words)},
                       {colours.citation}, std::string(colours.keywords) + " wire conductor");
    row.note = std::string(colours.caution) + " " + std::string(tables::kTrustNoColour);
    page.rows.push_back(std::move(row));
  }
  Page never = fact_page(Topic::colour_practice, "", "", "", {"Where", "Positive", "Negative"}, "", "");
  for (Row& row : never.rows) page.rows.push_back(std::move(row));
  Page codes = fact_page(Topic::colour_code, "", "", "", {"Code", "Colour"}, "", "");
  for (Row& row : codes.rows) {
    row.cells = {row.cells[0] + " on a drawing", row.cells[1], ""};
    row.picture = {Depicts::colour, row.cells[1]};
    page.rows.push_back(std::move(row));
  }
  return page;
}

std::string charge_text(double charge) { return units::percent_text(charge); }

// Lithium's voltage tells no more than this.
std::string lithium_words(double charge) {
  return charge > 0.95 ? "full" : charge > 0.25 ? "middle" : charge > 0.05 ? "low" : "empty";
}

Page battery_page() {
  Page page{.key = "batteries", .title = "Batteries at rest", .about = "Voltage of a 12 V battery after a rest, by charge. 24 V is twice, 48 V four times.",
            .columns = {"Battery", "Charge", "At rest", "Either way"}, .rows = {},
            .caution = "Rest a lead battery 4 to 24 hours first. A lithium voltage tells full, middle, low or empty, no more.",
            .keywords = "battery rest resting voltage state of charge soc full empty lead agm lithium lifepo4 gel",
            .picture = {Depicts::battery_curve, "lead-agm"}};
  for (const tables::RestCurve& curve : tables::rest_curves()) {
    const tables::BatteryKind& kind = *tables::battery_kind_by_key(curve.battery);
    const bool lithium = curve.battery == "lifepo4";
    for (const tables::RestVoltage& point : curve.points) {
      Row row = make_row(std::string(curve.battery) + "-" + number(100.0 * point.charge, 3),
                         {std::string(kind.name), charge_text(point.charge) + (lithium ? ", " + lithium_words(point.charge) : std::string()),
                          with(point.volts.number(), "V", 4), with(point.spread.number(), "V", 2)},
                         {curve.citation},
                         lithium ? "lifepo4 lfp lithium state of charge soc rest" : "lead acid state of charge soc rest");
      row.tap = calculator_tap("battery-run-time", {{"battery", curve.battery}}, "How long it runs");
      row.picture = {Depicts::battery_curve, std::string(curve.battery)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page battery_kind_page() {
  Page page{.key = "battery-kinds", .title = "Batteries: planning figures", .about = "What this app plans with, per 12 V.",
            .columns = {"Battery", "Full, at rest", "Low", "Charging", "Inside"}, .rows = {},
            .caution = "A short takes thousands of amperes: rings and watches off.",
            .keywords = "battery planning voltage internal resistance charging low cut off", .picture = {}};
  for (const tables::BatteryKind& kind : tables::battery_kinds()) {
    Row row = make_row(std::string(kind.key),
                       {std::string(kind.name), with(kind.resting.number(), "V", 4), with(kind.low.number(), "V", 4),
                        with(kind.charging.number(), "V", 4), units::ohms_text(kind.internal_resistance)},
                       {kind.citation}, kind.key == "lifepo4" ? "lifepo4 lfp lithium internal resistance charge" : "lead acid internal resistance charge");
    row.tap.into = Tap::Into::battery_kind;
    row.tap.value_key = kind.key;
    row.tap.label = "Use this battery in my circuit";
    row.picture = {Depicts::battery_curve, std::string(kind.key)};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page joint_page() {
  Page page{.key = "joints", .title = "Joints: what to expect", .about = "Resistance of good, new joints. Bands, a rule of thumb.",
            .columns = {"Joint", "Has", "Loses at 10 A"}, .rows = {},
            .caution = "Good below 2 mΩ, doubtful above 5, bad above 20. A loose joint heats.",
            .keywords = "joint resistance milliohm good bad crimp contact expected", .picture = {Depicts::probes_drop, ""}};
  for (const tables::JointBand& band : tables::joint_bands()) {
    Row row = make_row(std::string(band.key),
                       {std::string(band.joint), range_text(band.low.number() * 1000.0, band.high.number() * 1000.0, "mΩ"),
                        range_text(band.low.number() * 10000.0, band.high.number() * 10000.0, "mV")},
                       {band.citation}, "joint resistance contact milliohm expected drop");
    row.note = std::string(band.note);
    row.tap = calculator_tap("joint", {{"good", "", std::fmin(band.high.number(), 0.02)}}, "Judge one from two readings");
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page meter_page() {
  Page page = fact_page(Topic::meter, "meter", "The meter", "What to set, where the leads go, what it shows.",
                        {"What", "How"}, "Ohms and continuity only with the fuse out and proved dead.",
                        "meter multimeter tester measure how to volts ohms continuity");
  for (const auto& [key, depicts] : {std::pair{"volts", Depicts::probes_volts}, std::pair{"sign", Depicts::probes_sign},
                                     std::pair{"continuity", Depicts::probes_continuity}, std::pair{"drop", Depicts::probes_drop}}) {
    row_of(page, key)->picture = {depicts, ""};
  }
  row_of(page, "drop")->tap = calculator_tap("joint", {}, "Judge a joint from two readings");
  page.picture = {Depicts::probes_volts, ""};
  return page;
}

}  // namespace

std::vector<Page> practice_pages(units::Preference) {
  std::vector<Page> pages;
  pages.push_back(outlet_page());
  pages.push_back(drop_page());
  pages.push_back(fact_page(Topic::fuse_place, "fuse-places", "Where a fuse sits", "Distances are along the wire.",
                            {"Where", "Rule"}, "Your local code and licensed practice come first.",
                            "fuse position placement distance where how far from battery"));
  pages.push_back(colour_page());
  pages.push_back(battery_page());
  pages.push_back(battery_kind_page());
  pages.push_back(meter_page());
  pages.push_back(joint_page());
  pages.push_back(fact_page(Topic::caution, "cautions", "Cautions", "What can hurt you or burn the van.", {"When", "Do"},
                            "Planning figures: local codes, makers' instructions and licensed practice come first.",
                            "caution safety danger warning careful"));
  return pages;
}

}  // namespace reference
