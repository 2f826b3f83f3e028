// The worst pose to hold against a fine search over the travel, with random loads.
#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/holding.h"
#include "core/physics/load_torque.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

StaticPose worstBySearch(const Load& load, double payload, double low, double high) {
  StaticPose worst{low, staticTorque(load, low, payload)};
  constexpr int kSteps = 40'000;
  for (int k = 0; k <= kSteps; ++k) {
    const double angle = low + (high - low) * k / kSteps;
    const double torque = staticTorque(load, angle, payload);
    if (std::abs(torque) > std::abs(worst.torque)) worst = {angle, torque};
  }
  return worst;
}

Load randomLoad(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Load load;
  load.linkMass = between(0, 20);
  load.linkDistance = between(0, 1);
  load.linkAngle = between(-kPi, kPi);
  load.payloadDistance = between(0, 1);
  load.payloadAngle = between(-kPi, kPi);
  load.axisTilt = between(-kPi, kPi);
  if (between(0, 1) < 0.6) {
    load.springStiffness = between(0, 1) < 0.5 ? between(0, 15) : between(0, 300);
    load.springAngle = between(-kPi, kPi);
    load.balanceTorque = between(-50, 50);
  }
  return load;
}

TEST(WorstStaticPose, NeverMissesAWorsePose) {
  std::mt19937 random(7);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int k = 0; k < 300; ++k) {
    const Load load = randomLoad(random);
    const double payload = between(0, 10);
    const double low = between(-20, 20);
    const double high = low + between(0, 1) * (k % 3 == 0 ? 30 : 4);
    const StaticPose found = worstStaticPose(load, payload, low, high);
    const StaticPose searched = worstBySearch(load, payload, low, high);
    EXPECT_GE(std::abs(found.torque), std::abs(searched.torque) - 1e-9) << k;
    // The search misses a smooth peak by at most M (step/2)²/2.
    EXPECT_LE(std::abs(found.torque), std::abs(searched.torque) + 5e-5) << k;
    EXPECT_GE(found.angle, low - 1e-12);
    EXPECT_LE(found.angle, high + 1e-12);
    EXPECT_EQ(found.torque, staticTorque(load, found.angle, payload));
  }
}

TEST(WorstStaticPose, HorizontalIfItIsInTheTravel) {
  Load load;
  load.linkMass = 2;
  load.linkDistance = 0.5;
  EXPECT_NEAR(worstStaticPose(load, 0, -1, 2).angle, 0, 1e-12);
  EXPECT_NEAR(worstStaticPose(load, 0, -1, 2).torque, 9.80665, 1e-12);
  EXPECT_EQ(worstStaticPose(load, 0, 0.3, 1).angle, 0.3);
  EXPECT_NEAR(std::abs(worstStaticPose(load, 0, 2, 4).torque), 9.80665, 1e-12);
}

TEST(WorstStaticPose, NoLoadNoTorque) { EXPECT_EQ(worstStaticPose(Load{}, 0, -1, 1).torque, 0); }

}  // namespace
}  // namespace jw
