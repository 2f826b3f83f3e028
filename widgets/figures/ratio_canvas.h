#pragma once

#include "widgets/figures/plane_canvas.h"
#include "widgets/figures/ratio_plot.h"

namespace jw {

/// The picture of the ratio on the screen; its handle is dragged.
class RatioCanvas : public PlaneCanvas {
  Q_OBJECT

 public:
  explicit RatioCanvas(QWidget* parent = nullptr);

  /// Shows `view`, dimmed if it is old; what the person zoomed to stays.
  void showView(RatioView view, bool stale);
  void setPresent(double ratio);
  void restyle();
  const RatioPlot& plot() const { return m_plot; }
  bool isDragging() const { return m_holds; }
  /// Lets go of the handle.
  void endDrag();

 signals:
  void dragBegun();
  /// The handle is at `ratio`; a pixel is `step` there.
  void dragged(double ratio, double step, Qt::KeyboardModifiers modifiers);
  void dragEnded();

 protected:
  QString readingAt(const QPointF& pixel) const override { return m_plot.readingAt(pixel); }
  void showAll() override { m_plot.showAll(); }
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  RatioPlot m_plot;
  bool m_holds = false;
  bool m_idle = false;  // let go of before the button was
  double m_grip = 0;    // [px] from the pointer to the handle
};

}  // namespace jw
