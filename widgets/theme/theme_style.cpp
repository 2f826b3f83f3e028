#include "widgets/theme/theme_style.h"

#include <QPainter>
#include <QStyleOption>

#include "widgets/theme/theme.h"

namespace jw {
namespace {

// A chevron in a box of 8 px about the centre of `rect`, turned clockwise from "down".
void drawChevron(QPainter* painter, const QRect& rect, double turn, const QColor& colour) {
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(colour, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter->translate(QRectF(rect).center());
  painter->rotate(turn);
  const QPointF points[] = {{-3, -1.5}, {0, 1.5}, {3, -1.5}};
  painter->drawPolyline(points, 3);
  painter->restore();
}

void drawTick(QPainter* painter, const QRectF& box, const QColor& colour) {
  painter->setPen(QPen(colour, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const QPointF points[] = {{box.left() + box.width() * 0.24, box.center().y() + 0.5},
                            {box.left() + box.width() * 0.43, box.bottom() - box.height() * 0.27},
                            {box.left() + box.width() * 0.77, box.top() + box.height() * 0.28}};
  painter->drawPolyline(points, 3);
}

void drawCheckBox(QPainter* painter, const QStyleOption& option, const Palette& p) {
  const bool on = option.state.testFlag(QStyle::State_On);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  const QRectF box = QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5);
  const bool hot = option.state & (QStyle::State_HasFocus | QStyle::State_MouseOver);
  painter->setPen(QPen(on || hot ? p.accent : p.zeroLine, 1));
  painter->setBrush(on ? p.accent : p.field);
  painter->drawRoundedRect(box, 3, 3);
  if (on) drawTick(painter, box, p.panel);
  painter->restore();
}

void drawFocusRing(QPainter* painter, const QRect& rect, const Palette& p) {
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(p.accent, 1.5));
  painter->setBrush(Qt::NoBrush);
  painter->drawRoundedRect(QRectF(rect).adjusted(1, 1, -1, -1), 4, 4);
  painter->restore();
}

double turnOf(QStyle::PrimitiveElement element) {
  switch (element) {
    case QStyle::PE_IndicatorArrowLeft: return 90;
    case QStyle::PE_IndicatorArrowUp:
    case QStyle::PE_IndicatorSpinUp: return 180;
    case QStyle::PE_IndicatorArrowRight: return 270;
    default: return 0;
  }
}

}  // namespace

ThemeStyle::ThemeStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

void ThemeStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const {
  const Palette& p = jw::palette();
  const bool enabled = option->state.testFlag(State_Enabled);
  switch (element) {
    case PE_IndicatorArrowDown:
    case PE_IndicatorArrowUp:
    case PE_IndicatorArrowLeft:
    case PE_IndicatorArrowRight:
    case PE_IndicatorSpinUp:
    case PE_IndicatorSpinDown:
      return drawChevron(painter, option->rect, turnOf(element), enabled ? p.muted : p.line);
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck: return drawCheckBox(painter, *option, p);
    case PE_FrameFocusRect: return drawFocusRing(painter, option->rect, p);
    default: QProxyStyle::drawPrimitive(element, option, painter, widget);
  }
}

int ThemeStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* data) const {
  if (hint == SH_EtchDisabledText || hint == SH_DitherDisabledText) return 0;
  if (hint == SH_ToolTip_WakeUpDelay) return 450;
  return QProxyStyle::styleHint(hint, option, widget, data);
}

int ThemeStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                            const QWidget* widget) const {
  if (metric == PM_IndicatorWidth || metric == PM_IndicatorHeight) return 14;
  return QProxyStyle::pixelMetric(metric, option, widget);
}

}  // namespace jw
