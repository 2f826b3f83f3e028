#pragma once

#include <vector>

#include <QScrollArea>

#include "core/robot/robot_description.h"

class QDoubleSpinBox;
class QGridLayout;
class QSlider;

namespace jw {

/// A slider and a number for each joint of a robot that moves freely, within its limits; joints
/// without limits turn half a turn either way. Angles in degrees, ways in millimetres.
class RobotPoseSliders : public QScrollArea {
  Q_OBJECT

 public:
  explicit RobotPoseSliders(QWidget* parent = nullptr);

  /// Makes the rows for a robot, at its rest pose.
  void showRobot(const RobotDescription& robot);
  /// A place [rad] or [m] for each joint, as set.
  const std::vector<double>& pose() const { return m_pose; }
  void setPose(const std::vector<double>& pose);
  /// Makes the name of the chosen joint stand out.
  void markJoint(std::size_t joint);

 signals:
  void poseChanged();  ///< by the person

 private:
  struct Row {
    std::size_t joint = 0;
    double low = 0, high = 0;  ///< [rad] or [m]
    double unit = 1;           ///< of the number shown, in [rad] or [m]
    QWidget* label = nullptr;
    QSlider* slider = nullptr;
    QDoubleSpinBox* number = nullptr;
  };

  void addRow(const RobotJoint& joint, std::size_t index, QGridLayout& grid);
  void showRow(const Row& row);
  void take(const Row& row, double place);

  std::vector<double> m_pose;
  std::vector<Row> m_rows;
};

}  // namespace jw
