#include "widgets/figures/drive_figure.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "widgets/figures/chooser.h"
#include "widgets/figures/segment_button.h"
#include "widgets/theme/symbol_text.h"

namespace jw {
namespace {

constexpr int kFrame = 30;          // [ms]
constexpr double kTurnSpeed = 2.0;  // [rad/s] of the input, slow enough to follow

}  // namespace

DriveFigure::DriveFigure(QWidget* parent) : Figure(parent), m_canvas(new DriveCanvas(this)) {
  setObjectName(QStringLiteral("figure.drive"));
  setAccessibleName(tr("Drive picture"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3, 3, 3, 3);
  column->setSpacing(2);
  column->addWidget(makeHeader());
  column->addWidget(m_canvas, 1);
  m_timer.setInterval(kFrame);
  connect(&m_timer, &QTimer::timeout, this, &DriveFigure::turnOn);
}

QWidget* DriveFigure::makeHeader() {
  auto* header = new QWidget(this);
  auto* line = new QHBoxLayout(header);
  line->setContentsMargins(12, 6, 12, 0);
  line->setSpacing(6);
  m_stages = new Chooser(QStringLiteral("drive.stage"), tr("Stage that is drawn"), header);
  m_stages->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  m_stages->setMaximumWidth(260);
  m_turn = makeSegmentButton(tr("turn"), QStringLiteral("drive.turn"), header);
  m_turn->setToolTip(tr("Turn the drawing slowly; the time cursor stops it"));
  line->addWidget(m_stages);
  line->addWidget(m_turn);
  line->addStretch();
  connect(m_stages, &QComboBox::activated, this, &DriveFigure::setStage);
  connect(m_turn, &QToolButton::toggled, this, &DriveFigure::setTurning);
  return header;
}

void DriveFigure::offerStages(const DriveView& view) {
  const QSignalBlocker quiet(m_stages);
  m_stages->clear();
  for (int k = 0; k < view.stages.size(); ++k)
    m_stages->addItem(QStringLiteral("%1  %2").arg(k + 1).arg(view.stages[k]));
  m_stages->setCurrentIndex(view.stage);
  m_stages->setVisible(!view.stages.isEmpty());
}

void DriveFigure::describe(const DriveView& view) {
  QStringList parts{symbolPlain(view.headline)};
  if (!view.body.isEmpty()) parts << view.body;
  if (view.shapes)
    for (const DriveLabel& label : view.shapes->labels)
      parts << QString::fromStdString(label.name + " " + label.detail);
  setAccessibleDescription(parts.join(QStringLiteral("; ")));
}

void DriveFigure::showSnapshot(const Snapshot& snapshot) {
  m_shown = snapshot;
  DriveView view = driveView(snapshot, m_stage);
  offerStages(view);
  describe(view);
  keepSnapshotWithNotice(snapshot, view.notice);
  m_canvas->setVisible(!view.empty());
  m_turn->setVisible(!view.empty());
  m_canvas->showView(std::move(view), snapshot.stale);
  drawCursor();
}

void DriveFigure::setStage(int stage) {
  m_stage = stage;
  showSnapshot(m_shown);
}

QString DriveFigure::exportName() const {
  const int stage = m_canvas->view().stage;
  return stage < 0 ? figureName() : figureName() + QString::number(stage + 1);
}

void DriveFigure::drawCursor() {
  m_turn->setChecked(false);
  m_canvas->setInstant(driveInstant(m_canvas->view(), cursorTime()));
}

void DriveFigure::setTurning(bool turning) {
  m_turnFrom = m_canvas->instant().angle;
  m_clock.restart();
  if (!turning) return m_timer.stop();
  m_timer.start();
}

// Speeds are told as shares of the input's while it turns by itself.
void DriveFigure::turnOn() {
  const double angle = m_turnFrom + kTurnSpeed * double(m_clock.elapsed()) * 1e-3;
  m_canvas->setInstant(turningInstant(m_canvas->view(), angle));
}

void DriveFigure::restyle() { m_canvas->update(); }

void DriveFigure::zoomBy(double factor) { m_canvas->zoomBy(factor); }

void DriveFigure::resetZoom() { m_canvas->resetZoom(); }

void DriveFigure::hideEvent(QHideEvent* event) {
  m_turn->setChecked(false);
  Figure::hideEvent(event);
}

}  // namespace jw
