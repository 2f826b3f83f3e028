#pragma once

#include "widgets/figures/plot_canvas.h"

namespace jw {

/// A plot of one axis rect on the screen: the wheel zooms about the pointer, a drag moves the plane
/// and a double click shows all.
class PlaneCanvas : public PlotCanvas {
  Q_OBJECT

 public:
  explicit PlaneCanvas(QWidget* parent = nullptr);

  void zoomBy(double factor, const QPointF& aboutPixel);
  /// About the middle.
  void zoomBy(double factor);
  void resetZoom();
  bool isZoomed() const { return m_zoomed; }

 signals:
  void hovered(const QString& reading);  ///< empty when the pointer leaves
  void zoomChanged();

 protected:
  /// What there is to read at a pixel inside the axis rect.
  virtual QString readingAt(const QPointF& pixel) const = 0;
  /// Sets the axes to all that is drawn.
  virtual void showAll() = 0;
  /// A click that was no drag.
  virtual void pick(const QPointF& pixel);
  void setZoomed(bool zoomed);

  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  void panBy(const QPointF& pixels);

  QPointF m_pressed;
  QPointF m_last;
  bool m_dragging = false;
  bool m_zoomed = false;
};

}  // namespace jw
