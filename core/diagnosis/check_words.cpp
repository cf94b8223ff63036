#include "diagnosis/check_words.h"

#include <array>

#include "diagnosis/checks.h"
#include "diagnosis/words.h"
#include "units/format.h"

namespace diagnosis {
namespace {

using network::Side;

constexpr std::array<CheckKindRow, 20> kKinds{{
    {CheckKind::volts, "volts", "meter"},
    {CheckKind::glow, "glow", "lamp"},
    {CheckKind::ohms, "ohms", "meter on ohms"},
    {CheckKind::device_here, "device-here", "eyes"},
    {CheckKind::other_device, "other-device", "device"},
    {CheckKind::device_elsewhere, "device-elsewhere", "eyes"},
    {CheckKind::others_work, "others-work", "eyes"},
    {CheckKind::wiggle, "wiggle", "hands"},
    {CheckKind::look_behind, "look-behind", "eyes"},
    {CheckKind::tug, "tug", "hands"},
    {CheckKind::read_gauge, "read-gauge", "eyes"},
    {CheckKind::block_alive, "block-alive", "eyes"},
    {CheckKind::fuse_look, "fuse-look", "eyes"},
    {CheckKind::fuse_press, "fuse-press", "hands"},
    {CheckKind::fuse_swap, "fuse-swap", "spare fuse"},
    {CheckKind::pull_fuse, "pull-fuse", "hands"},
    {CheckKind::neighbour_fuse, "neighbour-fuse", "hands"},
    {CheckKind::tug_clamps, "tug-clamps", "hands"},
    {CheckKind::main_look, "main-look", "eyes"},
    {CheckKind::add_up, "add-up", "eyes"},
}};
constexpr bool in_order() {
  for (std::size_t i = 0; i < kKinds.size(); ++i) {
    if (static_cast<std::size_t>(kKinds[i].kind) != i) return false;
  }
  return true;
}
static_assert(in_order());

std::string_view spot_word(SpotKind kind) {
  switch (kind) {
    case SpotKind::battery_post: return "battery";
    case SpotKind::bus: return "bus";
    case SpotKind::fuse_feed: return "fuse-feed";
    case SpotKind::fuse_wire: return "fuse-wire";
    case SpotKind::clamp: return "clamp";
    case SpotKind::wire_end: return "wire-end";
    case SpotKind::splice: return "splice";
    case SpotKind::tab: return "tab";
    case SpotKind::lug: return "lug";
    case SpotKind::contact: break;
  }
  return "contact";
}

bool has_points(CheckKind kind) { return kind == CheckKind::volts || kind == CheckKind::glow || kind == CheckKind::ohms; }

std::string volts(double number) { return units::volts_text(units::Volts(number)); }

void add(Check& check, std::string_view key, std::string words, std::optional<double> low = {}, std::optional<double> high = {}) {
  check.choices.push_back({std::string(key), std::move(words), low, high});
}

void point_choices(const Plant& plant, Check& check) {
  const double e = plant.emf_v(), nominal = plant.nominal_v();
  switch (check.kind) {
    case CheckKind::volts:
      add(check, "full", joined({"About ", volts(e)}), kFullFrom * e, {});
      {
        const bool drop = along_one_side(check);
        const double zero = (drop ? kNoDropBelow : kZeroBelow) * e;
        add(check, "between", "In between", zero, kFullFrom * e);
        add(check, "zero", drop ? joined({"Below ", volts(zero)}) : std::string("Near 0 V"), -zero, zero);
        add(check, "minus", "Minus", {}, -zero);
      }
      return;
    case CheckKind::glow:
      add(check, "bright", "Bright", kBrightFrom * nominal, {});
      add(check, "dim", "Dim", kDimFrom * nominal, kBrightFrom * nominal);
      add(check, "dark", "Dark", 0.0, kDimFrom * nominal);
      return;
    default:
      add(check, "joined", joined({"Below ", units::ohms_text(units::Ohms(kJoinedBelowOhm))}), 0.0, kJoinedBelowOhm);
      add(check, "some", "Some ohms", kJoinedBelowOhm, kOpenFromOhm);
      add(check, "open", "Open", kOpenFromOhm, {});
      return;
  }
}

struct Words {
  std::string_view key, words;
};
template <std::size_t N>
void add_all(Check& check, const Words (&all)[N]) {
  for (const Words& each : all) add(check, each.key, std::string(each.words));
}

void choose_words(const Plant& plant, Check& check) {
  switch (check.kind) {
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: point_choices(plant, check); return;
    case CheckKind::device_here:
    case CheckKind::other_device: {
      const double nominal = plant.nominal_v();
      add(check, "works", "Works", kWorksFrom * nominal, {});
      add(check, "weak", "Weak", kWeakFrom * nominal, kWorksFrom * nominal);
      add(check, "dead", "Dead", {}, kWeakFrom * nominal);
      return;
    }
    case CheckKind::device_elsewhere: add_all(check, {{"works", "Works there"}, {"dead", "Dead there too"}}); return;
    case CheckKind::others_work:
      add_all(check, {{"all", "They all work"}, {"some", "Some do"}, {"none", "None works"}});
      return;
    case CheckKind::wiggle: add_all(check, {{"steady", "No change"}, {"flickers", "It flickers"}}); return;
    case CheckKind::look_behind:
      add_all(check, {{"fine", "All looks right"}, {"red-splice", "Red splice wrong"}, {"black-splice", "Black splice wrong"},
                      {"red-tab", "Red tab off"}, {"black-tab", "Black tab off"}, {"crossed-tabs", "Colours crossed at the tabs"},
                      {"crossed-splice", "Colours crossed at the splices"}, {"other-cable", "Another cable is in there"},
                      {"damaged", "Cable damaged"}, {"live", "Still live, hands off"}});
      return;
    case CheckKind::tug:
      add_all(check, {{"holds", "All hold"}, {"red-splice", "Red splice gives"}, {"black-splice", "Black splice gives"},
                      {"red-tab", "Red tab gives"}, {"black-tab", "Black tab gives"}, {"live", "Still live, hands off"}});
      return;
    case CheckKind::read_gauge: add_all(check, {{"as-drawn", "As drawn"}, {"thinner", "Thinner"}}); return;
    case CheckKind::block_alive: add_all(check, {{"yes", "Yes, as always"}, {"weak", "Weakly"}, {"no", "No, nothing"}}); return;
    case CheckKind::fuse_look:
      add_all(check, {{"whole", "There, and whole"}, {"blown", "Blown"}, {"missing", "No fuse there"},
                      {"elsewhere", "It sits in another position"}});
      return;
    case CheckKind::fuse_press: add_all(check, {{"works", "Now it works"}, {"same", "No change"}}); return;
    case CheckKind::fuse_swap:
      add_all(check, {{"works", "Now it works"}, {"same", "Still the same"}, {"blows-at-once", "Blows at once"},
                      {"blows-later", "Blows after a while"}});
      return;
    case CheckKind::pull_fuse: add_all(check, {{"dies", "It dies"}, {"stays", "It stays on"}, {"was-dead", "Nothing runs there"}}); return;
    case CheckKind::neighbour_fuse: add_all(check, {{"works", "Now it works"}, {"same", "No change"}}); return;
    case CheckKind::tug_clamps:
      add_all(check, {{"holds", "Both hold"}, {"red", "Red gives"}, {"black", "Black gives"}, {"live", "Still live, hands off"}});
      return;
    case CheckKind::main_look: add_all(check, {{"on", "On, and whole"}, {"off", "Off or blown"}}); return;
    case CheckKind::add_up: add_all(check, {{"within", "Within the fuse"}, {"over", "More than the fuse"}}); return;
  }
}

std::string pair_words(const Case& the_case, const Check& check) {
  const bool same_spot = check.red.kind == check.black.kind && check.red.outlet == check.black.outlet;
  if (same_spot) {
    const std::string letter = letter_of(the_case, check.red.outlet);
    switch (check.red.kind) {
      case SpotKind::contact: return joined({"between the two contacts of ", letter});
      case SpotKind::splice: return joined({"between the two splices at ", letter});
      case SpotKind::tab: return joined({"between the two tabs at ", letter, ", on the wire's side"});
      case SpotKind::lug: return joined({"between the outlet's own blades at ", letter});
      default: break;
    }
  }
  return joined({"from ", spot_words(the_case, check.red), " to ", spot_words(the_case, check.black)});
}

std::string plug_words(const Case& the_case, const State& state) {
  if (state.plugged == Plugged::nothing) return {};
  if (state.plugged == Plugged::own) return joined({"Leave the device that failed in ", letter_of(the_case, state.at), ", switched on. "});
  return joined({"Plug the ", state.plugged == Plugged::lamp ? "lamp" : "device that you know is good", " into ",
                 letter_of(the_case, state.at), ". "});
}

std::string failed_outlet(const Case& the_case) {
  return the_case.complaint.outlets.empty() ? std::string("an outlet that was dead")
                                            : letter_of(the_case, the_case.complaint.outlets.front());
}

std::string point_question(const Case& the_case, const Check& check) {
  std::string text;
  if (check.state.parted_at) {
    text = joined({"Pull the ", fuse_words(the_case), " and prove dead. Take the wires that come from ",
                   fed_from_words(the_case, *check.state.parted_at), " out of both splices at ",
                   letter_of(the_case, *check.state.parted_at), ", ends apart. "});
  }
  text += plug_words(the_case, check.state);
  const std::string pair = pair_words(the_case, check);
  switch (check.kind) {
    case CheckKind::volts: return text + joined({"Measure ", pair, ", red lead first."});
    case CheckKind::glow:
      if (check.red.kind == SpotKind::fuse_feed && check.black.kind == SpotKind::fuse_wire) {
        return text + "With everything unplugged, hold the lamp across the two clips of the fuse position, no fuse in.";
      }
      return text + joined({"Hold the lamp ", pair, "."});
    default: return text + joined({"Meter on ohms, everything unplugged. Measure ", pair, "."});
  }
}

std::string question_of(const Case& the_case, const Check& check) {
  const std::string letter = letter_of(the_case, check.outlet);
  const std::string fuse = fuse_words(the_case);
  switch (check.kind) {
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: return point_question(the_case, check);
    case CheckKind::device_here: return joined({"Plug the device that failed into ", letter, ". Does it run?"});
    case CheckKind::other_device: return joined({"Try another device, one you know is good, in ", letter, ". Does it run?"});
    case CheckKind::device_elsewhere: return "Try the device that failed in an outlet of another circuit that you know is alive.";
    case CheckKind::others_work: return "Do the other outlets on this fuse work? Try the same device in each.";
    case CheckKind::wiggle: return joined({"With a device plugged into ", letter, ", move its cable and plug, touching insulation only. Watch it."});
    case CheckKind::look_behind: return joined({"Pull the ", fuse, ". Prove dead at ", letter, ", draw the outlet forward and look behind it: splices, tabs, colours, cables."});
    case CheckKind::tug: return joined({"Pull the ", fuse, ". Prove dead at ", letter, ", then tug each wire at its splices and tabs."});
    case CheckKind::read_gauge: return joined({"Pull the ", fuse, ". Prove dead at ", letter, ", draw the outlet forward and read the size printed on the wire."});
    case CheckKind::block_alive: return "Does anything else on the fuse block work?";
    case CheckKind::fuse_look: return joined({"Look at position ", std::to_string(the_case.circuit.fuse_position), ": is the right fuse there, and is its element whole?"});
    case CheckKind::fuse_press: return joined({"Press the ", fuse, " home. Does ", failed_outlet(the_case), " work now?"});
    case CheckKind::fuse_swap: return joined({"Put in ", new_fuse_words(the_case), ", never a bigger one. Does ", failed_outlet(the_case), " work now?"});
    case CheckKind::pull_fuse:
      return joined({"With something running in ", letter, ", pull the fuse of ",
                     check.neighbour < 0 ? "this circuit" : neighbour_words(the_case, check.neighbour), ". Does it die? Put the fuse back."});
    case CheckKind::neighbour_fuse: return joined({"Is the fuse of ", neighbour_words(the_case, check.neighbour), " out? Put its own fuse in. Does ", failed_outlet(the_case), " work now?"});
    case CheckKind::tug_clamps: return joined({"Open the main switch, pull the ", fuse, ". Prove dead at the clamps and at the feed stud, then tug this circuit's red and black wire by their insulation."});
    case CheckKind::main_look: return "Look at the main switch and the main fuse.";
    case CheckKind::add_up: return joined({"Add up what is usually plugged in at once. Is it more than ", the_case.fuse_told ? units::amperes_text(the_case.fitted.fuse) : std::string("the number on the fuse"), "?"});
  }
  return {};
}

std::string state_of(const Case& the_case, const Check& check) {
  std::string text = check.state.fuse_in ? "Fuse in" : "Fuse out";
  if (check.state.plugged == Plugged::lamp) text += joined({", lamp in ", letter_of(the_case, check.state.at)});
  if (check.state.plugged == Plugged::device) text += joined({", device in ", letter_of(the_case, check.state.at)});
  if (check.state.plugged == Plugged::own) text += joined({", the failed device in ", letter_of(the_case, check.state.at)});
  return text + ", everything else unplugged";
}

std::string caution_of(const Check& check) {
  for (const Site& site : check.sites) {
    if (site.location == Location::battery && check.act == Act::probe) return "A slip at the battery draws hundreds of amperes. Take off rings, keep the tips apart.";
  }
  switch (check.act) {
    case Act::hands: return "Another circuit may feed this place: dead is what the tester shows, not what the fuse says. If it is live, hands off and say so.";
    case Act::probe: {
      for (const Site& site : check.sites) {
        if (site.location == Location::behind && check.state.fuse_in) {
          return "Draw the outlet forward with the fuse out, let it hang free, then put the fuse in. Tips only, hands off metal.";
        }
      }
      return "Insulated tips, one slip can short the pair.";
    }
    case Act::fuse: return check.kind == CheckKind::fuse_swap ? "Same rating. A bigger fuse lets the wire burn." : "Hold the fuse by its body.";
    case Act::cover: return "Insulation only. Stop if you see bare copper.";
    case Act::watch: break;
  }
  return {};
}

}  // namespace

const CheckKindRow& check_kind_row(CheckKind kind) { return kKinds[static_cast<std::size_t>(kind)]; }

std::string spot_key(const Spot& spot) {
  std::string key(spot_word(spot.kind));
  if (spot.kind == SpotKind::fuse_feed || spot.kind == SpotKind::fuse_wire) return key;
  key.push_back(side_sign(spot.side));
  if (spot.outlet != circuit::kBlock) key.append(std::to_string(spot.outlet.number));
  return key;
}

std::string spot_words(const Case& the_case, const Spot& spot) {
  const std::string_view side = side_words(spot.side);
  const bool red = spot.side == Side::positive;
  const std::string letter = letter_of(the_case, spot.outlet);
  switch (spot.kind) {
    case SpotKind::battery_post: return red ? "the battery's plus post" : "the battery's minus post";
    case SpotKind::bus: return red ? "the block's feed stud" : "the negative bus";
    case SpotKind::fuse_feed: return "the fuse, feed side";
    case SpotKind::fuse_wire: return "the fuse, wire side";
    case SpotKind::clamp: return joined({"the ", side, " wire at the block's clamp"});
    case SpotKind::wire_end: return joined({"the free end of the ", side, " wire from ", fed_from_words(the_case, spot.outlet)});
    case SpotKind::splice: return joined({"the ", side, " splice at ", letter});
    case SpotKind::tab: return joined({"the ", side, " tab at ", letter, ", on the wire's side"});
    case SpotKind::lug: return joined({"the outlet's ", red ? "plus" : "minus", " blade at ", letter});
    case SpotKind::contact: return joined({"the ", red ? "plus" : "minus", " contact of ", letter});
  }
  return {};
}

Site site_of(const Spot& spot) {
  switch (spot.kind) {
    case SpotKind::battery_post: return {Location::battery, circuit::kBlock};
    case SpotKind::bus:
    case SpotKind::fuse_feed:
    case SpotKind::fuse_wire:
    case SpotKind::clamp: return {Location::block, circuit::kBlock};
    case SpotKind::contact: return {Location::front, spot.outlet};
    default: return {Location::behind, spot.outlet};
  }
}

std::string check_id(const Check& check) {
  std::string id(check_kind_row(check.kind).key);
  if (has_points(check.kind)) {
    id.append(" ").append(spot_key(check.red)).append(" ").append(spot_key(check.black));
  } else if (check.outlet != circuit::kBlock && check.kind != CheckKind::others_work && check.kind != CheckKind::add_up &&
             check.kind != CheckKind::device_elsewhere) {
    id.append(" ").append(std::to_string(check.outlet.number));
  }
  if (check.neighbour >= 0) id.append(" n").append(std::to_string(check.neighbour));
  if (!has_points(check.kind)) return id;
  id.append(check.state.fuse_in ? " in" : " out");
  if (check.state.plugged != Plugged::nothing) {
    id.append(check.state.plugged == Plugged::lamp ? " lamp" : check.state.plugged == Plugged::own ? " own" : " device").append(std::to_string(check.state.at.number));
  }
  if (check.state.parted_at) id.append(" parted").append(std::to_string(check.state.parted_at->number));
  return id;
}

void word_check(const Case& the_case, const Plant& plant, Check& check) {
  check.question = question_of(the_case, check);
  check.state_words = state_of(the_case, check);
  check.caution = caution_of(check);
  choose_words(plant, check);
}

Answer word(std::string_view key) { return {AnswerKind::word, std::string(key), 0.0}; }
Answer reading(double number) { return {AnswerKind::reading, {}, number}; }
Answer cant_reach() { return {AnswerKind::cant_reach, {}, 0.0}; }
Answer not_sure() { return {AnswerKind::not_sure, {}, 0.0}; }

}  // namespace diagnosis
