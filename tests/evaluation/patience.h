// The engine's patience, told again so that others can be as patient: when a remedy is sure enough,
// and what a check must promise to be worth asking. core/diagnosis/advice.cpp keeps its own.
#pragma once

namespace evaluation {

inline constexpr double kSureEnough = 0.97;   // of the remedies known, the likeliest
inline constexpr double kLeastBits = 0.02;    // about the remedy

}  // namespace evaluation
