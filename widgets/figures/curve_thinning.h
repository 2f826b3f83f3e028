#pragma once

#include <QPolygonF>
#include <QVector>

namespace jw {

/// A polyline; NaN is a gap.
struct Polyline {
  QVector<double> x;
  QVector<double> y;
};

/// The share of a curve's extent that no eye can tell on a screen.
inline constexpr double kInvisible = 5e-5;

/// The line without the points that are not needed: none lies farther from what is left than
/// `tolerance`, as a share of the line's own extent (Ramer 1972; Douglas and Peucker 1973). Points
/// that are NaN stay, so gaps stay.
Polyline thinned(const QVector<double>& x, const QVector<double>& y, double tolerance = kInvisible);

/// The points of the line that are no gaps.
QPolygonF polygonOf(const Polyline& line);

}  // namespace jw
