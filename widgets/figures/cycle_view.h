#pragma once

#include <vector>

#include <QString>
#include <QStringList>
#include <QVector>

#include "widgets/snapshot.h"
#include "widgets/theme/palette.h"

namespace jw {

/// How a curve over time is drawn: hue and dashes; the dashes tell it apart without the hue.
struct SeriesLook {
  QColor Palette::*hue = &Palette::text;
  Qt::PenStyle dashes = Qt::SolidLine;
  double width = 1.6;  ///< [px]
};

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

/// `series` at `time` [s], linear between samples; NaN outside.
double seriesAt(const QVector<double>& time, const QVector<double>& values, double at);

}  // namespace jw
