#include "core/motion/table_motion.h"

#include <algorithm>
#include <cmath>

#include "core/motion/local_cubic.h"

namespace jw {
namespace {

constexpr double kWindowSteps = 8;
constexpr double kWindowShare = 0.02;

double rmsDifference(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += (a[i] - b[i]) * (a[i] - b[i]);
  return std::sqrt(sum / static_cast<double>(a.size()));
}

}  // namespace

double smoothingWindow(const MotionTable& table, double smoothing) {
  if (isSet(smoothing)) return smoothing;
  const double duration = table.time.back() - table.time.front();
  const double step = duration / static_cast<double>(table.time.size() - 1);
  return std::max(kWindowSteps * step, kWindowShare * duration);
}

TableMotion tableMotion(const MotionTable& table, double smoothing) {
  TableMotion motion{table.speed, table.acceleration};
  if (!motion.speed.empty() && !motion.acceleration.empty()) return motion;
  motion.window = smoothingWindow(table, smoothing);
  if (motion.speed.empty()) {
    SmoothedCurve curve = smoothByLocalCubic(table.time, table.angle, motion.window);
    motion.angleResidual = rmsDifference(table.angle, curve.value);
    motion.speed = std::move(curve.first);
    if (motion.acceleration.empty()) motion.acceleration = std::move(curve.second);
  } else {
    SmoothedCurve curve = smoothByLocalCubic(table.time, table.speed, motion.window);
    motion.speedResidual = rmsDifference(table.speed, curve.value);
    motion.acceleration = std::move(curve.first);
  }
  return motion;
}

}  // namespace jw
