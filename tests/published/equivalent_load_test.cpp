// Root-mean-square loads of textbook duty cycles, fed in as cycles of segments.
// FOSSEE = textbook companions of the FOSSEE project, where the books' examples were read
// second-hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/checks/evaluation.h"

namespace jw {
namespace {

constexpr double kRpm = std::numbers::pi / 30;

Segment standing(double torque, double duration) {
  Segment segment;
  segment.law = MotionLaw::Dwell;
  segment.duration = duration;
  segment.externalTorque = torque;
  return segment;
}

/// A stretch of constant acceleration between two speeds, as a table of its two ends.
Segment ramp(double from, double to, double duration, double torque = 0) {
  Segment segment;
  segment.law = MotionLaw::Table;
  segment.externalTorque = torque;
  const double acceleration = (to - from) / duration;
  segment.table = {
      {0, duration}, {0, duration * (from + to) / 2}, {from, to}, {acceleration, acceleration}};
  return segment;
}

Evaluation evaluated(double inertia, std::vector<Segment> segments) {
  Project project;
  project.load.inertia = inertia;
  project.cycle.segments = std::move(segments);
  return evaluate(project);
}

double rmsOf(const Evaluation& evaluation) { return quantityValue(evaluation, "joint.torque_rms"); }

// G. K. Dubey, Fundamentals of Electrical Drives, ex. 4.2 (FOSSEE): mill motor of 10 000 kg·m² at
// 200 rpm: 25 kN·m 10 s, no load 1 s, reversal in 5 s, no load 1 s, 20 kN·m 15 s, no load 1 s,
// reversal in 5 s, no load 1 s. Reversal 83 776 N·m, rms 45 975 N·m, 962.9 kW.
TEST(PublishedEquivalentLoad, ReversingMill) {
  const double w = 200 * kRpm;
  const Evaluation evaluation =
      evaluated(10000, {ramp(w, w, 10, 25e3), ramp(w, w, 1), ramp(w, -w, 5), ramp(-w, -w, 1),
                        ramp(-w, -w, 15, -20e3), ramp(-w, -w, 1), ramp(-w, w, 5), ramp(w, w, 1)});
  EXPECT_NEAR(quantityValue(evaluation, "cycle.period"), 39, 1e-12);
  EXPECT_NEAR(quantityValue(evaluation, "joint.torque_peak"), 83776, 0.5);
  EXPECT_NEAR(rmsOf(evaluation), 45975, 0.5);
  EXPECT_NEAR(rmsOf(evaluation) * w / 1000, 962.9, 0.05);
}

// B. R. Gupta and V. Singhal, Fundamentals of Electric Drives and Control, ex. 4.6 (FOSSEE):
// 50 hp 20 s, 100 hp 20 s, 150 hp 10 s, 120 hp 20 s, 0 for 15 s -> 94.74 hp.
TEST(PublishedEquivalentLoad, FiveSteps) {
  EXPECT_NEAR(rmsOf(evaluated(1, {standing(50, 20), standing(100, 20), standing(150, 10),
                                  standing(120, 20), standing(0, 15)})),
              94.74, 5e-3);
}

// B. L. Theraja, Electrical Technology vol. III (FOSSEE): ex. 45.4 100 hp 10 min, 0 5 min, 60 hp
// 8 min, 0 4 min -> 69.07 hp; ex. 45.1 100, 75, 50, 0 kW for 10, 10, 20, 20 min, plain rms over the
// hour 58.63 kW (the book's 66 kW counts a third of the idle time, which is not done here).
TEST(PublishedEquivalentLoad, StepsOfMinutes) {
  EXPECT_NEAR(rmsOf(evaluated(
                  1, {standing(100, 600), standing(0, 300), standing(60, 480), standing(0, 240)})),
              69.07, 5e-3);
  EXPECT_NEAR(rmsOf(evaluated(1, {standing(100, 600), standing(75, 600), standing(50, 1200),
                                  standing(0, 1200)})),
              58.63, 5e-3);
}

// Own derivation: a third each of +J a, 0, -J a above a constant torque T:
// rms² = ((J a + T)² + T² + (J a - T)²)/3 with a = 4.5 h/t².
TEST(PublishedEquivalentLoad, TrapezoidOfThirdsAgainstConstantTorque) {
  Segment move;
  move.travel = 1.7;
  move.duration = 0.8;
  move.externalTorque = 3;
  const double inertial = 2 * 4.5 * 1.7 / (0.8 * 0.8);
  const double expected =
      std::sqrt(((inertial + 3) * (inertial + 3) + 9 + (inertial - 3) * (inertial - 3)) / 3);
  EXPECT_NEAR(rmsOf(evaluated(2, {move})), expected, 1e-12 * expected);
}

}  // namespace
}  // namespace jw
