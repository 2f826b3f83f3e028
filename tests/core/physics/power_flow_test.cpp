#include "core/physics/power_flow.h"

#include <numeric>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/motion/cycle_reading.h"

namespace jw {
namespace {

Segment move(double travel, double duration, double payload) {
  Segment segment;
  segment.law = MotionLaw::ModifiedSine;
  segment.travel = travel;
  segment.duration = duration;
  segment.payloadMass = payload;
  return segment;
}

Stage stage(double ratio, double efficiency, double inertia) {
  Stage s;
  s.ratio = ratio;
  s.efficiency = efficiency;
  s.inertia = inertia;
  s.ratedTorque = 50;
  return s;
}

void giveActuator(Variant& variant) {
  variant.supply.voltage = 48;
  variant.controller.idlePower = 4;
  variant.controller.lossResistance = 0.02;
  variant.controller.currentPeak = 20;
  variant.motor.torqueConstant = 0.09;
  variant.motor.resistance = 0.5;
  variant.motor.inductance = 4e-4;
  variant.motor.rotorInertia = 4e-5;
  variant.motor.dragTorque = 0.01;
  variant.motor.polePairs = 7;
  variant.transmission = {stage(1.5, 0.96, 1e-5), stage(80, 0.75, 9e-6)};
  variant.transmission[1].dragTorque = 0.02;
}

// Out and back with the same load, so that lifting and speeding up return what they take.
Project closedProject() {
  Project project;
  project.load.inertia = 0.8;
  project.load.payloadMass = 5;
  project.load.payloadDistance = 0.6;
  project.load.coulombFriction = 2;
  project.load.viscousFriction = 0.7;
  project.cycle.segments = {move(1.2, 1.1, 5), move(-1.2, 0.9, 5)};
  giveActuator(project.active());
  return project;
}

class PowerFlow : public ::testing::Test {
 protected:
  void SetUp() override {
    evaluation = evaluate(closedProject());
    ASSERT_TRUE(evaluation.demand);
    flow = powerFlow(*evaluation.cycle, *evaluation.load, *evaluation.chain, *evaluation.demand);
  }
  Evaluation evaluation;
  std::vector<PowerStation> flow;
};

TEST_F(PowerFlow, HasAStationForEachPart) {
  ASSERT_EQ(flow.size(), 6U);
  EXPECT_EQ(flow.front().kind, StationKind::Supply);
  EXPECT_EQ(flow[4].stage, 1);
  EXPECT_EQ(flow.back().kind, StationKind::Joint);
}

// First law over a closed cycle: nothing stays stored, so the supply gives just what is lost on the
// way and at the joint; and of the joint's work only friction remains (conservation of energy).
TEST_F(PowerFlow, BalancesOverAClosedCycle) {
  const SampledCycle& cycle = *evaluation.cycle;
  double lost = 0;
  for (const PowerStation& station : flow) {
    const StationPower mean = meanPower(cycle, station);
    EXPECT_NEAR(mean.stored, 0, 1e-6 * meanPower(cycle, flow.front()).out);
    lost += mean.loss;
  }
  const double friction = cycleMean(cycle, evaluation.load->friction * cycle.speed);
  EXPECT_NEAR(meanPower(cycle, flow.back()).in, friction, 1e-6 * friction);
  const double given = meanPower(cycle, flow.front()).out;
  EXPECT_NEAR(given, lost + friction, 1e-6 * given);
}

// Second law: no station makes energy at any instant.
TEST_F(PowerFlow, NeverGainsPower) {
  for (const PowerStation& station : flow) EXPECT_GE(station.loss.minCoeff(), -1e-9);
}

// The rotor takes up J alpha omega, the rate of its kinetic energy (Newton).
TEST_F(PowerFlow, RotorStoresItsKineticEnergy) {
  const Eigen::ArrayXd rate =
      4e-5 * evaluation.chain->motorAcceleration * evaluation.chain->motorSpeed;
  EXPECT_LT((flow[2].stored - rate).abs().maxCoeff(), 1e-9 * rate.abs().maxCoeff());
}

TEST_F(PowerFlow, WhatLeavesAStationEntersTheNext) {
  const double time = 0.3 * evaluation.cycle->period;
  for (std::size_t i = 1; i < flow.size(); ++i)
    EXPECT_DOUBLE_EQ(powerAt(*evaluation.cycle, flow[i - 1], time).out,
                     powerAt(*evaluation.cycle, flow[i], time).in);
}

}  // namespace
}  // namespace jw
