#pragma once

#include <array>

#include <QBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

#include "widgets/figures/cycle_strip.h"
#include "widgets/figures/figure.h"
#include "widgets/figures/heat_view.h"
#include "widgets/figures/line_chart_canvas.h"

namespace jw {

/// Temperatures of winding and housing, and how much torque they allow for how long. Two pictures:
/// warm-up and cycle, overload and duty.
class HeatFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { WarmUp, Overload };

  explicit HeatFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("heat"); }
  QString exportName() const override;
  QString title() const override { return tr("Heat"); }
  void setPicture(Picture picture);
  Picture picture() const { return m_picture; }
  const LineChartCanvas& warmUp() const { return *m_warmUp; }
  const LineChartCanvas& overload() const { return *m_overload; }
  const LineChartCanvas& duty() const { return *m_duty; }

 protected:
  void drawCursor() override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeHeader();
  QWidget* makePages();
  void showCharts(bool stale);
  void describe(const Evaluation& evaluation);
  std::array<LineChartCanvas*, 3> canvases() const { return {m_warmUp, m_overload, m_duty}; }

  HeatView m_view;  ///< charts are kept until the next ones are there
  Picture m_picture = Picture::WarmUp;
  std::array<QToolButton*, 2> m_choice{};
  QLabel* m_reading;
  LineChartCanvas* m_warmUp;
  CycleStrip* m_cycle;
  LineChartCanvas* m_overload;
  LineChartCanvas* m_duty;
  QStackedWidget* m_pages;
  QBoxLayout* m_pair = nullptr;
};

}  // namespace jw
