// Drawings of stages. That bodies do not cut into each other is judged by Boost.Geometry, that they
// turn as they should by the ratios of textbooks (Willis; VDI 2157, from memory).
#include "core/studies/drive_shapes.h"

#include <cmath>
#include <numbers>

#define BOOST_GEOMETRY_NO_ROBUSTNESS  // coordinates stay as they are
#include <gtest/gtest.h>
#include <Eigen/Geometry>
#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/correct.hpp>
#include <boost/geometry/algorithms/difference.hpp>
#include <boost/geometry/algorithms/distance.hpp>
#include <boost/geometry/algorithms/intersection.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/strategies/strategies.hpp>

#include "tests/core/studies/drawn_stages.h"

namespace jw {
namespace {

using namespace drawn;

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Point>;
using Polygons = bg::model::multi_polygon<Polygon>;

constexpr double kPi = std::numbers::pi;

DriveShapes drawn(const Stage& stage) {
  auto shapes = driveShapes(stage, "transmission[0]");
  EXPECT_TRUE(shapes);
  return shapes ? *shapes : DriveShapes{};
}

const DriveLabel& labelOf(const DriveShapes& shapes, const std::string& name) {
  for (const DriveLabel& label : shapes.labels)
    if (label.name == name) return label;
  throw std::runtime_error("no label " + name);
}

Outlines placed(const DriveBody& body, double input) {
  Outlines outlines = body.outlines;
  Outlines marks;
  if (body.bent) body.bent(input, outlines, marks);
  const DrivePose pose = body.motion.at(input);
  for (Outline& outline : outlines)
    for (Eigen::Vector2d& p : outline) p = pose.centre + Eigen::Rotation2D<double>(pose.angle) * p;
  return outlines;
}

Point pointOf(const Eigen::Vector2d& p) { return {1e3 * p.x(), 1e3 * p.y()}; }  // [mm]

Polygon polygonOf(const Outline& outline) {
  Polygon polygon;
  for (const auto& p : outline) bg::append(polygon.outer(), pointOf(p));
  bg::correct(polygon);  // closed and oriented
  return polygon;
}

/// Area [mm²] in which the first outline of one body lies over that of another.
double overlap(const DriveBody& a, const DriveBody& b, double input) {
  Polygons common;
  bg::intersection(polygonOf(placed(a, input)[0]), polygonOf(placed(b, input)[0]), common);
  return bg::area(common);
}

/// Area [mm²] of a body's outline that lies outside of the inner outline of a ring about it.
double outside(const DriveBody& body, const DriveBody& ring, double input) {
  Polygons left;
  bg::difference(polygonOf(placed(body, input)[0]), polygonOf(placed(ring, input)[1]), left);
  return bg::area(left);
}

/// A body's turning from one input angle to the next, over the input's.
double rateOf(const DriveShapes& shapes, std::size_t body) {
  const DriveMotion& motion = shapes.bodies[body].motion;
  return (motion.at(1.0).angle - motion.at(0.25).angle) / 0.75;
}

constexpr double kToothArea = kPi / 2 * 2.25;  // [mm²] about that of a tooth of module 1 mm

// With 17 teeth or more a rack of 20 deg does not undercut (2/sin² 20 deg = 17.1).
TEST(DriveGears, TeethStandInEachOthersGapsWhereverTheyTurn) {
  for (const auto& [first, second] : {std::pair{20.0, 60.0}, {17.0, 17.0}, {33.0, 100.0}}) {
    const DriveShapes shapes = drawn(gearStage(first, second));
    for (int k = 0; k < 12; ++k) {
      const double input = 0.37 * k;
      EXPECT_LT(overlap(shapes.bodies[0], shapes.bodies[1], input), 0.002 * kToothArea)
          << first << " " << second << " at " << input;
    }
  }
}

// A pinion of few teeth is undercut by the rack that cuts it, so that it clears the gear's tips.
TEST(DriveGears, FewTeethAreUndercut) {
  const DriveShapes shapes = drawn(gearStage(9, 40));
  for (int k = 0; k < 12; ++k)
    EXPECT_LT(overlap(shapes.bodies[0], shapes.bodies[1], 0.11 * k), 0.002 * kToothArea);
}

// A quarter of a pitch off, teeth do cut into each other: the test above can fail.
TEST(DriveGears, WronglyTurnedTeethOverlap) {
  DriveShapes shapes = drawn(gearStage(20, 60));
  shapes.bodies[1].motion.turnStart += 0.25 * 2 * kPi / 60;
  EXPECT_GT(overlap(shapes.bodies[0], shapes.bodies[1], 0), 0.2 * kToothArea);
}

TEST(DriveGears, HelicalTeethMeshInTheTransversePlaneToo) {
  const DriveShapes shapes = drawn(gearStage(21, 50, 20 * kPi / 180));
  ASSERT_EQ(shapes.bodies.size(), 4U) << "near and far ends";
  EXPECT_TRUE(shapes.bodies[0].faint && shapes.bodies[1].faint);
  for (int k = 0; k < 8; ++k) {
    EXPECT_LT(overlap(shapes.bodies[2], shapes.bodies[3], 0.3 * k), 0.002 * kToothArea);
    EXPECT_LT(overlap(shapes.bodies[0], shapes.bodies[1], 0.3 * k), 0.002 * kToothArea) << "far";
  }
}

TEST(DriveGears, TheOutputTurnsBackByTheRatio) {
  const DriveShapes shapes = drawn(gearStage(20, 60));
  EXPECT_DOUBLE_EQ(rateOf(shapes, 0), 1);
  EXPECT_DOUBLE_EQ(rateOf(shapes, 1), -1.0 / 3);
  EXPECT_DOUBLE_EQ(shapes.ratio, -3);
}

struct SetCase {
  double sun, ring, planets;
};

class DrivePlanets : public ::testing::TestWithParam<SetCase> {};

// Bodies of a set: ring, plate, planets, sun, pins.
TEST_P(DrivePlanets, EveryPlanetMeshesWithSunAndRing) {
  const auto [sun, ring, planets] = GetParam();
  const DriveShapes shapes = drawn(planetaryStage(sun, ring, planets));
  const auto sunIndex = std::size_t(planets) + 2;
  for (int k = 0; k < 6; ++k) {
    const double input = 0.9 * k;
    for (std::size_t p = 2; p < sunIndex; ++p) {
      EXPECT_LT(overlap(shapes.bodies[p], shapes.bodies[sunIndex], input), 0.003 * kToothArea)
          << "sun, planet " << p << " at " << input;
      EXPECT_LT(outside(shapes.bodies[p], shapes.bodies[0], input), 0.003 * kToothArea)
          << "ring, planet " << p << " at " << input;
    }
  }
}

// The last two cannot be spread evenly: (z_s + z_r)/n is not whole.
INSTANTIATE_TEST_SUITE_P(Sets, DrivePlanets,
                         ::testing::Values(SetCase{20, 80, 4}, SetCase{18, 72, 3},
                                           SetCase{24, 60, 3}, SetCase{21, 83, 3},
                                           SetCase{30, 100, 4}));

TEST(DrivePlanetary, TurnsByWillis) {
  // Held ring: i = 1 + z_r/z_s = 5; planet (VDI 2157): (w_p - w_c)/(w_s - w_c) = -z_s/z_p.
  const DriveShapes shapes = drawn(planetaryStage(20, 80, 3));
  EXPECT_DOUBLE_EQ(shapes.ratio, 5);
  EXPECT_NEAR(labelOf(shapes, "carrier").rate, 0.2, 1e-15);
  EXPECT_NEAR(labelOf(shapes, "planets").rate, 0.2 - 20.0 / 30 * 0.8, 1e-15);
  EXPECT_NEAR(rateOf(shapes, 2), labelOf(shapes, "planets").rate, 1e-12);
}

TEST(DrivePlanetary, SetsInARowMultiplyTheirRatios) {
  Stage stage = planetaryStage(20, 80, 3);
  stage.planetary.sets = 2;
  stage.planetary.second = {18, 72, 3};
  const DriveShapes shapes = drawn(stage);
  EXPECT_DOUBLE_EQ(shapes.ratio, 25);
  EXPECT_EQ(shapes.groups, 2);
  // The second sun is the first carrier.
  EXPECT_NEAR(rateOf(shapes, 2 + 3 + 1 + 3 + 2 + 3), 0.2, 1e-12);
}

// A coupled set of teeth whose difference is odd has no whole planet.
TEST(DrivePlanetary, NamesEveryFieldThatIsMissingOrWrong) {
  Stage stage = stageOf(StageFamily::Planetary);
  const auto none = driveShapes(stage, "transmission[1]");
  ASSERT_FALSE(none);
  ASSERT_EQ(none.error().size(), 3U);
  EXPECT_EQ(none.error()[0].where, "transmission[1].sunTeeth");
  EXPECT_EQ(none.error()[2].where, "transmission[1].planets");
  const auto half = driveShapes(planetaryStage(20, 81, 3), "s");
  ASSERT_FALSE(half);
  EXPECT_EQ(half.error()[0].where, "s.ringTeeth");
  EXPECT_NE(half.error()[0].what.find("30.5"), std::string::npos);
  EXPECT_FALSE(driveShapes(planetaryStage(20, 22, 3), "s"));
}

TEST(DriveRollers, RollWithoutSlip) {
  const DriveShapes shapes = drawn(rollerStage());
  EXPECT_DOUBLE_EQ(shapes.ratio, 5) << "1 + d_r/d_s";
  // Rolling in the held ring: the roller's speed at the contact is zero.
  const double carrier = labelOf(shapes, "carrier").rate;
  const double roller = labelOf(shapes, "rollers").rate;
  EXPECT_NEAR(25 * carrier + 15 * roller, 0, 1e-12) << "centre at 25 mm, radius 15 mm";
  EXPECT_NEAR(25 * carrier - 15 * roller, 10, 1e-12) << "and the sun's rim, radius 10 mm";
}

TEST(DriveCycloid, EveryPinTouchesTheDiscs) {
  for (const CycloidHeld held : {CycloidHeld::Pins, CycloidHeld::OutputPins}) {
    const DriveShapes shapes = drawn(cycloidStage(held));
    const DriveBody& pins = shapes.bodies[1];
    for (const std::size_t disc : {2U, 3U}) {
      for (int k = 0; k < 7; ++k) {
        const Outline lobes = placed(shapes.bodies[disc], 0.8 * k)[0];
        for (const Outline& pin : placed(pins, 0.8 * k)) {
          const Eigen::Vector2d centre = (pin[0] + pin[18]) / 2;
          const double gap = bg::distance(pointOf(centre), polygonOf(lobes));
          EXPECT_NEAR(gap, 4, 0.02) << "mm, the pin's radius; input " << 0.8 * k;
        }
      }
    }
  }
}

// Pins held: lobes/(pins - lobes), reversed; else pins/(pins - lobes). (Willis)
TEST(DriveCycloid, TurnsByItsLobes) {
  EXPECT_DOUBLE_EQ(drawn(cycloidStage(CycloidHeld::Pins)).ratio, -11);
  const DriveShapes shapes = drawn(cycloidStage(CycloidHeld::OutputPins));
  EXPECT_DOUBLE_EQ(shapes.ratio, 12);
  EXPECT_NEAR(labelOf(shapes, "ring pins").rate, 1.0 / 12, 1e-15);
}

// A pin of radius r in a hole of radius r + e whose middle is e away touches it from inside.
TEST(DriveCycloid, OutputPinsTouchTheirHoles) {
  const DriveShapes shapes = drawn(cycloidStage(CycloidHeld::Pins));
  for (const std::size_t disc : {2U, 3U}) {
    for (const double input : {0.0, 1.3, 4.0}) {
      const Outlines holes = placed(shapes.bodies[disc], input);
      const Outlines pins = placed(shapes.bodies[4], input);
      for (std::size_t p = 0; p < 6; ++p) {
        const Eigen::Vector2d hole = (holes[p + 1][0] + holes[p + 1][18]) / 2;
        const Eigen::Vector2d pin = (pins[p][0] + pins[p][18]) / 2;
        EXPECT_NEAR((hole - pin).norm(), 1.5e-3, 1e-9) << disc << " " << input << " " << p;
      }
    }
  }
}

TEST(DriveStrainWave, TeethMeshAtTheLobesAndAreClearBetween) {
  for (const auto& [flex, circular] : {std::pair{100.0, 102.0}, {60.0, 62.0}, {160.0, 162.0}}) {
    for (const auto held : {StrainWaveHeld::CircularSpline, StrainWaveHeld::Flexspline}) {
      const DriveShapes shapes = drawn(strainStage(flex, circular, held));
      for (const double input : {0.0, 0.4, 1.9, 5.0})
        EXPECT_LT(outside(shapes.bodies[1], shapes.bodies[0], input), 0.03 * kToothArea)
            << flex << " at " << input;
    }
  }
}

TEST(DriveStrainWave, TurnsByTheDifferenceOfTeeth) {
  // z_f/(z_c - z_f) reversed, z_c/(z_c - z_f) (Willis).
  EXPECT_DOUBLE_EQ(drawn(strainStage(200, 202, StrainWaveHeld::CircularSpline)).ratio, -100);
  EXPECT_DOUBLE_EQ(drawn(strainStage(200, 202, StrainWaveHeld::Flexspline)).ratio, 101);
}

// After one turn of the generator the flexspline has moved by the difference of teeth.
TEST(DriveStrainWave, TheFlexsplineCreepsBackByTwoTeethATurn) {
  const DriveShapes shapes = drawn(strainStage(100, 102, StrainWaveHeld::CircularSpline));
  const Outline before = placed(shapes.bodies[1], 0)[0];
  const Outline after = placed(shapes.bodies[1], 2 * kPi)[0];
  const std::size_t tooth = 4 * 2;  // four points each
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR((after[tooth + i] - before[i]).norm(), 0, 1e-9);
}

TEST(DriveStrainWave, SaysHowMuchTheDeflectionIsExaggerated) {
  const DriveShapes shapes = drawn(strainStage(200, 202, StrainWaveHeld::CircularSpline));
  ASSERT_EQ(shapes.remarks.size(), 1U);
  EXPECT_EQ(shapes.remarks[0], "Deflection drawn 5 times as large.");
}

TEST(DriveBelt, TeethOfTheBeltStandInTheGroovesOfBothPulleys) {
  for (const auto& [first, second] : {std::pair{20.0, 40.0}, {25.0, 36.0}, {48.0, 18.0}}) {
    const DriveShapes shapes = drawn(beltStage(first, second));
    for (const double input : {0.0, 0.21, 1.7, 9.0}) {
      for (const std::size_t pulley : {0U, 1U}) {
        Polygons outsideBelt;
        bg::difference(polygonOf(placed(shapes.bodies[pulley], input)[0]),
                       polygonOf(placed(shapes.bodies[2], input)[1]), outsideBelt);
        // A tooth of the belt is about 2 by 1 mm. Lands of belt and pulley are chords.
        EXPECT_LT(bg::area(outsideBelt), 0.12) << first << " " << second << " " << pulley;
      }
    }
  }
}

TEST(DriveBelt, HasTheLengthOfItsTeeth) {
  const DriveShapes shapes = drawn(beltStage(20, 40));
  EXPECT_DOUBLE_EQ(shapes.ratio, 2);
  const std::size_t teeth = placed(shapes.bodies[2], 0)[1].size() / 5;
  // L = 2a + p(z1 + z2)/2 + (p(z2 - z1)/2pi)²/a, nearly (textbooks of machine elements, from
  // memory).
  const double nearly = (220 + 150 + std::pow(5 * 20 / (2 * kPi), 2) / 110) / 5;
  EXPECT_EQ(double(teeth), std::round(nearly));
}

TEST(DriveSchematics, TurnWithTheGivenRatio) {
  EXPECT_DOUBLE_EQ(rateOf(drawn(ratioStage(50, true)), 1), -0.02);
  EXPECT_DOUBLE_EQ(rateOf(drawn(ratioStage(50, false)), 1), 0.02);
  EXPECT_FALSE(driveShapes(stageOf(StageFamily::GivenRatio), "s"));
  EXPECT_DOUBLE_EQ(drawn(stageOf(StageFamily::Coupling)).ratio, 1);
}

// Whatever is typed, what is drawn is finite and its labels mean parts that are there.
TEST(DriveShapesTest, AreFiniteAndInsideTheirBounds) {
  std::vector<Stage> stages{planetaryStage(20, 80, 3),
                            planetaryStage(3, 9, 1),
                            planetaryStage(12, 300, 7),
                            gearStage(3, 200),
                            gearStage(40, 20, -0.6),
                            strainStage(20, 22, StrainWaveHeld::Flexspline),
                            strainStage(300, 304, StrainWaveHeld::CircularSpline),
                            beltStage(12, 30),
                            cycloidStage(CycloidHeld::Pins),
                            rollerStage(),
                            ratioStage(3, false),
                            stageOf(StageFamily::Coupling)};
  for (const Stage& stage : stages) {
    SCOPED_TRACE(int(stage.family));
    const DriveShapes shapes = drawn(stage);
    ASSERT_FALSE(shapes.bodies.empty());
    const Eigen::Vector2d slack = 0.03 * (shapes.bounds.high - shapes.bounds.low);
    for (const double input : {0.0, 1.0, -40.0}) {
      for (const DriveBody& body : shapes.bodies)
        for (const Outline& outline : placed(body, input))
          for (const Eigen::Vector2d& p : outline) {
            ASSERT_TRUE(p.allFinite());
            ASSERT_TRUE(((p + slack).array() >= shapes.bounds.low.array()).all());
            ASSERT_TRUE(((p - slack).array() <= shapes.bounds.high.array()).all());
          }
    }
    for (const DriveLabel& label : shapes.labels)
      for (const std::size_t body : label.bodies) EXPECT_LT(body, shapes.bodies.size());
  }
}

}  // namespace
}  // namespace jw
