#include "widgets/inputs/elided_label.h"

#include <QPainter>

namespace jw {

ElidedLabel::ElidedLabel(QWidget* parent) : QLabel(parent) {
  setTextFormat(Qt::PlainText);
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

QSize ElidedLabel::minimumSizeHint() const {
  return {fontMetrics().horizontalAdvance("…") * 3, QLabel::minimumSizeHint().height()};
}

void ElidedLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QString shown = fontMetrics().elidedText(text(), Qt::ElideRight, width());
  const bool own = toolTip().isEmpty() || toolTip() == lastTip_;  // none but ours
  lastTip_ = shown == text() ? QString() : text();
  if (own && toolTip() != lastTip_) setToolTip(lastTip_);
  painter.setPen(palette().color(foregroundRole()));
  painter.drawText(rect(), static_cast<int>(alignment()), shown);
}

}  // namespace jw
