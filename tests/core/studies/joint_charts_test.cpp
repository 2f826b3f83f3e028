// Frequency response of two masses on a spring against its known limits.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/studies/joint_charts.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

// Closed form, mechanics of vibration: sqrt(K/J_L) and sqrt(K (1/J_L + 1/J_M)).
TEST(SwingCurve, PeaksAndDipsWhereTheTwoMassesSay) {
  const SwingCurve curve = swingCurve({3, 2, 5000, 0});
  EXPECT_NEAR(curve.locked, std::sqrt(2500.0) / kTurn, 1e-12);
  EXPECT_NEAR(curve.free, std::sqrt(5000 * (1 / 2.0 + 1 / 3.0)) / kTurn, 1e-12);
  const auto dip = std::min_element(curve.motor.begin(), curve.motor.end()) - curve.motor.begin();
  const auto top = std::max_element(curve.joint.begin(), curve.joint.end()) - curve.joint.begin();
  EXPECT_NEAR(curve.frequency[static_cast<std::size_t>(dip)], curve.locked, 0.01 * curve.locked);
  EXPECT_NEAR(curve.frequency[static_cast<std::size_t>(top)], curve.free, 0.01 * curve.free);
}

// Limits: rigid at low frequency; at high frequency the motor side alone, (J_M + J_L) / J_M, and a
// joint that falls by 40 dB a decade (20 dB once the damper carries it).
TEST(SwingCurve, IsRigidBelowAndMotorAloneAbove) {
  const SwingCurve curve = swingCurve({3, 2, 5000, 0});
  EXPECT_NEAR(curve.motor.front(), 0, 0.1);
  EXPECT_NEAR(curve.joint.front(), 0, 0.1);
  EXPECT_NEAR(curve.motor.back(), 20 * std::log10(5.0 / 3), 0.1);
  EXPECT_LT(curve.joint.back(), -30);
}

TEST(JointCharts, FollowTheChecks) {
  const Project project = exampleProject();
  const Evaluation evaluation = evaluate(project);
  const JointCharts charts = jointCharts(project, evaluation);
  ASSERT_FALSE(charts.swing.empty());
  EXPECT_NEAR(charts.swing.front().locked, quantityValue(evaluation, "joint.resonance_locked"),
              1e-9 * charts.swing.front().locked);
  ASSERT_TRUE(charts.error);
  EXPECT_NEAR(charts.reach * charts.error->worst(),
              quantityValue(evaluation, "joint.tool_error_worst"), 1e-12);
}

TEST(JointCharts, AreEmptyWithoutTheirInputs) {
  Project project = exampleProject();
  project.active().motor.rotorInertia = kUnset;
  project.active().motor.encoderSteps = 0;
  const JointCharts charts = jointCharts(project, evaluate(project));
  EXPECT_TRUE(charts.swing.empty());
  EXPECT_FALSE(charts.error);
}

}  // namespace
}  // namespace jw
