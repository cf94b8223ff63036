#include "pictures/plates.h"

#include "pictures/plate_kit.h"

namespace pictures {

using reference::Depicts;

std::optional<drawing::Picture> plate(const reference::Depicted& depicted, const PlateOptions& options) {
  switch (depicted.what) {
    case Depicts::nothing: return std::nullopt;
    case Depicts::conductor: return conductor_plate(depicted.which, options);
    case Depicts::fuse: return fuse_plate(depicted.which, options);
    case Depicts::push_on_tab:
    case Depicts::ring:
    case Depicts::ferrule:
    case Depicts::crimp:
    case Depicts::colour:
    case Depicts::outlet: return terminal_plate(depicted, options);
    case Depicts::battery_curve: return battery_plot(depicted.which, options);
    case Depicts::fuse_gates: return gate_plot(depicted.which, 0.0, options);
    case Depicts::probes_volts:
    case Depicts::probes_continuity:
    case Depicts::probes_drop:
    case Depicts::probes_sign: return probe_plate(depicted.what, options);
    case Depicts::how_to: return how_to_plate(depicted.which, options);
  }
  return std::nullopt;
}

std::optional<drawing::Picture> plot(const calculators::Calculator& calculator, const calculators::Values& values,
                                     const PlateOptions& options) {
  const calculators::Evaluation evaluation = calculators::evaluate(calculator, values, options.preference);
  if (!evaluation.result) return std::nullopt;
  const auto choice = [&](std::string_view key) -> std::string {
    const auto input = calculators::input_index(calculator, key);
    if (!input) return {};
    return std::string(calculator.inputs[*input].choices[static_cast<std::size_t>(values[*input])].key);
  };
  switch (calculator.plot) {
    case calculators::Plot::none: return std::nullopt;
    case calculators::Plot::drop_by_length: {
      const auto curve = calculators::drop_curve(calculator, values);
      if (!curve) return std::nullopt;
      return drop_plot(*curve, options);
    }
    case calculators::Plot::battery_voltage: return battery_plot(choice("battery"), options);
    case calculators::Plot::conductor:
      return evaluation.result->wire ? conductor_plate(std::string(*evaluation.result->wire), options) : std::nullopt;
    case calculators::Plot::fuse_gates: {
      double multiple = 0.0;
      for (const calculators::Output& output : evaluation.result->outputs) {
        if (output.kind.key == "times") multiple = output.value.value_or(0.0);
      }
      if (const auto times = calculators::input_index(calculator, "times")) multiple = values[*times];
      return gate_plot(choice("family"), multiple, options);
    }
  }
  return std::nullopt;
}

}  // namespace pictures
