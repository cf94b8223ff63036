#include "circuit/edit.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "units/format.h"

namespace circuit {
namespace {

using Refusal = std::optional<Problem>;

std::optional<std::size_t> index_of(const Circuit& circuit, OutletId id) {
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    if (circuit.outlets[i].id == id) return i;
  }
  return std::nullopt;
}

Problem no_such_outlet() {
  return {"", "The circuit has no such outlet.", "Choose one of its outlets."};
}

// For each outlet: is it `root` or fed through it? The block feeds all.
std::vector<bool> branch_of(const Circuit& circuit, OutletId root) {
  std::vector<bool> inside(circuit.outlets.size(), root == kBlock);
  for (std::size_t i = 0; i < inside.size(); ++i) {  // parents come before children
    const Outlet& outlet = circuit.outlets[i];
    const auto parent = index_of(circuit, outlet.fed_from);
    if (outlet.id == root || (parent && inside[*parent])) inside[i] = true;
  }
  return inside;
}

// Just past the last outlet of the branch, so that a branch stays together in the list.
std::size_t end_of_branch(const Circuit& circuit, OutletId root) {
  const std::vector<bool> inside = branch_of(circuit, root);
  std::size_t end = 0;
  for (std::size_t i = 0; i < inside.size(); ++i) {
    if (inside[i]) end = i + 1;
  }
  return end;
}

// "Outlet D" for the fourth, or the next letter that no outlet is called yet.
std::string fresh_name(const Circuit& circuit) {
  for (std::size_t letter = circuit.outlets.size();; ++letter) {
    std::string name = "Outlet " + outlet_letter(letter);
    const bool taken = std::any_of(circuit.outlets.begin(), circuit.outlets.end(),
                                   [&name](const Outlet& o) { return o.name == name; });
    if (!taken) return name;
  }
}

Refusal room_for_one_more(const Circuit& circuit) {
  if (circuit.outlets.size() >= kMaxOutlets) {
    return Problem{"", "The circuit is full.", "At most " + std::to_string(kMaxOutlets) + " outlets in one circuit."};
  }
  if (circuit.next_outlet_id > kMaxOutletId) {
    return Problem{"", "The circuit has used up its outlet numbers.", "Make a new circuit."};
  }
  return std::nullopt;
}

Outlet new_outlet(Circuit& circuit, const Outlet* like) {
  Outlet made;
  if (like != nullptr) {
    made.run = like->run;
    made.run.size.reset();
    made.run.in_line.clear();
    made.joint = like->joint;
    made.outlet_part = like->outlet_part;
    made.terminal_part = like->terminal_part;
    made.rating = like->rating;
  }
  made.name = fresh_name(circuit);
  made.id = OutletId{circuit.next_outlet_id++};
  return made;
}

// What belongs to the outlet itself and not to the wire that feeds it.
void swap_places(Circuit& circuit, std::size_t first, std::size_t second) {
  Outlet& a = circuit.outlets[first];
  Outlet& b = circuit.outlets[second];
  std::swap(a, b);
  std::swap(a.run, b.run);
  std::swap(a.joint, b.joint);
  std::swap(a.fed_from, b.fed_from);
  for (Outlet& outlet : circuit.outlets) {
    if (outlet.fed_from == a.id) outlet.fed_from = b.id;
    else if (outlet.fed_from == b.id) outlet.fed_from = a.id;
  }
}

// Two runs one after the other as one. What is in the wall stays only where both halves are the
// same wire; otherwise it is new wire, and sizing chooses.
Run joined(const Run& nearer, const Run& farther) {
  Run both = farther;
  both.length += nearer.length;
  if (nearer.size != farther.size || nearer.metal != farther.metal) both.size.reset();
  if (!both.size) both.metal = tables::WireMetal::copper;
  if (nearer.back == ReturnPath::wire) both.back = ReturnPath::wire;
  both.two_core = nearer.two_core || farther.two_core;   // the warmer of the two
  both.in_line.insert(both.in_line.begin(), nearer.in_line.begin(), nearer.in_line.end());
  if (both.in_line.size() > kMaxInLine) both.in_line.resize(kMaxInLine);
  return both;
}

constexpr units::Amperes kFirstSubFuse{10.0};   // until the person says which

// Every run that leaves a sub-block begins with a fuse of its own.
void give_fuse_at_sub_block(const Outlet* from, Outlet& outlet) {
  if (from == nullptr || from->point != PointKind::sub_block) return;
  const auto& in_line = outlet.run.in_line;
  const bool fused = std::any_of(in_line.begin(), in_line.end(), is_overcurrent_protection);
  if (!fused) outlet.run.in_line.insert(outlet.run.in_line.begin(), {InLineKind::fuse, kFirstSubFuse});
}

void scale(std::optional<units::Volts>& voltage, double factor) {
  if (voltage) voltage = *voltage * factor;
}

// Every edit changes `circuit`, a copy, in place; apply() holds the outcome to validate().
struct Apply {
  Circuit& circuit;

  Refusal operator()(const SetName& e) { circuit.name = e.name; return {}; }
  Refusal operator()(const SetPlace& e) { circuit.place = e.place; return {}; }
  Refusal operator()(const SetFusePosition& e) { circuit.fuse_position = e.position; return {}; }
  Refusal operator()(const SetSetting& e) { circuit.setting = e.setting; return {}; }
  Refusal operator()(const SetPractice& e) {
    circuit.practice = e.practice;
    circuit.colours = e.colours;
    return {};
  }
  Refusal operator()(const SetWiring& e) { circuit.wiring = e.wiring; return {}; }
  Refusal operator()(const SetDropLimit& e) { circuit.drop_limit = e.fraction; return {}; }
  Refusal operator()(const SetAtMostAtOnce& e) { circuit.at_most_at_once = e.current; return {}; }
  Refusal operator()(const SetShelf& e) { circuit.shelf = e.shelf; return {}; }
  Refusal operator()(const SetInHand& e) { circuit.in_hand = e.in_hand; return {}; }

  Refusal operator()(const SetSupply& e) {
    const Supply old = std::exchange(circuit.supply, e.supply);
    const double factor = e.supply.nominal / old.nominal;
    if (factor == 1.0) return {};
    if (circuit.supply.resting == old.resting) scale(circuit.supply.resting, factor);
    if (circuit.supply.low == old.low) scale(circuit.supply.low, factor);
    if (circuit.supply.highest == old.highest) scale(circuit.supply.highest, factor);
    for (Outlet& outlet : circuit.outlets)
      for (Device& device : outlet.devices) scale(device.load.minimum_voltage, factor);
    return {};
  }

  Refusal operator()(const AddOutlet& e) {
    if (Refusal full = room_for_one_more(circuit)) return full;
    const auto after = index_of(circuit, e.after);
    if (!after && e.after != kBlock) return no_such_outlet();
    const Outlet* like = after ? &circuit.outlets[*after] : circuit.outlets.empty() ? nullptr : &circuit.outlets.back();
    Outlet made = new_outlet(circuit, like);
    made.fed_from = e.after;
    give_fuse_at_sub_block(after ? &circuit.outlets[*after] : nullptr, made);
    const auto place = circuit.outlets.begin() + static_cast<std::ptrdiff_t>(end_of_branch(circuit, e.after));
    circuit.outlets.insert(place, std::move(made));
    return {};
  }

  Refusal operator()(const InsertOutlet& e) {
    if (Refusal full = room_for_one_more(circuit)) return full;
    const auto before = index_of(circuit, e.before);
    if (!before) return no_such_outlet();
    Outlet made = new_outlet(circuit, &circuit.outlets[*before]);
    Outlet& next = circuit.outlets[*before];
    made.run = next.run;   // what is in the line sits nearest the source
    made.run.length = next.run.length / 2.0;
    if (check_value(Field::run_m, made.run.length.number(), "")) {
      return Problem{outlet_title(circuit, *before) + ", run",
                     "Its length of " + units::number_text(next.run.length.number(), 6) + " m is too short to split.",
                     "Make it at least " + units::number_text(2.0 * limit(Field::run_m).low, 6) + " m."};
    }
    made.fed_from = std::exchange(next.fed_from, made.id);
    next.run.length = made.run.length;
    next.run.in_line.clear();
    circuit.outlets.insert(circuit.outlets.begin() + static_cast<std::ptrdiff_t>(*before), std::move(made));
    return {};
  }

  Refusal operator()(const RemoveOutlet& e) {
    const auto index = index_of(circuit, e.id);
    if (!index) return no_such_outlet();
    if (circuit.outlets.size() == 1) {
      return Problem{outlet_title(circuit, 0), "It is the only outlet.", "A circuit keeps at least one."};
    }
    const Outlet& removed = circuit.outlets[*index];
    for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
      Outlet& outlet = circuit.outlets[i];
      if (outlet.fed_from != e.id) continue;
      if (auto problem = check_value(Field::run_m, (outlet.run.length + removed.run.length).number(), outlet_title(circuit, i) + ", run")) {
        return problem;
      }
      outlet.fed_from = removed.fed_from;
      outlet.run = joined(removed.run, outlet.run);
    }
    circuit.outlets.erase(circuit.outlets.begin() + static_cast<std::ptrdiff_t>(*index));
    return {};
  }

  Refusal operator()(const MoveOutlet& e) {
    const auto index = index_of(circuit, e.id);
    if (!index) return no_such_outlet();
    const long long target = static_cast<long long>(*index) + e.by;
    const auto last = static_cast<long long>(circuit.outlets.size()) - 1;
    if (e.by == 0 || target < 0 || target > last) {
      const std::string_view where = e.by < 0 ? "It is too near the first place for that."
                                   : e.by > 0 ? "It is too near the last place for that."
                                              : "It would stay where it is.";
      return Problem{outlet_title(circuit, *index), std::string(where), "Move it to a place in the list."};
    }
    const std::size_t to = static_cast<std::size_t>(target);
    for (std::size_t at = *index; at < to; ++at) swap_places(circuit, at, at + 1);
    for (std::size_t at = *index; at > to; --at) swap_places(circuit, at, at - 1);
    return {};
  }

  Refusal operator()(const FeedOutletFrom& e) {
    const auto index = index_of(circuit, e.id);
    const auto from = index_of(circuit, e.from);
    if (!index || (!from && e.from != kBlock)) return no_such_outlet();
    if (circuit.outlets[*index].fed_from == e.from) return {};
    const std::vector<bool> moves = branch_of(circuit, e.id);
    if (from && moves[*from]) {
      return Problem{outlet_title(circuit, *index), "It feeds " + outlet_title(circuit, *from) + " itself.",
                     "Feed it from the block or from an outlet that it does not feed."};
    }
    circuit.outlets[*index].fed_from = e.from;
    give_fuse_at_sub_block(from ? &circuit.outlets[*from] : nullptr, circuit.outlets[*index]);
    std::vector<Outlet> branch;
    std::vector<Outlet> rest;
    for (std::size_t i = 0; i < moves.size(); ++i) {
      (moves[i] ? branch : rest).push_back(std::move(circuit.outlets[i]));
    }
    circuit.outlets = std::move(rest);
    const auto place = circuit.outlets.begin() + static_cast<std::ptrdiff_t>(end_of_branch(circuit, e.from));
    circuit.outlets.insert(place, std::make_move_iterator(branch.begin()), std::make_move_iterator(branch.end()));
    return {};
  }

  Refusal operator()(const SetOutletName& e) {
    return change(e.id, [&e](Outlet& outlet) { outlet.name = e.name; });
  }
  Refusal operator()(const SetRun& e) {
    return change(e.id, [&e](Outlet& outlet) { outlet.run.length = e.run; });
  }
  Refusal operator()(const SetWire& e) {
    return change(e.id, [&e](Outlet& outlet) { outlet.run = e.run; });
  }
  Refusal operator()(const SetLoad& e) {
    return change(e.id, [&e](Outlet& outlet) {
      if (outlet.devices.empty()) outlet.devices.resize(1);
      outlet.devices.front().load = e.load;
    });
  }
  Refusal operator()(const SetDevices& e) {
    return change(e.id, [&e](Outlet& outlet) {
      outlet.devices = e.devices;
      outlet.taps = e.taps;
    });
  }
  Refusal operator()(const SetJoint& e) {
    return change(e.id, [&e](Outlet& outlet) { outlet.joint = e.joint; });
  }
  Refusal operator()(const SetPoint& e) {
    const auto index = index_of(circuit, e.id);
    if (!index) return no_such_outlet();
    Outlet& outlet = circuit.outlets[*index];
    outlet.point = e.point;
    outlet.devices.resize(e.point == PointKind::outlet ? std::max<std::size_t>(1, outlet.devices.size()) : 0);
    if (e.point != PointKind::outlet) {
      outlet.taps = 1;
      outlet.joint = Joint::splice;
    }
    for (Outlet& fed : circuit.outlets) {
      if (fed.fed_from == e.id) give_fuse_at_sub_block(&outlet, fed);
    }
    return {};
  }
  Refusal operator()(const SetOutletDropLimit& e) {
    return change(e.id, [&e](Outlet& outlet) { outlet.drop_limit = e.fraction; });
  }
  Refusal operator()(const SetOutletParts& e) {
    return change(e.id, [&e](Outlet& outlet) {
      outlet.outlet_part = e.outlet_part;
      outlet.terminal_part = e.terminal_part;
      outlet.rating = e.rating;
    });
  }

  template <class Change>
  Refusal change(OutletId id, Change with) {
    const auto index = index_of(circuit, id);
    if (!index) return no_such_outlet();
    with(circuit.outlets[*index]);
    return {};
  }
};

std::string title(const Circuit& circuit, OutletId id) {
  const auto index = index_of(circuit, id);
  return index ? "outlet " + outlet_letter(*index) : "the block";
}

// What undo offers to take back.
struct Describe {
  const Circuit& before;

  std::string operator()(const SetName&) const { return "rename the circuit"; }
  std::string operator()(const SetPlace&) const { return "change the place"; }
  std::string operator()(const SetFusePosition&) const { return "change the fuse position"; }
  std::string operator()(const SetSetting&) const { return "change the setting"; }
  std::string operator()(const SetPractice&) const { return "change whose rules bind"; }
  std::string operator()(const SetSupply&) const { return "change the supply"; }
  std::string operator()(const SetWiring&) const { return "change the wiring"; }
  std::string operator()(const SetDropLimit&) const { return "change the drop limit"; }
  std::string operator()(const SetAtMostAtOnce&) const { return "change the most at once"; }
  std::string operator()(const AddOutlet&) const { return "add an outlet"; }
  std::string operator()(const InsertOutlet& e) const { return "insert an outlet before " + title(before, e.before); }
  std::string operator()(const RemoveOutlet& e) const { return "remove " + title(before, e.id); }
  std::string operator()(const MoveOutlet& e) const { return "move " + title(before, e.id); }
  std::string operator()(const FeedOutletFrom& e) const {
    return "feed " + title(before, e.id) + " from " + title(before, e.from);
  }
  std::string operator()(const SetOutletName& e) const { return "rename " + title(before, e.id); }
  std::string operator()(const SetRun& e) const { return "change the length to " + title(before, e.id); }
  std::string operator()(const SetWire& e) const { return "change the wire to " + title(before, e.id); }
  std::string operator()(const SetLoad& e) const { return "change the load at " + title(before, e.id); }
  std::string operator()(const SetDevices& e) const { return "change the devices at " + title(before, e.id); }
  std::string operator()(const SetJoint& e) const { return "change the joint at " + title(before, e.id); }
  std::string operator()(const SetPoint& e) const { return "change what " + title(before, e.id) + " is"; }
  std::string operator()(const SetOutletDropLimit& e) const { return "change the drop limit of " + title(before, e.id); }
  std::string operator()(const SetOutletParts& e) const { return "change the parts of " + title(before, e.id); }
  std::string operator()(const SetShelf&) const { return "change the shelf"; }
  std::string operator()(const SetInHand&) const { return "change what is in hand"; }
};

}  // namespace

EditResult apply(const Circuit& circuit, const Edit& edit) {
  Circuit changed = circuit;
  if (Refusal refusal = std::visit(Apply{changed}, edit)) return {std::nullopt, std::move(refusal)};
  Problems problems = validate(changed);
  if (!problems.empty()) return {std::nullopt, std::move(problems.front())};
  return {std::move(changed), std::nullopt};
}

OutletId next_outlet(const Circuit& circuit) { return OutletId{circuit.next_outlet_id}; }

std::string describe(const Circuit& before, const Edit& edit) { return std::visit(Describe{before}, edit); }

}  // namespace circuit
