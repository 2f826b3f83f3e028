// Bands of the envelope and of the path. A value that follows in proportion from one rectangular
// input keeps 95 % of its draws within 0.95 of the band's half width (JCGM 101:2008, 6.4.2; from
// memory): closed forms by hand.
#include "core/studies/tolerance_envelope.h"

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/model/band.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

constexpr double kShare = 0.10;
constexpr double kCovered = 0.95;

/// The example without any stage: the load's torque is the motor's.
Project direct(const char* path) {
  Project project = exampleProject(600);
  project.active().transmission.clear();
  EXPECT_TRUE(setBand(project, path, "± 10 %"));
  return project;
}

ToleranceEnvelope bandsOf(const Project& project, std::size_t draws = 512) {
  const auto found = toleranceEnvelope(project, {draws, 1});
  if (found) return *found;
  ADD_FAILURE() << describe(found.error());
  return {};
}

TEST(ToleranceEnvelope, PathFollowsThePayloadInProportion) {
  const Project project = direct("load.payloadMass");
  const ToleranceEnvelope bands = bandsOf(project);
  Project heavier = project;
  heavier.load.payloadMass *= 1 + kShare * kCovered;
  const Evaluation nominal = evaluate(project);
  const Evaluation heavy = evaluate(heavier);
  const double scale = nominal.demand->torque.abs().maxCoeff();
  ASSERT_EQ(bands.draws, 512u);
  for (std::size_t k = 0; k < bands.samples.size(); ++k) {
    const Eigen::Index i = bands.samples[k];
    const double torque = nominal.demand->torque[i];
    const double half = std::abs(heavy.demand->torque[i] - torque);
    EXPECT_NEAR(bands.torqueLow[Eigen::Index(k)], torque - half, 5e-3 * scale * kShare);
    EXPECT_NEAR(bands.torqueHigh[Eigen::Index(k)], torque + half, 5e-3 * scale * kShare);
    EXPECT_EQ(bands.speedLow[Eigen::Index(k)], nominal.chain->motorSpeed[i]);
    EXPECT_EQ(bands.speedHigh[Eigen::Index(k)], nominal.chain->motorSpeed[i]);
  }
  // Nothing of the motor's is off.
  EXPECT_LT((bands.high - bands.low).abs().maxCoeff(), 1e-12);
}

TEST(ToleranceEnvelope, StallTorqueFollowsTheCurrentInProportion) {
  Project project = direct("controller.currentPeak");
  project.active().motor.currentPeak = kUnset;  // the controller alone limits
  const ToleranceEnvelope bands = bandsOf(project);
  const double stall = evaluate(project).envelope->stallTorque;
  Eigen::Index slow = 0;
  bands.speed.abs().minCoeff(&slow);
  EXPECT_NEAR(bands.high[slow] / stall, 1 + kShare * kCovered, 0.005);
  EXPECT_NEAR(bands.low[slow] / stall, 1 - kShare * kCovered, 0.005);
}

TEST(ToleranceEnvelope, SpeedFollowsTheRatio) {
  Project project = exampleProject(600);
  ASSERT_TRUE(setBand(project, "transmission[0].ratio", "± 10 %"));
  ASSERT_TRUE(isSet(project.active().transmission[0].ratio));
  const ToleranceEnvelope bands = bandsOf(project);
  const Evaluation nominal = evaluate(project);
  const double scale = nominal.chain->motorSpeed.abs().maxCoeff();
  for (std::size_t k = 0; k < bands.samples.size(); ++k) {
    const double speed = nominal.chain->motorSpeed[bands.samples[k]];
    const double half = kShare * kCovered * std::abs(speed);
    EXPECT_NEAR(bands.speedHigh[Eigen::Index(k)], speed + half, 0.002 * scale);
    EXPECT_NEAR(bands.speedLow[Eigen::Index(k)], speed - half, 0.002 * scale);
  }
}

TEST(ToleranceEnvelope, SameSeedSameBands) {
  const Project project = direct("load.payloadMass");
  EXPECT_TRUE((bandsOf(project, 40).torqueLow == bandsOf(project, 40).torqueLow).all());
}

TEST(ToleranceEnvelope, RefusesWhatCannotBeDrawn) {
  const Project none = exampleProject(600);
  EXPECT_EQ(toleranceEnvelope(none, {}).error().what, "no input has a band");
  const Project project = direct("load.payloadMass");
  EXPECT_EQ(toleranceEnvelope(project, {1, 1}).error().where, "draws");
  Project open = project;
  open.active().supply.voltage = kUnset;
  EXPECT_FALSE(toleranceEnvelope(open, {}).error().remedy.empty());
}

TEST(ToleranceEnvelope, StopsWhenAsked) {
  std::stop_source source;
  source.request_stop();
  StudyRun run;
  run.stop = source.get_token();
  const auto found = toleranceEnvelope(direct("load.payloadMass"), {}, run);
  ASSERT_TRUE(found);
  EXPECT_TRUE(found->stopped);
}

}  // namespace
}  // namespace jw
