// Strain-wave gears: ratios from teeth, both parts held.
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/strain_wave.h"
#include "tests/core/physics/conditions_support.h"

namespace jw {
namespace {

StrainWaveGeometry geometryOf(double flex, double circular, StrainWaveHeld held) {
  return {held, flex, circular};
}

constexpr auto kCircularHeld = StrainWaveHeld::CircularSpline;
constexpr auto kFlexHeld = StrainWaveHeld::Flexspline;

// 200 and 202 teeth: -100 with the circular spline held (z_f/(z_c - z_f), from memory), +101 with
// the flexspline held (z_c/(z_c - z_f), read second-hand in an article on shaft stiffness tests).
TEST(PublishedStrainWave, RatioAndSense) {
  EXPECT_EQ(*strainWaveRatio(geometryOf(200, 202, kCircularHeld)), 100);
  EXPECT_TRUE(strainWaveReverses(geometryOf(200, 202, kCircularHeld)));
  EXPECT_EQ(*strainWaveRatio(geometryOf(200, 202, kFlexHeld)), 101);
  EXPECT_FALSE(strainWaveReverses(geometryOf(200, 202, kFlexHeld)));
}

// One turn of the generator moves the flexspline back by the tooth difference (read second-hand in
// the trade press): 2/200 of a turn, 3.6 deg.
TEST(PublishedStrainWave, OneTurnMovesTwoTeeth) {
  const auto speeds = strainWaveSpeeds(geometryOf(200, 202, kCircularHeld), 360);
  EXPECT_NEAR(speeds->flexspline, -3.6, 1e-12);
  EXPECT_EQ(speeds->circularSpline, 0);
  EXPECT_EQ(speeds->generator, 360);
}

TEST(StrainWave, RatioOfSpeedsIsRatioOfTeeth) {
  for (const auto held : {kCircularHeld, kFlexHeld}) {
    for (const double flex : {60.0, 100.0, 157.0, 320.0}) {
      const StrainWaveGeometry geometry = geometryOf(flex, flex + 2, held);
      const StrainWaveSpeeds speeds = *strainWaveSpeeds(geometry, 1);
      const double output = speeds.flexspline + speeds.circularSpline;  // one of them is held
      EXPECT_NEAR(1 / output, *strainWaveRatio(geometry) * (strainWaveReverses(geometry) ? -1 : 1),
                  1e-10);
    }
  }
}

// Own: with the flexspline held, two lobes pass a place of it twice in a turn of the generator;
// with it turning back at a hundredth, 2.02 times.
TEST(StrainWave, BendingsOfTheFlexspline) {
  const double turn = 2 * std::numbers::pi;
  EXPECT_NEAR(*flexsplineBendings(geometryOf(200, 202, kFlexHeld), turn), 2, 1e-12);
  EXPECT_NEAR(*flexsplineBendings(geometryOf(200, 202, kCircularHeld), -turn), 2.02, 1e-12);
}

TEST(StrainWave, TwoLobesWantMultiplesOfTwo) {
  EXPECT_TRUE(allHold(strainWaveConditions(geometryOf(200, 202, kFlexHeld))));
  EXPECT_TRUE(allHold(strainWaveConditions(geometryOf(200, 204, kFlexHeld))));
  for (const double circular : {201.0, 203.0, 200.0, 198.0}) {
    EXPECT_FALSE(allHold(strainWaveConditions(geometryOf(200, circular, kFlexHeld)))) << circular;
  }
  const auto odd = strainWaveConditions(geometryOf(200, 203, kFlexHeld));
  EXPECT_EQ(conditionWith(odd, "multiple of two").demand, 1);
}

TEST(StrainWave, NothingFromWhatIsNotGiven) {
  EXPECT_FALSE(strainWaveRatio({}));
  EXPECT_FALSE(strainWaveRatio(geometryOf(200, 200, kFlexHeld)));
  EXPECT_FALSE(strainWaveRatio(geometryOf(202, 200, kCircularHeld)));
  EXPECT_FALSE(strainWaveSpeeds({}, 1));
  EXPECT_FALSE(flexsplineBendings({}, 1));
  EXPECT_TRUE(strainWaveConditions({}).empty());
}

}  // namespace
}  // namespace jw
