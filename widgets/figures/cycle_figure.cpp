#include "widgets/figures/cycle_figure.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/figures/picture_choice.h"
#include "widgets/figures/segment_button.h"

namespace jw {

CycleFigure::CycleFigure(QWidget* parent)
    : Figure(parent),
      m_chooser(new QWidget),
      m_strip(new CycleStrip(true)),
      m_moves(new MoveEditor),
      m_mix(new MixPanel),
      m_pages(new QStackedWidget(this)) {
  setObjectName(QStringLiteral("figure.cycle"));
  setAccessibleName(tr("Cycle"));
  setAccessibleDescription(
      tr("Motion, torque, current and power over the cycle. "
         "Left and right move the time cursor."));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(m_pages, 1);
  m_pages->addWidget(makeOverTime());
  // Their tables scroll: they need not widen the pane.
  for (QWidget* page : std::initializer_list<QWidget*>{m_moves, m_mix})
    page->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_pages->addWidget(m_moves);
  m_pages->addWidget(m_mix);
  connectParts();
}

QWidget* CycleFigure::makeHeader() {
  PictureChoice choice = makePictureChoice({{tr("over time"), QStringLiteral("cycle.overTime")},
                                            {tr("moves"), QStringLiteral("cycle.moves")},
                                            {tr("daily mix"), QStringLiteral("cycle.mix")}},
                                           QStringLiteral("cycle.reading"), this);
  for (std::size_t i = 0; i < m_choice.size(); ++i) {
    m_choice[i] = choice.buttons[i];
    connect(m_choice[i], &QToolButton::clicked, this, [this, i] { setPicture(Picture(i)); });
  }
  m_reading = choice.reading;
  return choice.header;
}

QWidget* CycleFigure::makeOverTime() {
  auto* page = new QWidget;
  auto* chooser = new QHBoxLayout(m_chooser);
  chooser->setContentsMargins(12, 4, 12, 0);
  chooser->setSpacing(6);
  chooser->addStretch();
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(m_chooser);
  column->addWidget(m_strip, 1);
  return page;
}

void CycleFigure::connectParts() {
  connect(m_strip, &CycleStrip::cursorDragged, this, &CycleFigure::moveCursor);
  connect(m_moves, &MoveEditor::cursorDragged, this, &CycleFigure::moveCursor);
  connect(m_moves, &MoveEditor::editRequested, this, &CycleFigure::editRequested);
  connect(m_moves, &MoveEditor::fieldRequested, this, &CycleFigure::fieldRequested);
  connect(m_mix, &MixPanel::editRequested, this, &CycleFigure::editRequested);
  connect(m_mix, &MixPanel::fieldRequested, this, &CycleFigure::fieldRequested);
}

void CycleFigure::setPicture(Picture picture) {
  m_picture = picture;
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
  showPicture();
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
  m_latest = snapshot;
  showPicture();
}

/// Only the picture in front is brought up to date.
void CycleFigure::showPicture() {
  switch (m_picture) {
    case Picture::OverTime:
      m_view = cycleView(m_latest);
      offerRows(m_view.rows);
      keepSnapshot(m_latest, m_view.empty());
      return showChosen();
    case Picture::Moves:
      keepSnapshot(m_latest, false);
      m_moves->showSnapshot(m_latest);
      return m_moves->setCursorTime(cursorTime());
    case Picture::Mix: keepSnapshot(m_latest, false); return m_mix->showSnapshot(m_latest);
  }
}

void CycleFigure::drawCursor() {
  m_strip->setCursorTime(cursorTime());
  m_moves->setCursorTime(cursorTime());
}

void CycleFigure::restyle() {
  m_strip->restyle();
  m_moves->restyle();
}

void CycleFigure::zoomBy(double factor) {
  m_picture == Picture::Moves ? m_moves->zoomBy(factor) : m_strip->zoomBy(factor);
}

void CycleFigure::resetZoom() {
  m_strip->resetZoom();
  m_moves->resetZoom();
}

}  // namespace jw
