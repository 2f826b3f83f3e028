// Runs the tests with a GUI on a platform without a screen, in English and with settings of their
// own, so that they neither need nor change anything of the person who runs them.
#include <QApplication>
#include <QLocale>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include "widgets/theme/theme.h"

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  testing::InitGoogleTest(&argc, argv);
  QApplication app(argc, argv);
  QApplication::setOrganizationName("jointwright-tests");
  QApplication::setApplicationName("jointwright-tests");
  QStandardPaths::setTestModeEnabled(true);
  const QTemporaryDir settings;
  QSettings::setDefaultFormat(QSettings::IniFormat);
  QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
  QLocale::setDefault(QLocale(QLocale::German));  // a locale must never matter
  jw::applyTheme(app, jw::ThemeKind::Light);
  return RUN_ALL_TESTS();
}
