#include "app/theme_choice.h"

#include <QApplication>
#include <QPalette>
#include <QSettings>

#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr const char* kKey = "theme";
constexpr const char* kNames[] = {"system", "light", "dark"};

bool& systemIsDark() {
  static bool dark = false;
  return dark;
}

ThemeKind kindOf(ThemeChoice choice) {
  const bool dark = choice == ThemeChoice::System ? systemIsDark() : choice == ThemeChoice::Dark;
  return dark ? ThemeKind::Dark : ThemeKind::Light;
}

}  // namespace

ThemeChoice chosenTheme() {
  const QString name = QSettings().value(kKey).toString();
  if (name == kNames[1]) return ThemeChoice::Light;
  return name == kNames[2] ? ThemeChoice::Dark : ThemeChoice::System;
}

void chooseTheme(ThemeChoice choice) {
  QSettings().setValue(kKey, kNames[static_cast<int>(choice)]);
  applyTheme(*qApp, kindOf(choice));
}

void startTheme() {
  // Qt 6.4 does not tell the scheme; the ground of the desktop's palette does.
  systemIsDark() = QGuiApplication::palette().color(QPalette::Window).lightness() < 128;
  applyTheme(*qApp, kindOf(chosenTheme()));
}

}  // namespace jw
