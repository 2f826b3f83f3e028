#include "core/motion/log_motion.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include <fmt/format.h>

#include "core/motion/local_cubic.h"
#include "core/quantity/quantity.h"

namespace jw {
namespace {

// Frequency times window at which the response falls to 1/√2.
constexpr double kPositionReach = 1.064146;
constexpr double kSpeedReach = 1.248082;
constexpr double kAccelerationReach = 0.687423;

/// Rms and largest of the differences.
struct Residual {
  double rms = 0, peak = 0;
};

Residual residualOf(const std::vector<double>& measured, const std::vector<double>& smoothed) {
  Residual residual;
  for (std::size_t i = 0; i < measured.size(); ++i) {
    const double difference = std::abs(measured[i] - smoothed[i]);
    residual.rms += difference * difference;
    residual.peak = std::max(residual.peak, difference);
  }
  residual.rms = std::sqrt(residual.rms / static_cast<double>(measured.size()));
  return residual;
}

std::string sentence(std::string_view from, double window, double reach) {
  return fmt::format(
      "Savitzky\u2013Golay: least-squares cubic through the {} within {}; the acceleration reaches "
      "up to {}",
      from, formatQuantity(window, Quantity::Time, window < 1 ? "ms" : "s"),
      formatQuantity(reach, Quantity::Frequency));
}

void findFromPosition(LogMotion& motion, const MeasuredLog& log) {
  SmoothedCurve curve = smoothByLocalCubic(log.time, log.position, motion.window);
  const Residual residual = residualOf(log.position, curve.value);
  motion.positionResidual = residual.rms;
  motion.positionPeak = residual.peak;
  motion.position = std::move(curve.value);
  motion.speed = std::move(curve.first);
  motion.bandwidth = smootherBandwidth(motion.window);
  if (motion.acceleration.empty()) {
    motion.acceleration = std::move(curve.second);
  } else {
    motion.bandwidth.acceleration = 0;
  }
  motion.smoother = sentence("positions", motion.window, motion.bandwidth.acceleration);
}

void findFromSpeed(LogMotion& motion, const MeasuredLog& log) {
  SmoothedCurve curve = smoothByLocalCubic(log.time, log.speed, motion.window);
  const Residual residual = residualOf(log.speed, curve.value);
  motion.speedResidual = residual.rms;
  motion.speedPeak = residual.peak;
  motion.speed = std::move(curve.value);
  motion.acceleration = std::move(curve.first);
  // Once differentiated, the speed is the smoothed value and the acceleration its slope.
  const SmootherBandwidth reach = smootherBandwidth(motion.window);
  motion.bandwidth = {0, reach.position, reach.speed};
  motion.smoother = sentence("speeds", motion.window, motion.bandwidth.acceleration);
}

}  // namespace

SmootherBandwidth smootherBandwidth(double window) {
  return {kPositionReach / window, kSpeedReach / window, kAccelerationReach / window};
}

double windowOfBandwidth(double frequency) { return kAccelerationReach / frequency; }

double firstLogWindow(const MeasuredLog& log) {
  constexpr double kSteps = 8;
  constexpr double kShortest = 0.04;  // [s]
  return std::min(std::max(kSteps * log.medianStep, kShortest), log.time.back());
}

LogMotion smoothLog(const MeasuredLog& log, double window) {
  assert(log.rows() >= 5 && window > 0);
  LogMotion motion;
  motion.position = log.position;
  motion.speed = log.speed;
  motion.acceleration = log.acceleration;
  if (!motion.speed.empty() && !motion.acceleration.empty()) {
    motion.smoother = "speed and acceleration as measured";
    return motion;
  }
  motion.window = window;
  motion.speed.empty() ? findFromPosition(motion, log) : findFromSpeed(motion, log);
  return motion;
}

}  // namespace jw
