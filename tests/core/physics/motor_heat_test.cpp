// The motor's heat over the cycle, against iteration by brute force and hand numbers.
#include <cmath>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// Periodic state with the magnet as hot as the housing's mean: plain repetition until it stands.
PeriodicHeat byRepetition(const Motor& motor, const MotorHeat& heat, double inUse) {
  HeatLoad unsettled = heat.load;
  unsettled.copper20 *= heat.fluxFactor * heat.fluxFactor;
  const double a = motor.magnetCoefficient;
  double magnet = inUse;
  for (int k = 0; k < 300; ++k) {
    HeatLoad load = unsettled;
    const double factor = (1 + a * (magnet - 20)) / (1 + a * (inUse - 20));
    load.copper20 /= factor * factor;
    const PeriodicHeat found = periodicHeat(heat.network, load);
    if (found.runaway || k == 299) return found;
    magnet = found.housingMean;
  }
  return {};
}

TEST(MotorHeat, WeakerMagnetSettlesAsByRepetition) {
  int settled = 0;
  for (const double coefficient : {0.0, -0.0012, -0.002, -0.004}) {
    for (const double resistance : {1.8, 4.0, 6.0, 12.0}) {
      Project project = exampleProject();
      Motor& motor = project.active().motor;
      motor.magnetCoefficient = coefficient;
      motor.thermalResistanceHousing = resistance;
      const Evaluation evaluation = evaluate(project);
      ASSERT_TRUE(evaluation.heat);
      const PeriodicHeat brute = byRepetition(motor, *evaluation.heat, 80);
      ASSERT_EQ(evaluation.heat->periodic.runaway, brute.runaway)
          << coefficient << " " << resistance;
      if (brute.runaway) continue;
      ++settled;
      EXPECT_NEAR(evaluation.heat->periodic.windingPeak, brute.windingPeak, 1e-6)
          << coefficient << " " << resistance;
      EXPECT_NEAR(evaluation.heat->periodic.housingMean, brute.housingMean, 1e-6);
    }
  }
  EXPECT_GE(settled, 9);
}

TEST(MotorHeat, RunawayIsAState) {
  Project project = exampleProject();
  project.active().motor.thermalResistanceHousing = 300;
  const Evaluation evaluation = evaluate(project);
  ASSERT_TRUE(evaluation.heat);
  EXPECT_TRUE(evaluation.heat->periodic.runaway);
  EXPECT_GE(evaluation.heat->periodic.spectralRadius, 1);
}

// A magnet that loses its strength as it heats up runs away where the copper alone does not: each
// kelvin of the magnet makes more than one of the housing, by plain repetition too.
TEST(MotorHeat, MagnetCanRunAwayWhereCopperDoesNot) {
  Project project = exampleProject();
  Motor& motor = project.active().motor;
  motor.magnetCoefficient = 0;
  motor.thermalResistanceHousing = 14;
  ASSERT_FALSE(evaluate(project).heat->periodic.runaway);
  motor.magnetCoefficient = -0.004;
  const MotorHeat heat = *evaluate(project).heat;
  EXPECT_TRUE(heat.periodic.runaway);
  EXPECT_EQ(heat.periodic.winding.size(), 0);
  EXPECT_TRUE(byRepetition(motor, heat, 80).runaway);
}

// What goes in over a repeated cycle goes out at the housing: P_Cu + P_housing = (T_2 - T_a) / R_2.
TEST(MotorHeat, MeanHousingCarriesTheMeanLoss) {
  Project project = exampleProject();
  project.active().motor.magnetCoefficient = 0;
  project.active().transmission[1].heatShare = 0.5;
  const Evaluation evaluation = evaluate(project);
  const MotorHeat& heat = *evaluation.heat;
  const Eigen::ArrayXd& t = heat.load.duration;
  const PeriodicHeat& at = heat.periodic;
  const Eigen::Index n = t.size();
  const Eigen::ArrayXd winding = (at.winding.head(n) + at.winding.tail(n)) / 2;
  const Eigen::ArrayXd copper =
      heat.load.copper20 * (1 + heat.network.copperCoefficient * (winding - 20));
  const double loss = ((copper + heat.load.housing) * t).sum() / t.sum();
  EXPECT_NEAR(loss * heat.network.housingToAmbient, at.housingMean - heat.network.ambient, 1e-5);
  // Half of the drive's loss is in it.
  const Eigen::ArrayXd& drive = evaluation.chain->stages[1].loss;
  const Eigen::ArrayXd expected = evaluation.demand->dragLoss + 0.5 * drive;
  EXPECT_NEAR(heat.load.housing[100], (expected[100] + expected[101]) / 2, 1e-12);
}

// IEC 60034-1 (from memory): 1 % of the rise per 100 m above 1000 m. Class F: 155 at 40 °C, rise
// 115 K; at 2000 m 103.5 K.
TEST(MotorHeat, AltitudeDerates) {
  EXPECT_EQ(deratedLimit(155, 40, 0), 155);
  EXPECT_EQ(deratedLimit(155, 40, 1000), 155);
  EXPECT_NEAR(deratedLimit(155, 40, 2000), 143.5, 1e-12);
  EXPECT_NEAR(deratedLimit(145, 40, 2000), 40 + 94.5, 1e-12);  // 105 K: 94.5 K
  Project project = exampleProject();
  project.requirements.altitude = 2000;
  EXPECT_NEAR(evaluate(project).heat->limit, 143.5, 1e-12);
}

TEST(MotorHeat, MountIsInParallel) {
  Motor motor;
  motor.thermalResistanceHousing = 3;
  EXPECT_EQ(mountedResistance(motor), 3);
  motor.mountResistance = 1.5;
  EXPECT_NEAR(mountedResistance(motor), 1, 1e-15);
}

TEST(MotorHeat, TimeConstantsInPlaceOfCapacities) {
  Motor motor = exampleProject().active().motor;
  motor.windingCapacity = motor.housingCapacity = kUnset;
  motor.windingTimeConstant = 54;
  motor.housingTimeConstant = 1260;
  motor.mountResistance = 1;  // the time constant is that of free air
  const auto network = heatNetwork(motor, 25);
  ASSERT_TRUE(network.has_value());
  EXPECT_NEAR(network->windingCapacity, 60, 1e-12);
  EXPECT_NEAR(network->housingCapacity, 700, 1e-12);
  EXPECT_EQ(network->ambient, 25);
}

TEST(MotorHeat, NamesWhatIsMissing) {
  const auto missingOf = [](auto change) {
    Motor motor = exampleProject().active().motor;
    change(motor);
    const auto network = heatNetwork(motor, 25);
    return network ? std::string() : network.error().where;
  };
  EXPECT_EQ(missingOf([](Motor&) {}), "");
  EXPECT_EQ(missingOf([](Motor& m) { m.thermalResistanceWinding = kUnset; }),
            "motor.thermalResistanceWinding");
  EXPECT_EQ(missingOf([](Motor& m) { m.thermalResistanceHousing = kUnset; }),
            "motor.thermalResistanceHousing");
  EXPECT_EQ(missingOf([](Motor& m) { m.windingCapacity = kUnset; }), "motor.windingCapacity");
  EXPECT_EQ(missingOf([](Motor& m) { m.housingCapacity = kUnset; }), "motor.housingCapacity");
}

TEST(MotorHeat, NamesAllThatIsMissingAtOnce) {
  Project project = exampleProject();
  Motor& motor = project.active().motor;
  motor.windingCapacity = motor.housingCapacity = kUnset;
  const Evaluation evaluation = evaluate(project);
  std::vector<std::string> named;
  for (const MissingInput& missing : evaluation.missing) named.push_back(missing.where);
  const std::vector<std::string> both{"motor.windingCapacity", "motor.housingCapacity"};
  EXPECT_EQ(named, both);
  for (const Check& check : evaluation.checks) {
    if (check.id != "motor.temperature_winding") continue;
    EXPECT_EQ(check.missing, both);
  }
  EXPECT_EQ(missingForHeat(Motor{}).size(), 4u);
  motor.windingTimeConstant = 54;
  EXPECT_EQ(missingForHeat(motor).size(), 1u);
}

// IEC 60085: classes A 105 to N 200, read second-hand; R 220 on a second public page.
TEST(MotorHeat, ThermalClasses) {
  Motor motor;
  motor.windingTemperatureMax = 99;
  const std::pair<ThermalClass, double> kClasses[] = {
      {ThermalClass::Stated, 99}, {ThermalClass::A105, 105}, {ThermalClass::E120, 120},
      {ThermalClass::B130, 130},  {ThermalClass::F155, 155}, {ThermalClass::H180, 180},
      {ThermalClass::N200, 200},  {ThermalClass::R220, 220}};
  for (const auto& [insulation, limit] : kClasses) {
    motor.thermalClass = insulation;
    EXPECT_EQ(windingLimit(motor), limit);
  }
}

// A cycle of 20 steps, 6000 times over: the same periodic state, though its steps are not kept.
TEST(MotorHeat, ALongCycleSettlesAsItsPart) {
  const HeatNetwork network = heatNetwork(exampleProject().active().motor, 40).value();
  const auto loadOf = [](Eigen::Index repeats) {
    HeatLoad load{Eigen::ArrayXd(20 * repeats), Eigen::ArrayXd(20 * repeats),
                  Eigen::ArrayXd(20 * repeats)};
    for (Eigen::Index i = 0; i < 20 * repeats; ++i) {
      load.copper20[i] = i % 20 < 7 ? 30 : 2;
      load.housing[i] = 1.0 + static_cast<double>(i % 20 % 3);
      load.duration[i] = 0.1 + 0.01 * static_cast<double>(i % 5);
    }
    return load;
  };
  const PeriodicHeat part = periodicHeat(network, loadOf(1));
  const PeriodicHeat whole = periodicHeat(network, loadOf(6000));
  ASSERT_EQ(whole.winding.size(), 120'001);
  EXPECT_NEAR(whole.windingMean, part.windingMean, 1e-6);
  for (Eigen::Index i = 0; i <= 20; ++i)
    EXPECT_NEAR(whole.winding[100'000 + i], part.winding[i], 1e-6) << i;
  HeatLoad halved = loadOf(1);
  halved.copper20 /= 2;
  EXPECT_EQ(periodicHeat(network, loadOf(1), 2).windingPeak,
            periodicHeat(network, halved).windingPeak);
}

}  // namespace
}  // namespace jw
