#include "widgets/theme/marks.h"

namespace jw {

QColor stateColour(CheckState state, const Palette& palette) {
  switch (state) {
    case CheckState::Holds: return palette.holds;
    case CheckState::Close: return palette.close;
    case CheckState::Short: return palette.shortfall;
    case CheckState::Open: break;
  }
  return palette.open;
}

void drawStateMark(QPainter& painter, CheckState state, const QPointF& centre, double size,
                   const Palette& palette) {
  const QColor colour = stateColour(state, palette);
  const double r = size / 2;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(state == CheckState::Open ? QPen(colour, 1.6) : QPen(Qt::NoPen));
  painter.setBrush(state == CheckState::Open ? QBrush(Qt::NoBrush) : QBrush(colour));
  switch (state) {
    case CheckState::Holds: painter.drawEllipse(centre, r, r); break;
    case CheckState::Close: {
      const QPointF corners[] = {centre + QPointF(0, -r), centre + QPointF(r * 1.1, r * 0.85),
                                 centre + QPointF(-r * 1.1, r * 0.85)};
      painter.drawPolygon(corners, 3);
      break;
    }
    case CheckState::Short:
      painter.drawRect(QRectF(centre.x() - r * 0.9, centre.y() - r * 0.9, r * 1.8, r * 1.8));
      break;
    case CheckState::Open: painter.drawEllipse(centre, r - 0.8, r - 0.8); break;
  }
  painter.restore();
}

QString stateCharacter(CheckState state) {
  switch (state) {
    case CheckState::Holds: return QStringLiteral("●");
    case CheckState::Close: return QStringLiteral("▲");
    case CheckState::Short: return QStringLiteral("■");
    case CheckState::Open: break;
  }
  return QStringLiteral("○");
}

}  // namespace jw
