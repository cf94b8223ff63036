// Where we are and how we got there: keeps the address, the host's back gesture and the screen in step.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "app/messages.h"
#include "app/places.h"
#include "app/route.h"
#include "platform/platform.h"

namespace app {

class Navigator {
 public:
  // `start`: the address the app was opened at.
  Navigator(platform::Host& host, const Places& places, const Contents& contents, Messages& messages,
            std::string_view start);
  Navigator(const Navigator&) = delete;
  Navigator& operator=(const Navigator&) = delete;

  [[nodiscard]] const Places& places() const { return places_; }
  [[nodiscard]] const Route& route() const { return route_; }
  void go(const Route& route);                       // a step the back gesture takes back
  void replace(const Route& route);                  // no step: the sheet turns into another
  void back();                                       // closes the sheet, then the screen
  // After an edit what we look at may be gone: then to what it lay over, without a new step.
  void leave_what_is_gone();
  void show_title();                                 // the page's, which may name the open circuit

  // Told by the host. True: the back gesture was for what lies over the sheet or screen (a
  // keypad, a question), which is to be closed; we stay where we are.
  bool route_changed(std::string_view text);
  // How many such layers are open now: the first gets a step of its own for the back gesture.
  void layers_over(std::size_t count);

 private:
  [[nodiscard]] Route existing(Route route) const;
  bool step_back_to(const Route& route);

  platform::Host& host_;
  const Places& places_;
  Contents contents_;
  Messages& messages_;
  Route route_;
  std::vector<std::string> trail_;    // addresses we stepped through, the current one last
  bool layer_step_ = false;           // the host's last step is a layer's, with the same address
  bool taking_back_ = false;          // we asked the host to drop that step; its news is no news
};

}  // namespace app
