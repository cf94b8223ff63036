#include "mirror/feed.h"

#include <cmath>
#include <cstdio>
#include <cstring>

namespace mirror {
namespace {

constexpr char kField = '\x1F';
constexpr char kEnd = '\x1E';

// FNV-1a, 64 bits: good enough to see whether anything changed since the frame before.
class Hash {
 public:
  void bytes(const std::string& text) {
    for (const char c : text) {
      byte(static_cast<unsigned char>(c));
    }
    byte(0xFFU);  // "ab","c" differs from "a","bc"
  }
  void number(std::uint64_t value) {
    for (unsigned shift = 0; shift < 64U; shift += 8U) {
      byte(static_cast<unsigned char>((value >> shift) & 0xFFU));
    }
  }
  void bits(double value) {
    std::uint64_t as_number = 0;
    std::memcpy(&as_number, &value, sizeof as_number);   // std::bit_cast is not in every library yet
    number(as_number);
  }
  // Quarter pixels: what scrolling leaves as rounding is no change of the layout.
  void length(double px) { number(static_cast<std::uint64_t>(std::llround(px * 4.0))); }
  [[nodiscard]] std::uint64_t value() const { return value_; }

 private:
  void byte(unsigned char b) {
    value_ ^= b;
    value_ *= 1099511628211ULL;
  }
  std::uint64_t value_ = 14695981039346656037ULL;
};

void put(std::string& out, double value) {
  char text[32];
  const int length = std::snprintf(text, sizeof text, "%.8g", value);
  out.append(text, static_cast<std::size_t>(length));
  out += kField;
}

void put(std::string& out, std::uint32_t value) {
  out += std::to_string(value);
  out += kField;
}

void put(std::string& out, const std::string& text) {
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    out += code < 0x20U ? ' ' : c;
  }
  out += kField;
}

}  // namespace

void Feed::forget() { told_ = false; }

// A region's offset follows the first of its records that also stood in the last frame. Which one
// that is does not matter: the offset is only a common part taken out of all their places.
void Feed::follow_regions(const std::vector<ui::Record>& records) {
  for (auto& [id, region] : regions_) {
    region.settled = false;
  }
  std::unordered_map<std::uint32_t, Region> in_use;
  for (const ui::Record& record : records) {
    if (record.region == 0 || record.id == 0) {
      continue;
    }
    Region& region = in_use.try_emplace(record.region, regions_[record.region]).first->second;
    if (region.settled) {
      continue;
    }
    const auto before = places_.find(record.id);
    if (before != places_.end()) {
      region.x += static_cast<double>(record.x) - static_cast<double>(before->second.x);
      region.y += static_cast<double>(record.y) - static_cast<double>(before->second.y);
      region.settled = true;
    }
  }
  regions_ = std::move(in_use);
}

Feed::Region Feed::offset_of(const ui::Record& record) const {
  const auto found = regions_.find(record.region);
  return found == regions_.end() ? Region{} : found->second;
}

std::string Feed::write_moves() const {
  std::string text;
  for (const auto& [id, region] : regions_) {
    put(text, id);
    put(text, region.x);
    put(text, region.y);
    text += kEnd;
  }
  return text;
}

News Feed::after_frame(const std::vector<ui::Record>& records) {
  const auto old_regions = regions_;
  follow_regions(records);
  places_.clear();

  Hash hash;
  for (const ui::Record& record : records) {
    places_.insert_or_assign(record.id, Place{record.x, record.y});
    if (record.role == ui::Role::end) {
      hash.number(~std::uint64_t{0});   // closes its holder; where it stands says nothing
      continue;
    }
    const Region offset = offset_of(record);
    hash.number(record.id);
    hash.number((static_cast<std::uint64_t>(record.state) << 16U) | (static_cast<std::uint64_t>(record.role) << 8U) |
                record.level);
    hash.number(record.region);
    hash.length(static_cast<double>(record.x) - offset.x);
    hash.length(static_cast<double>(record.y) - offset.y);
    hash.length(static_cast<double>(record.width));
    hash.length(static_cast<double>(record.height));
    hash.bits(record.low);
    hash.bits(record.high);
    hash.bytes(record.name);
    hash.bytes(record.value);
    hash.bytes(record.description);
  }

  News news;
  if (told_ && hash.value() == layout_hash_) {
    for (const auto& [id, region] : regions_) {
      const auto before = old_regions.find(id);
      if (before == old_regions.end() || std::abs(before->second.x - region.x) > 1e-3 ||
          std::abs(before->second.y - region.y) > 1e-3) {
        news.kind = News::Kind::moves;
      }
    }
    if (news.kind == News::Kind::moves) {
      news.moves = write_moves();
    }
    return news;
  }

  layout_hash_ = hash.value();
  told_ = true;
  news.kind = News::Kind::full;
  news.moves = write_moves();
  for (const ui::Record& record : records) {
    const Region offset = offset_of(record);
    put(news.full, record.id);
    put(news.full, static_cast<std::uint32_t>(record.role));
    put(news.full, static_cast<std::uint32_t>(record.level));
    put(news.full, record.state);
    put(news.full, record.region);
    put(news.full, static_cast<double>(record.x) - offset.x);
    put(news.full, static_cast<double>(record.y) - offset.y);
    put(news.full, static_cast<double>(record.width));
    put(news.full, static_cast<double>(record.height));
    put(news.full, record.low);
    put(news.full, record.high);
    put(news.full, record.name);
    put(news.full, record.value);
    put(news.full, record.description);
    news.full += kEnd;
  }
  return news;
}

}  // namespace mirror
