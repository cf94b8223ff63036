#include "diagnosis/check_words.h"

#include <algorithm>

#include "diagnosis/check_row.h"
#include "diagnosis/checks.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/prove_dead.h"
#include "diagnosis/words.h"
#include "units/format.h"

namespace diagnosis {
namespace {

using network::Side;

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

bool has_points(CheckKind kind) {
  return kind == CheckKind::volts || kind == CheckKind::glow || kind == CheckKind::ohms;
}

bool across_the_clips(const Check& check) {
  return check.red.kind == SpotKind::fuse_feed && check.black.kind == SpotKind::fuse_wire && !check.state.fuse_in;
}

std::string pair_words(const Case& the_case, const Check& check) {
  if (across_the_clips(check)) return "across the two clips of the fuse position";
  const bool same_spot = check.red.kind == check.black.kind && check.red.outlet == check.black.outlet;
  if (same_spot) {
    const std::string letter = letter_of(the_case, check.red.outlet);
    switch (check.red.kind) {
      case SpotKind::contact: return joined({"between the two contacts of ", letter});
      case SpotKind::splice: return joined({"between the two splices at ", letter});
      case SpotKind::tab: return joined({"between the crimps of the two tabs at ", letter});
      case SpotKind::lug: return joined({"between the two blades of ", letter, " itself"});
      default: break;
    }
  }
  return joined({check.kind == CheckKind::glow ? "from " : "", spot_words(the_case, check.red), " to ",
                 spot_words(the_case, check.black)});
}

std::string_view plugged_words(Plugged plugged) {
  switch (plugged) {
    case Plugged::lamp: return "lamp";
    case Plugged::device: return "device";
    case Plugged::own: return "the failed device";
    case Plugged::nothing: break;
  }
  return {};
}

// What is plugged in for a reading.
std::string plug_in_words(const Case& the_case, const State& state) {
  const std::string at = letter_of(the_case, state.at);
  switch (state.plugged) {
    case Plugged::nothing: return {};
    case Plugged::own: return joined({"Leave the device that failed in ", at, ", switched on."});
    case Plugged::lamp: return joined({"Plug the lamp into ", at, "."});
    case Plugged::device: break;
  }
  return joined({"Plug the device that you know is good into ", at, "."});
}

std::vector<circuit::OutletId> outlets_behind(const Check& check) {
  std::vector<circuit::OutletId> found;
  for (const Site& site : check.sites) {
    if (site.location == Location::behind && std::find(found.begin(), found.end(), site.outlet) == found.end())
      found.push_back(site.outlet);
  }
  return found;
}

// Outlets come forward by their plate while nothing behind them is proved: with the fuse out, all the same.
std::string draw_out_words(const Case& the_case, const Check& check) {
  std::string letters;
  for (const circuit::OutletId id : outlets_behind(check))
    letters += joined({letters.empty() ? "" : " and ", letter_of(the_case, id)});
  if (letters.empty()) return {};
  if (check.state.fuse_in) {
    return joined(
        {"With the fuse out draw ", letters, " forward by its plate and let it hang free. Then put the fuse back in."});
  }
  return joined({"Draw ", letters, " forward by its plate, fingers off the metal behind it."});
}

std::string prove_words(const Case& the_case, const Check& check) {
  if (check.kind == CheckKind::tug_clamps)
    return prove_dead_words(the_case, "both clamps, the feed stud and the positions beside");
  if (check.kind == CheckKind::ohms && !check.state.parted_at) return prove_dead_words(the_case, "each of the points");
  const std::vector<circuit::OutletId> behind = outlets_behind(check);
  const circuit::OutletId where = check.state.parted_at.value_or(behind.empty() ? check.outlet : behind.front());
  return prove_dead_words(the_case, "outlet " + letter_of(the_case, where));
}

std::string sentence(const Case& the_case, const Check& check, std::string_view text) {
  const Subject subject{check.outlet, network::Side::positive, check.neighbour};
  return filled(text, [&](std::string_view token) {
    if (token == "pair") return pair_words(the_case, check);
    return token_words(the_case, subject, token);
  });
}

// What has to be done before the question, in order.
std::vector<std::string> first_words(const Case& the_case, const Check& check) {
  std::vector<std::string> first;
  const auto add = [&](std::string words) {
    if (!words.empty()) first.push_back(std::move(words));
  };
  const State& state = check.state;
  if (!state.fuse_in) add(joined({"Unplug everything. Pull the ", fuse_words(the_case), "."}));
  if (check.kind == CheckKind::tug_clamps) {
    add(std::string(kBlockOff));
    add("Take the block's cover off, fingers off the metal.");
  }
  add(draw_out_words(the_case, check));
  if (check.proves_dead) add(prove_words(the_case, check));
  if (state.parted_at) {
    add(joined({"Take the wires from ", fed_from_words(the_case, *state.parted_at), " out of both splices at ",
                letter_of(the_case, *state.parted_at), ", ends apart."}));
  }
  add(plug_in_words(the_case, state));
  add(sentence(the_case, check, check_kind_row(check.kind).first));
  return first;
}

std::string choice_words(const Case& the_case, const Plant& plant, const Check& check, std::string_view text) {
  const auto volts = [](double number) { return units::volts_text(units::Volts(number)); };
  return filled(text, [&](std::string_view token) {
    if (token == "volts") return volts(plant.emf_v());
    if (token == "joined") return units::ohms_text(units::Ohms(judged(Judged::joined_below_ohm)));
    if (token == "zero") {
      return along_one_side(check) ? joined({"Below ", volts(judged(Judged::no_drop_below) * plant.emf_v())})
                                   : std::string("Near 0 V");
    }
    return token_words(the_case, {}, token);
  });
}

std::string state_of(const Case& the_case, const Check& check) {
  const StateTold told = check_kind_row(check.kind).state_told;
  if (told == StateTold::nothing) return {};
  std::string text = check.state.fuse_in ? "Fuse in" : "Fuse out";
  if (check.state.plugged != Plugged::nothing) {
    text += joined({", ", plugged_words(check.state.plugged), " in ", letter_of(the_case, check.state.at)});
  }
  return told == StateTold::everything ? text + ", everything else unplugged" : text;
}

// Metal that only the main fuse stands before, or nothing.
bool at_the_supply(const Spot& spot) {
  const bool red = spot.side == network::Side::positive;
  return spot.kind == SpotKind::battery_post ||
         (red && (spot.kind == SpotKind::bus || spot.kind == SpotKind::fuse_feed));
}

// One sentence: what the place adds is graver than the row's own.
std::string caution_of(const Case& the_case, const Check& check) {
  if (has_points(check.kind) && check.kind != CheckKind::ohms) {
    if (at_the_supply(check.red) || at_the_supply(check.black))
      return "A slip here draws hundreds of amperes: rings off, insulated tips, keep them apart.";
    if (check.state.parted_at) return std::string(check_kind_row(CheckKind::tug).caution);
    if (check.state.fuse_in && !outlets_behind(check).empty()) return "Tips only, hands off the metal: it is live.";
  }
  return sentence(the_case, check, check_kind_row(check.kind).caution);
}

}  // namespace

std::string spot_key(const Spot& spot) {
  std::string key(spot_word(spot.kind));
  if (spot.kind == SpotKind::fuse_feed || spot.kind == SpotKind::fuse_wire) return key;
  key.push_back(side_sign(spot.side));
  if (spot.outlet != circuit::kBlock) key.append(std::to_string(spot.outlet.number));
  return key;
}

std::string spot_words(const Case& the_case, const Spot& spot) {
  const std::string_view side = side_words(the_case, spot.side);
  const bool red = spot.side == Side::positive;
  const std::string letter = letter_of(the_case, spot.outlet);
  switch (spot.kind) {
    case SpotKind::battery_post: return red ? "the battery's plus post" : "the battery's minus post";
    case SpotKind::bus: return red ? "the block's feed stud" : "the negative bus";
    case SpotKind::fuse_feed: return "the fuse, feed side";
    case SpotKind::fuse_wire: return "the fuse, wire side";
    case SpotKind::clamp: return joined({"the block's ", side, " clamp"});
    case SpotKind::wire_end: return joined({"the ", side, " wire's free end at ", letter});
    case SpotKind::splice: return joined({"the ", side, " splice at ", letter});
    case SpotKind::tab: return joined({"the ", side, " tab's crimp at ", letter});
    case SpotKind::lug: return joined({letter, "'s own ", red ? "plus" : "minus", " blade"});
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
  } else if (check.outlet != circuit::kBlock && check.kind != CheckKind::others_work &&
             check.kind != CheckKind::add_up && check.kind != CheckKind::device_elsewhere) {
    id.append(" ").append(std::to_string(check.outlet.number));
  }
  if (check.neighbour >= 0) id.append(" n").append(std::to_string(check.neighbour));
  if (!has_points(check.kind)) return id;
  id.append(check.state.fuse_in ? " in" : " out");
  if (check.state.plugged != Plugged::nothing) {
    id.append(check.state.plugged == Plugged::lamp  ? " lamp"
              : check.state.plugged == Plugged::own ? " own"
                                                    : " device")
        .append(std::to_string(check.state.at.number));
  }
  if (check.state.parted_at) id.append(" parted").append(std::to_string(check.state.parted_at->number));
  return id;
}

void word_check(const Case& the_case, const Plant& plant, Check& check) {
  const CheckKindRow& row = check_kind_row(check.kind);
  check.first = first_words(the_case, check);
  check.question = sentence(the_case, check, row.question);
  check.state_words = state_of(the_case, check);
  check.caution = caution_of(the_case, check);
  for (Choice& choice : check.choices)
    choice.words = choice_words(the_case, plant, check, answer_row(row, choice.key)->words);
}

}  // namespace diagnosis
