#include "widgets/figures/drive_canvas.h"

#include <algorithm>
#include <cmath>

#include <QMouseEvent>
#include <QWheelEvent>

#include "widgets/theme/theme.h"

namespace jw {

DriveCanvas::DriveCanvas(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("drive.canvas"));
  setMinimumSize(320, 220);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  policy.setRetainSizeWhenHidden(true);
  setSizePolicy(policy);
}

void DriveCanvas::showView(DriveView view, bool stale) {
  if (view.stage != m_painter.view().stage) m_zoom = {};
  m_painter = DrivePainter(std::move(view));
  m_stale = stale;
  update();
}

void DriveCanvas::setInstant(const DriveInstant& instant) {
  m_instant = instant;
  update();
}

DriveLayout DriveCanvas::layoutNow() const {
  return driveLayout(m_painter.view(), rect(), m_instant, m_zoom);
}

void DriveCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const double hairline = 0.99 / devicePixelRatioF();
  m_painter.paint(painter, rect(), m_instant, jw::palette(), m_zoom, hairline);
  if (!m_stale) return;
  QColor veil = jw::palette().panel;
  veil.setAlphaF(0.5F);
  painter.fillRect(rect(), veil);
}

// The point of the drawing under the pixel stays there.
void DriveCanvas::zoomAbout(double factor, const QPointF& pixel) {
  const double wanted = std::clamp(m_zoom.factor * factor, 1.0, 40.0);
  const double grown = wanted / m_zoom.factor;
  if (grown == 1) return;
  const DriveLayout now = layoutNow();
  const QPointF moved = pixel + (now.origin - pixel) * grown;
  m_zoom.factor = wanted;
  m_zoom.shift += moved - layoutNow().origin;
  if (wanted == 1) m_zoom = {};
  update();
}

void DriveCanvas::zoomBy(double factor) { zoomAbout(1 / factor, layoutNow().drawing.center()); }

void DriveCanvas::resetZoom() {
  m_zoom = {};
  update();
}

void DriveCanvas::wheelEvent(QWheelEvent* event) {
  zoomAbout(std::pow(1.0015, event->angleDelta().y()), event->position());
  event->accept();
}

void DriveCanvas::mousePressEvent(QMouseEvent* event) {
  m_last = event->position();
  QWidget::mousePressEvent(event);  // the figure takes the focus
}

void DriveCanvas::mouseMoveEvent(QMouseEvent* event) {
  if (!event->buttons().testFlag(Qt::LeftButton) || m_zoom.factor == 1) return;
  m_zoom.shift += event->position() - m_last;
  m_last = event->position();
  update();
}

void DriveCanvas::mouseDoubleClickEvent(QMouseEvent*) { resetZoom(); }

}  // namespace jw
