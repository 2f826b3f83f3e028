#include "core/robot/worst_pose.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace jw {
namespace {

/// Climbs one joint after the other.
class Climb {
 public:
  Climb(const RobotDescription& robot, std::size_t joint, WorstOf what, const Eigen::Vector3d& down,
        double gravity)
      : robot_(robot), joint_(joint), what_(what), down_(down), gravity_(gravity) {}

  RobotPose from(std::vector<double> start) {
    best_ = {std::move(start), 0};
    best_.value = valueAt(best_.place);
    constexpr int kMostRounds = 20;
    for (int round = 0; round < kMostRounds; ++round) {
      const double before = best_.value;
      for (std::size_t k = 0; k < robot_.joints.size(); ++k) {
        if (robot_.joints[k].isFree()) improve(k);
      }
      if (best_.value <= before * (1 + 1e-12)) break;
    }
    return best_;
  }

  double low(std::size_t k) const {
    return isSet(robot_.joints[k].low) ? robot_.joints[k].low : -std::numbers::pi;
  }
  double high(std::size_t k) const {
    return isSet(robot_.joints[k].high) ? robot_.joints[k].high : std::numbers::pi;
  }

 private:
  double valueAt(const std::vector<double>& pose) const {
    const JointLoad load = carriedLoad(robot_, joint_, pose, down_);
    if (what_ == WorstOf::Inertia) return load.sum.inertia;
    return std::abs(staticTorque(load, pose[joint_], gravity_));
  }

  double tryAt(std::size_t k, double place) {
    std::vector<double> pose = best_.place;
    pose[k] = place;
    const double value = valueAt(pose);
    if (value > best_.value) best_ = {std::move(pose), value};
    return value;
  }

  /// As a function of one joint the value has few humps: a scan finds the right one.
  void improve(std::size_t k) {
    constexpr int kSteps = 24;
    const double step = (high(k) - low(k)) / kSteps;
    if (!(step > 0)) return;
    for (int i = 0; i <= kSteps; ++i) tryAt(k, low(k) + i * step);
    const double share = (std::sqrt(5.0) - 1) / 2;
    double a = std::max(low(k), best_.place[k] - step);
    double b = std::min(high(k), best_.place[k] + step);
    for (int i = 0; i < 36; ++i) {
      const double left = b - share * (b - a), right = a + share * (b - a);
      const bool rises = tryAt(k, left) < tryAt(k, right);
      (rises ? a : b) = rises ? left : right;
    }
  }

  const RobotDescription& robot_;
  std::size_t joint_;
  WorstOf what_;
  Eigen::Vector3d down_;
  double gravity_;
  RobotPose best_;
};

}  // namespace

RobotPose worstPose(const RobotDescription& robot, std::size_t joint, WorstOf what,
                    const Eigen::Vector3d& down, double gravity) {
  Climb climb(robot, joint, what, down, gravity);
  std::mt19937 random(1);
  RobotPose best = climb.from(robot.restPose());
  constexpr int kStarts = 20;
  for (int start = 0; start < kStarts; ++start) {
    std::vector<double> pose = robot.restPose();
    for (std::size_t k = 0; k < pose.size(); ++k) {
      const double share = static_cast<double>(random()) / std::mt19937::max();
      if (robot.joints[k].isFree()) pose[k] = climb.low(k) + share * (climb.high(k) - climb.low(k));
    }
    RobotPose found = climb.from(std::move(pose));
    if (found.value > best.value * (1 + 1e-12)) best = std::move(found);
  }
  return best;
}

}  // namespace jw
