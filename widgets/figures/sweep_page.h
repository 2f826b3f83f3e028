#pragma once

#include "widgets/figures/axis_choice.h"
#include "widgets/figures/line_chart_canvas.h"
#include "widgets/figures/study_page.h"
#include "widgets/figures/sweep_view.h"

namespace jw {

/// The margins on the screen, read as a sweep's.
class SweepCanvas : public LineChartCanvas {
 public:
  using LineChartCanvas::LineChartCanvas;
  void setView(const SweepView* view) { m_view = view; }

 protected:
  QString readingAt(const QPointF& pixel) const override;

 private:
  const SweepView* m_view = nullptr;
};

/// Every margin and one headline figure over any one number of the project.
class SweepPage : public StudyPage {
  Q_OBJECT

 public:
  explicit SweepPage(StudyThread& thread, QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  void addStudies(Snapshot& snapshot) const override;
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

  const LineChartCanvas& margins() const { return *m_margins; }
  const LineChartCanvas& quantity() const { return *m_quantity; }
  AxisChoice& axis() { return *m_axis; }
  const std::shared_ptr<const FieldSweep>& sweep() const { return m_sweep; }
  bool isPreview() const { return m_preview; }

 private:
  QWidget* makeSettings();
  void offerQuantities(const Evaluation& evaluation);
  void settingsChanged();
  bool isOf(const std::shared_ptr<const Project>& project, const SweepAxis& axis) const;
  void ask(SweepAxis axis);
  void showView();

  Snapshot m_snapshot;
  std::shared_ptr<const Project> m_askedProject;
  SweepAxis m_askedAxis;
  std::shared_ptr<const Project> m_project;  // that m_sweep is of
  std::shared_ptr<const FieldSweep> m_sweep;
  SweepView m_view;
  bool m_preview = false;
  AxisChoice* m_axis;
  Chooser* m_headline;
  SweepCanvas* m_margins;
  LineChartCanvas* m_quantity;
};

}  // namespace jw
