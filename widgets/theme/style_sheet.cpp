#include <QHash>
#include <QString>

#include "widgets/theme/theme.h"

namespace jw {
namespace {

// @names are replaced by the palette's colours.
constexpr auto kSurfaces = R"(
QMainWindow, QDialog { background: @ground; }
QFrame[role="panel"] { background: @panel; border: 1px solid @line; border-radius: 6px; }
QLabel { background: transparent; }
QLabel[role="title"] { font-weight: 600; }
QLabel[role="muted"], QLabel[role="unit"], QLabel[role="symbol"] { color: @muted; }
QLabel[role="error"] { color: @shortInk; font-size: 11px; }
QToolTip { background: @panel; color: @text; border: 1px solid @line; padding: 4px 6px; }
QStatusBar { background: @ground; color: @muted; }
QStatusBar::item { border: none; }
QSplitter::handle { background: transparent; }
QSplitter::handle:hover { background: @accentSoft; }
QDockWidget { titlebar-close-icon: none; }
QGroupBox { border: none; border-top: 1px solid @line; margin-top: 18px; padding-top: 6px;
  font-weight: 600; }
QGroupBox::title { subcontrol-origin: margin; left: 0px; }
QScrollArea { background: transparent; border: none; }
QScrollArea > QWidget > QWidget { background: transparent; }
)";

constexpr auto kFields = R"(
QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox, QComboBox { background: @field;
  color: @text; border: 1px solid @line; border-radius: 4px; padding: 3px 7px;
  selection-background-color: @accent; selection-color: @panel; }
QLineEdit, QAbstractSpinBox, QComboBox { min-height: 18px; }
QLineEdit:hover, QAbstractSpinBox:hover, QComboBox:hover { border-color: @zeroLine; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus, QComboBox:focus {
  border: 1px solid @accent; background: @panel; }
QLineEdit:disabled, QComboBox:disabled { color: @faint; background: @ground; }
QLineEdit[state="wrong"], QComboBox[state="wrong"] { border: 1px solid @short; }
QComboBox::drop-down { border: none; width: 20px; }
QAbstractSpinBox { padding-right: 20px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { border: none; width: 18px;
  background: transparent; }
QComboBox QAbstractItemView { background: @panel; border: 1px solid @line; padding: 3px;
  selection-background-color: @accentSoft; selection-color: @text; outline: none; }
QCheckBox, QRadioButton { spacing: 7px; background: transparent; }
QTextBrowser { background: transparent; border: none; padding: 0px; }
)";

constexpr auto kButtons = R"(
QPushButton { background: @field; color: @text; border: 1px solid @line; border-radius: 4px;
  padding: 4px 12px; min-height: 18px; }
QPushButton:hover { border-color: @zeroLine; }
QPushButton:focus { border-color: @accent; }
QPushButton:pressed { background: @accentSoft; }
QPushButton:default { background: @accent; border-color: @accent; color: @onAccent; }
QPushButton:disabled { color: @faint; }
QToolButton { background: transparent; color: @muted; border: 1px solid transparent;
  border-radius: 4px; padding: 2px 7px; }
QToolButton:hover { color: @text; background: @accentSoft; }
QToolButton:focus { border-color: @accent; }
QToolButton:checked { color: @accent; }
QToolButton::menu-indicator { image: none; }
QToolButton[role="link"] { color: @accent; padding: 1px 2px; }
QToolButton[role="section"] { color: @text; font-weight: 600; padding: 4px 0px; }
QToolButton[role="segment"] { border-radius: 10px; padding: 1px 9px; min-height: 16px; }
QToolButton[role="segment"]:checked { color: @accent; background: @accentSoft; }
QToolButton[role="segment"]:focus { border-color: @accent; }
)";

constexpr auto kMenus = R"(
QMenuBar { background: @ground; color: @muted; border: none; }
QMenuBar::item { background: transparent; padding: 5px 8px; border-radius: 4px; }
QMenuBar::item:selected { background: @accentSoft; color: @text; }
QMenu { background: @panel; color: @text; border: 1px solid @line; border-radius: 6px;
  padding: 4px; }
QMenu::item { padding: 5px 24px 5px 22px; border-radius: 4px; }
QMenu::item:selected { background: @accentSoft; }
QMenu::item:disabled { color: @faint; }
QMenu::separator { height: 1px; background: @line; margin: 4px 6px; }
QTabWidget::pane { border: none; border-top: 1px solid @line; background: @panel; }
QTabBar { background: transparent; }
QTabBar::tab { background: transparent; color: @muted; padding: 8px 5px 7px 5px;
  border: none; border-bottom: 2px solid transparent; }
QTabBar::tab:selected { color: @text; font-weight: 600; border-bottom: 2px solid @accent; }
QTabBar::tab:hover { color: @text; }
QTabBar::tab:focus { color: @accent; }
)";

constexpr auto kViews = R"(
QAbstractItemView { background: @panel; border: none; outline: none;
  selection-background-color: @accentSoft; selection-color: @text; }
QHeaderView::section { background: @panel; color: @muted; border: none;
  border-bottom: 1px solid @line; padding: 4px 8px; }
QTableView { gridline-color: @line; }
QTableView[role="rows"] QHeaderView::section { padding: 4px 3px; }
QTableView[role="rows"] QHeaderView::section:vertical { border-bottom: none; }
QTableCornerButton::section { background: @panel; border: none; border-bottom: 1px solid @line; }
QProgressBar { background: @line; border: none; border-radius: 3px; height: 6px; color: @text; }
QProgressBar::chunk { background: @accent; border-radius: 3px; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 1px; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 1px; }
QScrollBar::handle { background: @handle; border-radius: 3px; margin: 1px; }
QScrollBar::handle:vertical { min-height: 28px; }
QScrollBar::handle:horizontal { min-width: 28px; }
QScrollBar::handle:hover { background: @zeroLine; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0px; height: 0px; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
)";

QHash<QString, QColor> named(const Palette& p) {
  return {{"ground", p.ground},
          {"panel", p.panel},
          {"field", p.field},
          {"line", p.line},
          {"zeroLine", p.zeroLine},
          {"text", p.text},
          {"muted", p.muted},
          {"accent", p.accent},
          {"accentSoft", p.accentSoft},
          {"short", p.shortfall},
          {"shortInk", inkOf(p.shortfall, p.panel)},
          {"onAccent", p.dark ? p.ground : p.panel},
          {"faint", blend(p.muted, p.panel, 0.6)},
          {"handle", blend(p.muted, p.panel, 0.35)}};
}

}  // namespace

QString styleSheetOf(const Palette& palette) {
  const QString text = QString::fromLatin1(kSurfaces) + QLatin1String(kFields) +
                       QLatin1String(kButtons) + QLatin1String(kMenus) + QLatin1String(kViews);
  const QHash<QString, QColor> colours = named(palette);
  QString sheet;
  for (qsizetype i = 0; i < text.size();) {
    if (text[i] != u'@') {
      sheet += text[i++];
      continue;
    }
    qsizetype end = i + 1;
    while (end < text.size() && text[end].isLetter()) ++end;
    Q_ASSERT(colours.contains(text.mid(i + 1, end - i - 1)));
    sheet += colours.value(text.mid(i + 1, end - i - 1)).name();
    i = end;
  }
  return sheet;
}

}  // namespace jw
