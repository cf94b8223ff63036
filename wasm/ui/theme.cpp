#include "ui/theme.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "ui/parts.h"

namespace ui {
namespace {

struct Pair {
  Ink ink;
  std::uint32_t day, night;
};
constexpr std::array<Pair, static_cast<std::size_t>(Ink::count_)> kInks{{
    {Ink::ground, 0xF3F0E8, 0x0F1113},
    {Ink::card, 0xFFFFFF, 0x1A1E21},
    {Ink::ink, 0x15181B, 0xF3F0E8},
    {Ink::muted, 0x575D64, 0xA9B0B7},
    {Ink::line, 0xD8D2C4, 0x333A40},
    {Ink::accent, 0x9C4A1A, 0xF2A06B},
    {Ink::tint, 0xF6E3D5, 0x3A2517},
    {Ink::positive, 0xC2281C, 0xFF6A5C},
    {Ink::negative, 0x15181B, 0xC9CED3},
    {Ink::good, 0x1B6A3A, 0x7FD69B},
    {Ink::good_tint, 0xDDEFE2, 0x15301F},
    {Ink::caution, 0x7A5200, 0xFFCF66},
    {Ink::caution_tint, 0xFFE9B8, 0x3B2E0C},
    {Ink::stop, 0xA61B12, 0xFF8D80},
    {Ink::stop_tint, 0xFADBD6, 0x47150F},
    {Ink::on_accent, 0xFFFFFF, 0x1A120C},
    {Ink::on_ink, 0xFFFFFF, 0x15181B},
    {Ink::pressed, 0xEFEAE0, 0x272C30},
    {Ink::rim, 0x8A8478, 0x7A838B},
    {Ink::toast_action, 0xF2A06B, 0x9C4A1A},
}};

// One channel of sRGB to linear light, as WCAG 2.1 defines relative luminance.
double linear(std::uint32_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(std::uint32_t rgb) {
  return 0.2126 * linear((rgb >> 16U) & 255U) + 0.7152 * linear((rgb >> 8U) & 255U) + 0.0722 * linear(rgb & 255U);
}

}  // namespace

std::uint32_t rgb(Ink ink, bool dark) {
  const Pair& pair = kInks.at(static_cast<std::size_t>(ink));
  return dark ? pair.night : pair.day;
}

std::uint32_t colour(Ink ink) {
  const std::uint32_t c = rgb(ink, now().frame.dark);
  return 0xFF000000U | ((c & 255U) << 16U) | (c & 0xFF00U) | (c >> 16U);
}

Ink ink_of(drawing::Ink ink) {
  switch (ink) {
    case drawing::Ink::text: return Ink::ink;
    case drawing::Ink::muted: return Ink::muted;
    case drawing::Ink::line: return Ink::line;
    case drawing::Ink::positive: return Ink::positive;
    case drawing::Ink::negative: return Ink::negative;
    case drawing::Ink::accent: return Ink::accent;
    case drawing::Ink::good: return Ink::good;
    case drawing::Ink::caution: return Ink::caution;
    case drawing::Ink::stop: return Ink::stop;
    case drawing::Ink::card: return Ink::card;
    case drawing::Ink::ground: return Ink::ground;
    default: break;  // none, and the colours of things: picture.cpp takes those from the palette
  }
  return Ink::card;
}

double contrast(std::uint32_t a, std::uint32_t b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

Ink tone_ink(Tone tone) {
  switch (tone) {
    case Tone::good: return Ink::good;
    case Tone::caution: return Ink::caution;
    case Tone::stop: return Ink::stop;
    case Tone::plain: break;
  }
  return Ink::ink;
}

Ink tone_tint(Tone tone) {
  switch (tone) {
    case Tone::good: return Ink::good_tint;
    case Tone::caution: return Ink::caution_tint;
    case Tone::stop: return Ink::stop_tint;
    case Tone::plain: break;
  }
  return Ink::card;
}

float type_px(Type type) { return static_cast<float>(type) * static_cast<float>(now().frame.text_scale); }

}  // namespace ui
