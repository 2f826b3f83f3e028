#include "widgets/theme/theme.h"

#include <QApplication>
#include <QPalette>

#include "widgets/theme/fonts.h"
#include "widgets/theme/theme_style.h"

namespace jw {
namespace {

ThemeKind& theme() {
  static ThemeKind kind = ThemeKind::Light;
  return kind;
}

void setDisabled(QPalette& colours, const Palette& p) {
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    colours.setColor(QPalette::Disabled, role, blend(p.muted, p.panel, 0.6));
}

QPalette qtPalette(const Palette& p) {
  QPalette colours;
  colours.setColor(QPalette::Window, p.ground);
  colours.setColor(QPalette::WindowText, p.text);
  colours.setColor(QPalette::Base, p.panel);
  colours.setColor(QPalette::AlternateBase, p.field);
  colours.setColor(QPalette::Text, p.text);
  colours.setColor(QPalette::PlaceholderText, p.muted);
  colours.setColor(QPalette::Button, p.field);
  colours.setColor(QPalette::ButtonText, p.text);
  colours.setColor(QPalette::ToolTipBase, p.panel);
  colours.setColor(QPalette::ToolTipText, p.text);
  colours.setColor(QPalette::Highlight, p.accent);
  colours.setColor(QPalette::HighlightedText, p.dark ? p.ground : p.panel);
  colours.setColor(QPalette::Link, p.accent);
  colours.setColor(QPalette::LinkVisited, p.accent);
  colours.setColor(QPalette::Mid, p.line);
  colours.setColor(QPalette::Dark, p.line);
  colours.setColor(QPalette::Light, p.panel);
  setDisabled(colours, p);
  return colours;
}

}  // namespace

ThemeKind currentTheme() { return theme(); }

const Palette& palette() { return theme() == ThemeKind::Dark ? darkPalette() : lightPalette(); }

QFont textFont(double pixelSize, QFont::Weight weight) {
  QFont font(applicationFamily());
  font.setPixelSize(qRound(pixelSize));
  font.setWeight(weight);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

QFont bodyFont() { return textFont(12); }

QFont tabularFont() { return bodyFont(); }

QFont titleFont() { return textFont(12, QFont::DemiBold); }

void applyTheme(QApplication& app, ThemeKind kind) {
  theme() = kind;
  if (dynamic_cast<ThemeStyle*>(QApplication::style()) == nullptr && app.styleSheet().isEmpty())
    QApplication::setStyle(new ThemeStyle);
  QApplication::setFont(bodyFont());
  QApplication::setPalette(qtPalette(palette()));
  app.setStyleSheet(styleSheetOf(palette()));
}

}  // namespace jw
