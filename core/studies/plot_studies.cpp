#include "core/studies/plot_studies.h"

#include <cmath>

#include "core/studies/envelope_studies.h"
#include "core/studies/shown_samples.h"

namespace jw {
namespace {

using Eigen::Vector2d;

/// IEC 60034-1 S3: ten minutes unless stated (from memory).
constexpr double kDutyPeriod = 600;

struct ChartBasis {
  const MotorHeat& heat;
  double limit;
  double lasting;      ///< [W] copper loss at 20 °C that lasts at standstill
  double runningLoss;  ///< [W] into the housing while turning unloaded
};

std::vector<OverloadPoint> overloadPoints(const ChartBasis& basis) {
  const HeatNetwork& network = basis.heat.network;
  const PeriodicHeat& periodic = basis.heat.periodic;
  const Vector2d cold = Vector2d::Constant(network.ambient);
  const Vector2d warm =
      periodic.runaway ? cold : Vector2d{periodic.windingMean, periodic.housingMean};
  constexpr int kPoints = 40;
  std::vector<OverloadPoint> points;
  for (int k = 0; k < kPoints; ++k) {
    const double multiple = 1.02 * std::pow(6.0 / 1.02, k / (kPoints - 1.0));
    const double copper = multiple * multiple * basis.lasting;
    points.push_back({multiple, timeToLimit(network, copper, 0, cold, basis.limit),
                      timeToLimit(network, copper, 0, warm, basis.limit)});
  }
  return points;
}

std::vector<DutyPoint> dutyPoints(const ChartBasis& basis) {
  std::vector<DutyPoint> points;
  for (const double duty : {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0}) {
    const HeatNetwork& network = basis.heat.network;
    points.push_back({duty, allowedAtDuty(network, 0, 0, basis.limit, duty, kDutyPeriod),
                      allowedAtDuty(network, basis.runningLoss, basis.runningLoss, basis.limit,
                                    duty, kDutyPeriod)});
  }
  return points;
}

/// The share of the cycle that is loaded, and its rms torque over the continuous one.
void placeCycle(const Evaluation& evaluation, HeatCharts& charts) {
  const Eigen::ArrayXd& torque = evaluation.demand->torque;
  const double bound = 0.1 * torque.abs().maxCoeff();
  const Eigen::ArrayXd weight = (torque.abs() > bound).select(evaluation.cycle->weight, 0.0);
  const double loaded = weight.sum();
  if (!(loaded > 0)) return;
  charts.cycleDuty = std::min(1.0, loaded / evaluation.cycle->period);
  charts.cycleMultiple =
      std::sqrt((weight * torque.square()).sum() / loaded) / charts.continuousTorque;
}

std::optional<HeatCharts> heatCharts(const Evaluation& evaluation) {
  if (!evaluation.heat || !evaluation.envelope || !evaluation.envelope->continuous) return {};
  const MotorHeat& heat = *evaluation.heat;
  const ContinuousLimit& limit = *evaluation.envelope->continuous;
  const double speed = evaluation.demand->speedRms;
  const ChartBasis basis{heat, heat.limit, lastingCopper20(heat.network, 0, heat.limit),
                         limit.machine.drag(speed) * speed};
  HeatCharts charts;
  charts.continuousTorque = limit.machine.torquePerAmp * limit.current(0);
  const double horizon = 6 * slowTimeConstant(heat.network);
  charts.warmUp = warmUp(heat.network, heat.load, heat.limit, horizon, 240);
  charts.overload = overloadPoints(basis);
  charts.duty = dutyPoints(basis);
  for (const double minutes : {10.0, 30.0, 60.0, 90.0}) {
    charts.shortTime.emplace_back(60 * minutes,
                                  allowedOnce(heat.network, 0, heat.limit, 60 * minutes));
  }
  placeCycle(evaluation, charts);
  return charts;
}

}  // namespace

PlotStudies plotStudies(const Project& project, const Evaluation& evaluation,
                        std::stop_token stop) {
  PlotStudies studies;
  studies.shownSamples = shownSamples(evaluation);
  studies.band = envelopeBand(project, evaluation);
  studies.intermittent = intermittentCurve(project, evaluation);
  if (stop.stop_requested()) return studies;
  studies.losses = lossMap(evaluation);
  if (stop.stop_requested()) return studies;
  studies.heat = heatCharts(evaluation);
  studies.drive = driveCharts(project, evaluation);
  studies.joint = jointCharts(project, evaluation);
  return studies;
}

}  // namespace jw
