#pragma once

#include <algorithm>
#include <cmath>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"

namespace jw {

/// The example joint with one massless stage of 100 : 1, for checks with closed forms.
inline Project oneStageJoint() {
  Project project = exampleProject(400);
  Stage stage = project.active().transmission[1];
  stage.family = StageFamily::GivenRatio;
  stage.ratio = 100;
  stage.inertia = 0;
  stage.lifeExponent = 3;
  project.active().transmission = {stage};
  return project;
}

/// [kg·m²] of that joint about its axis: J_L + J_p + m r².
inline double oneStageInertia(const Project& project) {
  const Load& load = project.load;
  return load.inertia + load.payloadInertia +
         load.payloadMass * load.payloadDistance * load.payloadDistance;
}

inline double marginIn(const Evaluation& evaluation, std::string_view id, int stage = -1) {
  for (const Check& check : evaluation.checks) {
    if (check.id == id && check.stage == stage) return check.margin;
  }
  return kUnset;
}

}  // namespace jw
