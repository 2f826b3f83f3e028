#pragma once

#include "core/studies/field_sweep.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// What the picture of two inputs shows, in the units of its axes.
struct MapView {
  std::shared_ptr<const FieldMap> map;
  std::vector<double> x;  ///< of the columns
  std::vector<double> y;  ///< of the rows
  ChartAxis across;
  ChartAxis up;
  QString title;
  QString remark;
  QString warning;
  double limit = 1;                ///< colours go from minus to plus this margin (a share)
  std::vector<QPolygonF> edges;    ///< where the smallest margin is 0
  std::optional<QPointF> present;  ///< the design as it is, if it lies on the map
  QString presentText;             ///< "as it is −12 %"
  std::vector<std::pair<QPointF, QString>> regions;  ///< which check is smallest where

  bool empty() const { return map == nullptr; }
};

/// `presentMargin` is the smallest margin of the design as it is; NaN if not known.
MapView mapView(std::shared_ptr<const FieldMap> map, const Project& project, double presentMargin);

/// Both values and the smallest margin at a place of the map; empty beside it.
QString mapReading(const MapView& view, double x, double y);

/// The smallest margin of an evaluation; NaN if none is known.
double smallestMargin(const Evaluation& evaluation);

}  // namespace jw
