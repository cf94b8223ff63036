// What a place registers, in one file: wasm/screens/places/. The reading of addresses, the bar of
// places, the title and the drawing of a frame all go by these rows; places.cpp holds them together.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <type_traits>

#include "app/app_state.h"
#include "app/places.h"
#include "screens/screens.h"
#include "ui/layout.h"

namespace screens {

// A field that a row has to fill in: a row that leaves it out does not compile.
template <class T>
class Given {
 public:
  template <class U>
    requires std::is_convertible_v<U, T>
  constexpr Given(U&& value) : value_(static_cast<U&&>(value)) {}   // NOLINT: a row is written with plain values
  constexpr operator const T&() const { return value_; }            // NOLINT
  [[nodiscard]] constexpr const T& get() const { return value_; }

 private:
  T value_;
};

using Draw = void (*)(app::AppState& app, Memory& memory);
using Head = ui::SheetOptions (*)(const app::AppState& app);

struct SheetRow {
  Given<app::Sheet> id;
  Given<std::string_view> word;          // in the address; empty: the argument follows the place at once
  Given<app::Argument> argument;         // in the address, after it
  Given<std::string_view> title;
  Given<std::string_view> subtitle;
  Given<bool> tall;                      // full height even when its content is short
  Given<Head> head;                      // where title or subtitle tell what is shown; nullptr: they do not
  Given<Draw> draw;                      // the content; sheet.cpp opens and closes it
};

struct Place {
  Given<app::Screen> id;
  Given<std::string_view> label;         // "Size": in the bar, and what the place is called
  Given<ui::Icon> icon;
  Given<bool> in_bar;                    // else Screen `above` stands for it there
  Given<std::string_view> word;          // in the address: "size"
  Given<std::string_view> also;          // another beginning of the address that means it; empty: none
  Given<app::KeyForm> key;               // in the address, after it
  Given<app::Screen> above;              // where back leads, where no step led here
  Given<app::Work> shows;                // what is worked out before it is drawn
  Given<bool (*)(const app::Contents&, const app::Route&)> is_there;
  Given<std::string (*)(const app::Contents&, const app::Route&)> title;   // of the page in the browser
  Given<Draw> draw;
  Given<std::span<const SheetRow>> sheets;
};

}  // namespace screens
