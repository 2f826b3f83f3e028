#pragma once

#include <array>

#include <QBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

#include "widgets/figures/figure.h"
#include "widgets/figures/line_chart_canvas.h"
#include "widgets/figures/precision_view.h"

namespace jw {

/// How exactly and with what loss the chain passes motion on: wind-up loop with each stage's share,
/// efficiency against load and speed, frequency response, and error at the tool.
class PrecisionFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { WindUp, Efficiency, Response, ToolError };

  explicit PrecisionFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("precision"); }
  QString exportName() const override;
  QString title() const override { return tr("Precision"); }
  void setPicture(Picture picture);
  const LineChartCanvas& loop() const { return *m_loop; }
  const LineChartCanvas& shares() const { return *m_shares; }
  const LineChartCanvas& efficiency() const { return *m_efficiency; }
  const LineChartCanvas& swing() const { return *m_swing; }
  const LineChartCanvas& toolError() const { return *m_toolError; }

 protected:
  void drawCursor() override {}
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

 private:
  QWidget* makeHeader();
  QWidget* makePages();
  void describe(const Snapshot& snapshot);
  std::array<LineChartCanvas*, 5> canvases() const {
    return {m_loop, m_shares, m_efficiency, m_swing, m_toolError};
  }

  PrecisionView m_view;  ///< charts are kept until the next ones are there
  Picture m_picture = Picture::WindUp;
  std::array<QToolButton*, 4> m_choice{};
  QLabel* m_reading = nullptr;
  LineChartCanvas* m_loop;
  LineChartCanvas* m_shares;
  LineChartCanvas* m_efficiency;
  LineChartCanvas* m_swing;
  LineChartCanvas* m_toolError;
  QStackedWidget* m_pages = nullptr;
};

}  // namespace jw
