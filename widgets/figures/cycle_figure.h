#pragma once

#include <array>

#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

#include "widgets/cycle/mix_panel.h"
#include "widgets/cycle/move_editor.h"
#include "widgets/figures/cycle_strip.h"
#include "widgets/figures/figure.h"

namespace jw {

/// The cycle. Three pictures: position, speed, torque by cause, motor and power over time; its
/// moves as a curve and a table to work in; the daily mix.
class CycleFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { OverTime, Moves, Mix };

  explicit CycleFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("cycle"); }
  QString title() const override { return tr("Cycle"); }
  void setPicture(Picture picture);
  Picture picture() const { return m_picture; }
  const CyclePlot& plot() const { return m_strip->plot(); }
  MoveEditor& moves() { return *m_moves; }
  MixPanel& mix() { return *m_mix; }

 protected:
  void drawCursor() override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

 private:
  QWidget* makeHeader();
  QWidget* makeOverTime();
  void connectParts();
  void showPicture();
  void offerRows(const std::vector<CycleRow>& rows);
  QStringList chosenRows() const;
  void showChosen();

  Snapshot m_latest;
  CycleView m_view;
  Picture m_picture = Picture::OverTime;
  std::array<QToolButton*, 3> m_choice{};
  QLabel* m_reading = nullptr;
  QWidget* m_chooser;
  CycleStrip* m_strip;
  MoveEditor* m_moves;
  MixPanel* m_mix;
  QStackedWidget* m_pages;
  QList<QToolButton*> m_buttons;
};

}  // namespace jw
