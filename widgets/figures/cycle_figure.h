#pragma once

#include <QToolButton>

#include "widgets/figures/cycle_strip.h"
#include "widgets/figures/figure.h"

namespace jw {

/// Position, speed, torque by cause, motor and power over the cycle, one below the other.
class CycleFigure : public Figure {
  Q_OBJECT

 public:
  explicit CycleFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("cycle"); }
  QString title() const override { return tr("Cycle"); }
  const CyclePlot& plot() const { return m_strip->plot(); }

 protected:
  void drawCursor() override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

 private:
  void offerRows(const std::vector<CycleRow>& rows);
  QStringList chosenRows() const;
  void showChosen();

  CycleView m_view;
  QWidget* m_chooser;
  CycleStrip* m_strip;
  QList<QToolButton*> m_buttons;
};

}  // namespace jw
