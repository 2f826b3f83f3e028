#pragma once

#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/family_rule.h"
#include "core/studies/design_points.h"

namespace jw {

/// Which reducers are compared.
struct FamilyRequest {
  int stage = -1;                 ///< index into the transmission; -1 = the leading stage, or the
                                  ///< only one that a direct drive would get
  std::vector<FamilyRule> rules;  ///< one for each family that is tried
  std::vector<Stage> catalogue;   ///< if not empty, its reducers in place of sizes by the rules
  std::size_t ratios = 24;        ///< most ratios tried of each family
};

/// The best reducer of one family for the joint.
struct FamilyChoice {
  StageFamily family = StageFamily::GivenRatio;
  bool found = false;  ///< false: none of it could be evaluated
  Stage stage;
  DesignPoint point;                   ///< of the whole joint with it
  std::vector<MarginColumn> verdicts;  ///< one margin each, with titles
  double torquePerMass = kUnset;       ///< [N·m/kg] rated
  double efficiency = kUnset;   ///< energy out over in while the motor drives, over the cycle
  double life = kUnset;         ///< [s] reached
  double backdriving = kUnset;  ///< [N·m] at the joint, drives everything back
  double stiffness = kUnset;    ///< [N·m/rad] at the joint
  double backlash = kUnset;     ///< [rad] at the joint
  double stageLoss = kUnset;    ///< [W] mean heat of this stage
  double windingPeak = kUnset;  ///< [°C]
};

/// The same joint with each family: of every ratio that can be built (realizableTicks) the smallest
/// reducer by the rule whose torque and life verdicts hold with the target margin (found by halving
/// to 1 % of its torque), and of these the one with the largest smallest margin of the whole joint
/// (where no ratio does better than -100 %, the one whose margins lack least together); of a
/// catalogue the same choice among its reducers. One for each family of the request's rules, in
/// their order. Fails as leadingStage does, or if the stage is not there.
tl::expected<std::vector<FamilyChoice>, InputError> reducerFamilies(const Project& project,
                                                                    const FamilyRequest& request,
                                                                    const StudyRun& run = {});

/// The stage as it stands, in the same figures. Fails as leadingStage does, or if the stage is not
/// there.
tl::expected<FamilyChoice, InputError> presentReducer(const Project& project, int stage = -1);

/// The project with the reducer of `choice` at `stage` as one more variant, active and named after
/// its family. Fails if the stage is not there or there is no room for a further variant.
tl::expected<Project, InputError> adoptFamily(const Project& project, const FamilyChoice& choice,
                                              int stage = -1);

}  // namespace jw
