// Derivatives of a log by local least squares, and the smoother's bandwidth.
#include "core/motion/log_motion.h"

#include <cmath>
#include <numbers>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::HasSubstr;

constexpr double kPi = std::numbers::pi;

/// Rows of `position` at the times given.
template <class F>
MeasuredLog logOf(const std::vector<double>& time, F position) {
  MeasuredLog log;
  log.time = time;
  for (const double t : time) log.position.push_back(position(t));
  log.medianStep = time[1] - time[0];
  return log;
}

std::vector<double> evenTimes(int rows, double step) {
  std::vector<double> time;
  for (int i = 0; i < rows; ++i) time.push_back(i * step);
  return time;
}

// Savitzky & Golay, Anal. Chem. 36 (1964) 1627 (from memory): quadratic and cubic over 5 points
// smooth by (-3, 12, 17, 12, -3)/35. The slope of the cubic is (1, -8, 0, 8, -1)/12; that of the
// quadratic, (-2, -1, 0, 1, 2)/10, is another fit and not the one used here.
TEST(LogMotion, OnEvenRowsItIsTheFilterOfSavitzkyAndGolay) {
  std::mt19937 random(3);
  std::normal_distribution<double> value(0, 1);
  const MeasuredLog log = logOf(evenTimes(21, 0.5), [&](double) { return value(random); });
  const LogMotion motion = smoothLog(log, 2);
  const auto& y = log.position;
  for (std::size_t i = 2; i + 2 < y.size(); ++i) {
    EXPECT_NEAR(motion.position[i],
                (-3 * y[i - 2] + 12 * y[i - 1] + 17 * y[i] + 12 * y[i + 1] - 3 * y[i + 2]) / 35,
                1e-12);
    EXPECT_NEAR(motion.speed[i], (y[i - 2] - 8 * y[i - 1] + 8 * y[i + 1] - y[i + 2]) / 12 / 0.5,
                1e-12);
    EXPECT_NEAR(motion.acceleration[i],
                (2 * y[i - 2] - y[i - 1] - 2 * y[i] - y[i + 1] + 2 * y[i + 2]) / 7 / 0.25, 1e-12);
  }
}

// Own, by brute force: sines at the stated frequencies come through by 1/√2.
TEST(LogMotion, BandwidthIsWhereSinesFallToTheRootOfAHalf) {
  const double window = 0.1;
  const SmootherBandwidth reach = smootherBandwidth(window);
  const auto response = [&](double frequency, auto column, double wanted) {
    const double w = 2 * kPi * frequency;
    const MeasuredLog log =
        logOf(evenTimes(20001, 1e-4), [&](double t) { return std::sin(w * t); });
    const LogMotion motion = smoothLog(log, window);
    double most = 0;
    for (std::size_t i = 2000; i < 18000; ++i) most = std::max(most, std::abs((motion.*column)[i]));
    EXPECT_NEAR(most / std::pow(w, wanted), std::sqrt(0.5), 2e-3);
  };
  response(reach.position, &LogMotion::position, 0);
  response(reach.speed, &LogMotion::speed, 1);
  response(reach.acceleration, &LogMotion::acceleration, 2);
  EXPECT_DOUBLE_EQ(smootherBandwidth(windowOfBandwidth(12)).acceleration, 12);
}

TEST(LogMotion, UnevenRowsAndAGapGiveTheSlope) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> step(2e-4, 2e-3);
  std::vector<double> time{0};
  while (time.size() < 3000)
    time.push_back(time.back() + step(random) + (time.size() == 1500) * 0.1);
  const LogMotion motion = smoothLog(logOf(time, [](double t) { return std::sin(3 * t); }), 0.03);
  for (std::size_t i = 20; i + 20 < time.size(); ++i) {
    ASSERT_NEAR(motion.speed[i], 3 * std::cos(3 * time[i]), 2e-4) << i;
    ASSERT_NEAR(motion.acceleration[i], -9 * std::sin(3 * time[i]), 0.2) << i;
  }
}

TEST(LogMotion, TheResidualIsTheNoiseTakenOut) {
  std::mt19937 random(5);
  std::normal_distribution<double> noise(0, 1e-3);
  const MeasuredLog log =
      logOf(evenTimes(20000, 1e-3), [&](double t) { return std::sin(t) + noise(random); });
  const LogMotion motion = smoothLog(log, 0.1);
  // A cubic over 101 points keeps 9/4/101 of the variance in the middle.
  EXPECT_NEAR(motion.positionResidual, 1e-3 * std::sqrt(1 - 2.25 / 101), 2e-5);
  EXPECT_GT(motion.positionPeak, 3e-3);
  EXPECT_THAT(motion.smoother, HasSubstr("Golay"));
  EXPECT_THAT(motion.smoother, HasSubstr("100 ms"));
}

TEST(LogMotion, MeasuredColumnsAreKept) {
  MeasuredLog log = logOf(evenTimes(200, 1e-2), [](double t) { return std::sin(t); });
  for (const double t : log.time) log.speed.push_back(std::cos(t));
  LogMotion motion = smoothLog(log, 0.1);
  EXPECT_EQ(motion.position, log.position);
  EXPECT_EQ(motion.positionResidual, 0);
  EXPECT_NEAR(motion.acceleration[100], -std::sin(1.0), 1e-5);
  EXPECT_GT(motion.speedPeak, 0);
  log.acceleration.assign(200, 7);
  motion = smoothLog(log, 0.1);
  EXPECT_EQ(motion.speed, log.speed);
  EXPECT_EQ(motion.acceleration, log.acceleration);
  EXPECT_EQ(motion.window, 0);
}

TEST(LogMotion, FirstWindowFollowsTheStep) {
  MeasuredLog log = logOf(evenTimes(1000, 1e-3), [](double) { return 0.0; });
  EXPECT_DOUBLE_EQ(firstLogWindow(log), 0.04);
  log.medianStep = 0.02;
  EXPECT_DOUBLE_EQ(firstLogWindow(log), 0.16);
}

}  // namespace
}  // namespace jw
