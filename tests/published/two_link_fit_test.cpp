// The elbow of a real two-link arm: what a fit finds in a recorded run against the parameters that
// the arm's own authors identified; see tests/data/two_link_run/README.md.
#include <cmath>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "core/files/measured_log.h"
#include "core/motion/log_motion.h"
#include "core/studies/load_fit.h"

namespace jw {
namespace {

// Published values of the arm.
constexpr double kUpperLength = 0.2, kMass = 0.6255677234, kDistance = 0.2556930544;
constexpr double kInertia = 0.0508698481, kRotor = 6.287203964819607e-5, kRatio = 6;
constexpr double kGravity = 9.81, kCoulomb = 0.12;

std::string textOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Motion and torque of one joint of the run (1 or 2).
MeasuredLog joint(const std::string& text, int number) {
  const LogSource source{text, "run.csv", 0};
  LogColumns columns = guessColumns(source).value();
  const std::string mark = std::to_string(number);
  for (LogColumn& c : columns.columns) {
    c.role = LogRole::Unused;
    c.sign = 1;
    if (c.title == "time") c.role = LogRole::Time, c.unit = "s";
    if (c.title == "pos_meas" + mark) c.role = LogRole::Position, c.unit = "rad";
    if (c.title == "vel_meas" + mark) c.role = LogRole::Speed, c.unit = "rad/s";
    if (c.title == "tau_meas" + mark) c.role = LogRole::Torque, c.unit = "N*m";
  }
  return readLog(source, columns).value();
}

class TwoLinkRun : public testing::Test {
 protected:
  const std::string text_ = textOf(std::string(JW_TESTS_DIR) + "/data/two_link_run/run.csv");
};

TEST_F(TwoLinkRun, ColumnsOfTheFirstJointAreGuessed) {
  const LogSource source{text_, "run.csv", 0};
  const LogColumns columns = guessColumns(source).value();
  EXPECT_EQ(columns.columns[columnOf(columns, LogRole::Time)].title, "time");
  EXPECT_EQ(columns.columns[columnOf(columns, LogRole::Position)].title, "pos_meas1");
  EXPECT_EQ(columns.columns[columnOf(columns, LogRole::Speed)].title, "vel_meas1");
  EXPECT_EQ(columns.columns[columnOf(columns, LogRole::Torque)].title, "tau_meas1");
  EXPECT_EQ(columns.columns[columnOf(columns, LogRole::Time)].unit, "s");
}

// A model of one joint holds for the elbow once the torque that the moving shoulder causes is taken
// off: (I2 + l1 m2 r2 cos q2 - N Jr) q1'' + l1 m2 r2 sin q2 q1'^2 (Lagrange, both links), here with
// the published values; gravity acts along the absolute angle q1 + q2 (0 = hanging, so as sine).
// The published parameters themselves reproduce this torque to 14 to 18 % rms, and the torque comes
// from currents: 10 % of the inertia, 5 % of the gravity and 30 % of the friction are what can be
// asked.
TEST_F(TwoLinkRun, ElbowParametersAreFoundAgain) {
  const MeasuredLog shoulder = joint(text_, 1), elbow = joint(text_, 2);
  const LogMotion first = smoothLog(shoulder, 0.1), second = smoothLog(elbow, 0.1);
  const double coupling = kUpperLength * kMass * kDistance;
  std::vector<double> torque(elbow.torque), absolute(elbow.rows());
  for (std::size_t i = 0; i < elbow.rows(); ++i) {
    const double c = std::cos(second.position[i]), s = std::sin(second.position[i]);
    torque[i] -= (kInertia + coupling * c - kRatio * kRotor) * first.acceleration[i] +
                 coupling * s * first.speed[i] * first.speed[i];
    absolute[i] = first.position[i] + second.position[i];
  }
  const auto fit = fitLoad({absolute, second.speed, second.acceleration, torque});
  ASSERT_TRUE(fit) << describe(fit.error());
  const double inertia = kInertia + kRatio * kRatio * kRotor;
  EXPECT_NEAR((*fit)[LoadTerm::Inertia].value, inertia, 0.1 * inertia);
  const double moment = kGravity * kMass * kDistance;
  EXPECT_NEAR((*fit)[LoadTerm::GravitySin].value, moment, 0.05 * moment);
  EXPECT_NEAR((*fit)[LoadTerm::GravityCos].value, 0, 0.05 * moment);
  EXPECT_NEAR((*fit)[LoadTerm::Coulomb].value, kCoulomb, 0.3 * kCoulomb);
  EXPECT_GT(fit->rSquared, 0.9);
}

}  // namespace
}  // namespace jw
