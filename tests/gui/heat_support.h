#pragma once

#include "core/studies/plot_studies.h"
#include "tests/gui/figures_support.h"

namespace jw::test {

/// The invented shoulder with a complete thermal network.
inline Project warmShoulder() {
  Project project = shoulder();
  Motor& motor = project.active().motor;
  motor.windingCapacity = 60;
  motor.housingCapacity = 900;
  motor.housingTemperatureMax = 110;
  Supply& supply = project.active().supply;
  supply.voltageMin = 42;
  supply.voltageMax = 54;
  supply.busCapacitance = 2e-3;
  supply.busVoltageMax = 60;
  project.requirements.onTime = 300;
  return project;
}

inline Snapshot withStudies(Snapshot snapshot) {
  snapshot.studies = std::make_shared<const PlotStudies>(
      plotStudies(*snapshot.evaluatedProject, *snapshot.evaluation));
  return snapshot;
}

inline Snapshot studied(Project project) { return withStudies(snapshotOf(std::move(project))); }

}  // namespace jw::test
