#pragma once

#include <cmath>
#include <limits>

#include <Eigen/Core>
#include <QVector>

namespace jw {

/// `value`, or NaN if it is infinite: the plot takes NaN as a gap, and one infinity would silently
/// stop its scaling.
inline double finiteOrGap(double value) {
  return std::isfinite(value) ? value : std::numeric_limits<double>::quiet_NaN();
}

/// `values` times `factor`, fit for plotting.
inline QVector<double> plotValues(const Eigen::ArrayXd& values, double factor = 1) {
  QVector<double> out(values.size());
  for (Eigen::Index i = 0; i < values.size(); ++i) out[i] = finiteOrGap(values[i] * factor);
  return out;
}

}  // namespace jw
