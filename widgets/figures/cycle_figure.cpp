#include "widgets/figures/cycle_figure.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/figures/segment_button.h"

namespace jw {

CycleFigure::CycleFigure(QWidget* parent)
    : Figure(parent), m_chooser(new QWidget(this)), m_strip(new CycleStrip(true, this)) {
  setObjectName(QStringLiteral("figure.cycle"));
  setAccessibleName(tr("Cycle"));
  setAccessibleDescription(
      tr("Motion, torque, current and power over the cycle. "
         "Left and right move the time cursor."));
  auto* chooser = new QHBoxLayout(m_chooser);
  chooser->setContentsMargins(12, 6, 12, 0);
  chooser->setSpacing(6);
  chooser->addStretch();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(m_chooser);
  column->addWidget(m_strip, 1);
  connect(m_strip, &CycleStrip::cursorDragged, this, &CycleFigure::moveCursor);
}

void CycleFigure::offerRows(const std::vector<CycleRow>& rows) {
  for (const CycleRow& row : rows) {
    const QString name = QStringLiteral("cycle.row.") + row.id;
    if (m_chooser->findChild<QToolButton*>(name)) continue;
    QToolButton* button = makeSegmentButton(row.label, name, m_chooser);
    button->setAccessibleName(tr("Show %1").arg(row.label));
    button->setChecked(row.shownAtFirst);
    auto* line = static_cast<QHBoxLayout*>(m_chooser->layout());
    line->insertWidget(line->count() - 1, button);
    connect(button, &QToolButton::toggled, this, &CycleFigure::showChosen);
    m_buttons << button;
  }
}

QStringList CycleFigure::chosenRows() const {
  QStringList ids;
  for (const QToolButton* button : m_buttons)
    if (button->isChecked()) ids << button->objectName().section(u'.', 2);
  return ids.isEmpty() ? QStringList{QStringLiteral("none")} : ids;
}

void CycleFigure::showChosen() { m_strip->showView(m_view, chosenRows()); }

void CycleFigure::showSnapshot(const Snapshot& snapshot) {
  m_view = cycleView(snapshot);
  offerRows(m_view.rows);
  keepSnapshot(snapshot, m_view.empty());
  showChosen();
}

void CycleFigure::drawCursor() { m_strip->setCursorTime(cursorTime()); }

void CycleFigure::restyle() { m_strip->restyle(); }

void CycleFigure::zoomBy(double factor) { m_strip->zoomBy(factor); }

void CycleFigure::resetZoom() { m_strip->resetZoom(); }

}  // namespace jw
