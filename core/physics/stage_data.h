#pragma once

#include <limits>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/stage.h"
#include "core/physics/geometry_condition.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Load-dependent efficiency both ways, without the no-load torque.
struct StageEfficiency {
  double driving = 1;                 ///< mesh efficiency, motor drives
  double backdriving = 1;             ///< mesh efficiency, load drives; <= 0 = self-locking
  bool backdrivingEstimated = false;  ///< 2 - 1/eta, not given
  bool fromParts = false;             ///< from the friction of the parts, not from a data sheet
  bool selfLocking() const { return backdriving <= 0; }
};

/// A stage as it is used: what its data leave open and its parts tell is filled in.
struct StageData {
  Stage stage;  ///< ratio, reversal, inertia at the input and stiffness filled in
  StageEfficiency efficiency;
  double dragFactor = 1;  ///< of the grease, on the no-load torque
  double slipTorque = std::numeric_limits<double>::infinity();  ///< [N·m] at the output, rollers
  double creepAtSlip = 0;                  ///< share of speed lost just before it slips
  std::vector<InputError> contradictions;  ///< data sheet against parts

  /// Ratio with the sign of the sense of turning.
  double signedRatio() const { return stage.reverses ? -stage.ratio : stage.ratio; }
  /// [N·m] at the input, running at `inputSpeed` [rad/s], >= 0: f (T_d + b_d |n|).
  double drag(double inputSpeed) const;
  /// [N·m] at the input that breaks it loose unloaded; at least the drag at standstill.
  double starting() const;
  /// Share of the output speed lost to creep under `outputTorque` [N·m], linear up to slip.
  double creep(double outputTorque) const;
};

/// Mesh efficiencies of a stage whose ratio is known. The data sheet's efficiency holds at rated
/// torque and speed and contains the drag (and creep): eta_mesh = (T_r/N) / (T_r/(N eta) - T_drag).
/// Without it the parts' friction tells. Fails naming the path (prefix + field) if neither is
/// given, if with drag the rated torque is missing, or if the drag alone exceeds the loss that the
/// efficiency states.
tl::expected<StageEfficiency, InputError> stageEfficiency(const Stage& stage,
                                                          const std::string& path);

/// Completes one stage; `ambient` [°C] is the grease's temperature where none is given. Fails
/// naming the field that is missing.
tl::expected<StageData, InputError> completeStage(const Stage& stage, double ambient,
                                                  const std::string& path);

/// Completes every stage of a transmission, or fails at the first that cannot be.
tl::expected<std::vector<StageData>, InputError> completeStages(const std::vector<Stage>& stages,
                                                                double ambient);

/// [N·m/kg] repeated peak torque over mass; the rated torque where no peak is given, NaN without
/// either or without a mass.
double torquePerMass(const Stage& stage);

/// What the parts of a stage have to satisfy, with `outputTorque` [N·m] the largest it carries.
/// Empty where nothing of its geometry is given.
GeometryConditions geometryConditions(const StageData& data, double outputTorque);

}  // namespace jw
