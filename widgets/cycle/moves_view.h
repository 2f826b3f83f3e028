#pragma once

#include <memory>
#include <vector>

#include <QString>
#include <QVector>

#include "widgets/snapshot.h"

namespace jw {

/// One run of a move, as it was evaluated.
struct ShownRun {
  int segment = 0;                      ///< row of the move
  double from = 0, to = 0;              ///< [s]
  double startAngle = 0, endAngle = 0;  ///< [rad]
  bool broken = false;                  ///< does not join what comes before it
};

/// The moves of the cycle shown: what the table and the curve draw.
struct MovesView {
  std::shared_ptr<const Project> project;  ///< in force; null before the first
  std::vector<ShownRun> runs;              ///< of the last evaluation that has a cycle
  QVector<double> time;                    ///< [s]
  QVector<double> angle;                   ///< [°]
  double period = 0;                       ///< [s]
  bool endBroken = false;                  ///< the end does not meet the start
  bool stale = false;
  QString lacking;               ///< why there is no curve
  std::vector<QString> remarks;  ///< broken joins and values that cannot be used

  const std::vector<Segment>& moves() const { return project->cycle.segments; }
  bool hasCurve() const { return !runs.empty(); }
  /// The first run of a move; null if it does not run.
  const ShownRun* firstRun(int segment) const;
};

MovesView movesView(const Snapshot& snapshot);

}  // namespace jw
