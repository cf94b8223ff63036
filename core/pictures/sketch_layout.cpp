#include "pictures/sketch_layout.h"

#include <algorithm>
#include <utility>

namespace pictures {
namespace {

// Widths that depend only on the words, measured once for all trials of a layout.
struct Widths {
  std::vector<double> length;   // by outlet
  std::vector<double> half;     // by outlet: half of its circle, ring and voltage
  std::vector<double> tap;      // by outlet: to the right of that half, for the branches that leave
  double block_tap = 0.0;
  double battery = 0.0;
  double fuse = 0.0;
};

// What the next stop must stay clear of: above the red line, and below the black one.
struct Cursor {
  double above = 0.0;
  double below = 0.0;
  double from_x = 0.0;    // the stop before, for an even pitch
};

// "F, K +3": at most `shown` letters, then how many more; nothing when `shown` is 0.
std::string arrow_words(const std::vector<std::size_t>& strands, const SketchWords& words, std::size_t shown) {
  std::string text;
  for (std::size_t k = 0; k < std::min(strands.size(), shown); ++k) {
    if (k > 0) text += ", ";
    text += words.outlets[words.strands[strands[k]].outlets.front()].letter;
  }
  if (shown > 0 && strands.size() > shown) text += " +" + std::to_string(strands.size() - shown);
  return text;
}

// Strands by what they leave; index 0 is the fuse block, outlet i stands at i + 1. The main
// line is no branch.
std::vector<std::vector<std::size_t>> branches_of(const SketchWords& words) {
  std::vector<std::vector<std::size_t>> branches(words.outlets.size() + 1);
  for (std::size_t s = 1; s < words.strands.size(); ++s) {
    const std::optional<std::size_t>& from = words.strands[s].from;
    branches[from ? *from + 1 : 0].push_back(s);
  }
  return branches;
}

double first_line_width(const SketchOptions& options, const std::string& text) {
  const std::size_t space = text.find(' ');
  const std::string unit = space == std::string::npos ? std::string() : text.substr(space + 1);
  return std::max(caption_width(options, text.substr(0, space), true), caption_width(options, unit, true));
}

class Builder {
 public:
  Builder(const SketchWords& words, const SketchOptions& options, const Measures& m,
          std::size_t arrow_letters)
      : words_(words), options_(options), m_(m), arrow_letters_(arrow_letters), branches_(branches_of(words)) {
    measure();
  }

  // Outlets stand at least `pitch` apart, further where their texts need it.
  Layout build(double pitch) {
    out_ = Layout{};
    waiting_.clear();
    pitch_ = pitch;
    out_.width = options_.view_width;
    out_.battery = {m_.margin, m_.margin + widths_.battery};
    const double fuse_left = out_.battery.right + 15.0 * m_.unit;
    out_.fuse = {fuse_left, fuse_left + widths_.fuse};
    grow(out_.fuse.right + widths_.block_tap + m_.turn_room);

    double bottom = lay_strand(words_.strands.empty() ? kNoStrand : 0, start_row(RowStart::battery, std::nullopt, m_.margin));
    for (std::size_t k = 0; k < waiting_.size(); ++k) {
      const std::size_t strand = waiting_[k];
      bottom = lay_strand(strand, start_row(RowStart::splice, words_.strands[strand].from, bottom + 14.0 * m_.unit));
    }
    out_.turn_red_x = out_.width - m_.margin;
    out_.height = bottom + m_.margin;
    return std::move(out_);
  }

 private:
  static constexpr std::size_t kNoStrand = static_cast<std::size_t>(-1);

  void measure() {
    const double pad = 9.0 * m_.unit;
    widths_.battery = first_line_width(options_, words_.battery) + pad;
    widths_.fuse = caption_width(options_, words_.fuse, true) + pad;
    widths_.block_tap = tap_width(branches_[0]);
    for (std::size_t i = 0; i < words_.outlets.size(); ++i) {
      const OutletWords& outlet = words_.outlets[i];
      double voltage = caption_width(options_, outlet.voltage, outlet.beyond_limit);
      if (outlet.beyond_limit) voltage += warning_width(m_);
      widths_.length.push_back(caption_width(options_, outlet.length, false));
      widths_.half.push_back(std::max(m_.radius + 6.0 * m_.unit, voltage / 2.0));
      widths_.tap.push_back(tap_width(branches_[i + 1]));
    }
  }
  [[nodiscard]] double tap_width(const std::vector<std::size_t>& strands) const {
    if (strands.empty()) return 0.0;
    return 6.0 * m_.unit + m_.lane + 7.0 * m_.unit + caption_width(options_, arrow_words(strands, words_, arrow_letters_), true);
  }

  void grow(double right) { out_.width = std::max(out_.width, right + m_.margin); }

  [[nodiscard]] Tap tap_at(double x, std::optional<std::size_t> from) const {
    Tap tap;
    tap.from = from;
    tap.black_x = x + 6.0 * m_.unit;
    tap.red_x = tap.black_x + m_.lane;
    return tap;
  }

  std::size_t start_row(RowStart start, std::optional<std::size_t> from, double top) {
    Row row;
    row.start = start;
    row.from = from;
    row.red_y = top + m_.text_height + 7.0 * m_.unit;
    row.black_y = row.red_y + m_.line_gap;
    const bool at_block = start == RowStart::battery || (start == RowStart::splice && !from);
    if (start == RowStart::battery) {
      row.left = out_.battery.right;
    } else if (start == RowStart::turn) {
      row.left = m_.margin + m_.lane;
    } else {
      row.left = at_block ? m_.margin : m_.margin + m_.radius;
    }
    row.black_left = start == RowStart::turn ? m_.margin : row.left;
    if (start == RowStart::battery && !branches_[0].empty()) row.block_tap = tap_at(out_.fuse.right, std::nullopt);
    out_.rows.push_back(std::move(row));
    return out_.rows.size() - 1;
  }

  [[nodiscard]] Cursor cursor_at_start(const Row& row) const {
    if (row.start == RowStart::battery) {
      const double right = out_.fuse.right;
      return {right + 2.0 * m_.unit, right + widths_.block_tap, right};
    }
    double x = row.left;
    if (row.start == RowStart::splice) x = row.from ? row.left + m_.radius : m_.margin + widths_.fuse;
    const double clear = x + m_.mark_room;
    return {clear, clear, x};
  }
  [[nodiscard]] double place_of(std::size_t outlet, const Cursor& cursor) const {
    return std::max({cursor.above + widths_.length[outlet] + 6.0 * m_.unit,
                     cursor.below + 5.0 * m_.unit + widths_.half[outlet], cursor.from_x + pitch_});
  }
  [[nodiscard]] double right_of(std::size_t outlet, double x) const {
    return x + widths_.half[outlet] + widths_.tap[outlet];
  }
  [[nodiscard]] bool fits(std::size_t outlet, double x, bool last) const {
    return right_of(outlet, x) <= options_.view_width - m_.margin - (last ? 0.0 : m_.turn_room);
  }
  void stop_at(Row& row, std::size_t outlet, double x, bool last, Cursor& cursor) {
    Stop stop{outlet, x, (cursor.above + x) / 2.0, std::nullopt};
    if (!branches_[outlet + 1].empty()) stop.tap = tap_at(x + widths_.half[outlet], outlet);
    row.stops.push_back(std::move(stop));
    cursor = {x, right_of(outlet, x), x};
    grow(right_of(outlet, x) + (last ? 0.0 : m_.turn_room));
  }

  // Lays the strand from this row on, then what hangs below it. Returns the bottom.
  double lay_strand(std::size_t strand, std::size_t row_index) {
    Cursor cursor = cursor_at_start(out_.rows[row_index]);
    const std::vector<std::size_t> none;
    const std::vector<std::size_t>& outlets = strand == kNoStrand ? none : words_.strands[strand].outlets;
    for (std::size_t k = 0; k < outlets.size(); ++k) {
      const Row& row = out_.rows[row_index];
      const bool may_turn = row.start != RowStart::hung && (row.start == RowStart::battery || !row.stops.empty());
      const bool last = k + 1 == outlets.size();
      if (may_turn && !fits(outlets[k], place_of(outlets[k], cursor), last)) {
        row_index = turn(row_index, k == 0 ? words_.strands[strand].from : std::optional<std::size_t>(outlets[k - 1]));
        cursor = cursor_at_start(out_.rows[row_index]);
      }
      stop_at(out_.rows[row_index], outlets[k], place_of(outlets[k], cursor), last || row_hangs(row_index), cursor);
    }
    return hang_branches(row_index);
  }

  [[nodiscard]] bool row_hangs(std::size_t row_index) const { return out_.rows[row_index].start == RowStart::hung; }

  std::size_t turn(std::size_t row_index, std::optional<std::size_t> from) {
    Row& row = out_.rows[row_index];
    row.turn_black_y = bottom_of(row) + 5.0 * m_.unit;
    for (Stop& stop : row.stops) {
      if (stop.tap) send_away(*stop.tap);
    }
    if (row.block_tap) send_away(*row.block_tap);
    return start_row(RowStart::turn, from, row.turn_black_y + m_.lane + 4.0 * m_.unit);
  }

  [[nodiscard]] double bottom_of(const Row& row) const { return row.black_y + 8.0 * m_.unit + m_.text_height; }

  void send_away(Tap& tap) {
    const std::vector<std::size_t>& strands = branches_[tap.from ? *tap.from + 1 : 0];
    tap.arrow_to = arrow_words(strands, words_, arrow_letters_);
    waiting_.insert(waiting_.end(), strands.begin(), strands.end());
    out_.arrows += strands.size();
  }

  // From the right to the left, so that no branch's lines cross another's.
  double hang_branches(std::size_t row_index) {
    double bottom = bottom_of(out_.rows[row_index]);
    for (std::size_t k = out_.rows[row_index].stops.size(); k-- > 0;) {
      std::optional<Tap> tap = out_.rows[row_index].stops[k].tap;
      if (!tap) continue;
      bottom = hang(*tap, row_index, bottom);
      out_.rows[row_index].stops[k].tap = std::move(tap);
    }
    if (std::optional<Tap> tap = out_.rows[row_index].block_tap) {
      bottom = hang(*tap, row_index, bottom);
      out_.rows[row_index].block_tap = std::move(tap);
    }
    return bottom;
  }

  double hang(Tap& tap, std::size_t parent, double bottom) {
    const std::vector<std::size_t>& strands = branches_[tap.from ? *tap.from + 1 : 0];
    const bool room = std::all_of(strands.begin(), strands.end(), [&](std::size_t s) { return fits_below(s, tap); });
    if (!room) {
      send_away(tap);
      return bottom;
    }
    for (const std::size_t strand : strands) {
      const std::size_t row_index = start_row(RowStart::hung, tap.from, bottom + 6.0 * m_.unit);
      Row& row = out_.rows[row_index];
      row.left = tap.red_x;
      row.black_left = tap.black_x;
      row.parent_red_y = out_.rows[parent].red_y;
      row.parent_black_y = out_.rows[parent].black_y;
      tap.hung.push_back(row_index);
      bottom = lay_strand(strand, row_index);
    }
    return bottom;
  }

  [[nodiscard]] bool fits_below(std::size_t strand, const Tap& tap) const {
    Row row;
    row.start = RowStart::hung;
    row.left = tap.red_x;
    Cursor cursor = cursor_at_start(row);
    for (const std::size_t outlet : words_.strands[strand].outlets) {
      const double x = place_of(outlet, cursor);
      if (!fits(outlet, x, true)) return false;
      cursor = {x, right_of(outlet, x), x};
    }
    return true;
  }

  const SketchWords& words_;
  const SketchOptions& options_;
  const Measures& m_;
  const std::size_t arrow_letters_;
  const std::vector<std::vector<std::size_t>> branches_;
  Widths widths_;
  double pitch_ = 0.0;
  Layout out_;
  std::vector<std::size_t> waiting_;   // strands that get rows of their own
};

}  // namespace

Measures::Measures(double text_scale, double circle_radius)
    : unit(text_scale), text_height(text_scale * drawing::line_height(drawing::TextSize::caption)),
      radius(circle_radius), line_gap(2.0 * circle_radius + 20.0 * text_scale), margin(4.0 * text_scale),
      lane(6.0 * text_scale), turn_room(14.0 * text_scale), mark_room(16.0 * text_scale) {}

double caption_width(const SketchOptions& options, const std::string& text, bool bold) {
  if (text.empty()) return 0.0;
  return options.text_scale * (options.text_width ? options.text_width(text, drawing::TextSize::caption, bold)
                                                  : drawing::estimated_text_width(text, drawing::TextSize::caption, bold));
}

Measures measures_for(const SketchWords& words, const SketchOptions& options) {
  double widest = 0.0;
  for (const OutletWords& outlet : words.outlets) widest = std::max(widest, caption_width(options, outlet.letter, true));
  return Measures(options.text_scale, std::max(12.0 * options.text_scale, widest / 2.0 + 4.0 * options.text_scale));
}

double warning_width(const Measures& measures) { return 15.0 * measures.unit; }

Layout lay_out(const SketchWords& words, const SketchOptions& options, const Measures& measures) {
  // Large text in a narrow view: letters beside the arrows go first, a picture wider than the
  // view comes last.
  std::size_t arrow_letters = 2;
  Layout tightest = Builder(words, options, measures, arrow_letters).build(0.0);
  while (arrow_letters > 0 && tightest.width > options.view_width) {
    tightest = Builder(words, options, measures, --arrow_letters).build(0.0);
  }
  // As airy as it can be without taking more rows or sending more branches away.
  Builder builder(words, options, measures, arrow_letters);
  for (double pitch = 112.0; pitch >= 40.0; pitch -= 4.0) {
    Layout airy = builder.build(pitch * measures.unit);
    if (airy.rows.size() == tightest.rows.size() && airy.arrows == tightest.arrows &&
        airy.width <= tightest.width) {
      return airy;
    }
  }
  return tightest;
}

}  // namespace pictures
