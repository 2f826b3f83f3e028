// Remedies against closed forms, by hand: inertia ratio J_L / (N² J), holding S T / (N T_b), life
// L_r (T_r / T)^p, sums of masses. Steps of parts and motors against trying them all. The rest own.
#include <chrono>
#include <thread>

#include <gtest/gtest.h>

#include "core/studies/invented_catalogue.h"
#include "core/studies/remedies.h"
#include "tests/core/checks/every_project.h"
#include "tests/core/studies/one_stage_joint.h"

namespace jw {
namespace {

const Remedy* remedyOf(const Remedies& found, std::string_view id, std::string_view path,
                       int stage = -1) {
  const CheckRemedies* check = found.of(id, stage);
  if (!check) return nullptr;
  for (const Remedy& one : check->remedies) {
    if (one.path == path) return &one;
  }
  return nullptr;
}

const NoRemedy* noneOf(const Remedies& found, std::string_view id, std::string_view path,
                       int stage = -1) {
  const CheckRemedies* check = found.of(id, stage);
  if (!check) return nullptr;
  for (const NoRemedy& one : check->cannot) {
    if (one.path == path) return &one;
  }
  return nullptr;
}

void expectRemedy(const Remedies& found, std::string_view id, std::string_view path, double to,
                  int stage = -1) {
  SCOPED_TRACE(std::string(id) + " by " + std::string(path));
  const Remedy* remedy = remedyOf(found, id, path, stage);
  ASSERT_NE(remedy, nullptr);
  EXPECT_NEAR(remedy->to, to, 1e-6 * std::abs(to));
  EXPECT_NEAR(remedy->change, remedy->to / remedy->from - 1, 1e-12);
}

TEST(Remedies, InertiaRatioInClosedForm) {
  Project project = oneStageJoint();
  project.requirements.inertiaRatioMax = 4;
  const Remedies found = remedies(project, {"joint.inertia_ratio", -1, {}});
  ASSERT_EQ(found.checks.size(), 1U);
  EXPECT_EQ(found.checks[0].state, CheckState::Short);
  const Motor& motor = project.active().motor;
  const double load = oneStageInertia(project);
  const double rotor = motor.rotorInertia + motor.brakeInertia;
  // J_L / (N² J) (1 + target) = kappa_max
  const double wanted = load / 1e4 * 1.1 / 4;
  expectRemedy(found, "joint.inertia_ratio", "motor.rotorInertia", wanted - motor.brakeInertia);
  expectRemedy(found, "joint.inertia_ratio", "motor.brakeInertia", wanted - motor.rotorInertia);
  expectRemedy(found, "joint.inertia_ratio", "transmission[0].ratio",
               std::sqrt(load * 1.1 / (4 * rotor)));
  expectRemedy(found, "joint.inertia_ratio", "requirements.inertiaRatioMax",
               load / 1e4 / rotor * 1.1);
  expectRemedy(found, "joint.inertia_ratio", "load.payloadMass",
               (4 * rotor * 1e4 / 1.1 - 1.2 - 0.01) / (0.55 * 0.55));
}

TEST(Remedies, HoldingInClosedForm) {
  Project project = oneStageJoint();
  project.active().motor.brakeTorque = 0.55;
  const Evaluation base = evaluate(project);
  const double margin = marginIn(base, "joint.holding");
  ASSERT_LT(margin, 0);
  const Remedies found = remedies(project, {"joint.holding", -1, {}});
  const double lacking = 1.1 / (1 + margin);  // all of them are linear
  expectRemedy(found, "joint.holding", "motor.brakeTorque", 0.55 * lacking);
  expectRemedy(found, "joint.holding", "transmission[0].ratio", 100 * lacking);
  expectRemedy(found, "joint.holding", "requirements.holdingFactor", 1.5 / lacking);
}

TEST(Remedies, LifeInClosedForm) {
  Project project = oneStageJoint();
  project.requirements.life *= 20;
  const double margin = marginIn(evaluate(project), "drive.life", 0);
  ASSERT_LT(margin, 0);
  const Remedies found = remedies(project, {"drive.life", 0, {}});
  const double lacking = 1.1 / (1 + margin);
  const Stage& stage = project.active().transmission[0];
  expectRemedy(found, "drive.life", "transmission[0].ratedLife", stage.ratedLife * lacking, 0);
  expectRemedy(found, "drive.life", "transmission[0].ratedTorque",
               stage.ratedTorque * std::cbrt(lacking), 0);
  expectRemedy(found, "drive.life", "transmission[0].ratio", 100 / lacking, 0);
  expectRemedy(found, "drive.life", "requirements.life", project.requirements.life / lacking, 0);
}

TEST(Remedies, MassThatCannotBeMadeUpForByOnePart) {
  Project project = oneStageJoint();
  project.requirements.massMax = 1.3;  // motor 1.2 kg, stage 1.1 kg
  const Remedies found = remedies(project, {"joint.mass", -1, {}});
  EXPECT_EQ(remedyOf(found, "joint.mass", "transmission[0].mass"), nullptr);
  const NoRemedy* none = noneOf(found, "joint.mass", "transmission[0].mass");
  ASSERT_NE(none, nullptr);  // even a tenth of it leaves 1.31 kg
  EXPECT_NEAR(none->reached, 0.11, 1e-9);
  EXPECT_NEAR(none->margin, 1.3 / 1.31 - 1, 1e-9);
  EXPECT_NEAR(none->from, 1.1, 1e-12);
  expectRemedy(found, "joint.mass", "requirements.massMax", 2.3 * 1.1);
  EXPECT_EQ(found.checks[0].remedies.size(), 1U);
  EXPECT_EQ(found.checks[0].remedies[0].role, InputRole::AsksLess);
}

TEST(Remedies, AskingForLessStandsAfterTheDesign) {
  Project project = oneStageJoint();
  project.requirements.inertiaRatioMax = 2;
  for (const CheckRemedies& check : remedies(project).checks) {
    for (std::size_t k = 1; k < check.remedies.size(); ++k) {
      const Remedy& a = check.remedies[k - 1];
      const Remedy& b = check.remedies[k];
      EXPECT_LE(a.role, b.role);
      if (a.role == b.role) {
        EXPECT_LE(std::abs(a.change), std::abs(b.change));
      }
    }
  }
}

/// Typed text of a remedy with a slightly smaller change; of continuous fields only.
double marginOfLess(const Project& project, const CheckRemedies& check, const Remedy& remedy) {
  Project changed = project;
  const double less = remedy.from + (remedy.to - remedy.from) * (1 - 1e-4);
  const FieldInfo& info = *findField(project, remedy.path)->info;
  const auto done = setField(changed, remedy.path, typedForm(less, info.quantity, info.unit));
  return done ? marginIn(evaluate(changed), check.id, check.stage) : kUnset;
}

TEST(Remedies, EveryOneReachesTheTargetAndLessDoesNot) {
  std::size_t tried = 0, exact = 0;
  for (const NamedProject& one : everyProject()) {
    const Remedies found = remedies(one.project);
    for (const CheckRemedies& check : found.checks) {
      for (const Remedy& remedy : check.remedies) {
        SCOPED_TRACE(one.name + ", " + check.title + " by " + remedy.path);
        Project changed = one.project;
        ASSERT_TRUE(applyRemedy(changed, remedy));
        EXPECT_NE(remedy.role, InputRole::Given);
        EXPECT_NE(remedy.path, "requirements.targetMargin");
        const double margin = marginIn(evaluate(changed), check.id, check.stage);
        EXPECT_GE(margin, found.target);
        EXPECT_EQ(margin, remedy.margin);
        ++tried;
        const bool whole = findField(changed, remedy.path)->info->kind == FieldKind::Integer;
        if (remedy.kind != RemedyKind::Field || whole) continue;
        exact += margin <= found.target + 1e-6 ? 1 : 0;
        EXPECT_FALSE(marginOfLess(one.project, check, remedy) >= found.target);
      }
    }
  }
  EXPECT_GT(tried, 100U);
  EXPECT_GT(exact, tried * 9 / 10);  // the rest stand where the margin jumps
}

TEST(Remedies, OtherVerdictsAreThoseOfTheChangedDesign) {
  Project project = oneStageJoint();
  project.requirements.inertiaRatioMax = 2;
  project.requirements.massMax = 2;
  const Evaluation base = evaluate(project);
  const Remedies found = remedies(project, {"joint.inertia_ratio", -1, {}});
  const Remedy* remedy = remedyOf(found, "joint.inertia_ratio", "motor.rotorInertia");
  ASSERT_NE(remedy, nullptr);
  Project changed = project;
  ASSERT_TRUE(applyRemedy(changed, *remedy));
  const Evaluation after = evaluate(changed);
  EXPECT_FALSE(remedy->others.empty());
  for (const MovedVerdict& moved : remedy->others) {
    EXPECT_EQ(moved.before, marginIn(base, moved.id, moved.stage));
    EXPECT_EQ(moved.after, marginIn(after, moved.id, moved.stage));
    EXPECT_NE(moved.id, "joint.mass");  // rotor inertia weighs nothing here
  }
}

TEST(Remedies, WholeNumbersGoInSteps) {
  Project project = oneStageJoint();
  Motor& motor = project.active().motor;
  motor.encoderSteps = 20;
  motor.jointEncoderSteps = 360;
  project.requirements.toolError = 8e-3;
  // One step of the encoder at the joint, 2 pi / z, over a reach of 0.55 m.
  const int needed = static_cast<int>(
      std::ceil(0.55 * 2 * std::numbers::pi / (project.requirements.toolError / 1.1)));
  const Remedies found = remedies(project, {"joint.positioning", -1, {}});
  const Remedy* remedy = remedyOf(found, "joint.positioning", "motor.jointEncoderSteps");
  ASSERT_NE(remedy, nullptr);
  EXPECT_EQ(remedy->to, needed);
  EXPECT_EQ(remedy->edits.at(0).text, std::to_string(needed));
}

TEST(Remedies, AMotorWithABrakeGoesBeforeANearerOneWithout) {
  Project project = oneStageJoint();
  Motor& motor = project.active().motor;
  motor.mass = 1.2;
  motor.brakeTorque = 1;
  motor.encoderSteps = 4096;
  project.requirements.massMax = 1.05 * (motor.mass + project.active().transmission[0].mass);
  project.requirements.targetMargin = 0.1;
  MotorEntry without{"nearer", motor}, with{"with brake", motor};
  without.motor.brakeTorque = kUnset;
  without.motor.mass = 1.0;
  with.motor.mass = 0.9;
  with.motor.encoderSteps = without.motor.encoderSteps = 0;
  const auto motorRemedy = [](const Remedies& found) {
    for (const Remedy& one : found.of("joint.mass", -1)->remedies) {
      if (one.kind == RemedyKind::Motor) return one;
    }
    return Remedy{};
  };
  const Remedy remedy = motorRemedy(remedies(project, {"joint.mass", -1, {without, with}}));
  ASSERT_TRUE(remedy.motor.has_value());
  EXPECT_EQ(remedy.motor->name, "with brake");
  ASSERT_TRUE(applyRemedy(project, remedy).has_value());
  EXPECT_EQ(project.active().motor.mass, 0.9);
  EXPECT_EQ(project.active().motor.encoderSteps, 4096) << "the encoder stays";
}

TEST(Remedies, PartsGoToTheNearestRatioThatCanBeBuilt) {
  Project project = oneStageJoint();
  Stage& stage = project.active().transmission[0];
  stage.family = StageFamily::StrainWave;
  stage.ratio = kUnset;
  stage.strainWave.flexTeeth = 160;  // 80 : 1
  stage.strainWave.circularTeeth = 162;
  project.active().motor.brakeTorque = 0.55;
  const Remedies found = remedies(project, {"joint.holding", -1, {}});
  const Remedy* remedy = remedyOf(found, "joint.holding", "transmission[0].ratio");
  ASSERT_NE(remedy, nullptr);
  EXPECT_EQ(remedy->kind, RemedyKind::Parts);
  Project changed = project;
  ASSERT_TRUE(applyRemedy(changed, *remedy));
  EXPECT_FALSE(isSet(changed.active().transmission[0].ratio));
  EXPECT_GE(marginIn(evaluate(changed), "joint.holding"), 0.1);
  // Half a tooth less, that is the other way of holding the splines, must not do: none between.
  for (int flex = 100; flex <= 400; ++flex) {
    for (const auto held : {StrainWaveHeld::CircularSpline, StrainWaveHeld::Flexspline}) {
      Project tried = project;
      StrainWaveGeometry& waves = tried.active().transmission[0].strainWave;
      waves.held = held;
      waves.flexTeeth = flex;
      waves.circularTeeth = flex + 2;
      const double ratio = held == StrainWaveHeld::CircularSpline ? flex / 2.0 : flex / 2.0 + 1;
      if (ratio <= 80 || ratio >= remedy->to) continue;
      EXPECT_LT(marginIn(evaluate(tried), "joint.holding"), 0.1) << flex;
    }
  }
}

TEST(Remedies, MotorIsTheNearestThatRestores) {
  Project project = oneStageJoint();
  project.active().motor.torqueConstant = 0.04;
  const std::vector<MotorEntry> motors = inventedMotors();
  const Remedies found = remedies(project, {"motor.continuous", -1, motors});
  const Remedy* remedy = nullptr;
  for (const Remedy& one : found.of("motor.continuous", -1)->remedies) {
    if (one.kind == RemedyKind::Motor) remedy = &one;
  }
  ASSERT_NE(remedy, nullptr);
  EXPECT_GE(remedy->margin, 0.1);
  for (const MotorEntry& entry : motors) {
    if (std::abs(entry.motor.mass / 1.2 - 1) >= std::abs(remedy->change)) continue;
    Project tried = project;
    tried.active().motor = entry.motor;
    EXPECT_FALSE(marginIn(evaluate(tried), "motor.continuous") >= 0.1) << entry.name;
  }
}

TEST(Remedies, DemandWithoutBoundIsMadeBoundFirst) {
  Project project = oneStageJoint();
  project.active().motor.brakeTorque = 0.1;  // cannot stop the falling load: margin -1 all around
  const double margin = marginIn(evaluate(project), "joint.stopping");
  ASSERT_EQ(margin, -1);
  const Remedies found = remedies(project, {"joint.stopping", -1, {}});
  const Remedy* remedy = remedyOf(found, "joint.stopping", "motor.brakeTorque");
  ASSERT_NE(remedy, nullptr);
  EXPECT_NEAR(remedy->margin, 0.1, 1e-6);
}

TEST(Remedies, NoneWhereAllHolds) {
  EXPECT_TRUE(remedies(exampleProject()).checks.empty());
  EXPECT_TRUE(remedies(exampleProject(), {"joint.holding", -1, {}}).checks.empty());
}

TEST(Remedies, ThreadsDoNotMatter) {
  Project project = oneStageJoint();
  project.requirements.inertiaRatioMax = 2;
  const Remedies one = remedies(project, {}, {{}, {}, 1});
  const Remedies four = remedies(project, {}, {{}, {}, 4});
  ASSERT_EQ(one.checks.size(), four.checks.size());
  for (std::size_t c = 0; c < one.checks.size(); ++c) {
    ASSERT_EQ(one.checks[c].remedies.size(), four.checks[c].remedies.size());
    for (std::size_t k = 0; k < one.checks[c].remedies.size(); ++k) {
      EXPECT_EQ(one.checks[c].remedies[k].path, four.checks[c].remedies[k].path);
      EXPECT_EQ(one.checks[c].remedies[k].to, four.checks[c].remedies[k].to);
      EXPECT_EQ(one.checks[c].remedies[k].margin, four.checks[c].remedies[k].margin);
    }
  }
}

TEST(Remedies, StopsAfterTheEvaluationsAtWork) {
  Project project = exampleProject(200'000);  // an evaluation takes some tens of milliseconds
  project.requirements.inertiaRatioMax = 0.5;
  std::stop_source source;
  StudyRun run;
  run.stop = source.get_token();
  run.progress = [&](const StudyProgress&) { source.request_stop(); };
  const Remedies found = remedies(project, {}, run);
  EXPECT_TRUE(found.stopped);
  for (const CheckRemedies& check : found.checks) EXPECT_TRUE(check.remedies.empty());
}

}  // namespace
}  // namespace jw
