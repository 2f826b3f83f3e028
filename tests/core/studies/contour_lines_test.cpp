#include "core/studies/contour_lines.h"

#include <cmath>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::ArrayXXd;
using Eigen::Index;

template <class F>
ArrayXXd valuesOf(const ArrayXd& x, const ArrayXd& y, const F& f) {
  ArrayXXd values(y.size(), x.size());
  for (Index r = 0; r < y.size(); ++r)
    for (Index c = 0; c < x.size(); ++c) values(r, c) = f(x[c], y[r]);
  return values;
}

double lengthOf(const ContourLine& line) {
  double length = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i)
    length += (line.points[i] - line.points[i - 1]).norm();
  return length;
}

double areaOf(const ContourLine& line) {  // shoelace formula
  double area = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const Eigen::Vector2d& a = line.points[i - 1];
    const Eigen::Vector2d& b = line.points[i];
    area += (a.x() * b.y() - b.x() * a.y()) / 2;
  }
  return std::abs(area);
}

// 2 x + y = 3 cuts the square 0..2 from (0.5, 2) to (1.5, 0): linear interpolation is exact.
TEST(ContourLines, AreExactForAPlane) {
  const ArrayXd x = ArrayXd::LinSpaced(8, 0, 2);
  const ArrayXd y = ArrayXd::LinSpaced(12, 0, 2);
  const auto lines =
      contourLines(x, y, valuesOf(x, y, [](double a, double b) { return 2 * a + b; }), 3);
  ASSERT_EQ(lines.size(), 1U);
  for (const Eigen::Vector2d& p : lines[0].points) EXPECT_NEAR(2 * p.x() + p.y(), 3, 1e-12);
  EXPECT_NEAR(lengthOf(lines[0]), std::hypot(1, 2), 1e-12);
}

// The level of x² + y² at r² is a circle. A chord between crossings is off by no more than the
// curvature over one cell: h²/(8 r) on the radius, twice for the interpolation along a side.
TEST(ContourLines, GoRoundACircleOnce) {
  const ArrayXd x = ArrayXd::LinSpaced(61, -1.5, 1.5);
  const auto lines =
      contourLines(x, x, valuesOf(x, x, [](double a, double b) { return a * a + b * b; }), 1);
  ASSERT_EQ(lines.size(), 1U);
  const auto& points = lines[0].points;
  EXPECT_EQ(points.front(), points.back());
  const double step = x[1] - x[0];
  for (const Eigen::Vector2d& p : points) EXPECT_NEAR(p.norm(), 1, step * step / 4);
  EXPECT_NEAR(lengthOf(lines[0]), 2 * std::numbers::pi, 0.01);
  EXPECT_NEAR(areaOf(lines[0]), std::numbers::pi, 0.01);
}

// x y = 0.3 on -1..1 is a hyperbola of two branches, which must not be joined over the saddle.
TEST(ContourLines, KeepTheBranchesOfASaddleApart) {
  const ArrayXd x = ArrayXd::LinSpaced(4, -1, 1);
  const auto lines =
      contourLines(x, x, valuesOf(x, x, [](double a, double b) { return a * b; }), 0.05);
  ASSERT_EQ(lines.size(), 2U);
  for (const ContourLine& line : lines)
    for (const Eigen::Vector2d& p : line.points)
      EXPECT_EQ(std::signbit(p.x()), std::signbit(line.points.front().x()));
}

TEST(ContourLines, StopAtValuesThatAreMissing) {
  const ArrayXd x = ArrayXd::LinSpaced(21, 0, 1);
  ArrayXXd values = valuesOf(x, x, [](double, double b) { return b; });
  values.col(10).setConstant(std::numeric_limits<double>::quiet_NaN());
  const auto lines = contourLines(x, x, values, 0.52);
  ASSERT_EQ(lines.size(), 2U);
  // Nine cells on each side of the gap of two.
  for (const ContourLine& line : lines) EXPECT_NEAR(lengthOf(line), 9 * 0.05, 1e-12);
}

TEST(ContourLines, AreNoneOutsideTheValuesAndOnLevelGround) {
  const ArrayXd x = ArrayXd::LinSpaced(5, 0, 1);
  const ArrayXXd flat = ArrayXXd::Constant(5, 5, 2);
  for (const double level : {1.0, 2.0, 3.0}) EXPECT_TRUE(contourLines(x, x, flat, level).empty());
}

}  // namespace
}  // namespace jw
