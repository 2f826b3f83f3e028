#include "widgets/panels/robot_load_dialog.h"

#include <QFile>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QRegularExpression>
#include <QSignalBlocker>
#include <QStyle>
#include <QVBoxLayout>

#include "core/files/trajectory_table.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr qint64 kLargestFile = 50'000'000;

QLabel* makeNote(const QString& text, const char* role) {
  auto* label = new QLabel(text);
  label->setProperty("role", role);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

std::vector<TrajectoryColumn> columnsOf(const RobotDescription& robot) {
  std::vector<TrajectoryColumn> columns;
  for (const RobotJoint& joint : robot.joints) {
    if (!joint.isFree()) continue;
    columns.push_back(
        {joint.name, joint.kind == RobotJointKind::Turning ? Quantity::Angle : Quantity::Length});
  }
  return columns;
}

}  // namespace

Edit robotEdit(const RobotDescription& robot, const RobotChoice& choice,
               const std::optional<JointTrajectory>& trajectory) {
  const QString name = QString::fromStdString(robot.joints[choice.joint].name);
  const QString description = RobotLoadDialog::tr("Load from joint %1").arg(name);
  return {description,
          {},
          [robot, choice, trajectory](Project& project) -> tl::expected<void, InputError> {
            RobotChoice own = choice;
            own.robot = &robot;
            return trajectory ? applyRobotMotion(project, own, *trajectory)
                              : applyRobotLoad(project, own);
          }};
}

RobotLoadDialog::RobotLoadDialog(double gravity, QWidget* parent)
    : QDialog(parent),
      m_gravity(gravity),
      m_file(makeNote({}, "muted")),
      m_joint(new QComboBox(this)),
      m_down(new QLineEdit(QStringLiteral("0, 0, -1"), this)),
      m_pose(new RobotPoseSliders(this)),
      m_message(makeNote({}, "muted")),
      m_motion(makeNote({}, "muted")) {
  setObjectName(QStringLiteral("robotLoad"));
  setWindowTitle(tr("Load from a robot description"));
  auto* left = new QVBoxLayout;
  left->setSpacing(8);
  left->addLayout(makeFileRow());
  left->addLayout(makeChoice());
  left->addWidget(m_pose, 1);
  auto* right = new QVBoxLayout;
  right->setSpacing(8);
  right->addLayout(makeFigures());
  right->addLayout(makeWorst());
  right->addLayout(makeTrajectory());
  right->addWidget(m_message, 1, Qt::AlignTop);
  right->addLayout(makeButtons());
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(16, 16, 16, 16);
  row->setSpacing(24);
  row->addLayout(left, 3);
  row->addLayout(right, 2);
  resize(900, 560);
  showFigures();
}

QPushButton* RobotLoadDialog::makeButton(const QString& text, const char* name) {
  auto* button = new QPushButton(text, this);
  button->setObjectName(QStringLiteral("robotLoad.") + QLatin1String(name));
  button->setAutoDefault(false);
  return button;
}

QLayout* RobotLoadDialog::makeFileRow() {
  auto* row = new QHBoxLayout;
  auto* open = makeButton(tr("&Open description…"), "open");
  connect(open, &QPushButton::clicked, this, &RobotLoadDialog::askFile);
  m_file->setObjectName(QStringLiteral("robotLoad.file"));
  m_file->setText(tr("A URDF file: links with inertia, joints with axis and limits"));
  row->addWidget(open);
  row->addWidget(m_file, 1);
  return row;
}

QLayout* RobotLoadDialog::makeChoice() {
  m_joint->setObjectName(QStringLiteral("robotLoad.joint"));
  m_joint->setAccessibleName(tr("Joint"));
  connect(m_joint, &QComboBox::currentIndexChanged, this, &RobotLoadDialog::showFigures);
  m_down->setObjectName(QStringLiteral("robotLoad.down"));
  m_down->setAccessibleName(tr("Down in the base's frame"));
  m_down->setToolTip(tr("Direction of gravity as x, y, z of the base; 0, 0, -1 stands upright"));
  connect(m_down, &QLineEdit::textChanged, this, &RobotLoadDialog::showFigures);
  connect(m_pose, &RobotPoseSliders::poseChanged, this, &RobotLoadDialog::showFigures);
  auto* form = new QFormLayout;
  form->addRow(tr("&Joint"), m_joint);
  form->addRow(tr("&Down in the base's frame"), m_down);
  return form;
}

QLayout* RobotLoadDialog::makeFigures() {
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(16);
  const std::array<QString, 5> labels{tr("Carried mass"), tr("Centre of mass, off the axis"),
                                      tr("Inertia about the axis"), tr("Static torque here"),
                                      tr("Limits")};
  const std::array names{"mass", "centre", "inertia", "torque", "limits"};
  for (std::size_t k = 0; k < labels.size(); ++k) {
    m_values[k] = new QLabel(this);
    m_values[k]->setObjectName(QStringLiteral("robotLoad.") + QLatin1String(names[k]));
    m_values[k]->setTextInteractionFlags(Qt::TextSelectableByMouse);
    form->addRow(labels[k], m_values[k]);
  }
  return form;
}

QLayout* RobotLoadDialog::makeWorst() {
  auto* column = new QVBoxLayout;
  auto* torque = makeButton(tr("Pose of most &static torque"), "worstTorque");
  auto* inertia = makeButton(tr("Pose of most &inertia"), "worstInertia");
  connect(torque, &QPushButton::clicked, this, [this] { goToWorst(WorstOf::StaticTorque); });
  connect(inertia, &QPushButton::clicked, this, [this] { goToWorst(WorstOf::Inertia); });
  m_needRobot = {torque, inertia};
  column->addWidget(torque);
  column->addWidget(inertia);
  return column;
}

QLayout* RobotLoadDialog::makeTrajectory() {
  auto* column = new QVBoxLayout;
  auto* open = makeButton(tr("Open &trajectory of all joints…"), "trajectory");
  connect(open, &QPushButton::clicked, this, &RobotLoadDialog::askTrajectory);
  m_needRobot.push_back(open);
  m_motion->setObjectName(QStringLiteral("robotLoad.motion"));
  column->addWidget(open);
  column->addWidget(m_motion);
  return column;
}

QLayout* RobotLoadDialog::makeButtons() {
  m_message->setObjectName(QStringLiteral("robotLoad.message"));
  auto* row = new QHBoxLayout;
  auto* close = makeButton(tr("Close"), "close");
  connect(close, &QPushButton::clicked, this, &QDialog::reject);
  m_use = makeButton(tr("&Use as load"), "use");
  m_use->setDefault(true);
  connect(m_use, &QPushButton::clicked, this, [this] {
    const auto chosen = choice();
    if (!chosen) return;
    emit editRequested(robotEdit(*m_robot, *chosen, m_trajectory));
    accept();
  });
  row->addStretch(1);
  row->addWidget(close);
  row->addWidget(m_use);
  return row;
}

void RobotLoadDialog::askFile() {
  const QString fileName =
      QFileDialog::getOpenFileName(this, tr("Open a robot description"), {},
                                   tr("Robot descriptions (*.urdf *.xml);;All files (*)"));
  if (!fileName.isEmpty()) openFile(fileName);
}

void RobotLoadDialog::askTrajectory() {
  const QString fileName = QFileDialog::getOpenFileName(
      this, tr("Open a trajectory"), {}, tr("Tables (*.csv *.txt *.tsv);;All files (*)"));
  if (!fileName.isEmpty()) openTrajectory(fileName);
}

std::optional<std::string> RobotLoadDialog::contentOf(const QString& fileName) {
  QFile file(fileName);
  const bool open = file.open(QIODevice::ReadOnly);
  if (open && file.size() <= kLargestFile) return file.readAll().toStdString();
  say(fileName + QStringLiteral(": ") + (open ? tr("larger than 50 MB") : file.errorString()),
      "error");
  return std::nullopt;
}

void RobotLoadDialog::openFile(const QString& fileName) {
  const auto text = contentOf(fileName);
  if (!text) return;
  const QString name = fileName.section(u'/', -1);
  auto robot = readRobotDescription(*text, name.toStdString());
  if (!robot) return say(toQString(describe(robot.error())), "error");
  showRobot(*std::move(robot), name);
}

void RobotLoadDialog::showRobot(RobotDescription robot, const QString& fileName) {
  m_robot = std::move(robot);
  m_trajectory.reset();
  m_motion->setText(tr("With one, inverse dynamics of all links gives this joint's torque."));
  m_file->setText(fileName);
  m_pose->showRobot(*m_robot);
  const QSignalBlocker quiet(m_joint);
  m_joint->clear();
  for (std::size_t k = 0; k < m_robot->joints.size(); ++k) {
    const RobotJoint& joint = m_robot->joints[k];
    if (joint.kind != RobotJointKind::Turning) continue;
    m_joint->addItem(QString::fromStdString(joint.name), QVariant::fromValue(qulonglong{k}));
  }
  showFigures();
}

void RobotLoadDialog::openTrajectory(const QString& fileName) {
  const auto text = contentOf(fileName);
  if (!text || !m_robot) return;
  const QString name = fileName.section(u'/', -1);
  auto read = readTrajectory(*text, name.toStdString(), columnsOf(*m_robot));
  if (!read) return say(toQString(describe(read.error())), "error");
  m_trajectory = *std::move(read);
  showFigures();
  m_motion->setText(tr("%1: %2 rows, %3. It becomes the cycle.")
                        .arg(name)
                        .arg(m_trajectory->time.size())
                        .arg(durationText(m_trajectory->time.back() - m_trajectory->time.front())));
}

std::optional<Eigen::Vector3d> RobotLoadDialog::down() const {
  static const QRegularExpression blanks(QStringLiteral("[,;\\s]+"));
  const QStringList parts = m_down->text().split(blanks, Qt::SkipEmptyParts);
  Eigen::Vector3d direction = Eigen::Vector3d::Zero();
  if (parts.size() != 3) return std::nullopt;
  for (int k = 0; k < 3; ++k) {
    const auto number = parseQuantity(parts[k].toStdString(), Quantity::Number, "1");
    if (!number) return std::nullopt;
    direction[k] = number->value;
  }
  if (!(direction.norm() > 0)) return std::nullopt;
  return direction;
}

std::optional<RobotChoice> RobotLoadDialog::choice() const {
  const auto direction = down();
  if (!m_robot || !direction || m_joint->currentIndex() < 0) return std::nullopt;
  const auto joint = static_cast<std::size_t>(m_joint->currentData().toULongLong());
  return RobotChoice{&*m_robot, joint, m_pose->pose(), *direction};
}

void RobotLoadDialog::goToWorst(WorstOf what) {
  const auto chosen = choice();
  if (!chosen) return;
  say(tr("Looking for the pose…"), "muted");
  m_search.request([this, robot = *m_robot, joint = chosen->joint, what, down = chosen->down,
                    gravity = m_gravity](const StudyContext& study) {
    RobotPose worst = worstPose(robot, joint, what, down, gravity);
    study.post([this, place = std::move(worst.place)] {
      m_pose->setPose(place);
      showFigures();
    });
  });
}

QString RobotLoadDialog::notesText() const {
  QStringList lines;
  for (const InputError& note : m_robot->notes) lines << toQString(describe(note));
  constexpr int kMost = 4;
  const int more = static_cast<int>(lines.size()) - kMost;
  lines = lines.mid(0, kMost);
  if (more > 0) lines << tr("… and %1 more").arg(more);
  return lines.join(u'\n');
}

void RobotLoadDialog::say(const QString& text, const char* role) {
  m_message->setProperty("role", role);
  m_message->setText(text);
  m_message->style()->polish(m_message);
}

/// Shows what the chosen joint carries, or why it cannot be told.
void RobotLoadDialog::showFigures() {
  if (m_use == nullptr) return;
  m_search.stop();  // it was for what has changed since
  const auto chosen = choice();
  const auto error = chosen ? choiceError(*chosen) : std::nullopt;
  for (QPushButton* button : m_needRobot) button->setEnabled(chosen && !error);
  m_use->setEnabled(chosen && !error);
  for (QLabel* value : m_values) value->setText(QStringLiteral("–"));
  if (!m_robot) return say({}, "muted");
  if (!down()) return say(tr("Down: three numbers are needed, such as 0, 0, -1"), "error");
  if (!chosen) return say(tr("No joint of this robot turns"), "error");
  m_pose->markJoint(chosen->joint);
  if (error) return say(toQString(describe(*error)), "error");
  const JointLoad load = carriedLoad(*m_robot, chosen->joint, chosen->pose, chosen->down);
  const RobotJoint& joint = m_robot->joints[chosen->joint];
  m_values[0]->setText(quantityText(load.sum.mass, Quantity::Mass, "kg", 4));
  m_values[1]->setText(quantityText(load.centre().norm(), Quantity::Length, "m", 4));
  m_values[2]->setText(quantityText(load.sum.inertia, Quantity::Inertia, "kg*m^2", 4));
  m_values[3]->setText(quantityText(staticTorque(load, chosen->pose[chosen->joint], m_gravity),
                                    Quantity::Torque, "N*m", 4));
  m_values[4]->setText(isSet(joint.low) ? tr("%1 to %2")
                                              .arg(quantityText(joint.low, Quantity::Angle, "deg"),
                                                   quantityText(joint.high, Quantity::Angle, "deg"))
                                        : tr("none"));
  say(notesText(), "muted");
}

}  // namespace jw
