#pragma once

#include "widgets/figures/cycle_plot.h"
#include "widgets/figures/plot_canvas.h"

namespace jw {

/// Rows over time on the screen, with the shared cursor: a press or drag moves it, the wheel
/// stretches time, a drag with Shift or the middle button moves it along, a double click shows all.
class CycleStrip : public PlotCanvas {
  Q_OBJECT

 public:
  CycleStrip(bool bands, QWidget* parent = nullptr);

  void showView(CycleView view, const QStringList& visible = {});
  void setCursorTime(double s);
  void restyle();
  void zoomBy(double factor);
  void resetZoom();
  const CyclePlot& plot() const { return m_plot; }

 signals:
  void cursorDragged(double s);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  enum class Drag { None, Cursor, Pan };
  void dragTo(const QPointF& pixel);

  CyclePlot m_plot;
  Drag m_drag = Drag::None;
  double m_panFrom = 0;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
  bool m_zoomed = false;
};

}  // namespace jw
