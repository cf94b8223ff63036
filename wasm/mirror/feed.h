// What the page's accessibility mirror must be told after a frame, and no more: nothing when
// nothing changed, one offset per scroll region when things only scrolled, else the whole list.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "ui/semantics.h"

namespace mirror {

// The text form, read by web/mirror.js. Records end with 0x1E, fields are parted by 0x1F; such
// characters within names are replaced by a space.
//   full:  id role level state region x y width height low high name value description
//   moves: region x y
// Positions of full are those in the window less the offset of the record's region.
struct News {
  enum class Kind : std::uint8_t { nothing, moves, full };
  Kind kind = Kind::nothing;
  std::string full{};
  std::string moves{};    // the offsets of every region in use
};

class Feed {
 public:
  News after_frame(const std::vector<ui::Record>& records);
  void forget();          // the next frame tells everything again

 private:
  struct Place {
    float x = 0.0F, y = 0.0F;
  };
  struct Region {
    double x = 0.0, y = 0.0;
    bool settled = false;  // its shift of this frame is known
  };
  void follow_regions(const std::vector<ui::Record>& records);
  [[nodiscard]] Region offset_of(const ui::Record& record) const;
  [[nodiscard]] std::string write_moves() const;

  std::unordered_map<std::uint32_t, Place> places_;      // of the last frame, by record id
  std::unordered_map<std::uint32_t, Region> regions_;
  std::uint64_t layout_hash_ = 0;
  bool told_ = false;
};

}  // namespace mirror
