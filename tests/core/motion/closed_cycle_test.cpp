// A stretch of a log closed into a cycle.
#include "core/motion/closed_cycle.h"

#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/motion/sampled_cycle.h"

namespace jw {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// 2 s of a sine of period 1 s on a drift, every 1 ms.
struct Drifting {
  MeasuredLog log;
  LogMotion motion;

  explicit Drifting(double drift, int rows = 2001) {
    constexpr double w = 2 * std::numbers::pi;
    for (int i = 0; i < rows; ++i) {
      const double t = i * 1e-3;
      log.time.push_back(t);
      log.position.push_back(0.3 + std::sin(w * t) + drift * t * t);
      log.speed.push_back(w * std::cos(w * t) + 2 * drift * t);
      log.acceleration.push_back(-w * w * std::sin(w * t) + 2 * drift);
    }
    motion = smoothLog(log, 0.02);
  }
};

ClosedCycle closed(const Drifting& d, double from, double to, const ClosingOptions& options = {}) {
  auto result = closeIntoCycle(d.log, d.motion, from, to, options);
  if (!result) throw std::runtime_error(describe(result.error()));
  return *std::move(result);
}

TEST(ClosedCycle, AWholePeriodNeedsNoMend) {
  const ClosedCycle c = closed(Drifting(0), 0.25, 1.25);
  EXPECT_NEAR(c.mismatch.position, 0, 1e-12);
  EXPECT_NEAR(c.largestMend.acceleration, 0, 1e-8);
  EXPECT_NEAR(c.startAngle, 1.3, 1e-12);
  EXPECT_EQ(c.segment.table.time.size(), 1001u);
  EXPECT_EQ(c.segment.table.time.front(), 0);
  EXPECT_EQ(c.segment.table.angle.front(), 0);
  EXPECT_EQ(c.firstRow, 250u);
  EXPECT_EQ(c.lastRow, 1250u);
  EXPECT_THAT(c.notes, IsEmpty());
}

// The ends meet in position, speed and acceleration, and the added columns are derivatives of each
// other: the integral of the speed is the position.
TEST(ClosedCycle, TheBlendClosesThreefoldAndStaysConsistent) {
  ClosingOptions options;
  options.blendShare = 0.4;
  const ClosedCycle c = closed(Drifting(0.2), 0, 2, options);
  EXPECT_NEAR(c.mismatch.position, 0.8, 1e-9);
  EXPECT_NEAR(c.mismatch.speed, 0.8, 1e-9);
  const MotionTable& t = c.segment.table;
  EXPECT_NEAR(t.angle.back(), 0, 1e-12);
  EXPECT_NEAR(t.speed.back(), t.speed.front(), 1e-12);
  EXPECT_NEAR(t.acceleration.back(), t.acceleration.front(), 1e-9);
  EXPECT_NEAR(c.left.position, 0, 1e-12);
  double angle = 0, speed = t.speed[0];
  for (std::size_t i = 1; i < t.time.size(); ++i) {
    const double step = t.time[i] - t.time[i - 1];
    angle += step * (t.speed[i] + t.speed[i - 1]) / 2;
    speed += step * (t.acceleration[i] + t.acceleration[i - 1]) / 2;
    ASSERT_NEAR(angle, t.angle[i], 1e-4);
    ASSERT_NEAR(speed, t.speed[i], 1e-4);
  }
  // Rows before the blend are as measured.
  EXPECT_EQ(t.speed[1000], Drifting(0.2).log.speed[1000]);
}

TEST(ClosedCycle, ABlendedCycleHasNoBrokenJoin) {
  ClosingOptions options;
  options.blendShare = 0.4;
  const ClosedCycle c = closed(Drifting(0.2), 0, 2, options);
  Cycle cycle;
  cycle.startAngle = c.startAngle;
  cycle.segments.push_back(c.segment);
  const auto sampled = sampleCycle(cycle);
  ASSERT_TRUE(sampled) << describe(sampled.error());
  EXPECT_THAT(sampled->warnings, IsEmpty());
  EXPECT_EQ(sampled->size(), 2001);
  EXPECT_NEAR(sampled->angle[0], 0.3, 1e-12);
}

TEST(ClosedCycle, ADriftTakenOffLeavesTheSpeed) {
  ClosingOptions options;
  options.closing = CycleClosing::LinearDrift;
  const ClosedCycle c = closed(Drifting(0.2), 0, 2, options);
  EXPECT_NEAR(c.left.position, 0, 1e-12);
  EXPECT_NEAR(c.left.speed, 0.8, 1e-9);
  EXPECT_NEAR(c.largestMend.position, 0.8, 1e-9);
  EXPECT_NEAR(c.largestMend.speed, 0.4, 1e-9);
  options.closing = CycleClosing::LeaveOpen;
  EXPECT_NEAR(closed(Drifting(0.2), 0, 2, options).left.position, 0.8, 1e-9);
}

TEST(ClosedCycle, WholeTurnsMayStay) {
  Drifting d(0);
  for (std::size_t i = 0; i < d.log.rows(); ++i)
    d.motion.position[i] += 4 * std::numbers::pi * d.log.time[i];
  ClosingOptions options;
  options.wholeTurns = true;
  const ClosedCycle c = closed(d, 0, 1, options);
  EXPECT_NEAR(c.mismatch.position, 0, 1e-9);
  EXPECT_NEAR(c.segment.table.angle.back(), 4 * std::numbers::pi, 1e-9);
}

TEST(ClosedCycle, AHardMendIsNoted) {
  ClosingOptions options;
  options.blendShare = 0.02;
  const ClosedCycle c = closed(Drifting(0.2), 0, 2, options);
  ASSERT_EQ(c.notes.size(), 1u);
  EXPECT_THAT(c.notes[0].what, HasSubstr("peak acceleration"));
}

TEST(ClosedCycle, NoiseAtRestBecomesRest) {
  Drifting d(0);
  for (std::size_t i = 0; i < 100; ++i) d.motion.speed[i] = i % 2 == 0 ? 1e-4 : -1e-4;
  ClosingOptions options;
  options.restSpeed = 1e-3;
  options.closing = CycleClosing::LeaveOpen;
  const ClosedCycle c = closed(d, 0, 0.099, options);
  EXPECT_EQ(c.restRows, 100u);
  EXPECT_EQ(c.segment.table.speed[7], 0);
}

TEST(ClosedCycle, WithoutDerivativesTheSegmentSmooths) {
  Drifting d(0);
  d.log.speed.clear();
  d.log.acceleration.clear();
  d.motion = smoothLog(d.log, 0.02);
  ClosingOptions options;
  options.keepDerivatives = false;
  const ClosedCycle c = closed(d, 0, 1, options);
  EXPECT_THAT(c.segment.table.speed, IsEmpty());
  EXPECT_EQ(c.segment.smoothing, 0.02);
}

TEST(ClosedCycle, TheEndSnapsToWhereTheMotionComesRound) {
  const Drifting d(0);  // period 1 s
  EXPECT_NEAR(closingEnd(d.log, d.motion, 0.3, 1.22, 0.2), 1.3, 1e-9);
  EXPECT_EQ(closingEnd(d.log, d.motion, 0.3, 9, 0.2), 9);
  EXPECT_EQ(closingEnd(d.log, d.motion, 7, 9, 0.2), 9);
}

TEST(ClosedCycle, BadStretchesAreRefused) {
  const Drifting d(0);
  const auto whatOf = [&](double from, double to, const ClosingOptions& options = {}) {
    const auto c = closeIntoCycle(d.log, d.motion, from, to, options);
    return c ? std::string() : describe(c.error());
  };
  EXPECT_THAT(whatOf(0.1, 0.1035), HasSubstr("4 rows"));
  EXPECT_THAT(whatOf(1, 0.5), HasSubstr("0 rows"));
  EXPECT_THAT(whatOf(5, 6), HasSubstr("0 rows"));
  ClosingOptions options;
  options.blendShare = 0;
  EXPECT_THAT(whatOf(0, 1, options), HasSubstr("share"));
  options.blendShare = 1.5;
  EXPECT_THAT(whatOf(0, 1, options), HasSubstr("share"));
}

}  // namespace
}  // namespace jw
