// Screening against the full evaluation, combination by combination (own, by brute force).
#include <algorithm>
#include <atomic>
#include <map>
#include <mutex>

#include <gtest/gtest.h>

#include "core/studies/combination_screen.h"
#include "tests/core/studies/random_space.h"

namespace jw {
namespace {

const Check* find(const Evaluation& evaluation, std::string_view id) {
  const Check* worst = nullptr;
  for (const Check& check : evaluation.checks) {
    if (check.id != id || !isSet(check.margin)) continue;
    if (worst == nullptr || check.margin < worst->margin) worst = &check;
  }
  return worst;
}

/// Goes through every combination; counts what was rejected, by check.
struct Comparison {
  std::atomic<std::size_t> combinations = 0, disagreements = 0, accepted = 0;
  std::mutex mutex;
  std::map<std::string_view, std::size_t> rejected;

  void compare(const RandomSpace& made) {
    const CombinationScreen screen(made.project, made.space);
    forEachPoint(made.space.reducers.size(), {}, [&](std::size_t reducer) {
      const auto chains = screen.chains(static_cast<std::uint32_t>(reducer));
      for (std::uint32_t ratio = 0; ratio < chains.size(); ++ratio) {
        for (std::uint32_t motor = 0; motor < made.space.motors.size(); ++motor) {
          const ScreenedChain& chain = chains[ratio];
          std::string_view check = chain.rejected;
          if (check.empty() && chain.chain) {
            check = checkOf(rejectedBy(*chain.chain, screen.motors()[motor]));
          }
          judge(made, {motor, static_cast<std::uint32_t>(reducer), ratio}, check);
        }
      }
    });
  }

  void judge(const RandomSpace& made, const Combination& which, std::string_view check) {
    const Evaluation full = evaluate(withCombination(made.project, made.space, which));
    const bool holds = designPoint(full).holds();
    ++combinations;
    accepted += holds ? 1 : 0;
    if (check.empty()) return;
    const Check* named = find(full, check);
    if (holds || named == nullptr || named->state != CheckState::Short) ++disagreements;
    const std::lock_guard lock(mutex);
    ++rejected[check];
    if (named == nullptr || named->state != CheckState::Short) {
      ADD_FAILURE() << check << ' ' << (named ? named->margin : kUnset);
    }
  }
};

TEST(Screening, NeverRejectsWhatTheFullEvaluationAccepts) {
  Comparison comparison;
  SpaceMaker maker(20);
  // 40 joints of each kind, 625 combinations each: 100,000.
  for (int round = 0; round < 40; ++round) {
    for (const int kind : {0, 1, 2, 3}) {
      const bool belt = kind != 1;
      comparison.compare(maker.make(kind, 25, belt ? 5 : 25, belt ? 5 : 1, 40));
    }
  }
  EXPECT_EQ(comparison.combinations, 100'000U);
  EXPECT_EQ(comparison.disagreements, 0U);
  EXPECT_GT(comparison.accepted, 100U);
  // Every kind of rejection was met, so that none of them is right for want of a case.
  for (const char* check :
       {"motor.speed", "joint.inertia_ratio", "motor.continuous", "controller.current_rms",
        "controller.current_peak", "motor.torque", "drive.torque_peak", "drive.speed_peak",
        "drive.torque_average", "drive.speed_average"}) {
    EXPECT_GT(comparison.rejected[check], 0U) << check;
  }
}

TEST(Screening, OpenRatioGivesTheSameMomentsAsTheSamples) {
  SpaceMaker maker(7);
  for (int round = 0; round < 20; ++round) {
    const RandomSpace made = maker.make(0, 1, 1, 3, 200);
    const CombinationScreen screen(made.project, made.space);
    const auto chains = screen.chains(0);
    for (std::uint32_t ratio = 0; ratio < 3; ++ratio) {
      const Evaluation full = evaluate(withCombination(made.project, made.space, {0, 0, ratio}));
      if (!full.chain || !chains[ratio].chain) continue;
      const ChainScreen exact = closedChain(full);
      const ChainScreen& quick = *chains[ratio].chain;
      const auto near = [](double a, double b, double size) { EXPECT_NEAR(a, b, 1e-9 * size); };
      near(quick.torqueSquare, exact.torqueSquare, exact.torqueSquare);
      near(quick.torqueAcceleration, exact.torqueAcceleration,
           std::sqrt(exact.torqueSquare * exact.accelerationSquare));
      near(quick.accelerationSquare, exact.accelerationSquare, exact.accelerationSquare);
      near(quick.torqueSpeed, exact.torqueSpeed, std::sqrt(exact.torqueSquare * exact.speedSquare));
      near(quick.torqueSign, exact.torqueSign, std::sqrt(exact.torqueSquare));
      near(quick.speedAbs, exact.speedAbs, exact.speedAbs);
      near(quick.speedSquare, exact.speedSquare, exact.speedSquare);
      near(quick.speedPeak, exact.speedPeak, exact.speedPeak);
      near(quick.inertia, exact.inertia, exact.inertia);
      near(quick.moving, exact.moving, 1);
    }
  }
}

}  // namespace
}  // namespace jw
