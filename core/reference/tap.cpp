#include "reference/book.h"
#include "tables/fuse.h"
#include "tables/supply.h"

namespace reference {

std::optional<circuit::Edit> edit_for(const Tap& tap, const circuit::Circuit& circuit) {
  switch (tap.into) {
    case Tap::Into::nothing: return std::nullopt;
    case Tap::Into::drop_limit: return circuit::SetDropLimit{tap.value};
    case Tap::Into::battery_kind: {
      circuit::Supply supply = circuit.supply;
      supply.battery = std::string(tap.value_key);
      return circuit::SetSupply{supply};
    }
    case Tap::Into::in_hand_size: {
      circuit::InHand in_hand = circuit.in_hand.value_or(circuit::InHand{{}, units::Amperes(15.0)});
      in_hand.size = std::string(tap.value_key);
      return circuit::SetInHand{in_hand};
    }
    case Tap::Into::fuse_family: {
      const tables::FuseFamily* family = tables::fuse_family_by_key(tap.value_key);
      if (family == nullptr) return std::nullopt;
      circuit::Wiring wiring = circuit.wiring;
      wiring.fuse_family = family->id;
      return circuit::SetWiring{wiring};
    }
  }
  return std::nullopt;
}

}  // namespace reference
