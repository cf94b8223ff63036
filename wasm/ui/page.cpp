// The page: header, scrolling body, bar of places, two columns on wide windows.
#include <algorithm>
#include <cmath>
#include <string>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/layer.h"
#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr ImGuiWindowFlags kBehindAll = kBare | ImGuiWindowFlags_NoBringToFrontOnFocus;
constexpr float kColumnGap = 16.0F;

// Window width that two columns of cards take.
float content_width() {
  const Frame& f = now().frame;
  const float room = f.width - f.safe_left - f.safe_right - 2 * kPage;
  return std::floor(std::min(room, two_columns() ? 2 * kColumn + kColumnGap : kColumn));
}

float content_left() {
  const Frame& f = now().frame;
  return std::floor(f.safe_left + (f.width - f.safe_left - f.safe_right - content_width()) / 2);
}

// A low window, or large type: the header scrolls away with the page.
bool header_scrolls() {
  const Frame& f = now().frame;
  return f.height < 520.0F || f.text_scale > 1.35;
}

}  // namespace

bool icon_button(std::string_view name, Icon icon, float mid_x, float mid_y, Ink ink) {
  const Rect rect{mid_x - kTarget / 2, mid_y - kTarget / 2, kTarget, kTarget};
  const std::uint32_t id = make_id(name);
  const Press p = press(id, rect);
  record(id, rect, {.role = Role::button, .name = std::string(name), .radius = kTarget / 2});
  if (p.held || p.hovered) disc(mid_x, mid_y, kTarget / 2, colour(Ink::pressed));
  draw_icon(icon, mid_x, mid_y, 24.0F, colour(ink), 2.0F);
  return p.pressed;
}

namespace {

// The title's words, and the mark that it opens something.
void paint_title(const PageOptions& options, const Rect& words, float title_height) {
  paint_text(options.title, words, {.type = Type::title, .semibold = true});
  if (options.title_opens) {
    const auto lines = wrap(options.title, Type::title, true, words.w);
    const float end = lines.empty() ? 0.0F : text_width(lines.back().words, Type::title, true);
    const float size = type_px(Type::caption);
    draw_icon(Icon::expand, words.x + end + 6 + size / 2, words.y + title_height - line_height(Type::title) / 2 + 1, size,
              colour(Ink::muted));
  }
  paint_text(options.subtitle, {words.x, words.y + title_height, words.w, words.h},
             {.type = Type::caption, .ink = Ink::muted});
}

PageEvents header(const PageOptions& options) {
  PageEvents events;
  Column& col = column();
  const float left = col.left + (options.back ? kTarget - 8 : 0.0F);
  const float mark = options.title_opens ? type_px(Type::caption) + 8 : 0.0F;
  const float room = col.width - (left - col.left) - (options.more ? kTarget : 0.0F) - mark;
  const float title_height = text_height(options.title, Type::title, true, room);
  const float words_height = title_height + text_height(options.subtitle, Type::caption, false, room);
  const Rect rect = take(std::max(words_height, kTarget), Last::block, 0.0F);
  const Rect words{left, std::round(rect.mid_y() - words_height / 2), room, words_height};
  if (options.back) events.back = icon_button("Back", Icon::back, col.left + kTarget / 2 - 12, rect.mid_y(), Ink::ink);
  if (options.title_opens) {
    const std::uint32_t id = make_id("title");
    const Rect target{left - 8, rect.y, std::min(room + mark, std::max(text_width(options.title, Type::title, true),
                                                                      text_width(options.subtitle, Type::caption, false)) + mark) + 16,
                      rect.h};
    const Press p = press(id, target);
    if (p.held || p.hovered) fill(target, colour(Ink::pressed), kControlRadius);
    record(words_id("h1"), words, {.role = Role::heading, .name = options.title, .level = 1});
    record(id, target, {.role = Role::button, .name = options.title_hint.empty() ? options.title : options.title_hint});
    events.title = p.pressed;
  } else {
    record(words_id("h1"), words, {.role = Role::heading, .name = options.title, .level = 1});
  }
  if (!options.subtitle.empty()) record(words_id("sub"), words, {.role = Role::text, .name = options.subtitle});
  paint_title(options, words, title_height);
  if (options.more) events.more = icon_button("More", Icon::more, rect.right() - kTarget / 2 + 12, rect.mid_y(), Ink::ink);
  return events;
}

}  // namespace

PageEvents begin_page(std::string_view id, const PageOptions& options) {
  State::Parts& p = now();
  const Frame& f = p.frame;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({f.width, f.height});
  ImGui::Begin("page", nullptr, kBehindAll);
  fill({0, 0, f.width, f.height}, colour(Ink::ground));
  ImGui::PushID(id.data(), id.data() + id.size());
  PageEvents events;
  const bool inside = header_scrolls();
  float top = 0.0F;
  if (!inside) {
    push_column({.left = content_left(), .width = content_width(), .y = f.safe_top + 12});
    events = header(options);
    top = column().y + 8;
    pop_column();
  }
  p.body = {0, top, f.width, std::max(f.height - top - p.bar_height - p.foot_height, 1.0F)};
  ImGui::SetCursorScreenPos({0, top});
  ImGui::BeginChild("body", {p.body.w, p.body.h}, ImGuiChildFlags_None,
                    ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBackground |
                        ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoMove);
  ImGuiWindow* body = ImGui::GetCurrentWindow();
  if (p.page_to_top) {
    p.page_to_top = false;
    ImGui::SetScrollY(body, 0.0F);
    p.want_frames(2);
  }
  p.region = body->ID;
  p.top_body = body->ID;
  const float start = ImGui::GetCursorScreenPos().y;
  push_column({.left = content_left(), .width = content_width(), .y = start + (inside ? f.safe_top + 8 : 4)});
  if (inside) {
    events = header(options);
  } else if (body->Scroll.y > 0.5F) {
    fill({0, top, f.width, 1}, colour(Ink::line));
  }
  return events;
}

// A thin mark at the right edge: how far down we are. Not grabbed: wheel, finger and keys scroll.
static void paint_scroll_mark(const Rect& body) {
  const ImGuiWindow* window = ImGui::GetCurrentWindow();
  if (window->ScrollMax.y <= 0.0F || (now().touch.by_touch() && !now().touch.panning())) return;
  const float all = body.h + window->ScrollMax.y;
  const float height = std::max(body.h * body.h / all, 32.0F);
  const float y = body.y + (body.h - height - 8) * (window->Scroll.y / window->ScrollMax.y) + 4;
  fill({body.right() - 6, y, 3, height}, faded(colour(Ink::muted), 0.45F), 1.5F);
}

void end_scrolling_part(const Rect& body, float air) {
  ImGui::SetCursorScreenPos({column().left, column().y + air});
  ImGui::Dummy({0, 0});
  pop_column();
  paint_scroll_mark(body);
  ImGui::EndChild();
}

static std::optional<std::size_t> bar_of_places(std::span<const Place> places, std::size_t current) {
  State::Parts& p = now();
  const Frame& f = p.frame;
  const float room = std::min(f.width - f.safe_left - f.safe_right - 8, 640.0F);
  const float each = std::min(room / static_cast<float>(places.size()), 128.0F);
  // Under an icon a word must fit its place: here alone the text size stops growing.
  const double wanted = p.frame.text_scale;
  for (; p.frame.text_scale > 1.0; p.frame.text_scale -= 0.05) {
    float widest = 0.0F;
    for (const Place& place : places) widest = std::max(widest, text_width(place.name, Type::caption, true));
    if (widest <= each - 4) break;
  }
  const float height = std::round(34.0F + line_height(Type::caption) + 12.0F);
  const float top = f.height - f.safe_bottom - height;
  fill({0, top, f.width, height + f.safe_bottom}, colour(Ink::card));
  fill({0, top, f.width, 1}, colour(Ink::line));
  record(words_id("places"), {0, top, f.width, height}, {.role = Role::navigation, .name = "Places"});
  std::optional<std::size_t> chosen;
  float x = f.safe_left + (f.width - f.safe_left - f.safe_right - each * static_cast<float>(places.size())) / 2;
  for (std::size_t i = 0; i < places.size(); ++i, x += each) {
    const Rect rect{x, top, each, height};
    const std::uint32_t id = make_id(places[i].name);
    const Press press_ = press(id, rect);
    const bool here = i == current;
    record(id, {rect.x, rect.y + 2, rect.w, rect.h - 4}, {.role = Role::link, .name = places[i].name, .state = here ? kCurrent : 0U});
    const Ink ink = here ? Ink::accent : Ink::muted;
    if (press_.held || press_.hovered) fill({rect.mid_x() - 32, top + 6, 64, 30}, colour(Ink::pressed), 15);
    draw_icon(places[i].icon, rect.mid_x(), top + 21, 24, colour(ink), here ? 2.25F : 1.75F);
    line_of_text(places[i].name, rect.mid_x(), top + 37 + line_height(Type::caption) / 2,
                 {.type = Type::caption, .semibold = here, .ink = ink}, Align::centre);
    if (press_.pressed) chosen = i;
  }
  record_end();
  p.frame.text_scale = wanted;
  p.toast_floor = top;
  if (p.bar_height != height + f.safe_bottom) {
    p.bar_height = height + f.safe_bottom;
    p.want_frames(2);
  }
  return chosen;
}

std::optional<std::size_t> end_page(std::span<const Place> places, std::size_t current) {
  State::Parts& p = now();
  if (!p.body_ended) end_scrolling_part(p.body, 24.0F);
  ImGui::PopID();
  p.region = 0;
  std::optional<std::size_t> chosen;
  if (!places.empty()) {
    push_column({.left = 0, .width = p.frame.width});
    chosen = bar_of_places(places, current);
    pop_column();
  } else if (p.bar_height != p.frame.safe_bottom) {
    p.bar_height = p.frame.safe_bottom;
    p.want_frames(2);
  }
  settle_foot();
  ImGui::End();
  return chosen;
}

void scroll_page_to_top() { now().page_to_top = true; }

bool two_columns() { return now().frame.width >= kTwoColumns; }
float width() { return column().width; }

void gap(float px) {
  column().y += px;
}

void begin_columns() {
  State::Parts& p = now();
  Column& col = column();
  p.columns_split = two_columns();
  if (!p.columns_split) return;
  p.columns_left = col.left;
  p.columns_width = col.width;
  p.columns_top = col.y + (col.last == Last::nothing ? 0.0F : kGap);
  p.columns_bottom = 0.0F;
  const float half = std::floor((col.width - kColumnGap) / 2);
  push_column({.left = col.left, .width = half, .y = p.columns_top});
}

void next_column() {
  State::Parts& p = now();
  if (!p.columns_split) return;
  const float half = column().width;
  p.columns_bottom = column().y;
  pop_column();
  push_column({.left = p.columns_left + p.columns_width - half, .width = half, .y = p.columns_top});
}

void end_columns() {
  State::Parts& p = now();
  if (!p.columns_split) return;
  const float bottom = std::max(p.columns_bottom, column().y);
  pop_column();
  column().y = bottom;
  column().last = Last::block;
}

Scope::Scope(std::uint32_t number) { ImGui::PushID(static_cast<int>(number)); }
Scope::Scope(std::string_view name) { ImGui::PushID(name.data(), name.data() + name.size()); }
Scope::~Scope() { ImGui::PopID(); }

}  // namespace ui
