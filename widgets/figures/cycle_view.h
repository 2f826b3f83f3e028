#pragma once

#include <vector>

#include <QString>
#include <QStringList>
#include <QVector>

#include "widgets/figures/series_look.h"
#include "widgets/snapshot.h"

namespace jw {

/// A quantity over the cycle, in its display unit.
struct CycleSeries {
  QString name;
  QString unit;
  QVector<double> values;
  SeriesLook look;
  bool rightAxis = false;
};

/// The curves that share one pair of axes.
struct CycleRow {
  QString id;     ///< "torque"
  QString label;  ///< "Joint torque", for the chooser
  QString title;  ///< "joint torque, N·m"
  std::vector<CycleSeries> series;
  std::vector<Level> levels = {};  ///< of the left axis
  bool fromZero = true;            ///< the axes begin at or contain zero
  double smallestSpan = 0;         ///< of the left axis
  bool shownAtFirst = true;        ///< without having been chosen
};

/// A segment's stretch of time [s].
struct CycleBand {
  QString name;
  double from = 0;
  double to = 0;
};

/// What the cycle figure shows.
struct CycleView {
  QVector<double> time;  ///< [s]
  double period = 0;     ///< [s]
  std::vector<CycleRow> rows;
  std::vector<CycleBand> bands;
  bool stale = false;

  bool empty() const { return time.isEmpty(); }
};

CycleView cycleView(const Snapshot& snapshot);

/// The view with only the joint torque, for the strip below the envelope.
CycleView stripView(const Snapshot& snapshot);

/// The stretch of time of every segment.
std::vector<CycleBand> segmentBands(const Project& project, const SampledCycle& cycle);

/// Ids of the rows that are shown before the person has chosen any.
QStringList firstRows(const CycleView& view);

/// `series` at `time` [s], linear between samples; NaN outside.
double seriesAt(const QVector<double>& time, const QVector<double>& values, double at);

}  // namespace jw
