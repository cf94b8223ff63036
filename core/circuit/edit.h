// A change to a circuit as a value. apply() gives the new circuit, or says what is wrong and
// leaves the old one standing: no invalid circuit is ever produced.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "circuit/circuit.h"
#include "circuit/problem.h"

namespace circuit {

struct SetName { std::string name; };
struct SetPlace { std::string place; };           // may be empty
struct SetFusePosition { int position; };
struct SetSetting { Setting setting; };
struct SetPractice { std::optional<tables::Practice> practice; std::string colours; };  // nullopt, empty: the usual
struct SetSupply { Supply supply; };              // a new nominal voltage carries along, in proportion,
                                                  // every voltage told for the old one: the devices'
                                                  // lowest, and resting and low where this edit keeps them
struct SetWiring { Wiring wiring; };
struct SetDropLimit { double fraction; };
struct SetAtMostAtOnce { std::optional<units::Amperes> current; };
struct AddOutlet { OutletId after; };             // fed from `after` (kBlock: from the block); what
                                                  // it fed stays: a new branch when it fed one.
                                                  // Run and parts as at `after`, no load yet
struct InsertOutlet { OutletId before; };         // into the run that feeds `before`; splits the run in half
struct RemoveOutlet { OutletId id; };             // what it fed is fed from its parent, runs added
struct MoveOutlet { OutletId id; int by; };       // changes places with the one `by` places further down the
                                                  // list (-1: up), one at a time; id, name, load and parts
                                                  // move, the wire and its lengths stay where they are
struct FeedOutletFrom { OutletId id; OutletId from; };  // re-hangs a branch, last on its new parent; refuses a loop
struct SetOutletName { OutletId id; std::string name; };
struct SetRun { OutletId id; units::Metres run; };      // the length alone
struct SetWire { OutletId id; Run run; };               // the whole run that feeds it
struct SetLoad { OutletId id; Load load; };             // of its first device
struct SetDevices { OutletId id; std::vector<Device> devices; int taps; };
struct SetJoint { OutletId id; Joint joint; };
struct SetPoint { OutletId id; PointKind point; };      // a point that is no outlet loses its devices; what
                                                        // leaves a sub-block gets a fuse where it has none
struct SetOutletDropLimit { OutletId id; std::optional<double> fraction; };
struct SetOutletParts { OutletId id; std::string outlet_part; std::string terminal_part;
                        std::optional<units::Amperes> rating; };
struct SetShelf { Shelf shelf; };
struct SetInHand { std::optional<InHand> in_hand; };

using Edit = std::variant<SetName, SetPlace, SetFusePosition, SetSetting, SetPractice, SetSupply,
                          SetWiring, SetDropLimit, SetAtMostAtOnce, AddOutlet, InsertOutlet,
                          RemoveOutlet, MoveOutlet, FeedOutletFrom, SetOutletName, SetRun, SetWire,
                          SetLoad, SetDevices, SetJoint, SetPoint, SetOutletDropLimit, SetOutletParts,
                          SetShelf, SetInHand>;

struct EditResult {
  std::optional<Circuit> circuit;   // absent when refused
  std::optional<Problem> problem;   // why it was refused
};
EditResult apply(const Circuit& circuit, const Edit& edit);

// The id that AddOutlet or InsertOutlet gives: select it after the edit.
OutletId next_outlet(const Circuit& circuit);

// "remove outlet C": what undo offers to take back, lower case.
std::string describe(const Circuit& before, const Edit& edit);

}  // namespace circuit
