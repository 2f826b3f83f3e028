// What a cycle asks of the supply, by hand numbers.
#include <cmath>

#include <gtest/gtest.h>

#include "core/physics/supply_flow.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

/// Three samples, so two steps of one second: +200 -> 100 -> -40 W.
SampledCycle twoSteps() {
  const Eigen::ArrayXd zero = Eigen::ArrayXd::Zero(3);
  Eigen::ArrayXd weight(3);
  weight << 0.5, 1, 0.5;
  return handCycle(zero, zero, weight);
}

MotorDemand demandOf(double a, double b, double c) {
  MotorDemand demand;
  demand.supplyPower.resize(3);
  demand.supplyPower << a, b, c;
  return demand;
}

Supply source() {
  Supply supply;
  supply.voltage = 50;
  supply.busCapacitance = 0.1;
  return supply;
}

TEST(SupplyFlow, DrawnEnergyPeakAndMean) {
  const auto flow = supplyFlow(source(), twoSteps(), demandOf(200, 100, 0));
  ASSERT_TRUE(flow.has_value());
  EXPECT_NEAR(flow->energy.drawn, 150 + 50, 1e-12);
  EXPECT_EQ(flow->powerPeak, 200);
  EXPECT_NEAR(flow->powerMean, 100, 1e-12);
  EXPECT_EQ(flow->voltageLowest, 50);
  EXPECT_TRUE(std::isnan(flow->chargePerShift));
}

// 60 J come back in the second step: 0.1 F rises from 50 V to sqrt(2500 + 1200); the first step
// then draws 60 J less.
TEST(SupplyFlow, ReturnedEnergyIsUsedByTheNextCycle) {
  const auto flow = supplyFlow(source(), twoSteps(), demandOf(200, 100, -220));
  ASSERT_TRUE(flow.has_value());
  EXPECT_NEAR(flow->energy.voltagePeak, std::sqrt(3700), 1e-9);
  EXPECT_NEAR(flow->energy.drawn, 90, 1e-9);
}

// Net 45 W of 50 V for an hour: 0.9 A, 3240 C.
TEST(SupplyFlow, BatteryChargeOverAShift) {
  Supply supply = source();
  supply.takesBack = true;
  supply.busCapacitance = kUnset;
  supply.shift = 3600;
  const auto flow = supplyFlow(supply, twoSteps(), demandOf(200, 100, -220));
  ASSERT_TRUE(flow.has_value());
  EXPECT_NEAR(flow->energy.returned, 60, 1e-12);
  EXPECT_NEAR(flow->powerMean, 45, 1e-12);
  EXPECT_NEAR(flow->chargePerShift, 3240, 1e-9);
}

// By hand: 96 W for 3600 s through 1 ohm from 50 V: V = 25 + sqrt(625 - 96) = 48 V and 2 A, so
// 7200 C and 2 A x 50 V = 96 W + 4 W.
TEST(SupplyFlow, ChargeAndEnergyCountTheSourceResistance) {
  Supply supply = source();
  supply.sourceResistance = 1;
  supply.shift = 3600;
  const auto flow = supplyFlow(supply, twoSteps(), demandOf(96, 96, 96));
  ASSERT_TRUE(flow.has_value());
  EXPECT_NEAR(flow->voltageLowest, 48, 1e-12);
  EXPECT_NEAR(flow->powerMean, 100, 1e-12);
  EXPECT_NEAR(flow->energy.sourceLoss, 4 * 2, 1e-12);
  EXPECT_NEAR(flow->chargePerShift, 7200, 1e-9);
}

TEST(SupplyFlow, SagAtTheHighestPower) {
  Supply supply = source();
  supply.sourceResistance = 2;
  EXPECT_NEAR(mostPower(supply), 312.5, 1e-12);
  const auto flow = supplyFlow(supply, twoSteps(), demandOf(200, 100, 0));
  EXPECT_NEAR(flow->voltageLowest, 25 + 15, 1e-12);  // 40 V, 5 A, 10 V lost
  EXPECT_TRUE(std::isnan(supplyFlow(supply, twoSteps(), demandOf(313, 100, 0))->voltageLowest));
  supply.sourceResistance = 0;
  EXPECT_TRUE(std::isinf(mostPower(supply)));
}

TEST(SupplyFlow, NamesWhatIsMissing) {
  Supply supply = source();
  supply.busCapacitance = kUnset;
  const auto flow = supplyFlow(supply, twoSteps(), demandOf(200, 100, -220));
  ASSERT_FALSE(flow.has_value());
  EXPECT_EQ(flow.error().where, "supply.busCapacitance");
  EXPECT_TRUE(supplyFlow(supply, twoSteps(), demandOf(200, 100, 0)).has_value());
  supply.voltage = kUnset;
  EXPECT_EQ(supplyFlow(supply, twoSteps(), demandOf(1, 1, 1)).error().where, "supply.voltage");
}

}  // namespace
}  // namespace jw
