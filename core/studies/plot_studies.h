#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include <Eigen/Core>

#include "core/checks/evaluation.h"
#include "core/studies/drive_charts.h"
#include "core/studies/heat_charts.h"
#include "core/studies/joint_charts.h"

namespace jw {

/// The envelope from its weakest to its strongest: winding and magnet cold (ambient) or hot (at the
/// winding limit), bus voltage lowest or highest. At each speed the smallest and the largest
/// torque.
struct EnvelopeBand {
  EnvelopeCurve inner;
  EnvelopeCurve outer;
};

/// Loss and efficiency over the speed-torque plane at the motor shaft: copper, no-load and
/// controller. Rows are torques, columns speeds; NaN outside the peak envelope.
struct LossMap {
  Eigen::ArrayXd speed;   ///< [rad/s] rising
  Eigen::ArrayXd torque;  ///< [N·m] rising
  Eigen::ArrayXXd loss;   ///< [W]
  Eigen::ArrayXXd
      efficiency;  ///< driving: shaft over supply; braking: supply over shaft; NaN at rest
};

/// One torque held, as a multiple of the continuous torque at standstill.
struct OverloadPoint {
  double multiple = 0;
  double fromCold = 0;  ///< [s] from the ambient; +inf = lasts
  double fromWarm = 0;  ///< [s] from the cycle's mean temperatures
};

/// Torque allowed at a duty factor, as a multiple of the continuous torque.
struct DutyPoint {
  double duty = 0;      ///< share of the time loaded
  double standing = 0;  ///< idle at rest over the 10 min of IEC 60034-1 S3
  double running = 0;   ///< idle but turning at the cycle's rms speed, S6
};

/// Charts of the heat figure.
struct HeatCharts {
  WarmUp warmUp;
  std::vector<OverloadPoint> overload;
  std::vector<DutyPoint> duty;
  double continuousTorque = 0;  ///< [N·m] IEC 60034-1 S1 at standstill, heat alone
  std::vector<std::pair<double, double>> shortTime;  ///< S2: [s] and multiple
  double cycleDuty = 0;      ///< share of the cycle with more than a tenth of its peak torque
  double cycleMultiple = 0;  ///< rms torque within that share over continuousTorque
};

/// What figures show beside the evaluation. Slower than it, so computed after it.
struct PlotStudies {
  std::optional<EnvelopeBand> band;
  std::optional<EnvelopeCurve> intermittent;  ///< IEC 60034-1 S2 for the stated on-time, from cold
  std::optional<LossMap> losses;
  std::optional<HeatCharts> heat;
  std::optional<DriveCharts> drive;
  std::optional<JointCharts> joint;
  std::vector<Eigen::Index> shownSamples;  ///< of the cycle, for its curves; empty = all
};

/// Derived from an evaluation of `project`; parts that it lacks are empty. Stops early, with parts
/// empty, when asked to.
PlotStudies plotStudies(const Project& project, const Evaluation& evaluation,
                        std::stop_token stop = {});

}  // namespace jw
