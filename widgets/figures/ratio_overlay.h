#pragma once

#include "widgets/figures/ratio_view.h"

namespace jw {

/// What stands in the picture of the ratio besides the curves: named ratios with their lines, the
/// ends of the feasible band, ticks of ratios that can be built, and the handle of the present one.
class RatioOverlay : public QCPLayerable {
  Q_OBJECT

 public:
  RatioOverlay(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);
  void setStyle(const PlotStyle* style) { m_style = style; }
  void setView(const RatioView* view) { m_view = view; }
  /// Whether a pixel is on the handle or on its line.
  bool isHandle(const QPointF& pixel) const;

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  QRect clipRect() const override;
  void draw(QCPPainter* painter) override;

 private:
  double pixelOf(double ratio) const;
  double heightOf(double margin) const;
  QRectF handleRect() const;
  void drawTicks(QCPPainter& painter) const;
  void drawMarks(QCPPainter& painter) const;
  void drawEnds(QCPPainter& painter) const;
  void drawHandle(QCPPainter& painter) const;

  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  const RatioView* m_view = nullptr;
};

/// A place for a text of `size` beside the vertical line at `x`: in the first of `rows` where it
/// meets none of `taken`, on the preferred side if it fits. Null where there is none.
QRectF placeBeside(double x, const QSizeF& size, bool right, const std::vector<double>& rows,
                   const QRectF& area, const std::vector<QRectF>& taken);

}  // namespace jw
