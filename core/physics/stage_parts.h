#pragma once

#include <optional>

#include "core/model/stage.h"
#include "core/physics/stage_data.h"

namespace jw {

/// What the parts of a stage tell, whatever its family; empty where they are not given.
struct PartsData {
  std::optional<double> ratio;  ///< > 0
  bool reverses = false;
  std::optional<double> inertia;     ///< [kg·m²] at the input
  std::optional<double> stiffness;   ///< [N·m/rad] at the output
  std::optional<double> slipTorque;  ///< [N·m] at the output
  double creepAtSlip = 0;            ///< share of speed
};

PartsData partsData(const Stage& stage);

/// Efficiency both ways from the friction of the parts; empty where that is not given. `stage` has
/// its ratio filled in.
std::optional<StageEfficiency> partsEfficiency(const Stage& stage);

}  // namespace jw
