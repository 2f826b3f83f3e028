#pragma once

#include "widgets/cycle/move_curve_marks.h"
#include "widgets/cycle/move_edits.h"
#include "widgets/figures/plot_canvas.h"
#include "widgets/figures/row_overlay.h"

namespace jw {

/// The joint angle over the cycle, with a handle at the end of each move: dragged up or down it
/// changes the travel or target, sideways the duration; which of both, the first pixels decide.
/// With Shift the next move makes up for it. A click elsewhere chooses the move there.
class MoveCurve : public PlotCanvas {
  Q_OBJECT

 public:
  explicit MoveCurve(QWidget* parent = nullptr);

  void showView(const MovesView& view);
  void setChosen(int segment);
  void setCursorTime(double s);
  void restyle();
  void zoomBy(double factor);
  void resetZoom();
  const MoveCurveMarks& marks() const { return *m_marks; }
  /// Where the handle of a move is [px]; null if it has none.
  QPointF handleOf(int segment) const;

 signals:
  void moveChosen(int segment);
  void cursorDragged(double s);
  void editRequested(const jw::Edit& edit);
  void reading(const QString& text);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  enum class Drag { None, Undecided, Angle, Time };

  void place();
  void placeHandles();
  void placeBroken();
  void grip(int handle, const QPointF& pixel);
  void dragTo(const QPointF& pixel, bool keepRest);
  void hover(const QPointF& pixel);
  void fitRanges();

  PlotStyle m_style;
  MovesView m_view;
  QCPGraph* m_graph = nullptr;
  BandOverlay* m_bands = nullptr;
  ChosenStretch* m_stretch = nullptr;
  MoveCurveMarks* m_marks = nullptr;
  RowOverlay* m_cursorLine = nullptr;
  int m_chosen = -1;
  Drag m_drag = Drag::None;
  moves::Grip m_grip;
  MoveHandle m_held;
  QPointF m_from;   ///< [px] where the drag began
  QPointF m_units;  ///< [s] and [rad] per pixel
  int m_gestures = 0;
  bool m_zoomed = false;
};

}  // namespace jw
