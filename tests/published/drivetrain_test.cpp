// Three drive trains of the Modelica Standard Library (BSD-3, read) integrated with the chain's
// torques and compared with trajectories of SciPy that agree with the library's published reference
// results; set-ups and agreement in tests/data/drivetrain_checks/README.md. The tolerances here are
// those of the integrators, far below that agreement.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>
#include <boost/numeric/odeint.hpp>

#include "core/physics/bracketed_root.h"
#include "core/physics/stage_chain.h"
#include "core/physics/wind_up.h"
#include "tests/core/physics/hand_cycle.h"
#include "tests/published/csv_columns.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;
using std::numbers::pi;

/// Integrates `rate` from one time to another in place.
template <class State, class Rate>
void integrate(const Rate& rate, State& state, double from, double to) {
  namespace odeint = boost::numeric::odeint;
  if (!(to > from)) return;
  const auto stepper = odeint::make_controlled(1e-11, 1e-11, odeint::runge_kutta_dopri5<State>());
  odeint::integrate_adaptive(stepper, rate, state, from, to, (to - from) / 4);
}

/// A motor and one stage with a load behind, seen through the chain.
class GearedMotor {
 public:
  GearedMotor(const Stage& stage, double motorInertia, double loadInertia)
      : stages_(*completeStages({stage}, 20)),
        motorInertia_(motorInertia),
        loadInertia_(loadInertia) {}

  /// Torque [N·m] that the motor has to give so that the output, at `speed` [rad/s], accelerates so
  /// [rad/s²] against `load` [N·m].
  double motorTorque(double speed, double acceleration, double load) const {
    const ArrayXd torque = ArrayXd::Constant(1, loadInertia_ * acceleration + load);
    const StageChain chain =
        reflectThroughChain(stages_, oneInstant(speed, acceleration), torque, 0);
    return chain.motorTorque[0] + motorInertia_ * chain.motorAcceleration[0];
  }

  /// Acceleration [rad/s²] of the output under a motor torque and a load: motorTorque is straight
  /// to either side of the acceleration at which no power passes the mesh.
  double acceleration(double speed, double motor, double load) const {
    const double inertia = loadInertia_ + stages_[0].stage.outputInertia;
    const double bend = -load / inertia;
    const double atBend = motorTorque(speed, bend, load);
    const double side = motor > atBend ? 1 : -1;
    const double slope = (motorTorque(speed, bend + side, load) - atBend) / side;
    return bend + (motor - atBend) / slope;
  }

 private:
  std::vector<StageData> stages_;
  double motorInertia_;
  double loadInertia_;
};

Stage stageOf(double ratio, double efficiency) {
  Stage stage;
  stage.ratio = ratio;
  stage.efficiency = efficiency;
  stage.backdrivingEfficiency = efficiency;
  return stage;
}

/// 10 sin(2 pi 5 t) N·m on 0.1 kg·m², ratio 10, 2 kg·m² at the gear's output.
struct TwoMasses : testing::Test {
  Stage stage = [] {
    Stage gear = stageOf(10, 1);
    gear.outputInertia = 2;
    gear.stiffness.first = 1e4;
    return gear;
  }();
};

TEST_F(TwoMasses, FollowTheReference) {
  const GearedMotor drive(stage, 0.1, 0);
  using State = std::array<double, 4>;  // angle and speed of the output, of the load
  const auto rate = [&](const State& x, State& dx, double t) {
    const double shaft = 1e4 * (x[0] - x[2]);
    const double load = shaft + 10 * x[1];
    dx = {x[1], drive.acceleration(x[1], 10 * std::sin(10 * pi * t), load), x[3], shaft / 2};
  };
  const auto columns = csvColumns("drivetrain_checks/gear_two_mass_sine.csv");
  State x{};
  double worst = 0, largest = 0;
  for (Index i = 1; i < columns[0].size(); ++i) {
    integrate(rate, x, columns[0][i - 1], columns[0][i]);
    worst = std::max({worst, std::abs(x[1] - columns[1][i]), std::abs(x[3] - columns[3][i])});
    largest = std::max(largest, std::abs(x[3]));
  }
  EXPECT_LT(worst, 1e-8);
  EXPECT_GT(largest, 0.5);
}

// Resonances given beside the data: free 12.155660 Hz, motor locked 11.253954 Hz. The masses and
// the stiffness that the chain makes of stage and motor give them.
TEST_F(TwoMasses, ResonancesFromTheChain) {
  const auto chain = reflectThroughChain({stage}, oneInstant(0, 0), ArrayXd::Zero(1), 0);
  const double motorSide = 100 * (0.1 + chain->inertiaAtMotor);
  const double stiffness = *chainStiffness({stage}, 0);
  EXPECT_NEAR(std::sqrt(stiffness / 2) / (2 * pi), 11.253954, 5e-7);
  EXPECT_NEAR(std::sqrt(stiffness * (1.0 / 2 + 1 / motorSide)) / (2 * pi), 12.155660, 5e-7);
}

/// Ratio 2, mesh efficiency 0.5 both ways, 1 and 1.5 kg·m²; backward, stuck and forward in turn.
class LossyGearInMotion {
 public:
  struct Change {
    double time;
    int mode;  ///< -1 backward, 0 stuck, +1 forward
  };

  double angle() const { return x_[0]; }
  double speed() const { return x_[1]; }
  const std::vector<Change>& changes() const { return changes_; }

  void advance(double to) {
    while (time_ < to) mode_ == 0 ? waitUntil(to) : moveUntil(to);
  }

 private:
  using State = std::array<double, 2>;

  /// Output acceleration [rad/s²] while it turns in this direction, or is about to.
  double acceleration(int direction, double t) const {
    return drive_.acceleration(direction, 10 * std::sin(2 * pi * t), 10 - 2.5 * t);
  }

  State moved(double to) const {
    State x = x_;
    const auto rate = [this](const State& at, State& dx, double t) {
      dx = {at[1], acceleration(mode_, t)};
    };
    integrate(rate, x, time_, to);
    return x;
  }

  void moveUntil(double to) {
    const State x = moved(to);
    const bool turnsBack = mode_ * x[1] < 0 && to > time_;
    const double until =
        turnsBack
            ? bracketedRoot([&](double t) { return t > time_ + 1e-9 ? mode_ * moved(t)[1] : 1.0; },
                            time_, to)
            : to;
    x_ = moved(until);
    time_ = until;
    if (turnsBack) change(0);
  }

  /// Breaks loose as soon as one direction would be kept up.
  void waitUntil(double to) {
    x_[1] = 0;
    double first = to;
    int mode = 0;
    for (const int direction : {-1, +1}) {
      const auto push = [&](double t) { return direction * acceleration(direction, t); };
      if (push(to) <= 0 && push(time_) <= 0) continue;
      const double at = push(time_) > 0 ? time_ : bracketedRoot(push, time_, to);
      if (at <= first) first = at, mode = direction;
    }
    time_ = first;
    if (mode != 0) change(mode);
  }

  void change(int mode) {
    mode_ = mode;
    changes_.push_back({time_, mode});
  }

  GearedMotor drive_{stageOf(2, 0.5), 1, 1.5};
  State x_{};
  double time_ = 0;
  int mode_ = 0;
  std::vector<Change> changes_;
};

// Mode changes of the published result: backward at 0, stuck at 0.0805, forward at 0.1995, stuck at
// 0.3713, backward at 0.4645 s; break-away to more digits 0.1995199 s.
TEST(LossyGearMotion, FollowsTheReferenceThroughAllModes) {
  const auto columns = csvColumns("drivetrain_checks/lossy_gear_stuck.csv");
  LossyGearInMotion gear;
  double worstSpeed = 0, worstAngle = 0;
  for (Index i = 1; i < columns[0].size(); ++i) {
    gear.advance(columns[0][i]);
    worstAngle = std::max(worstAngle, std::abs(gear.angle() - columns[1][i]));
    worstSpeed = std::max(worstSpeed, std::abs(gear.speed() - columns[2][i]));
  }
  EXPECT_LT(worstSpeed, 1e-9);
  EXPECT_LT(worstAngle, 1e-9);
  const std::vector<LossyGearInMotion::Change> expected{
      {0, -1}, {0.0805, 0}, {0.1995, 1}, {0.3713, 0}, {0.4645, -1}};
  ASSERT_EQ(gear.changes().size(), expected.size());
  for (std::size_t k = 0; k < expected.size(); ++k) {
    EXPECT_NEAR(gear.changes()[k].time, expected[k].time, 5e-5) << k;
    EXPECT_EQ(gear.changes()[k].mode, expected[k].mode) << k;
  }
  EXPECT_NEAR(gear.changes()[2].time, 0.1995199, 5e-7);
}

// 5 kg·m² from 90 deg on a shaft with 45 deg of play. The spring's torque is that of the stage's
// wind-up curve beyond half the play.
TEST(PlayInAShaft, FollowsTheReference) {
  PiecewiseStiffness shaft;
  shaft.first = 2e4;
  const WindUpCurve curve = *WindUpCurve::of(shaft);
  const double halfPlay = pi / 8;
  const auto rate = [&](const std::array<double, 2>& x, std::array<double, 2>& dx, double) {
    const double side = x[0] > 0 ? 1 : -1;
    const double spring = std::abs(x[0]) > halfPlay ? curve.torque(x[0] - side * halfPlay) : 0;
    const double most = std::abs(spring);
    dx = {x[1], -(spring + std::clamp(50 * x[1], -most, most)) / 5};
  };
  const auto columns = csvColumns("drivetrain_checks/backlash_free_oscillation.csv");
  std::array<double, 2> x{pi / 2, 0};
  double worst = 0;
  for (Index i = 1; i < columns[0].size(); ++i) {
    integrate(rate, x, columns[0][i - 1], columns[0][i]);
    worst = std::max(worst, std::abs(x[0] - columns[1][i]));
  }
  EXPECT_LT(worst, 1e-6);
}

}  // namespace
}  // namespace jw
