#include "widgets/panels/robot_pose_sliders.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QDoubleSpinBox>
#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <QSignalBlocker>
#include <QSlider>

namespace jw {
namespace {

constexpr int kSliderSteps = 720;

}  // namespace

RobotPoseSliders::RobotPoseSliders(QWidget* parent) : QScrollArea(parent) {
  setObjectName(QStringLiteral("robotLoad.pose"));
  setAccessibleName(tr("Pose"));
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

void RobotPoseSliders::showRobot(const RobotDescription& robot) {
  m_rows.clear();
  m_pose = robot.restPose();
  auto* content = new QWidget;
  auto* grid = new QGridLayout(content);
  grid->setContentsMargins(0, 0, 8, 0);
  grid->setHorizontalSpacing(12);
  grid->setColumnStretch(1, 1);
  for (std::size_t k = 0; k < robot.joints.size(); ++k) {
    if (robot.joints[k].isFree()) addRow(robot.joints[k], k, *grid);
  }
  grid->setRowStretch(grid->rowCount(), 1);
  setWidget(content);
  for (const Row& row : m_rows) showRow(row);
}

void RobotPoseSliders::addRow(const RobotJoint& joint, std::size_t index, QGridLayout& grid) {
  const bool turns = joint.kind == RobotJointKind::Turning;
  Row row;
  row.joint = index;
  row.low = isSet(joint.low) ? joint.low : -std::numbers::pi;
  row.high = isSet(joint.high) ? joint.high : std::numbers::pi;
  row.unit = turns ? std::numbers::pi / 180 : 1e-3;
  const QString name = QString::fromStdString(joint.name);
  auto* label = new QLabel(name);
  label->setTextFormat(Qt::PlainText);
  label->setMaximumWidth(130);
  label->setToolTip(name);
  row.label = label;
  row.slider = new QSlider(Qt::Horizontal);
  row.slider->setRange(0, kSliderSteps);
  row.slider->setAccessibleName(name);
  row.number = new QDoubleSpinBox;
  row.number->setLocale(QLocale::c());  // a decimal point, as in every other field
  row.number->setObjectName(QStringLiteral("robotLoad.place.") + name);
  row.number->setAccessibleName(name);
  row.number->setDecimals(1);
  row.number->setRange(row.low / row.unit, row.high / row.unit);
  row.number->setSuffix(turns ? QStringLiteral("°") : QStringLiteral(" mm"));
  row.number->setKeyboardTracking(false);
  const int line = grid.rowCount();
  grid.addWidget(label, line, 0);
  grid.addWidget(row.slider, line, 1);
  grid.addWidget(row.number, line, 2);
  connect(row.slider, &QSlider::valueChanged, this, [this, row](int step) {
    take(row, row.low + (row.high - row.low) * step / kSliderSteps);
  });
  connect(row.number, &QDoubleSpinBox::valueChanged, this, [this, row](double shown) {
    take(row, std::clamp(shown * row.unit, row.low, row.high));
  });
  m_rows.push_back(row);
}

void RobotPoseSliders::take(const Row& row, double place) {
  m_pose[row.joint] = place;
  showRow(row);
  emit poseChanged();
}

void RobotPoseSliders::showRow(const Row& row) {
  const QSignalBlocker slider(row.slider), number(row.number);
  const double place = m_pose[row.joint];
  const double share = row.high > row.low ? (place - row.low) / (row.high - row.low) : 0;
  row.slider->setValue(static_cast<int>(std::lround(share * kSliderSteps)));
  row.number->setValue(place / row.unit);
}

void RobotPoseSliders::setPose(const std::vector<double>& pose) {
  m_pose = pose;
  for (const Row& row : m_rows) showRow(row);
}

void RobotPoseSliders::markJoint(std::size_t joint) {
  for (const Row& row : m_rows) {
    QFont font = row.label->font();
    font.setBold(row.joint == joint);
    row.label->setFont(font);
  }
}

}  // namespace jw
