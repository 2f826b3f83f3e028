#pragma once

#include <QLabel>
#include <QToolButton>

#include "widgets/figures/cycle_strip.h"
#include "widgets/figures/envelope_canvas.h"
#include "widgets/figures/figure.h"

namespace jw {

/// What the motor can do and what the load asks for, in the speed-torque plane, with the joint
/// torque over the cycle below it.
class EnvelopeFigure : public Figure {
  Q_OBJECT

 public:
  explicit EnvelopeFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("envelope"); }
  QString title() const override { return tr("Envelope"); }
  void setAxesAt(AxesAt axesAt);
  AxesAt axesAt() const { return m_axesAt; }
  EnvelopeCanvas& canvas() { return *m_canvas; }

 protected:
  void drawCursor() override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

 private:
  QWidget* makeHeader();
  QToolButton* makeAxesButton(const QString& text, const QString& name, AxesAt axesAt);
  QToolButton* makeExtra(const QString& text, const QString& name, const QString& hint,
                         bool EnvelopeExtras::*extra);
  void showView(bool axesChanged);
  void describe(const EnvelopeView& view);

  Snapshot m_snapshot;
  AxesAt m_axesAt = AxesAt::Motor;
  EnvelopeExtras m_extras;
  QToolButton* m_atMotor;
  QToolButton* m_atJoint;
  QToolButton* m_band;
  QToolButton* m_efficiency;
  QToolButton* m_all;
  QLabel* m_reading;
  EnvelopeCanvas* m_canvas;
  CycleStrip* m_strip;
};

}  // namespace jw
