#include "core/studies/drive_charts.h"

#include <algorithm>
#include <cmath>

#include "core/physics/plain_stages.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

constexpr Index kTorques = 81;
constexpr Index kMostPoints = 400;
constexpr double kLostMotionShare = 0.03;  // of the rated torque: common practice, no source

/// The joint turning steadily, one sample for each torque.
SampledCycle steady(double speed, Index samples) {
  SampledCycle cycle;
  cycle.time = ArrayXd::Zero(samples);
  cycle.angle = ArrayXd::Zero(samples);
  cycle.speed = ArrayXd::Constant(samples, speed);
  cycle.acceleration = ArrayXd::Zero(samples);
  return cycle;
}

/// Stages alone, without the inertias that a steady speed does not feel.
EfficiencyCurve curveAt(const std::vector<StageData>& stages, double speed, double highest) {
  EfficiencyCurve curve;
  curve.speed = speed;
  curve.torque = ArrayXd::LinSpaced(kTorques, 0, highest);
  const SampledCycle cycle = steady(speed, kTorques);
  const StageChain driving = reflectThroughChain(stages, cycle, curve.torque, 0);
  const StageChain back = reflectThroughChain(stages, cycle, -curve.torque, 0);
  const ArrayXd given = driving.motorTorque * driving.motorSpeed;
  const ArrayXd joint = curve.torque * speed;
  curve.driving = (given > 0).select(joint / given, 0.0);
  const ArrayXd returned = (-back.motorTorque * back.motorSpeed).max(0.0);
  curve.backdriving = (joint > 0).select(returned / joint, 0.0);
  return curve;
}

/// Efficiency of each driving sample: what leaves the last stage over what enters the first, what
/// the stages' own masses take up apart.
void placeCycle(const Evaluation& evaluation, DriveCharts& charts) {
  const StageLoad& last = evaluation.chain->stages.back();
  const ArrayXd joint = last.outputTorque * last.outputSpeed;
  ArrayXd loss = ArrayXd::Zero(joint.size());
  for (const StageLoad& stage : evaluation.chain->stages) loss += stage.loss;
  std::vector<Index> driving;
  const double least = 1e-3 * joint.maxCoeff();
  for (Index i = 0; i < joint.size(); ++i) {
    if (joint[i] > least && joint[i] > 0) driving.push_back(i);
  }
  const auto count = static_cast<Index>(driving.size());
  const Index stride = std::max<Index>(1, count / kMostPoints);
  const Index shown = (count + stride - 1) / stride;
  charts.pointTorque.resize(shown);
  charts.pointEfficiency.resize(shown);
  for (Index k = 0; k < shown; ++k) {
    const Index i = driving[static_cast<std::size_t>(k * stride)];
    charts.pointTorque[k] = std::abs(last.outputTorque[i]);
    charts.pointEfficiency[k] = joint[i] / (joint[i] + loss[i]);
  }
}

/// Whether the efficiency of steady running depends on the speed.
bool speedMatters(const std::vector<StageData>& stages) {
  return std::any_of(stages.begin(), stages.end(),
                     [](const StageData& one) { return one.drag(1) != one.drag(0); });
}

void windUpCharts(const Evaluation& evaluation, DriveCharts& charts) {
  const std::vector<Stage> stages = plainStages(*evaluation.stages);
  const ArrayXd& torque = evaluation.chain->stages.back().outputTorque;
  charts.operatingLow = torque.minCoeff();
  charts.operatingHigh = torque.maxCoeff();
  const double largest = torque.abs().maxCoeff();
  const double rated = stages.back().ratedTorque;
  charts.windUpRange = std::max(1.15 * largest, isSet(rated) ? rated : 0);
  charts.windUp = chainWindUp(stages, charts.windUpRange);
  charts.stiffness = chainStiffness(stages, largest).value_or(kUnset);
  if (!isSet(rated)) return;
  charts.lostMotionTorque = kLostMotionShare * rated;
  charts.lostMotion = lostMotion(stages, charts.lostMotionTorque).value_or(kUnset);
}

}  // namespace

std::optional<DriveCharts> driveCharts(const Project& project, const Evaluation& evaluation) {
  if (project.active().transmission.empty() || !evaluation.stages || !evaluation.chain) return {};
  DriveCharts charts;
  windUpCharts(evaluation, charts);
  const double highest = charts.windUpRange;
  const double speed = evaluation.cycle->speed.abs().maxCoeff();
  if (speed > 0 && highest > 0) {
    const std::vector<double> shares =
        speedMatters(*evaluation.stages) ? std::vector{1.0, 0.5, 0.1} : std::vector{1.0};
    for (const double share : shares) {
      charts.efficiency.push_back(curveAt(*evaluation.stages, share * speed, highest));
    }
    placeCycle(evaluation, charts);
  }
  return charts;
}

}  // namespace jw
