#include "widgets/cycle/move_curve_marks.h"

#include <cmath>

namespace jw {
namespace {

constexpr double kRadius = 5;  // [px]
constexpr double kReach = 10;  // [px] from a handle's middle

}  // namespace

ChosenStretch::ChosenStretch(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

void ChosenStretch::draw(QCPPainter* painter) {
  if (m_style == nullptr) return;
  const QRectF area = m_rect->rect();
  const QCPAxis* time = m_rect->axis(QCPAxis::atBottom);
  const QColor ground = m_style->colours.accentSoft;
  for (const QCPRange& range : m_times) {
    const double from = std::max(time->coordToPixel(range.lower), area.left());
    const double to = std::min(time->coordToPixel(range.upper), area.right());
    if (to > from) painter->fillRect(QRectF(from, area.top(), to - from, area.height()), ground);
  }
}

MoveCurveMarks::MoveCurveMarks(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer)
    : QCPLayerable(plot, layer), m_rect(rect) {}

QPointF MoveCurveMarks::toPixels(const QPointF& point) const {
  return {m_rect->axis(QCPAxis::atBottom)->coordToPixel(point.x()),
          m_rect->axis(QCPAxis::atLeft)->coordToPixel(point.y())};
}

int MoveCurveMarks::handleAt(const QPointF& pixel) const {
  int found = -1;
  double nearest = kReach;
  for (std::size_t k = 0; k < m_handles.size(); ++k) {
    const QPointF from = toPixels(m_handles[k].at) - pixel;
    const double distance = std::hypot(from.x(), from.y());
    if (distance > nearest) continue;
    nearest = distance;
    found = static_cast<int>(k);
  }
  return found;
}

void MoveCurveMarks::applyDefaultAntialiasingHint(QCPPainter* painter) const {
  painter->setAntialiasing(true);
}

/// A disc where the end can be dragged, filled for the chosen move; a ring with an upright or level
/// bar would say no more than the mouse's own shape does.
void MoveCurveMarks::drawHandle(QCPPainter* painter, int index) const {
  const MoveHandle& handle = m_handles[static_cast<std::size_t>(index)];
  const Palette& colours = m_style->colours;
  const bool strong = index == m_hot || handle.segment == m_chosen;
  painter->setPen(QPen(colours.accent, 1.6));
  painter->setBrush(strong ? colours.accent : colours.panel);
  const double radius = index == m_hot ? kRadius + 1.5 : kRadius;
  painter->drawEllipse(toPixels(handle.at), radius, radius);
}

/// A square in the hue of what is short, with a line down to the time axis.
void MoveCurveMarks::drawBroken(QCPPainter* painter, const QPointF& join) const {
  const QPointF at = toPixels(join);
  const QColor hue = m_style->colours.shortfall;
  painter->setPen(QPen(hue, 1.2, Qt::DashLine));
  painter->drawLine(QPointF(at.x(), m_rect->rect().top()), QPointF(at.x(), m_rect->bottom()));
  painter->setPen(Qt::NoPen);
  painter->setBrush(hue);
  painter->drawRect(QRectF(at.x() - 4, m_rect->rect().top() + 1, 8, 8));
}

void MoveCurveMarks::draw(QCPPainter* painter) {
  if (m_style == nullptr) return;
  for (const QPointF& join : m_broken) drawBroken(painter, join);
  for (std::size_t k = 0; k < m_handles.size(); ++k) drawHandle(painter, static_cast<int>(k));
}

}  // namespace jw
