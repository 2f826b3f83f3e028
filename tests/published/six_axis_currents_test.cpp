// Motor currents of a six-axis robot along a move: joint torques by Orocos KDL, motors, gears and
// friction of the Modelica Standard Library's RobotR3 example (BSD-3, read); see
// tests/data/six_axis_move/README.md.
#include <array>
#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/load_torque.h"
#include "core/physics/motor_demand.h"
#include "tests/core/physics/hand_cycle.h"
#include "tests/published/csv_columns.h"

namespace jw {
namespace {

struct Axis {
  double torqueConstant, rotorInertia, ratio;
  bool motorSide;  ///< where the friction is
  double coulomb, viscous;
};

constexpr std::array<Axis, 6> kAxes{{{1.1616, 0.0013, -105, true, 0.4, 0.0008125},
                                     {1.1616, 0.0013, 210, true, 0.5, 0.000769230769},
                                     {1.1616, 0.0013, 60, true, 0.7, 0.00153846154},
                                     {0.2365, 0.00016, -99, false, 21.8, 9.8},
                                     {0.2608, 0.00018, 79.2, false, 30.1, 0.03},
                                     {0.0842, 4.3e-05, -99, false, 10.9, 3.92}}};

/// Motor current [A] of one axis from its motion and KDL's joint torque.
Eigen::ArrayXd currentOf(const Axis& axis, const SampledCycle& cycle,
                         const Eigen::ArrayXd& torque) {
  Load rubbing;
  rubbing.inertia = 0;
  Motor motor;
  motor.rotorInertia = axis.rotorInertia;
  MotorConstants machine;
  machine.direct = true;
  machine.torquePerAmp = axis.torqueConstant;
  (axis.motorSide ? machine.dragTorque : rubbing.coulombFriction) = axis.coulomb;
  (axis.motorSide ? machine.dragDamping : rubbing.viscousFriction) = axis.viscous;
  Stage gear;
  gear.ratio = std::abs(axis.ratio);
  gear.reverses = axis.ratio < 0;
  gear.efficiency = 1;
  Cycle source;
  source.segments.resize(1);
  const auto chain =
      reflectThroughChain({gear}, cycle, torque + loadTorque(cycle, source, rubbing).total, 0);
  return motorDemand(cycle, *chain, motor, machine, {}).current;
}

TEST(SixAxisRobot, MotorCurrentsAlongTheMove) {
  const auto columns = csvColumns("six_axis_move/move.csv");
  ASSERT_EQ(columns[0].size(), 68);
  for (std::size_t k = 0; k < 6; ++k) {
    const SampledCycle cycle =
        handCycle(columns[1 + k], columns[7 + k], Eigen::ArrayXd::Constant(68, 0.02));
    const Eigen::ArrayXd current = currentOf(kAxes[k], cycle, columns[13 + k]);
    // The file has nine digits.
    EXPECT_LT((current - columns[19 + k]).abs().maxCoeff(), 1e-7) << "axis " << k + 1;
    EXPECT_GT(columns[19 + k].abs().maxCoeff(), 3) << "axis " << k + 1;
  }
}

}  // namespace
}  // namespace jw
