// A chain whose first stage has a ratio still open: features of what it drives, and their moments.
#include <algorithm>
#include <cmath>

#include "core/studies/extreme_samples.h"
#include "core/studies/screening.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// Columns of the features; T is the torque at the stage's output, w and alpha belong to it.
enum Feature { kDriving, kDriven, kResting, kSign, kSpeed, kStart, kAcceleration };

/// At rest before a motion: the way it will turn.
double startSign(const ArrayXd& speed, Index i) {
  if (speed[i] != 0 || i + 1 >= speed.size() || speed[i + 1] == 0) return 0;
  return std::copysign(1.0, speed[i + 1]);
}

Eigen::ArrayXXd featuresOf(const ArrayXd& torque, const ArrayXd& speed, const ArrayXd& alpha) {
  const Index n = torque.size();
  Eigen::ArrayXXd f = Eigen::ArrayXXd::Zero(n, 7);
  for (Index i = 0; i < n; ++i) {
    const double power = torque[i] * speed[i];
    f(i, power > 0 ? kDriving : (power < 0 ? kDriven : kResting)) = torque[i];
    f(i, kStart) = startSign(speed, i);
  }
  f.col(kSign) = speed.sign();
  f.col(kSpeed) = speed;
  f.col(kAcceleration) = alpha;
  return f;
}

/// What each feature adds to the motor's torque at the ratio of the completed stage.
Eigen::Matrix<double, 7, 1> weightsOf(const StageData& first) {
  const double n = first.stage.ratio;
  const double rise = isSet(first.stage.dragDamping) ? first.stage.dragDamping : 0;
  Eigen::Matrix<double, 7, 1> weights;
  weights[kDriving] = 1 / (n * first.efficiency.driving);
  weights[kDriven] = first.efficiency.backdriving / n;
  weights[kResting] = 1 / n;
  weights[kSign] = first.dragFactor * first.stage.dragTorque;
  weights[kSpeed] = first.dragFactor * rise * n;
  weights[kStart] = isSet(first.stage.startingTorque) ? first.starting() : 0;
  weights[kAcceleration] = first.stage.inertia * n;
  return weights;
}

}  // namespace

OpenChain::OpenChain(const Evaluation& evaluation) {
  const SampledCycle& cycle = *evaluation.cycle;
  const StageLoad& load = evaluation.chain->stages.front();
  const Stage& stage = evaluation.stages->front().stage;
  const ArrayXd alpha = evaluation.chain->motorAcceleration / load.ratio;
  const Eigen::ArrayXXd f = featuresOf(load.outputTorque, load.outputSpeed, alpha);
  const ArrayXd share = cycle.weight / cycle.period;
  moments_ = f.matrix().transpose() * (f.colwise() * share).matrix();
  speedAbs_ = (share * load.outputSpeed.abs()).sum();
  moving_ = (share * load.outputSpeed.sign().abs()).sum();
  speedPeak_ = load.outputSpeed.abs().maxCoeff();
  inertiaBehind_ = (evaluation.chain->inertiaAtMotor - stage.inertia) * stage.ratio * stage.ratio;
  for (const Index at : extremeSamples(load.outputSpeed, load.outputTorque, alpha, kMostExtremes)) {
    std::array<double, kFeatures>& one = extremes_.emplace_back();
    for (int k = 0; k < kFeatures; ++k) one[static_cast<std::size_t>(k)] = f(at, k);
  }
}

ChainScreen OpenChain::atRatio(const StageData& first) const {
  const Eigen::Matrix<double, kFeatures, 1> weights = weightsOf(first);
  const Eigen::Matrix<double, kFeatures, 1> torque = moments_ * weights;
  const double n = first.stage.ratio;
  ChainScreen screen;
  screen.torqueSquare = weights.dot(torque);
  screen.torqueAcceleration = n * torque[kAcceleration];
  screen.accelerationSquare = n * n * moments_(kAcceleration, kAcceleration);
  screen.torqueSign = torque[kSign];
  screen.torqueSpeed = n * torque[kSpeed];
  screen.accelerationSign = n * moments_(kAcceleration, kSign);
  screen.accelerationSpeed = n * n * moments_(kAcceleration, kSpeed);
  screen.moving = moving_;
  screen.speedAbs = n * speedAbs_;
  screen.speedSquare = n * n * moments_(kSpeed, kSpeed);
  screen.speedPeak = n * speedPeak_;
  screen.inertia = inertiaBehind_ / (n * n) + first.stage.inertia;
  for (const auto& f : extremes_) {
    double sum = 0;
    for (int k = 0; k < kFeatures; ++k) sum += weights[k] * f[static_cast<std::size_t>(k)];
    screen.extremes[screen.extremeCount++] = {n * f[kSpeed], sum, n * f[kAcceleration]};
  }
  return screen;
}

}  // namespace jw
