#pragma once

#include <array>

#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

#include "widgets/figures/figure.h"
#include "widgets/figures/map_page.h"
#include "widgets/figures/ratio_page.h"
#include "widgets/figures/sweep_page.h"
#include "widgets/study_thread.h"

namespace jw {

/// What happens to the margins when numbers change: the ratio, any one input, or two of them.
class RatioFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { Ratio, OneInput, TwoInputs };

  explicit RatioFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("ratio"); }
  QString title() const override { return tr("Ratio"); }
  QString exportName() const override;
  void addStudies(Snapshot& snapshot) const override;
  void setPicture(Picture picture);
  Picture picture() const { return m_picture; }
  const RatioPage& ratio() const { return *m_ratio; }
  const SweepPage& oneInput() const { return *m_sweep; }
  const MapPage& twoInputs() const { return *m_map; }
  StudyThread& thread() { return m_thread; }

 protected:
  void drawCursor() override {}
  void restyle() override;
  void zoomBy(double factor) override { front().zoomBy(factor); }
  void resetZoom() override { front().resetZoom(); }
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeHeader();
  StudyPage& front() const;
  std::array<StudyPage*, 3> pages() const { return {m_ratio, m_sweep, m_map}; }

  StudyThread m_thread;
  Snapshot m_shown;
  Picture m_picture = Picture::Ratio;
  std::array<QToolButton*, 3> m_choice{};
  QLabel* m_reading = nullptr;
  RatioPage* m_ratio;
  SweepPage* m_sweep;
  MapPage* m_map;
  QStackedWidget* m_pages;
};

}  // namespace jw
