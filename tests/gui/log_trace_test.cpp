// What is drawn of a long curve, compared by brute force with all of its rows.
#include "widgets/figures/log_trace.h"

#include <cmath>

#include <gtest/gtest.h>

namespace jw::test {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

struct Curve {
  std::vector<double> time, values;
};

std::shared_ptr<Curve> longCurve(int rows) {
  auto curve = std::make_shared<Curve>();
  for (int i = 0; i < rows; ++i) {
    curve->time.push_back(1e-3 * i);
    curve->values.push_back(std::sin(0.37 * i) * std::sin(1e-4 * i));
  }
  return curve;
}

TEST(LogTrace, NoPeakIsLostAtAnyZoom) {
  const auto curve = longCurve(100'000);
  curve->values[54'321] = 7;  // one row alone
  const LogTrace trace(curve, curve->time, curve->values);
  for (const double width : {99.999, 30.0, 3.0, 0.5}) {
    const double from = std::min(54.321 - width / 3, 99.999 - width);
    const double first = std::max(from, 0.0);
    double high = -1;
    for (const QPointF& p : trace.stroke(first, first + width, 800, 1))
      high = std::max(high, p.y());
    EXPECT_EQ(high, 7) << width;
    EXPECT_LE(trace.stroke(first, first + width, 800, 1).size(), 4U * 800);
    EXPECT_EQ(trace.range(first, first + width).high, 7);
  }
}

TEST(LogTrace, FewRowsAreDrawnOneByOne) {
  const auto curve = longCurve(1000);
  const LogTrace trace(curve, curve->time, curve->values);
  const std::vector<QPointF> stroke = trace.stroke(0.1005, 0.1095, 800, 1);
  ASSERT_EQ(stroke.size(), 11U);  // rows 101 to 109 and one beside each end
  EXPECT_EQ(stroke[1], QPointF(curve->time[101], curve->values[101]));
}

TEST(LogTrace, GapsAndMissingValuesBreakTheCurve) {
  auto curve = std::make_shared<Curve>();
  curve->time = {0, 1, 2, 10, 11, 12, 13};
  curve->values = {1, 2, 3, 4, kNone, 5, 6};
  const LogTrace trace(curve, curve->time, curve->values);
  const std::vector<QPointF> stroke = trace.stroke(0, 13, 800, 2);
  std::vector<int> breaks;
  for (std::size_t i = 0; i < stroke.size(); ++i)
    if (std::isnan(stroke[i].y())) breaks.push_back(int(i));
  EXPECT_EQ(breaks, (std::vector<int>{3, 5}));
  EXPECT_EQ(stroke.size(), 8U);
  EXPECT_TRUE(std::isnan(trace.at(14)));
  EXPECT_EQ(trace.at(0.5), 1.5);
}

}  // namespace
}  // namespace jw::test
