// Slopes of margins against logarithmic derivatives by hand (of a product x^a: a (1 + margin)), and
// against Richardson's extrapolation of central differences with other steps. Corners by hand.
#include <gtest/gtest.h>

#include "core/studies/design_points.h"
#include "core/studies/sensitivity.h"
#include "tests/core/checks/every_project.h"
#include "tests/core/studies/one_stage_joint.h"

namespace jw {
namespace {

const InputSlope* slopeIn(const Sensitivities& found, std::string_view id, std::string_view path,
                          int stage = -1) {
  const MarginSlopes* check = found.of(id, stage);
  if (!check) return nullptr;
  for (const InputSlope& one : check->inputs) {
    if (found.inputs[one.input].path == path) return &one;
  }
  return nullptr;
}

void expectSlope(const Sensitivities& found, std::string_view id, std::string_view path,
                 double slope, int stage = -1) {
  SCOPED_TRACE(std::string(id) + " over " + std::string(path));
  const InputSlope* one = slopeIn(found, id, path, stage);
  ASSERT_NE(one, nullptr);
  EXPECT_NEAR(one->slope, slope, 1e-6 * std::max(1.0, std::abs(slope)));
  EXPECT_FALSE(one->corner);
}

TEST(Sensitivity, LogarithmicDerivativesByHand) {
  const Project project = oneStageJoint();
  const Evaluation base = evaluate(project);
  const Sensitivities found = sensitivities(project);
  const Motor& motor = project.active().motor;
  const double inertia = 1 + marginIn(base, "joint.inertia_ratio");
  const double rotor = motor.rotorInertia + motor.brakeInertia;
  const double load = oneStageInertia(project);
  expectSlope(found, "joint.inertia_ratio", "transmission[0].ratio", 2 * inertia);
  expectSlope(found, "joint.inertia_ratio", "requirements.inertiaRatioMax", inertia);
  expectSlope(found, "joint.inertia_ratio", "motor.rotorInertia",
              inertia * motor.rotorInertia / rotor);
  expectSlope(found, "joint.inertia_ratio", "load.inertia", -inertia * 1.2 / load);
  expectSlope(found, "joint.inertia_ratio", "load.payloadDistance",
              -inertia * 2 * 5 * 0.55 * 0.55 / load);
  const double holding = 1 + marginIn(base, "joint.holding");
  expectSlope(found, "joint.holding", "motor.brakeTorque", holding);
  expectSlope(found, "joint.holding", "transmission[0].ratio", holding);
  expectSlope(found, "joint.holding", "requirements.holdingFactor", -holding);
  const double moments = 6 * 0.25 + 5 * 0.55;  // level link: sum of m r
  expectSlope(found, "joint.holding", "load.payloadMass", -holding * 5 * 0.55 / moments);
  const double life = 1 + marginIn(base, "drive.life", 0);
  expectSlope(found, "drive.life", "transmission[0].ratedTorque", 3 * life, 0);
  expectSlope(found, "drive.life", "transmission[0].ratedLife", life, 0);
  expectSlope(found, "drive.life", "transmission[0].ratedSpeed", life, 0);
  expectSlope(found, "drive.life", "transmission[0].ratio", -life, 0);
  expectSlope(found, "drive.life", "requirements.life", -life, 0);
}

TEST(Sensitivity, TemperaturesCountTheirRise) {
  const Project project = oneStageJoint();
  const Sensitivities found = sensitivities(project);
  // margin + 1 = (T_lim - T_a) / (T_peak - T_a): in proportion to the rise allowed.
  const double housing = 1 + marginIn(evaluate(project), "motor.temperature_housing");
  expectSlope(found, "motor.temperature_housing", "motor.housingTemperatureMax", housing);
}

TEST(Sensitivity, OneSidedAtTheEndOfARange) {
  Project project = oneStageJoint();
  project.requirements.holdingFactor = 1;  // the least allowed
  const Sensitivities found = sensitivities(project);
  const InputSlope* slope = slopeIn(found, "joint.holding", "requirements.holdingFactor");
  ASSERT_NE(slope, nullptr);
  EXPECT_FALSE(isSet(slope->below));
  EXPECT_NEAR(slope->slope, -(1 + marginIn(evaluate(project), "joint.holding")), 1e-6);
}

TEST(Sensitivity, StrongestFirstAndNoneWithoutInfluence) {
  for (const NamedProject& one : everyProject()) {
    const Sensitivities found = sensitivities(one.project);
    EXPECT_FALSE(found.checks.empty());
    for (const MarginSlopes& check : found.checks) {
      for (std::size_t k = 1; k < check.inputs.size(); ++k) {
        if (check.inputs[k - 1].corner || check.inputs[k].corner) continue;
        EXPECT_GE(std::abs(check.inputs[k - 1].slope), std::abs(check.inputs[k].slope));
      }
    }
    EXPECT_EQ(slopeIn(found, "joint.mass", "motor.torqueConstant"), nullptr);
  }
}

/// Two moves alike on a vertical axis: each brings the highest torque, which is a corner.
TEST(Sensitivity, CornersAreTold) {
  Project project = oneStageJoint();
  project.load.axisTilt = std::numbers::pi / 2;
  project.cycle.segments[2] = project.cycle.segments[0];
  project.cycle.segments[2].travel *= -1;
  for (Segment& segment : project.cycle.segments) segment.payloadMass = kUnset;
  const Sensitivities found = sensitivities(project);
  const InputSlope* slope = slopeIn(found, "drive.torque_peak", "cycle.segments[0].duration", 0);
  ASSERT_NE(slope, nullptr);
  EXPECT_TRUE(slope->corner);
  EXPECT_NEAR(slope->above, 0, 1e-6);  // slower: the other move decides
  EXPECT_GT(slope->below, 0.1);        // faster: this one does
  const InputSlope* inertia = slopeIn(found, "drive.torque_peak", "load.inertia", 0);
  ASSERT_NE(inertia, nullptr);
  EXPECT_FALSE(inertia->corner);
}

/// Central difference of one margin over a relative step.
class Differences {
 public:
  Differences(const Project& project, const StudyInput& input)
      : input_(input), changed_(project, input) {
    for (const double step : {1.0, 0.5, -0.5, -1.0}) {
      const double value = input.changed(step * kStep);
      inRange_ = inRange_ && input.info->range.contains(value);
      if (inRange_) points_.push_back(designPoint(evaluate(changed_.with(value))));
    }
  }
  /// Fourth order; NaN if the two second-order ones differ, as across a corner.
  double richardson(std::string_view id, int stage) const {
    if (!inRange_) return kUnset;
    const auto at = [&](std::size_t k) { return points_[k].marginOf(id, stage); };
    const double wide = (at(0) - at(3)) / (2 * kStep), narrow = (at(1) - at(2)) / kStep;
    const double scale = std::max(std::abs(wide), std::abs(narrow));
    if (!(std::abs(wide - narrow) < 1e-3 * scale)) return kUnset;
    return (4 * narrow - wide) / 3;
  }

 private:
  static constexpr double kStep = 2e-3;
  const StudyInput& input_;
  ChangedInput changed_;
  std::vector<DesignPoint> points_;
  bool inRange_ = true;
};

TEST(Sensitivity, AgreesWithDifferencesOfHigherOrder) {
  std::size_t compared = 0, smooth = 0, close = 0;
  for (const NamedProject& one : everyProject()) {
    const Sensitivities found = sensitivities(one.project);
    for (std::size_t i = 0; i < found.inputs.size(); ++i) {
      const Differences input(one.project, found.inputs[i]);
      for (const MarginSlopes& check : found.checks) {
        for (const InputSlope& slope : check.inputs) {
          if (slope.input != i || slope.corner || std::abs(slope.slope) < 1e-2) continue;
          ++smooth;
          const double high = input.richardson(check.id, check.stage);
          if (!isSet(high)) continue;
          ++compared;
          const double scale = std::max(std::abs(high), 1 + check.margin);
          EXPECT_NEAR(slope.slope, high, 1e-2 * scale)
              << one.name << ", " << check.title << " over " << found.inputs[i].path;
          close += std::abs(slope.slope - high) <= 1e-5 * scale ? 1 : 0;
        }
      }
    }
  }
  EXPECT_GT(compared, smooth * 9 / 10);
  EXPECT_GT(compared, 1000U);
  // The rest: the decisive sample moves along, or samples pass a threshold, within the step.
  EXPECT_GT(close, compared * 97 / 100) << close << " of " << compared;
}

TEST(Sensitivity, ThreadsDoNotMatter) {
  const Sensitivities one = sensitivities(exampleProject(), {{}, {}, 1});
  const Sensitivities four = sensitivities(exampleProject(), {{}, {}, 4});
  ASSERT_EQ(one.checks.size(), four.checks.size());
  for (std::size_t c = 0; c < one.checks.size(); ++c) {
    ASSERT_EQ(one.checks[c].inputs.size(), four.checks[c].inputs.size());
    for (std::size_t k = 0; k < one.checks[c].inputs.size(); ++k) {
      EXPECT_EQ(one.checks[c].inputs[k].slope, four.checks[c].inputs[k].slope);
      EXPECT_EQ(one.checks[c].inputs[k].input, four.checks[c].inputs[k].input);
    }
  }
}

TEST(Sensitivity, Stops) {
  std::stop_source source;
  source.request_stop();
  const Sensitivities found = sensitivities(exampleProject(), {source.get_token(), {}, 0});
  EXPECT_TRUE(found.stopped);
  EXPECT_TRUE(found.checks.empty());
}

}  // namespace
}  // namespace jw
