// The load from a robot description: what the window shows, and one undoable edit.
#include <QAbstractButton>
#include <QComboBox>
#include <QDir>
#include <QDoubleSpinBox>
#include <QSignalSpy>

#include "core/checks/evaluation.h"
#include "tests/core/checks/example_project.h"
#include "tests/core/robot/example_robot.h"
#include "tests/gui/support.h"
#include "widgets/panels/robot_load_dialog.h"
#include "widgets/theme/theme.h"

namespace jw::test {
namespace {

class RobotLoadDialogTest : public testing::Test {
 protected:
  RobotLoadDialogTest() {
    putContent(path("arm.urdf"), kExampleRobot);
    dialog.openFile(path("arm.urdf"));
    dialog.show();
  }

  QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }
  template <class T>
  T& part(const char* name) {
    T* found = dialog.findChild<T*>(QStringLiteral("robotLoad.") + QLatin1String(name));
    EXPECT_NE(found, nullptr) << name;
    return *found;
  }
  QString value(const char* name) { return part<QLabel>(name).text(); }
  QString message() { return value("message"); }
  void chooseShoulder() {
    part<QComboBox>("joint").setCurrentText("Shoulder");
    part<QDoubleSpinBox>("place.Elbow").setValue(0);
    part<QDoubleSpinBox>("place.Shoulder").setValue(0);
  }
  /// What pressing "Use" asks for.
  Edit use() {
    QSignalSpy edits(&dialog, &RobotLoadDialog::editRequested);
    QTest::mouseClick(&part<QPushButton>("use"), Qt::LeftButton);
    return edits.size() == 1 ? edits[0][0].value<Edit>() : Edit{};
  }

  QTemporaryDir folder;
  RobotLoadDialog dialog{9.80665};
};

// 3 + 1.8 + 0.7 kg of upper arm, forearm and hand.
TEST_F(RobotLoadDialogTest, ShowsWhatTheJointCarries) {
  chooseShoulder();
  EXPECT_EQ(value("mass"), "5.5 kg");
  EXPECT_TRUE(value("limits").startsWith(QString::fromUtf8("−28.6")));
  const QString level = value("torque");
  part<QDoubleSpinBox>("place.Shoulder").setValue(60);
  EXPECT_NE(value("torque"), level);
  const QString stretched = value("inertia");
  part<QDoubleSpinBox>("place.Elbow").setValue(90);
  EXPECT_EQ(part<QDoubleSpinBox>("place.Elbow").text(), QString::fromUtf8("90.0°"));
  EXPECT_NE(value("inertia"), stretched);
  EXPECT_TRUE(message().contains("tool"));  // has no mass
}

TEST_F(RobotLoadDialogTest, WorstPosesAreFound) {
  chooseShoulder();
  auto& slide = part<QDoubleSpinBox>("place.Slide");
  const auto isOut = [&] { return std::abs(slide.value() - 200) < 0.1; };
  QTest::mouseClick(&part<QPushButton>("worstInertia"), Qt::LeftButton);
  EXPECT_TRUE(QTest::qWaitFor(isOut));
  part<QLineEdit>("down").setText("0, 0, 1");
  slide.setValue(0);
  QTest::mouseClick(&part<QPushButton>("worstTorque"), Qt::LeftButton);
  EXPECT_EQ(message(), "Looking for the pose…");
  EXPECT_TRUE(QTest::qWaitFor(isOut));
  EXPECT_NE(message(), "Looking for the pose…");
}

TEST_F(RobotLoadDialogTest, ANewChoiceGivesTheSearchUp) {
  chooseShoulder();
  auto& slide = part<QDoubleSpinBox>("place.Slide");
  QTest::mouseClick(&part<QPushButton>("worstInertia"), Qt::LeftButton);
  slide.setValue(20);
  QTest::qWait(400);
  EXPECT_NEAR(slide.value(), 20, 0.1);
}

TEST_F(RobotLoadDialogTest, UseIsOneEditThatEvaluates) {
  chooseShoulder();
  Project project = exampleProject();
  const Edit edit = use();
  EXPECT_EQ(edit.description, "Load from joint Shoulder");
  ASSERT_TRUE(edit.apply(project).has_value());
  EXPECT_EQ(project.load.masses.size(), 3U);
  EXPECT_TRUE(evaluate(project).load.has_value());
}

TEST_F(RobotLoadDialogTest, TrajectoryBecomesTheCycle) {
  chooseShoulder();
  QByteArray csv = "time;Waist;Shoulder;Elbow;Slide\n";
  for (int k = 0; k < 50; ++k) {
    csv += QStringLiteral("%1;%2;%2;%2;0.1\n").arg(k * 0.02).arg(std::sin(0.1 * k)).toUtf8();
  }
  putContent(path("moves.csv"), csv);
  dialog.openTrajectory(path("moves.csv"));
  EXPECT_TRUE(value("motion").contains("50 rows")) << value("motion").toStdString();
  Project project = exampleProject();
  ASSERT_TRUE(use().apply(project).has_value());
  ASSERT_EQ(project.cycle.segments.size(), 1U);
  EXPECT_EQ(project.cycle.segments[0].table.torque.size(), 50U);
}

TEST_F(RobotLoadDialogTest, SaysWhatIsWrongAndKeepsWhatIsOpen) {
  chooseShoulder();
  putContent(path("moves.csv"), "time;Waist\n0;1\n");
  dialog.openTrajectory(path("moves.csv"));
  EXPECT_TRUE(message().contains("moves.csv")) << message().toStdString();
  QByteArray bad = kExampleRobot;
  bad.replace("<limit lower=\"-2\" upper=\"2\" effort=\"40\" velocity=\"3\"/>", "");
  putContent(path("bad.urdf"), bad);
  dialog.openFile(path("bad.urdf"));
  EXPECT_TRUE(message().contains("'Elbow'")) << message().toStdString();
  EXPECT_TRUE(message().contains("bad.urdf, line")) << message().toStdString();
  EXPECT_EQ(value("mass"), "5.5 kg");
  dialog.openFile(path("nothing.urdf"));
  EXPECT_TRUE(message().contains("nothing.urdf"));
  part<QLineEdit>("down").setText("0, 0");
  EXPECT_TRUE(message().contains("three numbers"));
  EXPECT_FALSE(part<QPushButton>("use").isEnabled());
}

// The pictures are kept beside the test program, for people to look at.
TEST_F(RobotLoadDialogTest, NothingIsClippedInBothThemes) {
  const QDir folderOfTests(QCoreApplication::applicationDirPath());
  folderOfTests.mkpath("../pictures");
  for (const ThemeKind theme : {ThemeKind::Dark, ThemeKind::Light}) {
    applyTheme(*qApp, theme);
    chooseShoulder();
    QTest::qWait(50);
    const QString name = theme == ThemeKind::Dark ? "robot-dark.png" : "robot-light.png";
    EXPECT_TRUE(dialog.grab().save(folderOfTests.filePath("../pictures/" + name)));
    for (const QAbstractButton* button : dialog.findChildren<QAbstractButton*>()) {
      if (!button->isVisible() || button->text().isEmpty()) continue;
      EXPECT_GE(button->width(),
                button->fontMetrics().horizontalAdvance(button->text().remove('&')))
          << button->objectName().toStdString();
    }
    for (const QLabel* label : dialog.findChildren<QLabel*>()) {
      if (!label->isVisible() || label->wordWrap()) continue;
      EXPECT_GE(label->width() + 1, label->sizeHint().width()) << label->text().toStdString();
    }
  }
}

}  // namespace
}  // namespace jw::test
