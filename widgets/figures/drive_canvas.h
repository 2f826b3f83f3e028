#pragma once

#include <QWidget>

#include "widgets/figures/drive_painter.h"

namespace jw {

/// The drawing on the screen: the wheel zooms about the pointer, a drag moves it, a double click
/// shows all.
class DriveCanvas : public QWidget {
  Q_OBJECT

 public:
  explicit DriveCanvas(QWidget* parent = nullptr);

  void showView(DriveView view, bool stale);
  void setInstant(const DriveInstant& instant);
  const DriveInstant& instant() const { return m_instant; }
  const DriveView& view() const { return m_painter.view(); }
  /// Where everything stands now.
  DriveLayout layoutNow() const;
  void zoomBy(double factor);
  void resetZoom();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;

 private:
  void zoomAbout(double factor, const QPointF& pixel);

  DrivePainter m_painter;
  DriveInstant m_instant;
  DriveZoom m_zoom;
  QPointF m_last;
  bool m_stale = false;
};

}  // namespace jw
