#pragma once

#include <memory>

#include <Eigen/Core>
#include <QString>
#include <QStringList>

#include "core/studies/drive_shapes.h"
#include "widgets/snapshot.h"

namespace jw {

/// The instant at which a stage is drawn.
struct DriveInstant {
  double angle = 0;        ///< [rad] of the stage's input
  double speed = kUnset;   ///< [rad/s] of its input; unset = speeds are told as shares of it
  double torque = kUnset;  ///< [N·m] at the stage's output; unset if not known
  bool clockwise = false;  ///< which way the input pushes
  QString when;            ///< "at 0.84 s"; empty if there is nothing to tell
};

/// The drawing of one stage and what is written about it.
struct DriveView {
  QStringList stages;                         ///< titles of all stages, the motor's first
  int stage = -1;                             ///< which of them is drawn; -1 if there is none
  std::shared_ptr<const DriveShapes> shapes;  ///< null if it cannot be drawn
  QString headline;                           ///< "Ratio 5 : 1 = 1 + z_r/z_s", in trade notation
  QString contrast;                           ///< "data sheet 4.9 : 1" where that differs
  QString body;                               ///< "1.2 kg · ⌀ 90 × 60 mm · 38 N·m/kg"
  QString notice;                             ///< HTML: what keeps it from being drawn, with links
  std::shared_ptr<const Evaluation> evaluation;
  double inputRatio = kUnset;     ///< signed turning of the stage's input per turn of the joint
  double largestTorque = kUnset;  ///< [N·m] at its output in the cycle
  Stage source;                   ///< what is drawn
  double arrowLength = 0;         ///< [m/N] of forces; 0 = none are drawn
  double pinArrowFactor = 1;      ///< by which those of ring pins are longer

  bool empty() const { return !shapes; }
  bool moves() const { return evaluation && evaluation->cycle && isSet(inputRatio); }
};

/// The view of stage number `stage`; -1, or one that is not there, takes mainStage.
DriveView driveView(const Snapshot& snapshot, int stage = -1);

/// The stage with the largest ratio among those that can be drawn, else the first; -1 if there is
/// no stage.
int mainStage(const Project& project);

/// Angle, speed and torque at `time` [s] of the cycle, the first two from the joint's by the ratios
/// in between. NaN: at the cycle's start, with the highest speed and the largest torque of the
/// cycle. Without a cycle at angle 0.
DriveInstant driveInstant(const DriveView& view, double time);

/// "input · 3 000 rpm", "held", "output · −0.01 × input".
QString driveSpeedText(const DriveLabel& label, const DriveInstant& instant);

/// The same without the cycle's speeds and angle, for turning a drawing by itself.
DriveInstant turningInstant(const DriveView& view, double angle);

/// What the arrows of forces are, with the largest; empty if there are none.
QString driveForceText(const DriveView& view, const DriveInstant& instant);

/// The stage that a name such as "drive" (-1) or "drive2" (1) means; -2 for other names.
int driveStageOf(const QString& figureName);

}  // namespace jw
