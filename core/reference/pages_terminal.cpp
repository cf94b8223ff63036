// What goes on the ends of wires, and what joins them.
#include <utility>

#include "reference/pages.h"
#include "tables/conductor.h"
#include "tables/fact.h"
#include "tables/part.h"
#include "tables/terminal.h"

namespace reference {
namespace {

using units::Preference;

std::string capital(std::string_view word) {
  std::string text(word);
  text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}
std::string lower_first(std::string_view word) {
  std::string text(word);
  text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}
std::string strip_text(units::Millimetres low, units::Millimetres high, Preference preference) {
  if (preference == Preference::us) return range_text(low.number() / 25.4, high.number() / 25.4, "in", 2);
  return range_text(low.number(), high.number(), "mm");
}

Page crimp_page(Preference preference) {
  Page page{.key = "crimps", .title = "Crimps by colour", .about = "Pre-insulated terminals and splices.",
            .columns = {"Colour", "Wire", "AWG", "Strip"}, .rows = {},
            .caution = "The marking on the bag goes first. Tug every crimp.",
            .keywords = "crimp terminal splice butt connector insulated red blue yellow", .picture = {Depicts::crimp, "red"}};
  for (const tables::CrimpColour& crimp : tables::crimp_colours()) {
    Row row = make_row(std::string(crimp.colour),
                       {capital(crimp.colour) + " crimp", range_text(crimp.smallest.number(), crimp.largest.number(), "mm²"),
                        std::string(crimp.awg), strip_text(crimp.strip_low, crimp.strip_high, preference)},
                       {crimp.citation, crimp.strip_citation}, "crimp terminal splice butt connector ring spade lug strip");
    row.note = std::string(crimp.note);
    row.picture = {Depicts::crimp, std::string(crimp.colour)};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page part_page(tables::PartKind kind, std::string_view key, std::string_view title, std::string_view about,
               std::string_view keywords) {
  Page page{.key = key, .title = title, .about = about,
            .columns = {"Part", "Wire, bare", "With a ferrule", "Current", "For long", "Good joint"}, .rows = {},
            .caution = "Typical parts: the marking on the part in your hand goes first.", .keywords = keywords, .picture = {}};
  for (const tables::Part& part : tables::parts(kind)) {
    std::vector<const tables::Citation*> citations{part.citation, &tables::joint_resistance_citation()};
    Row row = make_row(std::string(part.key),
                       {std::string(part.name), range_text(part.smallest.number(), part.largest_bare.number(), "mm²"),
                        part.largest_with_ferrule ? "up to " + with(part.largest_with_ferrule->number(), "mm²", 3)
                                                  : std::string("none"),
                        units::amperes_text(part.rated), units::amperes_text(part.continuous),
                        units::ohms_text(part.typical_resistance)},
                       std::move(citations), std::string(keywords));
    if (!part.holds_boat_pull) row.note = "May not hold the pull asked on boats: there take a sealed crimp splice.";
    if (!part.stands_vibration) row.note = "Works loose by vibration: not for anything that moves.";
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page tab_page(Preference preference) {
  Page page{.key = "tabs", .title = "Push-on tabs", .about = "Flat tabs by width, and what a 6.3 mm tab may carry by its wire.",
            .columns = {"Tab", "Thick", "Found on", "Current"}, .rows = {}, .caution = "",
            .keywords = "tab spade quick connect push on terminal 6.3 mm quarter inch", .picture = {Depicts::push_on_tab, "6.3"}};
  for (const tables::TabSize& tab : tables::tab_sizes()) {
    Row row = make_row(std::string(tab.key),
                       {with(tab.width.number(), "mm", 2) + " tab", small_length(tab.thickness, preference), std::string(tab.use), ""},
                       {tab.citation}, "tab spade quick connect push on " + number(tab.width.number(), 2) + " mm" + (tab.key == "6.3" ? " quarter 1/4 inch" : ""));
    row.picture = {Depicts::push_on_tab, std::string(tab.key)};
    page.rows.push_back(std::move(row));
  }
  // The outlet's tab; the block's goes by the wire alike.
  const tables::Part& tab = *tables::part_by_key("tab-6.3");
  for (const std::string_view id : {"18awg", "16awg", "14awg", "12awg", "10awg"}) {
    const units::SquareMillimetres area = tables::conductor_by_id(id)->area;
    Row row = make_row("with-" + std::string(id),
                       {"Wide tab with " + wire_name(id), small_length(units::Millimetres(0.8), preference), "6.3 mm (1/4 in) wide",
                        units::amperes_text(tables::part_rating_with(tab, area))},
                       {&tables::part_rating_citation(tab, area)}, "tab current by wire spade amps");
    row.picture = {Depicts::push_on_tab, "6.3"};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page ring_page(Preference preference) {
  Page page{.key = "rings", .title = "Rings and studs", .about = "The hole of a ring terminal by its stud.",
            .columns = {"Stud", "Inch", "Hole"}, .rows = {}, .caution = "A ring too large works loose: take the one for its stud.",
            .keywords = "ring eye lug stud bolt terminal hole", .picture = {Depicts::ring, "M6"}};
  for (const tables::RingHole& ring : tables::ring_holes()) {
    Row row = make_row(std::string(ring.stud), {std::string(ring.stud), std::string(ring.inch), small_length(ring.hole, preference)},
                       {ring.citation}, "ring stud eye lug screw bolt");
    row.picture = {Depicts::ring, std::string(ring.stud)};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page ferrule_page(Preference preference) {
  Page page{.key = "ferrules", .title = "Ferrules", .about = "Colour and sleeve of insulated ferrules by wire.",
            .columns = {"Wire", "Colour", "Sleeve", "Strip"}, .rows = {},
            .caution = "Other colour sets are sold: go by the size printed on the bag. Strip to the sleeve and its collar.",
            .keywords = "ferrule bootlace sleeve end", .picture = {Depicts::ferrule, "2.5"}};
  for (const tables::Ferrule& ferrule : tables::ferrules()) {
    const std::string size = number(ferrule.wire.number(), 3);
    Row row = make_row(size + "mm2", {size + " mm²", std::string(ferrule.colour), small_length(ferrule.sleeve, preference),
                        small_length(ferrule.strip, preference)},
                       {ferrule.citation, ferrule.strip_citation}, "ferrule bootlace sleeve strip");
    row.picture = {Depicts::ferrule, size};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page strip_page(Preference preference) {
  Page page{.key = "strip", .title = "Strip lengths", .about = "How much insulation to take off.",
            .columns = {"Where it goes", "Strip"}, .rows = {},
            .caution = "The gauge on the part goes first. No nicked strand, none outside.",
            .keywords = "strip stripping length insulation how much remove", .picture = {Depicts::how_to, "strip"}};
  for (const tables::StripLength& strip : tables::strip_lengths()) {
    Row row = make_row(std::string(strip.key), {"Strip for: " + lower_first(strip.what), strip_text(strip.low, strip.high, preference)},
                       {strip.citation}, "strip stripping length insulation");
    row.note = std::string(strip.note);
    page.rows.push_back(std::move(row));
  }
  for (const tables::CrimpColour& crimp : tables::crimp_colours()) {
    page.rows.push_back(make_row("crimp-" + std::string(crimp.colour),
                                 {"Strip for a " + std::string(crimp.colour) + " crimp", strip_text(crimp.strip_low, crimp.strip_high, preference)},
                                 {crimp.strip_citation}, "strip stripping length insulation terminal"));
  }
  return page;
}

std::string force_text(double newton, Preference preference) {
  if (preference == Preference::us) return with(newton / tables::kNewtonsPerPoundForce, "lbf", 3);
  return with(newton, "N", 3);
}

Page pull_page(Preference preference) {
  Page page{.key = "pull", .title = "Pull on a crimp", .about = "What a finished crimp must hold for a minute.",
            .columns = {"Wire", "Boats, at least", "Terminal makers"}, .rows = {},
            .caution = "For trying on spare pieces: a wire in use gets a firm tug by hand.",
            .keywords = "pull force test tensile crimp strength newton pounds tug", .picture = {Depicts::how_to, "tug"}};
  for (const tables::PullForce& pull : tables::pull_forces()) {
    std::vector<const tables::Citation*> citations;
    if (pull.boat_n) citations.push_back(pull.boat_citation);
    if (pull.terminal_n) citations.push_back(pull.terminal_citation);
    page.rows.push_back(make_row(std::string(pull.awg) + "awg",
                                 {std::string(pull.awg) + " AWG", pull.boat_n ? force_text(*pull.boat_n, preference) : std::string(),
                                  pull.terminal_n ? force_text(*pull.terminal_n, preference) : std::string()},
                                 std::move(citations), "pull force crimp strength tensile test"));
  }
  return page;
}

}  // namespace

std::vector<Page> terminal_pages(Preference preference) {
  std::vector<Page> pages;
  pages.push_back(part_page(tables::PartKind::splice, "splices", "Splices", "What joins wires, and what it takes.",
                            "splice join connector lever butt joint"));
  pages.push_back(crimp_page(preference));
  pages.push_back(tab_page(preference));
  pages.push_back(ring_page(preference));
  pages.push_back(ferrule_page(preference));
  pages.push_back(strip_page(preference));
  pages.push_back(pull_page(preference));
  pages.push_back(part_page(tables::PartKind::clamp, "clamps", "Fuse block positions", "What the clamps of a fuse block take.",
                            "fuse block clamp screw position terminal"));
  pages.push_back(part_page(tables::PartKind::in_line, "in-line", "In the line",
                            "Switches, relays, breakers, fuse holders and battery switches.",
                            "switch rocker toggle relay breaker inline fuse holder disconnect isolator battery switch"));
  pages.push_back(part_page(tables::PartKind::wired_in, "wired-in", "Device wired in",
                            "How a device without an outlet is joined. It counts with its own load and fuse.",
                            "hardwired direct no outlet device joint"));
  return pages;
}

}  // namespace reference
