#include "widgets/figures/ratio_figure.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include "widgets/figures/picture_choice.h"

namespace jw {

RatioFigure::RatioFigure(QWidget* parent)
    : Figure(parent),
      m_ratio(new RatioPage(m_thread)),
      m_sweep(new SweepPage(m_thread)),
      m_map(new MapPage(m_thread)),
      m_pages(new QStackedWidget(this)) {
  setObjectName(QStringLiteral("figure.ratio"));
  setAccessibleName(tr("Ratio"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(m_pages, 1);
  QSizePolicy policy = m_pages->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  m_pages->setSizePolicy(policy);
  for (StudyPage* page : pages()) {
    m_pages->addWidget(page);
    connect(page, &StudyPage::reading, m_reading, &QLabel::setText);
    connect(page, &StudyPage::editRequested, this, &RatioFigure::editRequested);
  }
}

QWidget* RatioFigure::makeHeader() {
  PictureChoice choice = makePictureChoice({{tr("ratio"), QStringLiteral("ratio.ratio")},
                                            {tr("one input"), QStringLiteral("ratio.oneInput")},
                                            {tr("two inputs"), QStringLiteral("ratio.twoInputs")}},
                                           QStringLiteral("ratio.reading"), this);
  for (std::size_t i = 0; i < m_choice.size(); ++i) {
    m_choice[i] = choice.buttons[i];
    connect(m_choice[i], &QToolButton::clicked, this, [this, i] { setPicture(Picture(i)); });
  }
  m_reading = choice.reading;
  return choice.header;
}

StudyPage& RatioFigure::front() const { return *pages()[std::size_t(m_picture)]; }

QString RatioFigure::exportName() const {
  switch (m_picture) {
    case Picture::Ratio: break;
    case Picture::OneInput: return QStringLiteral("sweep");
    case Picture::TwoInputs: return QStringLiteral("map");
  }
  return figureName();
}

void RatioFigure::setPicture(Picture picture) {
  if (picture != m_picture) m_thread.stop();
  m_picture = picture;
  m_choice[std::size_t(picture)]->setChecked(true);
  m_pages->setCurrentIndex(int(picture));
  m_reading->clear();
  showSnapshot(m_shown);
}

void RatioFigure::showSnapshot(const Snapshot& snapshot) {
  m_shown = snapshot;
  const bool direct =
      snapshot.evaluatedProject && snapshot.evaluatedProject->active().transmission.empty();
  const bool known = snapshot.evaluation && !snapshot.evaluation->checks.empty();
  const bool ofRatio = m_picture == Picture::Ratio;
  const bool possible = known && (!ofRatio || (snapshot.evaluation->chain && !direct));
  if (direct && ofRatio)
    keepSnapshotWithNotice(snapshot, tr("<p>A direct drive has no ratio to vary.</p>"
                                        "<p>Add a stage, or vary another input.</p>"));
  else
    keepSnapshot(snapshot, !possible, {Part::Cycle, Part::Load, Part::Stages, Part::Chain});
  m_pages->setVisible(possible);
  if (possible) front().showSnapshot(snapshot);
}

void RatioFigure::addStudies(Snapshot& snapshot) const {
  for (const StudyPage* page : pages()) page->addStudies(snapshot);
}

void RatioFigure::restyle() {
  for (StudyPage* page : pages()) page->restyle();
}

void RatioFigure::keyPressEvent(QKeyEvent* event) {
  if (!front().takeKey(*event)) Figure::keyPressEvent(event);
}

}  // namespace jw
