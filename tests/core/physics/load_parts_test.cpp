// The parts of the load: masses with offset, direction of gravity, friction at rest, extension
// spring, tables of external torque.
#include <cmath>
#include <numbers>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <Eigen/Geometry>

#include "core/physics/extension_spring.h"
#include "core/physics/external_torque.h"
#include "core/physics/friction_curve.h"
#include "core/physics/holding.h"
#include "core/physics/load_input.h"
#include "core/physics/load_torque.h"
#include "core/physics/rolling_bearing.h"
#include "tests/core/physics/hand_cycle.h"

namespace jw {
namespace {

using Eigen::Vector3d;

LoadMass body(double mass, double x, double y, double z, double inertia = 0) {
  LoadMass one;
  one.mass = mass, one.x = x, one.y = y, one.z = z, one.inertia = inertia;
  return one;
}

Load leaningLoad() {
  Load load;
  load.inertia = 0;
  load.masses = {body(2, 0.4, 0.1, 0.05, 0.01), body(3, -0.2, 0.3, -0.2, 0.02)};
  load.mounting = Mounting::Direction;
  load.downX = 0.4, load.downY = -1.2, load.downZ = 0.7;
  return load;
}

Cycle oneSegment() {
  Cycle source;
  source.segments.resize(1);
  return source;
}

// Own, by brute force: minus the moment of the weights about the axis, bodies turned in space.
TEST(CarriedMasses, GravityTorqueIsTheWeightsMoment) {
  const Load load = leaningLoad();
  const Vector3d down = 9.80665 * Vector3d(0.4, -1.2, 0.7).normalized();
  for (double q = -4; q < 4; q += 0.37) {
    Vector3d moment = Vector3d::Zero();
    for (const LoadMass& one : load.masses) {
      const Vector3d at = Eigen::AngleAxisd(q, Vector3d::UnitZ()) * Vector3d(one.x, one.y, one.z);
      moment += at.cross(one.mass * down);
    }
    EXPECT_NEAR(staticTorque(load, q, 0), -moment.z(), 1e-12);
  }
}

// Steiner's rule by hand: 0.01 + 2 (0.16 + 0.01) + 0.02 + 3 (0.04 + 0.09) = 0.76 kg·m².
TEST(CarriedMasses, InertiaIsOwnPlusMassTimesSquaredDistance) {
  Load load = leaningLoad();
  EXPECT_NEAR(loadInertia(load, 0), 0.76, 1e-15);
  load.inertia = kUnset;  // the masses say it all
  EXPECT_TRUE(loadInputErrors(load).empty());
  EXPECT_NEAR(loadInertia(load, 0), 0.76, 1e-15);
}

// A direction of any length that lies as a tilt does gives the same torque and bearing forces.
TEST(CarriedMasses, DirectionEqualsTilt) {
  for (const double tilt : {-2.0, 0.0, 0.6, 1.5}) {
    Load tilted = leaningLoad();
    tilted.mounting = Mounting::Tilt;
    tilted.axisTilt = tilt;
    Load directed = tilted;
    directed.mounting = Mounting::Direction;
    directed.downX = 0, directed.downY = -7 * std::cos(tilt), directed.downZ = -7 * std::sin(tilt);
    SampledCycle cycle = oneInstant(1.1, -2);
    cycle.angle[0] = 0.8;
    EXPECT_NEAR(loadTorque(cycle, oneSegment(), tilted).total[0],
                loadTorque(cycle, oneSegment(), directed).total[0], 1e-12);
    const auto a = outputBearingForces(cycle, oneSegment(), tilted);
    const auto b = outputBearingForces(cycle, oneSegment(), directed);
    EXPECT_NEAR(a.radial[0], b.radial[0], 1e-12);
    EXPECT_NEAR(a.axial[0], b.axial[0], 1e-12);
    EXPECT_GE(a.moment[0], b.moment[0] - 1e-12);  // a tilt leaves the side open: the worse counts
  }
}

// Own, by brute force: forces m (g - a) of the bodies, a by second differences, at their places.
TEST(CarriedMasses, BearingMomentByCrossProducts) {
  const Load load = leaningLoad();
  const double q = 0.4, speed = 1.3, acceleration = -2.1, step = 1e-4;
  Vector3d force = Vector3d::Zero(), moment = Vector3d::Zero();
  for (const LoadMass& one : load.masses) {
    const auto place = [&](double t) -> Vector3d {
      const double angle = q + speed * t + acceleration * t * t / 2;
      return Eigen::AngleAxisd(angle, Vector3d::UnitZ()) * Vector3d(one.x, one.y, one.z);
    };
    const Vector3d pulls = one.mass * (9.80665 * Vector3d(0.4, -1.2, 0.7).normalized() -
                                       (place(step) - 2 * place(0) + place(-step)) / (step * step));
    force += pulls;
    moment += place(0).cross(pulls);
  }
  SampledCycle cycle = oneInstant(speed, acceleration);
  cycle.angle[0] = q;
  const auto found = outputBearingForces(cycle, oneSegment(), load);
  EXPECT_NEAR(found.radial[0], force.head<2>().norm(), 1e-6);
  EXPECT_NEAR(found.axial[0], std::abs(force.z()), 1e-9);
  EXPECT_NEAR(found.moment[0], moment.head<2>().norm(), 1e-6);
}

// The formula by hand: 2 + (5 - 2)/e at the Stribeck speed, plus 0.5 per rad/s; nothing at rest;
// dry and viscous friction far above it.
TEST(FrictionCurve, FallsFromRestToDryFriction) {
  Load load;
  load.coulombFriction = 2, load.viscousFriction = 0.5;
  load.breakawayFriction = 5, load.stribeckSpeed = 0.1;
  const Eigen::Array4d speed(0, 0.1, -0.1, 3);
  const Eigen::ArrayXd friction = frictionTorque(load, speed);
  EXPECT_EQ(friction[0], 0);
  EXPECT_NEAR(friction[1], 2 + 3 / std::numbers::e + 0.05, 1e-12);
  EXPECT_NEAR(friction[2], -friction[1], 1e-12);
  EXPECT_NEAR(friction[3], 3.5, 1e-12);
  EXPECT_NEAR(frictionTorque(load, Eigen::Array<double, 1, 1>(1e-9))[0], 5, 1e-6);
}

// Virtual work: the torque is the slope of the energy F_0 s + k s²/2 stored at stretch s; lengths
// from the eyes' places in the plane. Loose where shorter than the free length.
TEST(ExtensionSpring, TorqueIsTheSlopeOfTheStoredEnergy) {
  const ExtensionSpring spring{800, 30, 0.25, 0.12, 0.3, 0.4};
  const auto length = [&](double q) {
    return (Eigen::Vector2d(0.12 * std::cos(q + 0.4), 0.12 * std::sin(q + 0.4)) -
            Eigen::Vector2d(0.3, 0))
        .norm();
  };
  const auto energy = [&](double q) {
    const double stretch = std::max(0.0, length(q) - 0.25);
    return 30 * stretch + 400 * stretch * stretch;
  };
  int loose = 0;
  for (double q = -3; q < 3.2; q += 0.11) {
    const double step = 1e-5, slope = (energy(q + step) - energy(q - step)) / (2 * step);
    EXPECT_NEAR(spring.lengthAt(q), length(q), 1e-14);
    EXPECT_NEAR(spring.torqueAt(q), slope, 1e-6) << q;
    loose += spring.pullAt(q) == 0 ? 1 : 0;
  }
  EXPECT_GT(loose, 3);
}

// Own, by a search of 40 000 steps: with an extension spring no closed form is at hand.
TEST(ExtensionSpring, WorstPoseIsFound) {
  std::mt19937 random(11);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int k = 0; k < 60; ++k) {
    Load load;
    load.linkMass = between(0, 10), load.linkDistance = between(0, 0.8);
    load.springStiffness = k % 3 == 0 ? between(0, 20) : 0;
    load.extensionRate = between(100, 4000), load.extensionPreload = between(0, 50);
    load.extensionFreeLength = between(0, 0.25), load.extensionArm = between(0.02, 0.2);
    load.extensionPost = between(0.05, 0.3), load.extensionPostAngle = between(-3, 3);
    const double low = between(-8, 4), high = low + between(0.1, k % 2 == 0 ? 3 : 16);
    double worst = 0;
    for (int i = 0; i <= 40'000; ++i) {
      const double q = low + (high - low) * i / 40'000;
      worst = std::max(worst, std::abs(staticTorque(load, q, 0)));
    }
    const StaticPose found = worstStaticPose(load, 0, low, high);
    EXPECT_GE(std::abs(found.torque), worst * (1 - 1e-9)) << k;
    EXPECT_LE(std::abs(found.torque), worst * (1 + 1e-4)) << k;
    EXPECT_GE(found.angle, low);
    EXPECT_LE(found.angle, high);
  }
}

SampledCycle atTimes(const Eigen::ArrayXd& time) {
  SampledCycle cycle = handCycle(0 * time, 0 * time, 0 * time + 1);
  cycle.time = time;
  cycle.angle = 2 * time;
  return cycle;
}

// Straight lines by hand; end values beyond.
TEST(ExternalTorque, TableOverTimeAndOverAngle) {
  Load load;
  load.inertia = 0;
  load.externalTorque = 1;
  load.externalOver = ExternalOver::Time;
  load.externalTable = "1 s 10 N*m; 3 20\n500 ms 0 N*m";
  const SampledCycle cycle = atTimes(Eigen::Array4d(0, 0.75, 2, 9));
  const Eigen::ArrayXd over = loadTorque(cycle, oneSegment(), load).external;
  EXPECT_TRUE(over.isApprox(Eigen::Array4d(1, 6, 16, 21)));
  load.externalOver = ExternalOver::Angle;
  load.externalTable = "0 rad 0 N*m; 2 rad 8 N*m";
  EXPECT_TRUE(loadTorque(cycle, oneSegment(), load).external.isApprox(Eigen::Array4d(1, 7, 9, 9)));
  load.externalOver = ExternalOver::None;
  EXPECT_TRUE((loadTorque(cycle, oneSegment(), load).external == 1).all());
}

TEST(ExternalTorque, RowsOfMotionTablesBringTheirOwn) {
  Cycle source;
  source.segments.resize(2);
  source.segments[1].law = MotionLaw::Table;
  source.segments[1].table.torque = {5, -6};
  SampledCycle cycle = atTimes(Eigen::ArrayXd::LinSpaced(6, 0, 5));
  cycle.segment << 0, 1, 1, 1, 1, 0;  // the table runs twice
  Load load;
  load.inertia = 0;
  const Eigen::ArrayXd external = loadTorque(cycle, source, load).external;
  Eigen::ArrayXd expected(6);
  expected << 0, 5, -6, 5, -6, 0;
  EXPECT_TRUE((external == expected).all());
}

TEST(PointTable, SaysWhichPairIsWrong) {
  Load load;
  load.externalOver = ExternalOver::Time;
  const auto errorOf = [&](const char* text) {
    load.externalTable = text;
    const auto table = externalTable(load);
    return table ? InputError{} : table.error();
  };
  EXPECT_NE(errorOf("0 s 1 N*m; 2 s 3 J").what.find("'2 s 3 J'"), std::string::npos);
  EXPECT_NE(errorOf("0 s 1; 5 deg 3").what.find("'5 deg 3'"), std::string::npos);
  EXPECT_NE(errorOf("1 s 1; 1000 ms 2").what.find("this time comes twice"), std::string::npos);
  EXPECT_NE(errorOf("0 s 1e30").what.find("torque has to be"), std::string::npos);
  EXPECT_NE(errorOf("0.1").remedy.find("0.2 s 5 N*m"), std::string::npos);
  EXPECT_EQ(errorOf("0 1; 0.5 nan").what.empty(), false);
  EXPECT_EQ(errorOf(" ; \n"), InputError{});
}

// A thousand bare pairs, as a computed trajectory has them.
TEST(PointTable, ReadsLongTables) {
  Load load;
  load.externalOver = ExternalOver::Time;
  for (int k = 0; k < 1000; ++k) load.externalTable += fmt::format("{} {};", k * 0.002, k * 0.5);
  const auto table = externalTable(load);
  ASSERT_TRUE(table);
  EXPECT_EQ(table->x.size(), 1000U);
  EXPECT_NEAR(table->valueAt(1.001), 250.25, 1e-9);
}

TEST(LoadInput, NamesAllThatIsMissing) {
  Load load;
  load.masses.resize(2);
  load.masses[0].mass = 1;
  load.linkMass = 1;
  load.breakawayFriction = 2;
  load.extensionRate = 100;
  load.mounting = Mounting::Direction;
  load.downY = 0;
  load.externalOver = ExternalOver::Time;
  load.externalTable = "x";
  std::vector<std::string> paths;
  for (const InputError& error : loadInputErrors(load)) paths.push_back(error.where);
  EXPECT_EQ(paths, (std::vector<std::string>{"load.inertia", "load.masses[1].mass", "load.downY",
                                             "load.stribeckSpeed", "load.extensionFreeLength",
                                             "load.extensionArm", "load.extensionPost",
                                             "load.externalTable"}));
}

TEST(LoadInput, RemarksOnSlips) {
  Load load;
  load.coulombFriction = 3, load.breakawayFriction = 1;
  load.stopLow = 1, load.stopHigh = 0;
  load.externalOver = ExternalOver::Angle;
  load.extensionRate = 1, load.extensionFreeLength = 1;
  load.extensionArm = 0.1, load.extensionPost = 0.1;
  EXPECT_EQ(loadRemarks(load, oneInstant(0, 0)).size(), 4U);
  EXPECT_TRUE(loadRemarks(Load{}, oneInstant(0, 0)).empty());
}

}  // namespace
}  // namespace jw
