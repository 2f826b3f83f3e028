// Keys, wheel and context menu of a number field.
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QWheelEvent>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/number_field.h"
#include "widgets/inputs/window_undo.h"

namespace jw {
namespace {

constexpr int kWheelStep = 120;  // eighths of a degree that Qt counts for one notch

double factorOf(Qt::KeyboardModifiers modifiers) {
  if (modifiers.testFlag(Qt::ShiftModifier)) return 10;
  return modifiers.testFlag(Qt::ControlModifier) ? 0.1 : 1;
}

}  // namespace

/// What the field means, and what it holds in the field's own unit if another was typed.
QString NumberField::toolTipText() const {
  const QString text = fieldToolTip(info());
  if (now_.text.isEmpty() || !hasOwnUnit(info(), now_.text)) return text;
  return text + "<p>= " + toQString(formatQuantity(now_.value, info().quantity, info().unit, 5)) +
         "</p>";
}

bool NumberField::takesUndo(const QKeyEvent& key) const {
  return key.matches(QKeySequence::Undo) && !wrong_.isEmpty();
}

bool NumberField::event(QEvent* event) {
  const bool claims =
      event->type() == QEvent::ShortcutOverride && takesUndo(static_cast<const QKeyEvent&>(*event));
  if (claims) event->accept();
  if (event->type() == QEvent::ToolTip) setToolTip(toolTipText());
  return claims || leaveUndoToWindow(*event) || QLineEdit::event(event);
}

void NumberField::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Up || key == Qt::Key_Down) {
    return nudge(key == Qt::Key_Up ? 1 : -1, event->modifiers());
  }
  if (key == Qt::Key_Return || key == Qt::Key_Enter) return commit();
  if (key == Qt::Key_Escape) return event->setAccepted(restore());
  if (takesUndo(*event)) return discardEntry();
  if (isUndoOrRedo(*event)) return event->ignore();
  if (info().kind == FieldKind::Number && event->text() == QStringLiteral("±"))
    return emit link_.bandRequested();
  QLineEdit::keyPressEvent(event);
}

void NumberField::wheelEvent(QWheelEvent* event) {
  if (!hasFocus()) return event->ignore();
  // With Alt, and on some systems with Shift, the wheel reports its turn sideways.
  const QPoint delta = event->angleDelta();
  wheel_ += delta.y() != 0 ? delta.y() : delta.x();
  const int steps = wheel_ / kWheelStep;
  const int rest = wheel_ % kWheelStep;
  if (steps != 0) nudge(steps, event->modifiers());
  wheel_ = rest;
  event->accept();
}

void NumberField::nudge(double steps, Qt::KeyboardModifiers modifiers) {
  const QString start = wrong_.isEmpty() && editing_ ? text() : now_.text;
  if (step_ == 0) {
    beginSession();
    step_ = nudgeStep(info(), start);
  }
  const QString moved = nudgedText(info(), start, steps * step_ * factorOf(modifiers));
  if (moved.isEmpty()) return;
  markWrong({}, true);
  replaceText(moved);
  sendText(moved);
}

QMenu* NumberField::makeMenu() {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  QMenu* units = menu->addMenu(tr("Show &in"));
  for (const std::string_view unit : quantityInfo(info().quantity).units) {
    const QString pretty = toQString(prettyUnit(unit));
    const QString label = pretty.isEmpty() ? tr("plain number") : pretty;
    units->addAction(label, this, [this, unit] { showInUnit(toQString(unit)); });
  }
  units->menuAction()->setVisible(units->actions().size() > 1);
  units->setEnabled(!now_.text.isEmpty());
  menu->addAction(tr("&Copy"), this, [this] {
    QApplication::clipboard()->setText(hasSelectedText() ? selectedText() : now_.text);
  });
  menu->addAction(tr("&Paste"), this, &QLineEdit::paste);
  const QString clear = isSet(info().defaultValue) ? tr("Use the &default") : tr("C&lear");
  menu->addAction(clear, this, &NumberField::clearValue)->setEnabled(!now_.text.isEmpty());
  if (info().kind == FieldKind::Number)
    menu->addAction(tr("&Tolerance band (±)"), this, [this] { emit link_.bandRequested(); });
  return menu;
}

void NumberField::contextMenuEvent(QContextMenuEvent* event) {
  makeMenu()->popup(event->globalPos());
}

}  // namespace jw
