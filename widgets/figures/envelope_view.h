#pragma once

#include <optional>
#include <vector>

#include <QPointF>
#include <QString>
#include <QStringList>
#include <QVector>

#include "widgets/figures/path_band.h"
#include "widgets/snapshot.h"

namespace jw {

/// The shaft to which speed and torque of an envelope belong.
enum class AxesAt { Motor, Joint };

/// A curve in the speed-torque plane, in display units; NaN is a gap.
struct PlaneCurve {
  QVector<double> speed;   ///< [rpm]
  QVector<double> torque;  ///< [N·m]
};

/// The load's path during one segment.
struct PathSegment {
  QString name;
  int index = 0;       ///< of the segment in the cycle
  bool dwell = false;  ///< the speed is zero throughout
  int move = 0;        ///< number of moves before this one
  PlaneCurve points;
};

/// A named point of the plane.
struct PlanePoint {
  QPointF at;  ///< [rpm], [N·m]
  QString text;
};

/// A line of equal efficiency, with the place of its label.
struct EfficiencyLine {
  QString text;  ///< "80 %"
  PlaneCurve points;
  std::optional<QPointF> labelAt;  ///< only on the longest lines of a level
};

/// What is shown beside the envelope, if the studies are there.
struct EnvelopeExtras {
  bool band = true;  ///< weakest and strongest envelope, and the intermittent curve
  bool efficiency = false;
};

/// What the envelope figure shows, in display units and words.
struct EnvelopeView {
  PlaneCurve peak;
  PlaneCurve lasting;
  PlaneCurve weakest;  ///< edges of the band
  PlaneCurve strongest;
  PlaneCurve shortTime;  ///< intermittent, from cold
  std::vector<EfficiencyLine> efficiency;
  QString weakestName;
  QString strongestName;
  QString shortTimeName;
  QString peakName;
  QString lastingName;
  std::vector<PathSegment> path;
  QVector<double> time;          ///< [s] of every sample of `track`
  PlaneCurve track;              ///< the whole path
  QVector<int> segmentOf;        ///< segment of every sample
  std::vector<PathReach> reach;  ///< where the path may lie; empty = not asked
  std::optional<PlanePoint> rms;
  std::optional<PlanePoint> tightest;
  QString speedTitle;
  QString torqueTitle;
  bool jointPossible = false;  ///< the chain is known, so the axes can stand at the joint
  QStringList missing;         ///< what keeps the figure from being complete, as links
  bool stale = false;

  bool empty() const { return peak.speed.isEmpty() && track.speed.isEmpty(); }
};

/// The view of a snapshot. At the joint, speeds are divided and torques multiplied by the total
/// ratio, with no regard to losses.
EnvelopeView envelopeView(const Snapshot& snapshot, AxesAt axesAt,
                          const EnvelopeExtras& extras = {});

/// The view's largest lasting and peak torque [N·m] at `speed` [rpm] towards `torque`'s sign, read
/// from its curves; NaN where there is none.
double curveTorqueAt(const PlaneCurve& curve, double speed, bool upper);

}  // namespace jw
