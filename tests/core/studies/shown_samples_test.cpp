// Samples for drawing, compared by brute force with all of them.
#include "core/studies/shown_samples.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// The example moved by a table of `rows` rows with two lone spikes in its acceleration.
Project measured(int rows) {
  Project project = exampleProject();
  Segment segment;
  segment.law = MotionLaw::Table;
  for (int i = 0; i < rows; ++i) {
    const double t = i * 1e-3;
    segment.table.time.push_back(t);
    segment.table.angle.push_back(0.3 * std::sin(2 * t));
    segment.table.speed.push_back(0.6 * std::cos(2 * t));
    segment.table.acceleration.push_back(-1.2 * std::sin(2 * t) + (i == 12'345   ? 9
                                                                   : i == 33'333 ? -8
                                                                                 : 0));
  }
  project.cycle.segments = {segment};
  return project;
}

TEST(ShownSamples, KeepEveryPeak) {
  const Evaluation e = evaluate(measured(50'000));
  ASSERT_TRUE(e.demand);
  const std::vector<Eigen::Index> samples = shownSamples(e, 400);
  ASSERT_FALSE(samples.empty());
  EXPECT_LT(samples.size(), 20'000u);
  EXPECT_TRUE(std::is_sorted(samples.begin(), samples.end()));
  EXPECT_EQ(std::adjacent_find(samples.begin(), samples.end()), samples.end());
  EXPECT_EQ(samples.front(), 0);
  EXPECT_EQ(samples.back(), e.cycle->size() - 1);
  EXPECT_TRUE(std::binary_search(samples.begin(), samples.end(), 12'345));
  EXPECT_TRUE(std::binary_search(samples.begin(), samples.end(), 33'333));
  for (const Eigen::ArrayXd* curve : {&e.cycle->angle, &e.load->total, &e.demand->current}) {
    const Eigen::ArrayXd drawn = picked(*curve, samples);
    for (int k = 0; k < 100; ++k) {  // within each hundredth of the cycle
      double low = INFINITY, high = -INFINITY, drawnLow = INFINITY, drawnHigh = -INFINITY;
      for (Eigen::Index i = 500 * k; i < 500 * (k + 1); ++i) {
        low = std::min(low, (*curve)[i]);
        high = std::max(high, (*curve)[i]);
      }
      for (std::size_t i = 0; i < samples.size(); ++i) {
        if (samples[i] < 500 * k || samples[i] >= 500 * (k + 1)) continue;
        drawnLow = std::min(drawnLow, drawn[static_cast<Eigen::Index>(i)]);
        drawnHigh = std::max(drawnHigh, drawn[static_cast<Eigen::Index>(i)]);
      }
      ASSERT_EQ(drawnLow, low) << k;
      ASSERT_EQ(drawnHigh, high) << k;
    }
  }
}

TEST(ShownSamples, ShortCyclesAreDrawnWhole) {
  const Evaluation e = evaluate(exampleProject());
  EXPECT_TRUE(shownSamples(e).empty());
  EXPECT_EQ(picked(e.cycle->angle, {}).size(), e.cycle->size());
}

}  // namespace
}  // namespace jw
