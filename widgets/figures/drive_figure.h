#pragma once

#include <QComboBox>
#include <QElapsedTimer>
#include <QTimer>
#include <QToolButton>

#include "widgets/figures/drive_canvas.h"
#include "widgets/figures/figure.h"

namespace jw {

/// A stage drawn from its own numbers. It turns with the time cursor; "turn" turns it slowly by
/// itself.
class DriveFigure : public Figure {
  Q_OBJECT

 public:
  explicit DriveFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("drive"); }
  QString title() const override { return tr("Drive picture"); }
  QString exportName() const override;
  void setStage(int stage);
  const DriveCanvas& canvas() const { return *m_canvas; }

 protected:
  void drawCursor() override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeHeader();
  void offerStages(const DriveView& view);
  void describe(const DriveView& view);
  void setTurning(bool turning);
  void turnOn();

  Snapshot m_shown;
  int m_stage = -1;  // as chosen; -1 = the main one
  QComboBox* m_stages;
  QToolButton* m_turn;
  DriveCanvas* m_canvas;
  QTimer m_timer;
  QElapsedTimer m_clock;
  double m_turnFrom = 0;  // [rad] of the input where the turning began
};

}  // namespace jw
