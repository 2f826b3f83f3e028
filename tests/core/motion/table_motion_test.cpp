#include "core/motion/table_motion.h"

#include <cmath>

#include <gtest/gtest.h>

namespace jw {
namespace {

MotionTable sineTable(int rows) {
  MotionTable table;
  for (int i = 0; i < rows; ++i) {
    table.time.push_back(i / (rows - 1.0));
    table.angle.push_back(std::sin(2 * table.time.back()));
  }
  return table;
}

TEST(TableMotion, KeepsTheColumnsThatAreGiven) {
  MotionTable table = sineTable(20);
  table.speed = std::vector<double>(20, 7);
  table.acceleration = std::vector<double>(20, 8);
  const TableMotion motion = tableMotion(table, kUnset);
  EXPECT_EQ(motion.speed, table.speed);
  EXPECT_EQ(motion.acceleration, table.acceleration);
  EXPECT_EQ(motion.window, 0);
}

TEST(TableMotion, FindsSpeedAndAccelerationFromTheAngle) {
  const MotionTable table = sineTable(1001);
  const TableMotion motion = tableMotion(table, kUnset);
  for (std::size_t i = 0; i < table.time.size(); ++i) {
    EXPECT_NEAR(motion.speed[i], 2 * std::cos(2 * table.time[i]), 3e-6);
    EXPECT_NEAR(motion.acceleration[i], -4 * std::sin(2 * table.time[i]), 2e-3);
  }
  EXPECT_LT(motion.angleResidual, 1e-8);
}

TEST(TableMotion, DifferentiatesAGivenSpeed) {
  MotionTable table = sineTable(1001);
  for (const double t : table.time) table.speed.push_back(2 * std::cos(2 * t));
  const TableMotion motion = tableMotion(table, kUnset);
  EXPECT_EQ(motion.speed, table.speed);
  for (std::size_t i = 0; i < table.time.size(); ++i)
    EXPECT_NEAR(motion.acceleration[i], -4 * std::sin(2 * table.time[i]), 1e-5);
}

TEST(TableMotion, KeepsAGivenAccelerationAndFindsTheSpeed) {
  MotionTable table = sineTable(101);
  table.acceleration = std::vector<double>(101, 3);
  const TableMotion motion = tableMotion(table, kUnset);
  EXPECT_EQ(motion.acceleration, table.acceleration);
  EXPECT_NEAR(motion.speed[50], 2 * std::cos(1), 1e-4);
}

TEST(TableMotion, WindowIsNineRowsOrTwoPercentUnlessSet) {
  EXPECT_DOUBLE_EQ(smoothingWindow(sineTable(101), kUnset), 0.08);
  EXPECT_DOUBLE_EQ(smoothingWindow(sineTable(10001), kUnset), 0.02);
  EXPECT_EQ(smoothingWindow(sineTable(101), 0.3), 0.3);
}

TEST(TableMotion, ReportsWhatSmoothingTookAway) {
  MotionTable table = sineTable(201);
  for (std::size_t i = 0; i < table.angle.size(); ++i)
    table.angle.own()[i] += i % 2 == 0 ? 1e-3 : -1e-3;
  const TableMotion motion = tableMotion(table, 0.2);
  EXPECT_NEAR(motion.angleResidual, 1e-3, 1e-4);
}

}  // namespace
}  // namespace jw
