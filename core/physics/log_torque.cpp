#include "core/physics/log_torque.h"

#include <algorithm>

#include "core/model/unset.h"
#include "core/physics/load_input.h"
#include "core/physics/load_torque.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

ArrayXd part(const std::vector<double>& values, std::size_t first, std::size_t count) {
  return Eigen::Map<const ArrayXd>(values.data() + first, static_cast<Index>(count));
}

SampledCycle block(const MeasuredLog& log, const LogMotion& motion, std::size_t first,
                   std::size_t count) {
  SampledCycle cycle;
  cycle.time = part(log.time, first, count);
  cycle.angle = part(motion.position, first, count);
  cycle.speed = part(motion.speed, first, count);
  cycle.acceleration = part(motion.acceleration, first, count);
  cycle.weight = ArrayXd::Zero(static_cast<Index>(count));
  cycle.segment = Eigen::ArrayXi::Zero(static_cast<Index>(count));
  cycle.period = log.time.back();
  return cycle;
}

}  // namespace

std::vector<double> modelledTorque(const MeasuredLog& log, const LogMotion& motion,
                                   const Load& load) {
  if (!loadInputErrors(load).empty()) return std::vector<double>(log.rows(), kUnset);
  constexpr std::size_t kBlock = 4096;
  Cycle source;
  source.segments.emplace_back();
  std::vector<double> torque(log.rows());
  for (std::size_t first = 0; first < log.rows(); first += kBlock) {
    const std::size_t count = std::min(kBlock, log.rows() - first);
    const LoadTorque found = loadTorque(block(log, motion, first, count), source, load);
    std::copy(found.total.begin(), found.total.end(),
              torque.begin() + static_cast<std::ptrdiff_t>(first));
  }
  return torque;
}

}  // namespace jw
