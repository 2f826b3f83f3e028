#pragma once

#include <QProxyStyle>

namespace jw {

/// What a style sheet cannot draw without image files: arrows, ticks and the focus ring, in the
/// colours of the current theme.
class ThemeStyle : public QProxyStyle {
  Q_OBJECT

 public:
  ThemeStyle();
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget = nullptr) const override;
  int styleHint(StyleHint hint, const QStyleOption* option = nullptr,
                const QWidget* widget = nullptr, QStyleHintReturn* data = nullptr) const override;
  int pixelMetric(PixelMetric metric, const QStyleOption* option = nullptr,
                  const QWidget* widget = nullptr) const override;
};

}  // namespace jw
