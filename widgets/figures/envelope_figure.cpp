#include "widgets/figures/envelope_figure.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "widgets/figures/segment_button.h"

namespace jw {

EnvelopeFigure::EnvelopeFigure(QWidget* parent)
    : Figure(parent), m_canvas(new EnvelopeCanvas(this)), m_strip(new CycleStrip(false, this)) {
  setObjectName(QStringLiteral("figure.envelope"));
  setAccessibleName(tr("Envelope"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(m_canvas, 5);
  column->addWidget(m_strip, 2);
  m_strip->setMinimumHeight(120);
  connect(m_strip, &CycleStrip::cursorDragged, this, &EnvelopeFigure::moveCursor);
  connect(m_canvas, &EnvelopeCanvas::cursorPicked, this, &EnvelopeFigure::moveCursor);
  connect(m_canvas, &EnvelopeCanvas::hovered, m_reading, &QLabel::setText);
  connect(m_canvas, &EnvelopeCanvas::zoomChanged, this,
          [this] { m_all->setVisible(m_canvas->isZoomed()); });
}

QToolButton* EnvelopeFigure::makeAxesButton(const QString& text, const QString& name,
                                            AxesAt axesAt) {
  QToolButton* button = makeSegmentButton(text, name, this);
  button->setChecked(axesAt == m_axesAt);
  connect(button, &QToolButton::clicked, this, [this, axesAt] { setAxesAt(axesAt); });
  return button;
}

QToolButton* EnvelopeFigure::makeExtra(const QString& text, const QString& name,
                                       const QString& hint, bool EnvelopeExtras::*extra) {
  QToolButton* button = makeSegmentButton(text, name, this);
  button->setToolTip(hint);
  button->setChecked(m_extras.*extra);
  button->setEnabled(false);
  connect(button, &QToolButton::toggled, this, [this, extra](bool on) {
    m_extras.*extra = on;
    showView(false);
  });
  return button;
}

QWidget* EnvelopeFigure::makeHeader() {
  auto* header = new QWidget(this);
  auto* line = new QHBoxLayout(header);
  line->setContentsMargins(12, 6, 12, 0);
  line->setSpacing(4);
  m_atMotor = makeAxesButton(tr("at the motor"), QStringLiteral("envelope.atMotor"), AxesAt::Motor);
  m_atJoint = makeAxesButton(tr("at the joint"), QStringLiteral("envelope.atJoint"), AxesAt::Joint);
  m_band = makeExtra(tr("band"), QStringLiteral("envelope.band"),
                     tr("Weakest and strongest envelope over voltage and temperature, and the "
                        "intermittent curve"),
                     &EnvelopeExtras::band);
  m_efficiency = makeExtra(tr("efficiency"), QStringLiteral("envelope.efficiency"),
                           tr("Lines of equal efficiency of motor and controller together"),
                           &EnvelopeExtras::efficiency);
  auto* choice = new QButtonGroup(this);
  choice->addButton(m_atMotor);
  choice->addButton(m_atJoint);
  m_all = new QToolButton(header);
  m_all->setObjectName(QStringLiteral("envelope.showAll"));
  m_all->setProperty("role", "link");
  m_all->setText(tr("show all"));
  m_all->hide();
  connect(m_all, &QToolButton::clicked, this, [this] { resetZoom(); });
  m_reading = new QLabel(header);
  m_reading->setObjectName(QStringLiteral("envelope.reading"));
  m_reading->setProperty("role", "muted");
  m_reading->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_reading->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  line->addWidget(m_atMotor);
  line->addWidget(m_atJoint);
  line->addSpacing(8);
  line->addWidget(m_band);
  line->addWidget(m_efficiency);
  line->addWidget(m_all);
  line->addWidget(m_reading, 1);
  return header;
}

void EnvelopeFigure::describe(const EnvelopeView& view) {
  QString text = view.tightest ? view.tightest->text : tr("no load path");
  if (view.rms) text += QStringLiteral("; ") + view.rms->text;
  setAccessibleDescription(text);
}

void EnvelopeFigure::setAxesAt(AxesAt axesAt) {
  if (m_axesAt == axesAt) return;
  m_axesAt = axesAt;
  (axesAt == AxesAt::Motor ? m_atMotor : m_atJoint)->setChecked(true);
  showView(true);
}

void EnvelopeFigure::showView(bool axesChanged) {
  m_canvas->showView(envelopeView(m_snapshot, m_axesAt, m_extras), axesChanged);
}

void EnvelopeFigure::showSnapshot(const Snapshot& snapshot) {
  m_snapshot = snapshot;
  EnvelopeView view = envelopeView(snapshot, m_axesAt, m_extras);
  keepSnapshot(snapshot, view.empty());
  m_atJoint->setEnabled(view.jointPossible);
  const PlotStudies* studies = snapshot.studies.get();
  m_band->setEnabled(studies && (studies->band || studies->intermittent));
  m_efficiency->setEnabled(studies && studies->losses);
  describe(view);
  m_canvas->showView(std::move(view), false);
  m_strip->showView(stripView(snapshot));
}

void EnvelopeFigure::drawCursor() {
  m_canvas->setCursorTime(cursorTime());
  m_strip->setCursorTime(cursorTime());
}

void EnvelopeFigure::restyle() {
  m_canvas->restyle();
  m_strip->restyle();
}

void EnvelopeFigure::zoomBy(double factor) { m_canvas->zoomBy(factor); }

void EnvelopeFigure::resetZoom() {
  m_canvas->resetZoom();
  m_strip->resetZoom();
}

}  // namespace jw
