#pragma once

#include <cmath>
#include <random>

#include <fmt/format.h>

#include "tests/gui/support.h"
#include "widgets/panels/log_dialog.h"

namespace jw::test {

/// An invented log of a joint that swings: inertia 2 kg·m², gravity 18 N·m, dry friction 1.5 N·m
/// and viscous friction 0.4 N·m·s/rad, with noise on position and torque.
struct InventedLog {
  int rows = 4000;
  double step = 2e-3;           ///< [s]
  double positionNoise = 2e-5;  ///< [rad]
  double torqueNoise = 0.3;     ///< [N·m]
  int gapAfter = 0;             ///< row behind which half a second is missing; 0 = none
  int duplicateEvery = 0;       ///< rows written twice; 0 = none

  static double position(double t) { return 0.5 * std::sin(2.4 * t) + 0.15 * std::sin(7.1 * t); }
  static double speed(double t) { return 1.2 * std::cos(2.4 * t) + 1.065 * std::cos(7.1 * t); }
  static double acceleration(double t) {
    return -2.88 * std::sin(2.4 * t) - 7.5615 * std::sin(7.1 * t);
  }
  static double torque(double t) {
    const double v = speed(t);
    return 2 * acceleration(t) + 18 * std::cos(position(t)) + 0.4 * v + std::copysign(1.5, v);
  }

  std::string text() const {
    std::mt19937 random(5);
    std::normal_distribution<double> q(0, positionNoise);
    std::normal_distribution<double> tau(0, torqueNoise);
    std::string text = "t [ms];angle [deg];M_joint [Nm];comment\n";
    for (int i = 0; i < rows; ++i) {
      const double t = i * step + (gapAfter > 0 && i > gapAfter ? 0.5 : 0);
      const std::string row =
          fmt::format("{:.3f};{:.5f};{:.4f};{}\n", 1e3 * t, (position(t) + q(random)) * 180 / M_PI,
                      torque(t) + tau(random), i % 3);
      text += row;
      if (duplicateEvery > 0 && i % duplicateEvery == duplicateEvery - 1) text += row;
    }
    return text;
  }
};

/// The window of measured logs with a folder for its files.
class LogDialogTest : public ::testing::Test {
 protected:
  void open(LogDialog& on, const std::string& text, const QString& name = "run.csv") {
    const QString file = folder.filePath(name);
    putContent(file, QByteArray::fromStdString(text));
    on.openFile(file);
    settle(on);
  }
  void settle(LogDialog& on) {
    QTest::qWait(120);  // changes that follow one another become one
    ASSERT_TRUE(QTest::qWaitFor([&] { return !on.isBusy(); }, 30'000));
  }

  template <class Widget>
  Widget* find(const char* name) {
    auto* found = dialog.findChild<Widget*>(name);
    if (found == nullptr) throw std::runtime_error(name);
    return found;
  }

  QTemporaryDir folder;
  LogDialog dialog;
};

}  // namespace jw::test
