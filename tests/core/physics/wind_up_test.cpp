// Wind-up of a stage and of the chain against closed forms.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/wind_up.h"

namespace jw {
namespace {

constexpr double kArcmin = std::numbers::pi / 10800;

PiecewiseStiffness threePieces() {
  PiecewiseStiffness s;
  s.first = 1000;
  s.firstTorque = 10;
  s.second = 2000;
  s.secondTorque = 30;
  s.third = 5000;
  return s;
}

Stage stageOf(double ratio, double stiffness, double backlash = kUnset,
              double hysteresis = kUnset) {
  Stage stage;
  stage.ratio = ratio;
  stage.stiffness.first = stiffness;
  stage.backlash = backlash;
  stage.hysteresis = hysteresis;
  return stage;
}

// Own arithmetic: 100 N·m on 30 kN·m/rad -> 3.3333 mrad = 11.459 arcmin, 1.66667 mm at 0.5 m.
TEST(WindUp, OneStiffness) {
  const double angle = WindUpCurve::of(stageOf(1, 30e3).stiffness)->angle(100);
  EXPECT_NEAR(angle, 3.33333e-3, 5e-9);
  EXPECT_NEAR(angle / kArcmin, 11.459, 5e-4);
  EXPECT_NEAR(angle * 0.5, 1.66667e-3, 5e-9);
}

// Own arithmetic: 10/1000 + 20/2000 + 20/5000 = 24 mrad at 50 N·m.
TEST(WindUp, ThreePieces) {
  const WindUpCurve curve = *WindUpCurve::of(threePieces());
  EXPECT_NEAR(curve.angle(50), 0.024, 1e-15);
  EXPECT_NEAR(curve.angle(-50), -0.024, 1e-15);
  EXPECT_NEAR(curve.angle(20), 0.015, 1e-15);
  EXPECT_EQ(curve.angle(0), 0);
  EXPECT_EQ(curve.stiffness(0), 1000);
  EXPECT_EQ(curve.stiffness(-20), 2000);
  EXPECT_EQ(curve.stiffness(50), 5000);
  EXPECT_EQ(curve.stiffness(10), 1000);
}

// The inverse undoes it, and the tangent is its slope (central difference on straight pieces).
TEST(WindUp, InverseAndTangent) {
  const WindUpCurve curve = *WindUpCurve::of(threePieces());
  for (double torque = -60.9; torque < 61; torque += 0.75) {
    EXPECT_NEAR(curve.torque(curve.angle(torque)), torque, 1e-12);
    const double slope = 0.02 / (curve.angle(torque + 0.01) - curve.angle(torque - 0.01));
    EXPECT_NEAR(curve.stiffness(torque), slope, 1e-6);
  }
}

TEST(WindUp, LastPieceGivenGoesOn) {
  PiecewiseStiffness s = threePieces();
  s.third = kUnset;
  EXPECT_EQ(WindUpCurve::of(s)->stiffness(1e3), 2000);
  s.firstTorque = kUnset;
  EXPECT_EQ(WindUpCurve::of(s)->stiffness(1e3), 1000);
  s.first = kUnset;
  EXPECT_FALSE(WindUpCurve::of(s));
}

// Springs in series: 1/K = 1/(400·10²) + 1/50 000 with a ratio of 10 behind the first; at ratio 1
// plainly 1/K = 1/400 + 1/50 000.
TEST(WindUp, StiffnessInSeries) {
  const std::vector<Stage> stages{stageOf(3, 400), stageOf(10, 50e3)};
  EXPECT_NEAR(*chainStiffness(stages, 0), 1 / (1 / 40e3 + 1 / 50e3), 1e-9);
  EXPECT_NEAR(*chainWindUpAngle(stages, 90), 90 / 40e3 + 90 / 50e3, 1e-15);
  const std::vector<Stage> direct{stageOf(1, 400), stageOf(1, 50e3)};
  EXPECT_NEAR(*chainStiffness(direct, 5), 1 / (1 / 400.0 + 1 / 50e3), 1e-9);
}

// A rigid stage takes no part but is named; a chain of rigid ones does not give.
TEST(WindUp, RigidStages) {
  const std::vector<Stage> stages{stageOf(3, kUnset), stageOf(10, 50e3)};
  EXPECT_NEAR(*chainStiffness(stages, 0), 50e3, 1e-9);
  EXPECT_EQ(chainWindUp(stages, 100)->rigid, std::vector<std::size_t>{0});
  EXPECT_TRUE(std::isinf(*chainStiffness({stageOf(3, kUnset)}, 0)));
  EXPECT_TRUE(std::isinf(*chainStiffness({}, 0)));
  EXPECT_EQ(chainWindUp({}, 100)->windUp, 0);
}

// The ratio before the first stage does not matter, that of any later one does.
TEST(WindUp, NeedsTheRatios) {
  EXPECT_TRUE(chainWindUp({stageOf(kUnset, 400), stageOf(10, 5e4)}, 1));
  EXPECT_FALSE(chainWindUp({stageOf(3, 400), stageOf(kUnset, 5e4)}, 1));
  EXPECT_FALSE(chainStiffness({stageOf(3, 400), stageOf(kUnset, 5e4)}, 1));
  EXPECT_FALSE(lostMotion({stageOf(3, 400), stageOf(kUnset, 5e4)}, 1));
  EXPECT_FALSE(chainWindUp({stageOf(3, 400)}, kUnset));
  EXPECT_FALSE(chainWindUp({stageOf(3, 400)}, 0));
}

// Angles behind a ratio of 10 count a tenth: 5/10 + 1 arcmin of play, 2/10 + 0.5 of hysteresis,
// 2.5/10 of transmission error.
TEST(WindUp, SharesAtTheJoint) {
  std::vector<Stage> stages{stageOf(3, 400, 5 * kArcmin, 2 * kArcmin),
                            stageOf(10, 50e3, 1 * kArcmin, 0.5 * kArcmin)};
  stages[0].transmissionError = 2.5 * kArcmin;
  const auto loop = chainWindUp(stages, 90);
  EXPECT_NEAR(loop->backlash / kArcmin, 1.5, 1e-12);
  EXPECT_NEAR(loop->hysteresis / kArcmin, 0.7, 1e-12);
  EXPECT_NEAR(loop->transmissionError / kArcmin, 0.25, 1e-12);
  EXPECT_NEAR(loop->stages[0].backlash / kArcmin, 0.5, 1e-12);
  EXPECT_NEAR(loop->stages[0].windUp, 90 / 40e3, 1e-15);
  EXPECT_NEAR(loop->stages[0].compliance, 1 / 40e3, 1e-18);
  EXPECT_EQ(loop->stages[0].ratioBehind, 10);
  EXPECT_TRUE(loop->withoutBacklash.empty());
  EXPECT_TRUE(loop->withoutHysteresis.empty());
}

// A stage sees the joint's torque over the ratio behind it: its corner at 10 N·m is the joint's at
// 100 N·m.
TEST(WindUp, CornersMoveToTheJoint) {
  Stage soft = stageOf(3, 0);
  soft.stiffness = threePieces();
  const std::vector<Stage> stages{soft, stageOf(10, kUnset)};
  EXPECT_NEAR(*chainStiffness(stages, 99), 1000 * 100, 1e-9);
  EXPECT_NEAR(*chainStiffness(stages, 101), 2000 * 100, 1e-9);
  const auto loop = chainWindUp(stages, 170);
  const auto& torques = loop->falling.torque;
  EXPECT_NE(std::find(torques.begin(), torques.end(), 100), torques.end());
}

/// Area between the branches [J].
double areaOf(const ChainWindUp& loop) {
  const auto integral = [](const WindUpBranch& branch) {
    double sum = 0;
    for (std::size_t i = 1; i < branch.torque.size(); ++i) {
      sum +=
          (branch.torque[i] - branch.torque[i - 1]) * (branch.angle[i] + branch.angle[i - 1]) / 2;
    }
    return sum;
  };
  return -integral(loop.rising) - integral(loop.falling);
}

// The loop closes at its ends, is h wide at no torque and b high there, and encloses the work of
// friction: the integral of h (1 - (T/T_m)²) from -T_m to T_m = 4/3 h T_m (own), to the chords'
// error of 1/(4·40²).
TEST(WindUp, Loop) {
  const double h = 0.5 * kArcmin, b = 1 * kArcmin;
  const auto loop = chainWindUp({stageOf(10, 50e3, b, h)}, 80);
  EXPECT_NEAR(loop->rising.angle.front(), loop->falling.angle.back(), 1e-15);
  EXPECT_NEAR(loop->rising.angle.back(), loop->falling.angle.front(), 1e-15);
  EXPECT_NEAR(loop->falling.angle.front(), 80 / 50e3 + b / 2, 1e-15);
  const std::size_t middle = loop->falling.torque.size() / 2;
  EXPECT_EQ(loop->falling.torque[middle], 0);
  EXPECT_EQ(loop->falling.torque[middle - 1], 0);
  EXPECT_NEAR(loop->falling.angle[middle - 1] - loop->falling.angle[middle], b, 1e-15);
  EXPECT_NEAR(loop->falling.angle[middle - 1] - loop->rising.angle[middle], h, 1e-15);
  EXPECT_NEAR(areaOf(*loop) / (4.0 / 3 * h * 80), 1, 1.0 / (4 * 40 * 40) * 1.01);
}

// On the centre line, so that hysteresis does not count: b + 2 T/K. A stage of 1 arcmin at 3 % of
// 100 N·m on 50 kN·m/rad: 1 arcmin + 0.12 mrad (common practice of reading at 3 %).
TEST(WindUp, LostMotion) {
  const double found = *lostMotion({stageOf(10, 50e3, kArcmin, 0.5 * kArcmin)}, 3);
  EXPECT_NEAR(found, kArcmin + 0.12e-3, 1e-15);
  EXPECT_NEAR(*lostMotion({stageOf(10, 50e3)}, -3), 0.12e-3, 1e-15);
}

}  // namespace
}  // namespace jw
