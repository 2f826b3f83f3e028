#pragma once

#include <vector>

#include <qcustomplot.h>

#include "widgets/theme/plot_style.h"

namespace jw {

/// What can be taken hold of at the end of a move.
struct MoveHandle {
  int segment = 0;
  QPointF at;          ///< axis coordinates
  bool angle = false;  ///< can be dragged up and down
  bool time = false;   ///< and sideways
};

/// The chosen move's stretches, behind the curve.
class ChosenStretch : public QCPLayerable {
  Q_OBJECT

 public:
  ChosenStretch(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setStyle(const PlotStyle* style) { m_style = style; }
  void setTimes(std::vector<QCPRange> times) { m_times = std::move(times); }

 protected:
  void applyDefaultAntialiasingHint(QCPPainter*) const override {}
  void draw(QCPPainter* painter) override;

 private:
  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  std::vector<QCPRange> m_times;  ///< [s]
};

/// Handles and broken joins, over the curve.
class MoveCurveMarks : public QCPLayerable {
  Q_OBJECT

 public:
  MoveCurveMarks(QCustomPlot* plot, QCPAxisRect* rect, const QString& layer);

  void setStyle(const PlotStyle* style) { m_style = style; }
  void setHandles(std::vector<MoveHandle> handles) { m_handles = std::move(handles); }
  const std::vector<MoveHandle>& handles() const { return m_handles; }
  void setBroken(std::vector<QPointF> joins) { m_broken = std::move(joins); }
  const std::vector<QPointF>& broken() const { return m_broken; }
  void setHot(int handle) { m_hot = handle; }
  void setChosen(int segment) { m_chosen = segment; }

  QPointF toPixels(const QPointF& point) const;
  /// The handle at a pixel; -1 if none is near.
  int handleAt(const QPointF& pixel) const;

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  void draw(QCPPainter* painter) override;

 private:
  void drawHandle(QCPPainter* painter, int index) const;
  void drawBroken(QCPPainter* painter, const QPointF& join) const;

  QCPAxisRect* m_rect;
  const PlotStyle* m_style = nullptr;
  std::vector<MoveHandle> m_handles;
  std::vector<QPointF> m_broken;
  int m_hot = -1;
  int m_chosen = -1;
};

}  // namespace jw
