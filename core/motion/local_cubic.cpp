#include "core/motion/local_cubic.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace jw {
namespace {

constexpr std::size_t kTerms = 4;   // of a cubic
constexpr std::size_t kFewest = 5;  // points in a window
/// A pivot below this share of its diagonal means that the points do not support the degree.
constexpr double kDegenerate = 1e-11;

using Powers = std::array<double, 2 * kTerms - 1>;
using Terms = std::array<double, kTerms>;

/// Least-squares polynomial from the sums Σx^k and Σy·x^k by Cholesky; of the highest degree up to
/// 3 that the points support, the remaining coefficients 0.
Terms solveCubic(const Powers& sums, const Terms& right) {
  std::array<Terms, kTerms> l{};
  Terms forward{};
  std::size_t size = 0;
  for (; size < kTerms; ++size) {
    for (std::size_t j = 0; j <= size; ++j) {
      double rest = sums[size + j];
      for (std::size_t k = 0; k < j; ++k) rest -= l[size][k] * l[j][k];
      l[size][j] = j < size ? rest / l[j][j] : rest;
    }
    if (!(l[size][size] > kDegenerate * sums[2 * size])) break;
    l[size][size] = std::sqrt(l[size][size]);
    forward[size] = right[size];
    for (std::size_t k = 0; k < size; ++k) forward[size] -= l[size][k] * forward[k];
    forward[size] /= l[size][size];
  }
  Terms solution{};
  for (std::size_t i = size; i-- > 0;) {
    solution[i] = forward[i];
    for (std::size_t k = i + 1; k < size; ++k) solution[i] -= l[k][i] * solution[k];
    solution[i] /= l[i][i];
  }
  return solution;
}

/// Half-open range of points.
struct Window {
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t size() const { return last - first; }
};

/// Finds the window of one point after the other.
class WindowFinder {
 public:
  WindowFinder(std::span<const double> x, double window)
      : x_(x), half_(std::min(window, x.back() - x.front()) / 2) {}

  Window at(std::size_t point) {
    const double middle = std::clamp(x_[point], x_.front() + half_, x_.back() - half_);
    const double reach = half_ * (1 + 1e-9);  // rounding must not drop a point at the edge
    while (x_[first_] < middle - reach) ++first_;
    while (last_ < x_.size() && x_[last_] <= middle + reach) ++last_;
    Window window{first_, std::max(last_, first_)};
    while (window.size() < kFewest) widen(window, x_[point]);
    return window;
  }

 private:
  void widen(Window& window, double middle) const {
    const bool right =
        window.first == 0 ||
        (window.last < x_.size() && x_[window.last] - middle <= middle - x_[window.first - 1]);
    right ? ++window.last : --window.first;
  }

  std::span<const double> x_;
  double half_;
  std::size_t first_ = 0, last_ = 0;
};

/// Sums over a sliding window in coordinates (x − anchor)/scale and y − reference. They are taken
/// afresh as soon as the window has moved by a quarter of its width, so rounding cannot build up
/// and the cost per point does not depend on the window.
class SlidingFit {
 public:
  SlidingFit(std::span<const double> x, std::span<const double> y) : x_(x), y_(y) {}

  void moveTo(const Window& window) {
    const double left = x_[window.first];
    const double right = x_[window.last - 1];
    const double middle = (left + right) / 2;
    const double half = (right - left) / 2;
    const bool overlaps = window.first < window_.last && window.last > window_.first;
    if (!overlaps || std::abs(middle - anchor_) > scale_ / 2 || half > 1.5 * scale_ ||
        half < scale_ / 1.5)
      restart(window, middle, half);
    slide(window);
  }

  /// Fitted value and derivatives at x.
  std::array<double, 3> at(double x) const {
    const Terms c = solveCubic(powers_, right_);
    const double t = (x - anchor_) / scale_;
    return {reference_ + c[0] + t * (c[1] + t * (c[2] + t * c[3])),
            (c[1] + t * (2 * c[2] + t * 3 * c[3])) / scale_,
            (2 * c[2] + t * 6 * c[3]) / scale_ / scale_};
  }

 private:
  void restart(const Window& window, double middle, double half) {
    anchor_ = middle;
    scale_ = half;
    reference_ = y_[window.first + window.size() / 2];
    powers_ = {};
    right_ = {};
    window_ = {window.first, window.first};
  }

  void slide(const Window& window) {
    while (window_.last < window.last) add(window_.last++, 1);
    while (window_.first > window.first) add(--window_.first, 1);
    while (window_.last > window.last) add(--window_.last, -1);
    while (window_.first < window.first) add(window_.first++, -1);
  }

  void add(std::size_t point, double sign) {
    const double t = (x_[point] - anchor_) / scale_;
    const double y = y_[point] - reference_;
    double power = sign;
    for (std::size_t k = 0; k < powers_.size(); ++k, power *= t) {
      powers_[k] += power;
      if (k < kTerms) right_[k] += power * y;
    }
  }

  std::span<const double> x_, y_;
  double anchor_ = 0, scale_ = 0, reference_ = 0;
  Powers powers_{};
  Terms right_{};
  Window window_;
};

}  // namespace

SmoothedCurve smoothByLocalCubic(std::span<const double> x, std::span<const double> y,
                                 double window) {
  assert(x.size() >= kFewest && x.size() == y.size() && window > 0);
  SmoothedCurve curve;
  for (auto* column : {&curve.value, &curve.first, &curve.second}) column->resize(x.size());
  WindowFinder finder(x, window);
  SlidingFit fit(x, y);
  for (std::size_t i = 0; i < x.size(); ++i) {
    fit.moveTo(finder.at(i));
    const auto [value, first, second] = fit.at(x[i]);
    curve.value[i] = value;
    curve.first[i] = first;
    curve.second[i] = second;
  }
  return curve;
}

}  // namespace jw
