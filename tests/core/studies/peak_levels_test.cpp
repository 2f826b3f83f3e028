// No peak is lost at any zoom: compared with every point, by brute force.
#include "core/studies/peak_levels.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

namespace jw {
namespace {

struct Curve {
  std::vector<double> x, y;

  Curve(std::size_t points, unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> step(0, 2), value(-1, 1);
    for (std::size_t i = 0; i < points; ++i) {
      x.push_back((x.empty() ? 0 : x.back()) + step(random));
      y.push_back(value(random));
    }
  }
};

TEST(PeakLevels, RangesAreThoseOfThePoints) {
  for (const std::size_t points : {1u, 15u, 16u, 17u, 255u, 256u, 257u, 5000u, 70000u}) {
    const Curve curve(points, 1);
    const PeakLevels levels(curve.x, curve.y);
    std::mt19937 random(2);
    std::uniform_int_distribution<std::size_t> at(0, points);
    for (int k = 0; k < 200; ++k) {
      const auto [first, last] = std::minmax({at(random), at(random)});
      if (first == last) continue;
      const auto begin = curve.y.begin();
      const auto [low, high] = std::minmax_element(begin + static_cast<std::ptrdiff_t>(first),
                                                   begin + static_cast<std::ptrdiff_t>(last));
      const PeakLevels::Range range = levels.range(first, last);
      ASSERT_EQ(range.low, *low) << points;
      ASSERT_EQ(range.high, *high) << points;
    }
  }
}

TEST(PeakLevels, ASinglePeakOfAMillionPointsIsDrawn) {
  Curve curve(1'000'000, 3);
  curve.y[654'321] = 9;
  curve.y[123'456] = -8;
  const PeakLevels levels(curve.x, curve.y);
  double low = 0, high = 0;
  const auto columns = levels.columns(curve.x.front(), curve.x.back(), 800);
  EXPECT_EQ(columns.size(), 800u);
  for (const PeakColumn& c : columns) {
    low = std::min(low, c.low);
    high = std::max(high, c.high);
  }
  EXPECT_EQ(high, 9);
  EXPECT_EQ(low, -8);
  EXPECT_EQ(columns.front().first, curve.y.front());
  EXPECT_EQ(columns.back().last, curve.y.back());
}

TEST(PeakLevels, ZoomedInEachPointHasItsColumn) {
  const std::vector<double> x{0, 1, 2, 3}, y{5, NAN, 7, 8};
  const PeakLevels levels(x, y);
  const auto columns = levels.columns(0, 3, 300);
  ASSERT_EQ(columns.size(), 3u);
  EXPECT_EQ(columns[1].low, 7);
  EXPECT_NEAR(columns[1].x, 2, 0.01);
  EXPECT_TRUE(levels.columns(3, 0, 300).empty());
  EXPECT_TRUE(levels.columns(10, 20, 300).empty());
  EXPECT_TRUE(PeakLevels({}, {}).columns(0, 1, 10).empty());
}

}  // namespace
}  // namespace jw
