// Wire, fuse and the parts on the way: what each takes and carries. Figures are of typical
// parts; what is marked on the part in hand goes first.
#include "screens/fields.h"
#include "screens/places/size.h"
#include "screens/words.h"
#include "tables/part.h"

namespace screens {
namespace {

bool draw_gauge(app::AppState& app, circuit::Wiring wiring) {
  const auto chosen = gauge_choice("Wire is sold in", wiring.gauge);
  if (!chosen) return false;
  wiring.gauge = *chosen;
  wiring.ampacity_table = tables::default_ampacity_table(wiring.gauge);
  app.editor().dispatch(circuit::SetWiring{wiring});
  return true;
}

bool draw_family(app::AppState& app, circuit::Wiring wiring) {
  const auto families = tables::fuse_families();
  std::vector<std::string> names, subs;
  std::size_t current = 0;
  for (std::size_t i = 0; i < families.size(); ++i) {
    names.emplace_back(families[i].name);
    subs.push_back(trimmed(families[i].ratings_a.front()) + " to " + trimmed(families[i].ratings_a.back()) + " A, up to " +
                   trimmed(families[i].rated_voltage.number()) + " V DC");
    if (families[i].id == wiring.fuse_family) current = i;
  }
  if (!ui::disclosure("Fuse: " + names[current], false, subs[current])) return false;
  const auto chosen = ui::choice("Fuse", names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs});
  if (!chosen) return false;
  wiring.fuse_family = families[*chosen].id;
  app.editor().dispatch(circuit::SetWiring{wiring});
  return true;
}

std::string range_text(const tables::Part& part) {
  std::string text = units::area_text(part.smallest) + " to " + units::area_text(part.largest_bare) + " bare";
  text += part.largest_with_ferrule ? ", to " + units::area_text(*part.largest_with_ferrule) + " with a ferrule" : ", no ferrule";
  return text + ", " + units::amperes_text(part.rated);
}

// A part is offered only where it may be used: nothing that shakes loose in what moves.
bool offered(const tables::Part& part, circuit::Setting setting) {
  return part.stands_vibration || setting == circuit::Setting::fixed;
}

std::optional<std::string> choose(app::AppState& app, std::string_view label, tables::PartKind kind, const std::string& key) {
  std::vector<std::string> names, subs, keys;
  std::size_t current = 0;
  for (const tables::Part& part : tables::parts(kind)) {
    if (!offered(part, app.editor().circuit().setting) && part.key != key) continue;
    if (part.key == key) current = keys.size();
    keys.emplace_back(part.key);
    names.emplace_back(part.name);
    subs.push_back(range_text(part));
  }
  if (!ui::disclosure(std::string(label) + ": " + names[current], false, subs[current])) return std::nullopt;
  const auto chosen = ui::choice(label, names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs});
  return chosen ? std::optional(keys[*chosen]) : std::nullopt;
}

bool draw_clamp(app::AppState& app, circuit::Wiring wiring) {
  if (const auto key = choose(app, "Clamp", tables::PartKind::clamp, wiring.clamp_part)) {
    wiring.clamp_part = *key;
    app.editor().dispatch(circuit::SetWiring{wiring});
    return true;
  }
  if (ui::switch_row("Ferrules at the clamp", wiring.ferrule, {.sub = "a ferrule makes the end thicker", .disabled = false})) {
    wiring.ferrule = !wiring.ferrule;
    app.editor().dispatch(circuit::SetWiring{wiring});
    return true;
  }
  const tables::Part* part = tables::part_by_key(wiring.clamp_part);
  const bool marked = wiring.clamp_rating.has_value();
  const double typical = part != nullptr ? part->rated.number() : 30.0;
  if (ui::switch_row("A rating is marked on the block", marked,
                     {.sub = marked ? "per position" : "taken as typical: " + units::amperes_text(units::Amperes(typical)), .disabled = false})) {
    wiring.clamp_rating = marked ? std::nullopt : std::optional(units::Amperes(typical));
    app.editor().dispatch(circuit::SetWiring{wiring});
    return true;
  }
  if (!marked) return false;
  const auto rating = number_stepper(app, {.label = "Marked rating", .sub = "of one position",
                                           .field = circuit::Field::part_rating_a, .value = wiring.clamp_rating->number()});
  if (!rating) return false;
  wiring.clamp_rating = units::Amperes(rating->value);
  commit(app, circuit::SetWiring{wiring}, "clamp-rating", *rating);
  return true;
}

bool draw_splice(app::AppState& app, circuit::Wiring wiring) {
  if (const auto key = choose(app, "Splice", tables::PartKind::splice, wiring.splice_part)) {
    wiring.splice_part = *key;
    app.editor().dispatch(circuit::SetWiring{wiring});
    return true;
  }
  const auto tail = number_stepper(app, {.label = "Tails", .sub = "splice to outlet, each of plus and minus",
                                         .field = circuit::Field::tail_m, .value = wiring.tail.number()});
  if (!tail) return false;
  wiring.tail = units::Metres(tail->value);
  commit(app, circuit::SetWiring{wiring}, "tail", *tail);
  return true;
}

}  // namespace

void draw_parts_sheet(app::AppState& app, Memory&) {
  const circuit::Wiring wiring = app.editor().circuit().wiring;
  ui::begin_card("wire", {.name = "Wire and fuse", .tone = ui::Tone::plain});
  bool edited = draw_gauge(app, wiring);
  edited = edited || draw_family(app, wiring);
  ui::end_card();
  ui::begin_card("clamp", {.name = "Fuse block", .tone = ui::Tone::plain});
  edited = edited || draw_clamp(app, wiring);
  ui::end_card();
  ui::begin_card("splice", {.name = "Splices", .tone = ui::Tone::plain});
  if (!edited) draw_splice(app, wiring);
  ui::end_card();
  ui::caption("Typical parts. Check the marking on the part in your hand.");
}

}  // namespace screens
