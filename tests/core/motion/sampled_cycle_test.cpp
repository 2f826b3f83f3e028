#include "core/motion/sampled_cycle.h"

#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "tests/core/motion/make_cycle.h"

namespace jw {
namespace {

constexpr double kPi = std::numbers::pi;

Segment makeSegment(MotionLaw law, double travel, double duration) {
  Segment segment;
  segment.law = law;
  segment.travel = travel;
  segment.duration = duration;
  return segment;
}

Cycle thereAndBack(MotionLaw law, int samples = 1000) {
  return makeCycle({makeSegment(law, 2, 0.7), makeSegment(MotionLaw::Dwell, kUnset, 0.4),
                    makeSegment(law, -2, 1.1)},
                   0.5, samples);
}

SampledCycle sampled(const Cycle& cycle) {
  auto result = sampleCycle(cycle);
  if (!result) throw std::runtime_error(describe(result.error()));
  return *std::move(result);
}

const MotionLaw kMoves[] = {MotionLaw::Trapezoidal,       MotionLaw::JerkLimited,
                            MotionLaw::Polynomial345,     MotionLaw::Polynomial4567,
                            MotionLaw::SineAcceleration,  MotionLaw::Harmonic,
                            MotionLaw::ModifiedTrapezoid, MotionLaw::ModifiedSine};

TEST(SampledCycle, GoesThereAndBackWithoutWarnings) {
  for (const MotionLaw law : kMoves) {
    SCOPED_TRACE(static_cast<int>(law));
    const SampledCycle s = sampled(thereAndBack(law));
    EXPECT_TRUE(s.warnings.empty()) << describe(s.warnings.front());
    EXPECT_NEAR(s.period, 2.2, 1e-12);
    EXPECT_NEAR(s.weight.sum(), s.period, 1e-12);
    EXPECT_NEAR(s.angle.maxCoeff(), 2.5, 1e-12);
    EXPECT_NEAR(s.angle[s.size() - 1], 0.5, 1e-12);
    EXPECT_EQ(s.time[0], 0);
    EXPECT_NEAR(s.time[s.size() - 1], s.period, 1e-12);
    EXPECT_TRUE((s.time.tail(s.size() - 1) >= s.time.head(s.size() - 1)).all());
  }
}

TEST(SampledCycle, SpeedIntegratesToTheTravelAndAccelerationToNothing) {
  for (const MotionLaw law : kMoves) {
    SCOPED_TRACE(static_cast<int>(law));
    const SampledCycle s = sampled(thereAndBack(law));
    const auto out = (s.segment == 0).cast<double>();
    EXPECT_NEAR((s.weight * s.speed * out).sum(), 2, 1e-8);
    EXPECT_NEAR((s.weight * s.acceleration * out).sum(), 0, 1e-8);
    EXPECT_NEAR((s.weight * s.speed).sum(), 0, 1e-8);
  }
}

// ∫ speed·acceleration dt is the change of speed²/2, so it vanishes from rest to any time.
TEST(SampledCycle, KineticEnergyComesBack) {
  for (const MotionLaw law : kMoves) {
    const SampledCycle s = sampled(thereAndBack(law));
    EXPECT_NEAR((s.weight * s.speed * s.acceleration).sum(), 0, 1e-8) << static_cast<int>(law);
  }
}

// Mean square of the acceleration in closed form.
// Trapezoid with shares a and d: v²(1/a + 1/d) with v = 1/(1 − (a + d)/2).
// Jerk limited: a speed change over the share a holds v²/a·(1 − 4j/3)/(1 − j)², since its two ramps
// average a third of the peak's square.
// 3-4-5: ∫(60u − 180u² + 120u³)² du = 120/7.
TEST(SampledCycle, RmsAccelerationOfPiecewisePolynomialsIsExact) {
  const auto meanSquare = [](Segment segment, int samples) {
    segment.duration = segment.travel = 1;
    const SampledCycle s = sampled(makeCycle({segment}, 0, samples));
    return (s.weight * s.acceleration.square()).sum();
  };
  Segment segment;
  segment.accelShare = 0.2;
  segment.decelShare = 0.3;
  segment.jerkShare = 0.2;
  const double trapezoid = (1 / 0.2 + 1 / 0.3) / (0.75 * 0.75);
  EXPECT_NEAR(meanSquare(segment, 100), trapezoid, 1e-9);
  segment.law = MotionLaw::JerkLimited;
  EXPECT_NEAR(meanSquare(segment, 100), trapezoid * (1 - 0.8 / 3) / 0.64, 1e-9);
  segment.law = MotionLaw::Polynomial345;
  EXPECT_NEAR(meanSquare(segment, 2000), 120.0 / 7, 1e-9);
}

TEST(SampledCycle, JumpsInAccelerationAreTwoSamplesAtOneTime) {
  const SampledCycle s = sampled(makeCycle({makeSegment(MotionLaw::Trapezoidal, 1, 3)}, 0, 100));
  int jumps = 0;
  for (Eigen::Index i = 1; i < s.size(); ++i) {
    if (s.acceleration[i] == s.acceleration[i - 1]) continue;
    ++jumps;
    EXPECT_NEAR(s.time[i], s.time[i - 1], 1e-12);
    EXPECT_NEAR(s.speed[i], s.speed[i - 1], 1e-12);
  }
  EXPECT_EQ(jumps, 2);
}

TEST(SampledCycle, TakesAboutTheWantedSamplesInProportionToTheDurations) {
  for (const int samples : {50, 1000, 20000}) {
    const SampledCycle s = sampled(thereAndBack(MotionLaw::Polynomial345, samples));
    const auto inDwell = (s.segment == 1).count();
    EXPECT_LE(inDwell, 33);  // nothing changes while the joint stands
    EXPECT_NEAR(static_cast<double>(s.size() - inDwell), samples, 6);
  }
  const SampledCycle coarse = sampled(thereAndBack(MotionLaw::JerkLimited, 5));
  EXPECT_EQ(coarse.size(), 11 * 3);  // 5 + 1 + 5 pieces
}

// A speed of −1e-15 at the end of a forward move would turn the friction around.
TEST(SampledCycle, MovesEndInExactRest) {
  for (const MotionLaw law : kMoves) {
    SCOPED_TRACE(static_cast<int>(law));
    const SampledCycle s = sampled(thereAndBack(law, 100'000));
    EXPECT_TRUE((s.segment != 0 || s.speed >= 0).all());
    EXPECT_TRUE((s.segment != 2 || s.speed <= 0).all());
    EXPECT_EQ(s.speed[s.size() - 1], 0);
  }
}

TEST(SampledCycle, MirroredMovesGiveMirroredMotion) {
  Cycle cycle = thereAndBack(MotionLaw::ModifiedSine);
  const SampledCycle s = sampled(cycle);
  cycle.startAngle *= -1;
  for (Segment& segment : cycle.segments) segment.travel *= -1;
  const SampledCycle mirrored = sampled(cycle);
  EXPECT_LT((s.angle + mirrored.angle).abs().maxCoeff(), 1e-13);
  EXPECT_LT((s.speed + mirrored.speed).abs().maxCoeff(), 1e-13);
  EXPECT_LT((s.acceleration + mirrored.acceleration).abs().maxCoeff(), 1e-13);
}

TEST(SampledCycle, HalfTheTimeIsTwiceTheSpeedAndFourTimesTheAcceleration) {
  Cycle cycle = thereAndBack(MotionLaw::SineAcceleration);
  const SampledCycle slow = sampled(cycle);
  for (Segment& segment : cycle.segments) segment.duration /= 2;
  const SampledCycle fast = sampled(cycle);
  EXPECT_LT((fast.speed - 2 * slow.speed).abs().maxCoeff(), 1e-11);
  EXPECT_LT((fast.acceleration - 4 * slow.acceleration).abs().maxCoeff(), 1e-10);
}

// q = A·sin ωt: peak speed Aω, peak acceleration Aω², rms of both those over √2.
TEST(SampledCycle, SinusoidHasTheAmplitudeAndFrequencyAskedFor) {
  Segment segment = makeSegment(MotionLaw::Sinusoid, 0.3, 2);
  segment.periods = 5;
  const SampledCycle s = sampled(makeCycle({segment}, 0, 4001));
  const double w = 2 * kPi * 5 / 2;
  EXPECT_NEAR(s.angle.maxCoeff(), 0.3, 1e-9);
  EXPECT_NEAR(s.speed.maxCoeff(), 0.3 * w, 1e-9);
  EXPECT_NEAR(std::sqrt((s.weight * s.acceleration.square()).sum() / 2), 0.3 * w * w / std::sqrt(2),
              1e-6);
  EXPECT_TRUE(s.warnings.empty());
}

TEST(SampledCycle, ManyPeriodsAreNotSampledTooCoarsely) {
  Segment segment = makeSegment(MotionLaw::Sinusoid, 1, 10);
  segment.periods = 500;
  const SampledCycle s = sampled(makeCycle({segment}, 0, 100));
  const double w = 2 * kPi * 50;
  EXPECT_NEAR((s.weight * s.speed.square()).sum() / 10, w * w / 2, 1e-6 * w * w);
}

TEST(SampledCycle, ATableKeepsEveryRowAndItsOwnTime) {
  Segment table;
  table.law = MotionLaw::Table;
  table.duration = 99;  // not used
  table.table = {{0, 0.1, 0.4, 1}, {0, 0.2, 0.1, 0}, {0, 1, 2, 0}, {5, 6, 7, 8}};
  const SampledCycle s = sampled(makeCycle({makeSegment(MotionLaw::Dwell, 0, 2), table}, 1));
  EXPECT_EQ(s.period, 3);
  const Eigen::Index first = s.size() - 4;
  EXPECT_EQ(s.segment[first], 1);
  EXPECT_EQ(s.segment[first - 1], 0);
  EXPECT_NEAR(s.time[first + 1], 2.1, 1e-15);
  EXPECT_NEAR(s.angle[first + 2], 1.1, 1e-15);
  EXPECT_EQ(s.speed[first + 2], 2);
  EXPECT_EQ(s.acceleration[first + 3], 8);
  EXPECT_NEAR(s.weight.tail(4).sum(), 1, 1e-15);
  EXPECT_NEAR(s.weight[first + 1], 0.2, 1e-15);  // half of 0.1 and half of 0.3
}

// Random cycles: whatever the moves, the arrays must hang together.
TEST(SampledCycle, RandomCyclesHangTogether) {
  std::mt19937 random(20240607);
  std::uniform_real_distribution<double> share(0.01, 0.5), travel(-7, 7), duration(0.01, 9);
  std::uniform_int_distribution<int> law(0, 8), count(1, 9), samples(5, 5000);
  for (int run = 0; run < 300; ++run) {
    Cycle cycle = makeCycle({}, travel(random), samples(random));
    double end = cycle.startAngle;
    for (int k = count(random); k > 0; --k) {
      Segment segment =
          makeSegment(static_cast<MotionLaw>(law(random)), travel(random), duration(random));
      if (segment.law == MotionLaw::Sinusoid) segment.law = MotionLaw::Dwell;
      segment.accelShare = share(random);
      segment.decelShare = share(random);
      segment.jerkShare = share(random);
      if (segment.law != MotionLaw::Dwell) end += segment.travel;
      cycle.segments.push_back(segment);
    }
    const SampledCycle s = sampled(cycle);
    ASSERT_NEAR(s.weight.sum(), s.period, 1e-9);
    ASSERT_NEAR(s.angle[s.size() - 1], end, 1e-10);
    ASSERT_TRUE((s.weight > 0).all());
    ASSERT_TRUE((s.time.tail(s.size() - 1) >= s.time.head(s.size() - 1)).all());
    ASSERT_TRUE(s.acceleration.allFinite());
    const Eigen::ArrayXd step = s.angle.tail(s.size() - 1) - s.angle.head(s.size() - 1);
    const Eigen::ArrayXd dt = s.time.tail(s.size() - 1) - s.time.head(s.size() - 1);
    ASSERT_LE((step.abs() - s.speed.abs().maxCoeff() * 1.2 * dt).maxCoeff(), 1e-9);
  }
}

}  // namespace
}  // namespace jw
