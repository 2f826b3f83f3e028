#include <cmath>

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "core/model/field_catalogue.h"
#include "widgets/panels/heat_fit_dialog.h"

namespace jw {
namespace {

// Invented: R12 0.5 K/W, R2 1.5 K/W, C1 100 J/K, C2 800 J/K, 40 W from 20 degC for an hour. The
// network's equations integrated by the classical Runge-Kutta method, apart from the program's own
// solution.
QString invented() {
  const auto slope = [](double winding, double housing) {
    const double through = (winding - housing) / 0.5;
    return std::pair{(40 - through) / 100, (through - (housing - 20) / 1.5) / 800};
  };
  double winding = 20;
  double housing = 20;
  QString text = "time [min]; winding [degC]; power [W]\n";
  for (int second = 0; second <= 3600; ++second) {
    if (second % 60 == 0) text += QString("%1; %2; 40\n").arg(second / 60).arg(winding, 0, 'f', 6);
    const auto [a1, b1] = slope(winding, housing);
    const auto [a2, b2] = slope(winding + a1 / 2, housing + b1 / 2);
    const auto [a3, b3] = slope(winding + a2 / 2, housing + b2 / 2);
    const auto [a4, b4] = slope(winding + a3, housing + b3);
    winding += (a1 + 2 * a2 + 2 * a3 + a4) / 6;
    housing += (b1 + 2 * b2 + 2 * b3 + b4) / 6;
  }
  return text;
}

class HeatFitDialogTest : public ::testing::Test {
 protected:
  QString message() { return dialog.findChild<QLabel*>("heatFit.message")->text(); }
  QPushButton* use() { return dialog.findChild<QPushButton*>("heatFit.use"); }
  HeatFitDialog dialog{20};
};

TEST_F(HeatFitDialogTest, FindsTheNetworkAndSetsItInOneStep) {
  QSignalSpy fitted(&dialog, &HeatFitDialog::fitted);
  EXPECT_FALSE(use()->isEnabled());
  dialog.setText(invented());
  ASSERT_TRUE(fitted.wait(20000));
  ASSERT_TRUE(dialog.fit()) << message().toStdString();
  EXPECT_LT(dialog.fit()->residualRms, 0.001);
  Edit got;
  QObject::connect(&dialog, &HeatFitDialog::editRequested, [&](const Edit& edit) { got = edit; });
  use()->click();
  ASSERT_TRUE(got.apply);
  EXPECT_TRUE(got.gesture.isEmpty());
  Project project;
  ASSERT_TRUE(got.apply(project));
  const Motor& motor = project.active().motor;
  EXPECT_NEAR(motor.thermalResistanceWinding, 0.5, 0.005);
  EXPECT_NEAR(motor.thermalResistanceHousing, 1.5, 0.015);
  EXPECT_NEAR(motor.windingCapacity, 100, 1);
  EXPECT_NEAR(motor.housingCapacity, 800, 8);
}

TEST_F(HeatFitDialogTest, SaysWhereTheTextIsWrong) {
  dialog.setText("time [min]; winding [degC]; power [W]\n0;20;40\n1;warm;40\n");
  ASSERT_TRUE(QTest::qWaitFor([this] { return !message().isEmpty(); }, 5000));
  EXPECT_TRUE(message().contains("line 3, column winding temperature")) << message().toStdString();
  const auto marks = dialog.findChild<QPlainTextEdit*>("heatFit.text")->extraSelections();
  ASSERT_EQ(marks.size(), 1);
  EXPECT_EQ(marks[0].cursor.blockNumber(), 2);
  EXPECT_FALSE(use()->isEnabled());
}

TEST_F(HeatFitDialogTest, SaysWhatAFitLacks) {
  QSignalSpy fitted(&dialog, &HeatFitDialog::fitted);
  dialog.setText("0,20,40\n60,25,40\n120,28,40\n");
  ASSERT_TRUE(fitted.wait(5000));
  EXPECT_TRUE(message().contains("too few")) << message().toStdString();
}

TEST_F(HeatFitDialogTest, RefusesAnAmbientThatIsNone) {
  dialog.setText("0,20,40\n");
  dialog.findChild<QLineEdit*>("heatFit.ambient")->setText("20 kg");
  ASSERT_TRUE(QTest::qWaitFor([this] { return message().contains("ambient"); }, 5000));
}

}  // namespace
}  // namespace jw
