#pragma once

#include "widgets/figures/envelope_plot.h"
#include "widgets/figures/plot_canvas.h"

namespace jw {

/// The speed-torque plane on the screen: the wheel zooms about the pointer, a drag moves the
/// plane, a double click shows all, a click on the path moves the time cursor there.
class EnvelopeCanvas : public PlotCanvas {
  Q_OBJECT

 public:
  explicit EnvelopeCanvas(QWidget* parent = nullptr);

  /// Shows `view`; what the person zoomed to stays unless `axesChanged`.
  void showView(EnvelopeView view, bool axesChanged);
  void setCursorTime(double s);
  void restyle();
  void zoomBy(double factor, const QPointF& aboutPixel);
  void resetZoom();
  bool isZoomed() const { return m_zoomed; }
  const EnvelopePlot& plot() const { return m_plot; }

 signals:
  void hovered(const QString& reading);  ///< empty when the pointer leaves
  void cursorPicked(double s);
  void zoomChanged();

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  QString readingAt(const QPointF& pixel) const;
  void panBy(const QPointF& pixels);
  void setZoomed(bool zoomed);

  EnvelopePlot m_plot;
  QPointF m_pressed;
  QPointF m_last;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  bool m_dragging = false;
  bool m_zoomed = false;
};

}  // namespace jw
