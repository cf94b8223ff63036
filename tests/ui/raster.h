// Draws ImGui's triangles in memory and writes a PNG, so that a screen can be looked at without
// a browser. One sample per pixel, as WebGL without multisampling: ImGui smooths its own edges.
//
//   Headless h; h.window.pixel_ratio = 2; h.draw = ...; h.settle();
//   write_png("look.png", h.width(), h.height(), h.picture());
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include <imgui.h>

namespace raster_detail {

struct Pixel {
  float r, g, b, a;
};
inline Pixel unpack(std::uint32_t c) {
  return {static_cast<float>(c & 255U) / 255, static_cast<float>((c >> 8U) & 255U) / 255, static_cast<float>((c >> 16U) & 255U) / 255,
          static_cast<float>(c >> 24U) / 255};
}

// Coverage of the font atlas at uv, bilinear.
inline float sample(const ImTextureData& texture, float u, float v) {
  const float x = u * static_cast<float>(texture.Width) - 0.5F, y = v * static_cast<float>(texture.Height) - 0.5F;
  const float fx = std::floor(x), fy = std::floor(y);
  const auto at = [&](float px, float py) {
    const int ix = std::clamp(static_cast<int>(px), 0, texture.Width - 1), iy = std::clamp(static_cast<int>(py), 0, texture.Height - 1);
    const unsigned char* p = texture.Pixels + (static_cast<std::ptrdiff_t>(iy) * texture.Width + ix) * texture.BytesPerPixel;
    return static_cast<float>(p[texture.BytesPerPixel - 1]) / 255;
  };
  const float tx = x - fx, ty = y - fy;
  const float top = at(fx, fy) * (1 - tx) + at(fx + 1, fy) * tx, low = at(fx, fy + 1) * (1 - tx) + at(fx + 1, fy + 1) * tx;
  return top * (1 - ty) + low * ty;
}

inline void triangle(std::vector<std::uint32_t>& image, int width, const std::array<int, 4>& clip, const ImTextureData& texture,
                     const std::array<const ImDrawVert*, 3>& v, float k) {
  const float x0 = v[0]->pos.x * k, y0 = v[0]->pos.y * k, x1 = v[1]->pos.x * k, y1 = v[1]->pos.y * k, x2 = v[2]->pos.x * k,
              y2 = v[2]->pos.y * k;
  const float area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  if (area == 0.0F) return;
  const int left = std::max(clip[0], static_cast<int>(std::floor(std::min({x0, x1, x2})))), right = std::min(clip[2], static_cast<int>(std::ceil(std::max({x0, x1, x2}))));
  const int top = std::max(clip[1], static_cast<int>(std::floor(std::min({y0, y1, y2})))), bottom = std::min(clip[3], static_cast<int>(std::ceil(std::max({y0, y1, y2}))));
  const std::array<Pixel, 3> colours{unpack(v[0]->col), unpack(v[1]->col), unpack(v[2]->col)};
  // Shared edges belong to one of the two triangles: the top-left rule.
  const auto owns = [](float ax, float ay, float bx, float by) { return (ay == by && bx > ax) || by < ay; };
  const float sign = area > 0 ? 1.0F : -1.0F;
  for (int y = top; y < bottom; ++y) {
    for (int x = left; x < right; ++x) {
      const float px = static_cast<float>(x) + 0.5F, py = static_cast<float>(y) + 0.5F;
      const float e0 = ((x2 - x1) * (py - y1) - (y2 - y1) * (px - x1)) * sign;
      const float e1 = ((x0 - x2) * (py - y2) - (y0 - y2) * (px - x2)) * sign;
      const float e2 = ((x1 - x0) * (py - y0) - (y1 - y0) * (px - x0)) * sign;
      const auto inside = [&](float e, float ax, float ay, float bx, float by) {
        return e > 0 || (e == 0 && (sign > 0 ? owns(ax, ay, bx, by) : owns(bx, by, ax, ay)));
      };
      if (!inside(e0, x1, y1, x2, y2) || !inside(e1, x2, y2, x0, y0) || !inside(e2, x0, y0, x1, y1)) continue;
      const float whole = e0 + e1 + e2, w0 = e0 / whole, w1 = e1 / whole, w2 = e2 / whole;
      const float u = v[0]->uv.x * w0 + v[1]->uv.x * w1 + v[2]->uv.x * w2, t = v[0]->uv.y * w0 + v[1]->uv.y * w1 + v[2]->uv.y * w2;
      const auto mix = [&](float Pixel::*c) { return colours[0].*c * w0 + colours[1].*c * w1 + colours[2].*c * w2; };
      const float a = mix(&Pixel::a) * sample(texture, u, t);
      if (a <= 0.0F) continue;
      std::uint32_t& to = image[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
      const Pixel under = unpack(to);
      const auto blend = [&](float over, float below) { return static_cast<std::uint32_t>(std::lround((over * a + below * (1 - a)) * 255)) & 255U; };
      to = 0xFF000000U | (blend(mix(&Pixel::b), under.b) << 16U) | (blend(mix(&Pixel::g), under.g) << 8U) | blend(mix(&Pixel::r), under.r);
    }
  }
}

}  // namespace raster_detail

// RGBA with R in the lowest byte, rows from the top, `width` x `height` device pixels.
inline std::vector<std::uint32_t> rasterise(const ImDrawData& data, int width, int height) {
  std::vector<std::uint32_t> image(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 0xFF808080U);
  const float k = data.FramebufferScale.x;
  for (const ImDrawList* list : data.CmdLists) {
    for (const ImDrawCmd& cmd : list->CmdBuffer) {
      const std::array<int, 4> clip{std::max(0, static_cast<int>(cmd.ClipRect.x * k)), std::max(0, static_cast<int>(cmd.ClipRect.y * k)),
                                    std::min(width, static_cast<int>(cmd.ClipRect.z * k)), std::min(height, static_cast<int>(cmd.ClipRect.w * k))};
      const ImTextureData* texture = cmd.TexRef._TexData;
      if (texture == nullptr || texture->Pixels == nullptr) continue;
      for (unsigned i = 0; i + 2 < cmd.ElemCount; i += 3) {
        std::array<const ImDrawVert*, 3> corners{};
        for (unsigned j = 0; j < 3; ++j) {
          const auto index = list->IdxBuffer[static_cast<int>(cmd.IdxOffset + i + j)];
          corners.at(j) = &list->VtxBuffer[static_cast<int>(cmd.VtxOffset + index)];
        }
        raster_detail::triangle(image, width, clip, *texture, corners, k);
      }
    }
  }
  return image;
}

// PNG with stored (uncompressed) blocks: large, but with nothing to link.
inline bool write_png(const std::string& path, int width, int height, const std::vector<std::uint32_t>& image) {
  std::vector<unsigned char> raw;
  for (int y = 0; y < height; ++y) {
    raw.push_back(0);
    for (int x = 0; x < width; ++x) {
      const std::uint32_t c = image[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
      for (const unsigned shift : {0U, 8U, 16U}) raw.push_back(static_cast<unsigned char>((c >> shift) & 255U));
    }
  }
  const auto big = [](std::vector<unsigned char>& to, std::uint32_t n) {
    for (const unsigned shift : {24U, 16U, 8U, 0U}) to.push_back(static_cast<unsigned char>((n >> shift) & 255U));
  };
  std::vector<unsigned char> packed{0x78, 0x01};
  std::uint32_t a = 1, b = 0;
  for (const unsigned char byte : raw) {
    a = (a + byte) % 65521U;
    b = (b + a) % 65521U;
  }
  for (std::size_t at = 0; at < raw.size();) {
    const std::size_t n = std::min<std::size_t>(65535, raw.size() - at);
    packed.push_back(at + n == raw.size() ? 1 : 0);
    for (const std::size_t v : {n, ~n & 0xFFFFU}) {
      packed.push_back(static_cast<unsigned char>(v & 255U));
      packed.push_back(static_cast<unsigned char>((v >> 8U) & 255U));
    }
    packed.insert(packed.end(), raw.begin() + static_cast<std::ptrdiff_t>(at), raw.begin() + static_cast<std::ptrdiff_t>(at + n));
    at += n;
  }
  big(packed, (b << 16U) | a);
  std::vector<unsigned char> file{0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  const auto chunk = [&](const char* name, const std::vector<unsigned char>& body) {
    big(file, static_cast<std::uint32_t>(body.size()));
    const std::size_t from = file.size();
    file.insert(file.end(), name, name + 4);
    file.insert(file.end(), body.begin(), body.end());
    std::uint32_t crc = 0xFFFFFFFFU;
    for (std::size_t i = from; i < file.size(); ++i) {
      crc ^= file[i];
      for (int bit = 0; bit < 8; ++bit) crc = (crc >> 1U) ^ ((crc & 1U) != 0U ? 0xEDB88320U : 0U);
    }
    big(file, ~crc);
  };
  std::vector<unsigned char> head;
  big(head, static_cast<std::uint32_t>(width));
  big(head, static_cast<std::uint32_t>(height));
  head.insert(head.end(), {8, 2, 0, 0, 0});
  chunk("IHDR", head);
  chunk("IDAT", packed);
  chunk("IEND", {});
  std::FILE* out = std::fopen(path.c_str(), "wb");
  if (out == nullptr) return false;
  const bool ok = std::fwrite(file.data(), 1, file.size(), out) == file.size();
  return std::fclose(out) == 0 && ok;
}
