// How a number field looks: digits right-aligned before a column of units.
#include <algorithm>

#include <QPainter>
#include <QStyleOptionFrame>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/number_field.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kUnitColumn = 38;  // px: short units line up
constexpr int kUnitGap = 5;      // px between digits and unit
constexpr int kWidth = 122;      // px

}  // namespace

QSize NumberField::sizeHint() const { return {kWidth, QLineEdit::sizeHint().height()}; }

QSize NumberField::minimumSizeHint() const {
  return {kWidth - 16, QLineEdit::minimumSizeHint().height()};
}

int NumberField::roomForText() const {
  QStyleOptionFrame option;
  initStyleOption(&option);
  const QRect inside = style()->subElementRect(QStyle::SE_LineEditContents, &option, this);
  constexpr int kCursorAndBearing = 5;  // what QLineEdit keeps free at the sides
  return inside.width() - textMargins().right() - kCursorAndBearing;
}

void NumberField::replaceText(const QString& text) {
  setText(text);
  setCursorPosition(static_cast<int>(text.size()));
}

/// The whole text; a number that nobody typed goes without the field's own unit.
void NumberField::showWhole() {
  const QString unit = " " + toQString(info().unit);
  const bool bare = now_.typed.empty() && now_.text.endsWith(unit);
  setText(bare ? now_.text.chopped(unit.size()) : now_.text);
}

/// The number as typed, or rounded as far as the room asks for; shorter still if nobody typed it.
void NumberField::showAtRest() {
  ShownNumber shown = shownNumber(info(), now_.text);
  setText(shown.number);
  for (int digits = now_.typed.empty() ? 4 : 6; digits >= 3; --digits) {
    if (fontMetrics().horizontalAdvance(shown.number) <= roomForText()) break;
    shown = roundedNumber(info(), now_.text, digits);
    setText(shown.number);
  }
  setCursorPosition(0);
}

/// Keeps the margin for the unit as wide as the unit; no unit while the text names its own.
void NumberField::updateUnit() {
  const bool whole = editing_ && hasOwnUnit(info(), text());
  const bool readable = wrong_.isEmpty();
  const QString own = toQString(prettyUnit(info().unit));
  const QString unit = whole || !readable                ? QString()
                       : editing_ || now_.text.isEmpty() ? own
                                                         : shownNumber(info(), now_.text).unit;
  const int column = editing_ && unit.isEmpty() && whole ? 0 : kUnitColumn;
  const int advance = unit.isEmpty() ? 0 : fontMetrics().horizontalAdvance(unit) + kUnitGap;
  const int margin = readable ? std::max(column, advance) : 0;
  if (margin != textMargins().right()) {
    setTextMargins(0, 0, margin, 0);
    updateHint();
  }
  if (unit == unit_) return;
  unit_ = unit;
  update();
}

void NumberField::setNeeded(bool needed) {
  if (needed == needed_) return;
  needed_ = needed;
  updateHint();
}

/// The longest hint that fits beside the unit.
void NumberField::updateHint() {
  const QStringList hints = needed_ ? QStringList{tr("needed"), tr("need"), QStringLiteral("?")}
                                    : QStringList{tr("not given"), tr("none"), QStringLiteral("–")};
  const auto fits = [&](const QString& hint) {
    return !isVisible() || fontMetrics().horizontalAdvance(hint) <= roomForText();
  };
  const auto longest = std::find_if(hints.begin(), hints.end(), fits);
  setPlaceholderText(longest == hints.end() ? hints.last() : *longest);
}

void NumberField::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  if (unit_.isEmpty()) return;
  QStyleOptionFrame option;
  initStyleOption(&option);
  QRect place = style()->subElementRect(QStyle::SE_LineEditContents, &option, this);
  place.setLeft(place.right() - textMargins().right() + kUnitGap);
  QPainter painter(this);
  painter.setPen(jw::palette().muted);
  painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, unit_);
}

void NumberField::showEvent(QShowEvent* event) {
  QLineEdit::showEvent(event);
  updateHint();
}

void NumberField::resizeEvent(QResizeEvent* event) {
  QLineEdit::resizeEvent(event);
  updateHint();
  if (!editing_ && wrong_.isEmpty()) showAtRest();
}

}  // namespace jw
