#pragma once

#include "widgets/figures/envelope_plot.h"
#include "widgets/figures/plane_canvas.h"

namespace jw {

/// The speed-torque plane on the screen; a click on the path moves the time cursor there.
class EnvelopeCanvas : public PlaneCanvas {
  Q_OBJECT

 public:
  explicit EnvelopeCanvas(QWidget* parent = nullptr);

  /// Shows `view`; what the person zoomed to stays unless `axesChanged`.
  void showView(EnvelopeView view, bool axesChanged);
  void setCursorTime(double s);
  void restyle();
  const EnvelopePlot& plot() const { return m_plot; }

 signals:
  void cursorPicked(double s);

 protected:
  QString readingAt(const QPointF& pixel) const override;
  void showAll() override { m_plot.showAll(); }
  void pick(const QPointF& pixel) override;

 private:
  EnvelopePlot m_plot;
  double m_cursor = std::numeric_limits<double>::quiet_NaN();
};

}  // namespace jw
