#pragma once

#include <array>
#include <limits>

#include "widgets/figures/log_rows.h"
#include "widgets/figures/plot_canvas.h"

namespace jw {

/// Curves of a measured log over one another, every row of the log seen at any zoom. The wheel
/// zooms about the pointer, a drag moves the time along, a double click shows all; the two edges of
/// the chosen stretch can be dragged. By keys: plus, minus, left, right and Home.
class LogCanvas : public PlotCanvas {
  Q_OBJECT

 public:
  explicit LogCanvas(QWidget* parent = nullptr);

  /// Shows `view`; the part that is seen stays if `keepRange`.
  void showView(LogView view, bool keepRange);
  void setStretch(const LogStretch& stretch);
  const LogStretch& stretch() const { return m_stretch; }
  void setSeen(double from, double to);
  LogStretch seen() const { return {m_seen.lower, m_seen.upper}; }
  void zoomBy(double factor, double centre);
  void showAll();
  void restyle();
  const LogView& view() const { return m_view; }
  /// [px] of a time, for tests.
  double pixelOf(double time) const;

 signals:
  void stretchDragged(double from, double to);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  enum class Drag { None, Pan, From, To };
  struct Row {
    QCPAxisRect* rect = nullptr;
    std::vector<LogCurve*> curves;
    RowOverlay* key = nullptr;
    std::array<LogStretchOverlay*, 2> overlays{};
  };

  void rebuild();
  Row makeRow(const LogRow& content, bool last);
  void styleRows();
  void scaleRow(const Row& row, const LogRow& content);
  void arrange();
  void showStretch();
  void setCursorTime(double time, bool now);
  double timeAt(double x) const;
  int edgeAt(const QPointF& pixel) const;
  void dragTo(const QPointF& pixel);

  LogView m_view;
  PlotStyle m_style;
  std::vector<Row> m_rows;
  QCPRange m_seen{0, 1};
  LogStretch m_stretch;
  Drag m_drag = Drag::None;
  double m_panFrom = 0;
  int m_edge = -1;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
};

}  // namespace jw
