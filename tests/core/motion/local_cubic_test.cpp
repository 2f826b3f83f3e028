#include "core/motion/local_cubic.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>
#include <Eigen/Dense>

namespace jw {
namespace {

std::vector<double> unevenSteps(int count, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> step(0.2, 1.8);
  std::vector<double> x{0};
  while (static_cast<int>(x.size()) < count) x.push_back(x.back() + step(random) / count);
  return x;
}

// Savitzky & Golay, Anal. Chem. 36 (1964) 1627: smoothing weights for a cubic over 5 points are
// (−3, 12, 17, 12, −3)/35, and over 7 points (−2, 3, 6, 7, 6, 3, −2)/21 (from memory).
TEST(LocalCubic, HasThePublishedSmoothingWeights) {
  const std::vector<double> x{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
  const std::vector<double> five{-3.0 / 35, 12.0 / 35, 17.0 / 35, 12.0 / 35, -3.0 / 35};
  const std::vector<double> seven{-2.0 / 21, 3.0 / 21, 6.0 / 21, 7.0 / 21,
                                  6.0 / 21,  3.0 / 21, -2.0 / 21};
  for (const auto& weights : {five, seven}) {
    const std::size_t half = weights.size() / 2;
    for (std::size_t k = 0; k < weights.size(); ++k) {
      std::vector<double> y(x.size(), 0.0);
      y[5 - half + k] = 1;
      const auto curve = smoothByLocalCubic(x, y, 2 * static_cast<double>(half));
      EXPECT_NEAR(curve.value[5], weights[k], 1e-13);
    }
  }
}

// Same paper: first derivative of a cubic over 5 points is (1, −8, 0, 8, −1)/12, second derivative
// (2, −1, −2, −1, 2)/7 (from memory).
TEST(LocalCubic, HasThePublishedDerivativeWeights) {
  const std::vector<double> x{0, 1, 2, 3, 4, 5, 6, 7, 8};
  const double first[] = {1.0 / 12, -8.0 / 12, 0, 8.0 / 12, -1.0 / 12};
  const double second[] = {2.0 / 7, -1.0 / 7, -2.0 / 7, -1.0 / 7, 2.0 / 7};
  for (std::size_t k = 0; k < 5; ++k) {
    std::vector<double> y(x.size(), 0.0);
    y[2 + k] = 1;
    const auto curve = smoothByLocalCubic(x, y, 4);
    EXPECT_NEAR(curve.first[4], first[k], 1e-13);
    EXPECT_NEAR(curve.second[4], second[k], 1e-13);
  }
}

TEST(LocalCubic, ReproducesACubicWithUnequalStepsUpToTheEnds) {
  const std::vector<double> x = unevenSteps(500, 11);
  std::vector<double> y;
  for (const double t : x) y.push_back(2 - 3 * t + 5 * t * t - 4 * t * t * t);
  for (const double window : {0.001, 0.05, 0.3, 5.0}) {
    const auto curve = smoothByLocalCubic(x, y, window);
    const double tolerance = window < 0.01 ? 1e-6 : 1e-8;  // of y'': rounding over step²
    for (std::size_t i = 0; i < x.size(); ++i) {
      const double t = x[i];
      ASSERT_NEAR(curve.value[i], y[i], 1e-12);
      ASSERT_NEAR(curve.first[i], -3 + 10 * t - 12 * t * t, 1e-9);
      ASSERT_NEAR(curve.second[i], 10 - 24 * t, tolerance);
    }
  }
}

/// The same fit by a QR decomposition of the points in the window.
Eigen::Vector4d fitByQr(const std::vector<double>& x, const std::vector<double>& y, double middle,
                        double half) {
  std::vector<std::size_t> inside;
  for (std::size_t i = 0; i < x.size(); ++i)
    if (std::abs(x[i] - middle) <= half) inside.push_back(i);
  Eigen::MatrixXd a(inside.size(), 4);
  Eigen::VectorXd b(inside.size());
  for (Eigen::Index r = 0; r < a.rows(); ++r) {
    const double t = x[inside[static_cast<std::size_t>(r)]] - middle;
    a.row(r) << 1, t, t * t, t * t * t;
    b[r] = y[inside[static_cast<std::size_t>(r)]];
  }
  return a.householderQr().solve(b);
}

TEST(LocalCubic, AgreesWithALeastSquaresFitOfEachWindow) {
  const std::vector<double> x = unevenSteps(3000, 5);
  std::mt19937 random(6);
  std::normal_distribution<double> noise(0, 0.1);
  std::vector<double> y;
  for (const double t : x) y.push_back(1000 + std::sin(9 * t) + noise(random));
  const double half = 0.05;
  const auto curve = smoothByLocalCubic(x, y, 2 * half);
  for (std::size_t i = 200; i < 2800; i += 37) {
    const Eigen::Vector4d fit = fitByQr(x, y, x[i], half);
    EXPECT_NEAR(curve.value[i], fit[0], 1e-10);
    EXPECT_NEAR(curve.first[i], fit[1], 1e-8);
    EXPECT_NEAR(curve.second[i], 2 * fit[2], 1e-6);
  }
}

// Slope in the middle of a cubic fitted to n points spread evenly over [-1, 1] with noise σ: the
// odd terms have the normal matrix n·[1/3 1/5; 1/5 1/7], whose inverse begins with 75/(4n). So the
// slope's standard deviation is σ·√(75/(4n)), over half the window. Six of them must not be passed.
TEST(LocalCubic, NoiseIsDampedWithinTheExpectedBound) {
  constexpr int kCount = 2001;
  constexpr double kSigma = 1e-3;
  std::mt19937 random(1);
  std::normal_distribution<double> noise(0, kSigma);
  std::vector<double> x, y;
  for (int i = 0; i < kCount; ++i) {
    x.push_back(i * 1e-3);
    y.push_back(std::sin(3 * x.back()) + noise(random));
  }
  const auto curve = smoothByLocalCubic(x, y, 0.2);
  double worst = 0, raw = 0;
  for (std::size_t i = 150; i + 150 < x.size(); ++i) {
    worst = std::max(worst, std::abs(curve.first[i] - 3 * std::cos(3 * x[i])));
    raw = std::max(raw, std::abs((y[i + 1] - y[i - 1]) / 2e-3 - 3 * std::cos(3 * x[i])));
  }
  const double deviation = kSigma * std::sqrt(75.0 / 4 / 201) / 0.1;
  EXPECT_LT(worst, 6 * deviation);
  EXPECT_GT(raw, 100 * deviation);
}

TEST(LocalCubic, BunchedPointsLowerTheDegreeInsteadOfExploding) {
  std::vector<double> x, y;
  for (int k = 0; k < 40; ++k) {  // pairs of points 1e-12 apart: two places in each short window
    x.push_back(k / 2 + (k % 2) * 1e-12);
    y.push_back(0.5 * x.back());
  }
  const auto curve = smoothByLocalCubic(x, y, 0.5);
  for (std::size_t i = 0; i < x.size(); ++i) EXPECT_NEAR(curve.first[i], 0.5, 1e-6);
}

TEST(LocalCubic, AGapInThePointsIsBridged) {
  std::vector<double> x, y;
  for (int k = 0; k < 100; ++k) x.push_back(k * 0.01 + (k >= 50 ? 1000 : 0));
  for (const double t : x) y.push_back(2 * t);
  const auto curve = smoothByLocalCubic(x, y, 0.1);
  for (std::size_t i = 0; i < x.size(); ++i) EXPECT_NEAR(curve.first[i], 2, 1e-8);
}

}  // namespace
}  // namespace jw
