#pragma once

#include <array>
#include <optional>

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/robot/robot_edits.h"
#include "core/robot/worst_pose.h"
#include "widgets/edit.h"
#include "widgets/panels/robot_pose_sliders.h"
#include "widgets/study_thread.h"

namespace jw {

/// The edit that makes what a robot's joint carries the load, and its motion along a trajectory the
/// cycle if one is given; one undo step.
Edit robotEdit(const RobotDescription& robot, const RobotChoice& choice,
               const std::optional<JointTrajectory>& trajectory);

/// Opens a robot description, lets a joint and a pose be chosen, shows what the joint then carries
/// and makes it the project's load.
class RobotLoadDialog : public QDialog {
  Q_OBJECT

 public:
  /// `gravity` [m/s²] of the project.
  explicit RobotLoadDialog(double gravity, QWidget* parent = nullptr);

  /// Reads a file; what is wrong with it is said in the window.
  void openFile(const QString& fileName);
  void openTrajectory(const QString& fileName);
  const std::optional<RobotDescription>& robot() const { return m_robot; }

 signals:
  void editRequested(const jw::Edit& edit);

 private:
  QLayout* makeFileRow();
  QLayout* makeChoice();
  QLayout* makeFigures();
  QLayout* makeWorst();
  QLayout* makeTrajectory();
  QLayout* makeButtons();
  QPushButton* makeButton(const QString& text, const char* name);
  void askFile();
  void askTrajectory();
  void showRobot(RobotDescription robot, const QString& fileName);
  std::optional<std::string> contentOf(const QString& fileName);
  std::optional<RobotChoice> choice() const;
  std::optional<Eigen::Vector3d> down() const;
  void goToWorst(WorstOf what);
  void showFigures();
  void say(const QString& text, const char* role);
  QString notesText() const;

  double m_gravity;
  std::optional<RobotDescription> m_robot;
  std::optional<JointTrajectory> m_trajectory;
  QLabel* m_file;
  QComboBox* m_joint;
  QLineEdit* m_down;
  RobotPoseSliders* m_pose;
  std::array<QLabel*, 5> m_values{};
  QLabel* m_message;
  QLabel* m_motion;
  std::vector<QPushButton*> m_needRobot;  ///< of no use before a description is open
  QPushButton* m_use = nullptr;
  StudyThread m_search;  ///< of the worst pose
};

}  // namespace jw
