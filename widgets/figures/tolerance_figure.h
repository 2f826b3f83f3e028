#pragma once

#include <array>
#include <memory>

#include <QComboBox>
#include <QLabel>
#include <QSpinBox>
#include <QStackedWidget>
#include <QToolButton>

#include "widgets/figures/envelope_canvas.h"
#include "widgets/figures/figure.h"
#include "widgets/figures/line_chart_canvas.h"
#include "widgets/figures/tolerance_canvas.h"
#include "widgets/study_thread.h"

namespace jw {

/// What bands on the inputs do to the verdicts: how likely each holds, how its margin spreads, what
/// it depends on, and where envelope and path may lie. Draws beside the window and shows the draws
/// as they come.
class ToleranceFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { Chances, Distribution, Tornado, Envelope };

  explicit ToleranceFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("tolerance"); }
  QString exportName() const override;
  QString title() const override { return tr("Tolerance"); }
  void addStudies(Snapshot& snapshot) const override;
  void setPicture(Picture picture);

  bool isBusy() const { return m_study.isBusy(); }
  const std::shared_ptr<const Tolerance>& result() const { return m_result; }
  const ChanceTable& chances() const { return *m_chances; }
  const LineChartCanvas& distribution() const { return *m_distribution; }
  const TornadoCanvas& tornado() const { return *m_tornado; }
  const EnvelopeCanvas& envelope() const { return *m_envelope; }

 protected:
  void drawCursor() override {}
  void restyle() override;
  void zoomBy(double factor) override;
  void resetZoom() override;

 private:
  QWidget* makeHeader();
  QWidget* makeControls();
  QWidget* makePages();
  void start();
  void stop();
  void receive(std::shared_ptr<const Tolerance> result, bool last);
  void receiveEnvelope(std::shared_ptr<const ToleranceEnvelope> bands);
  void showProgress(const StudyProgress& progress);
  void showResult();
  void showChosen();
  void fillChoice();
  void chooseVerdict(const std::string& id, int stage);
  bool isStale() const;

  Snapshot m_snapshot;
  std::shared_ptr<const Project> m_of;  ///< the project that is drawn, or was
  std::shared_ptr<const Project> m_resultOf;
  std::shared_ptr<const Tolerance> m_result;
  std::shared_ptr<const ToleranceEnvelope> m_bands;
  std::string m_verdict;  ///< the margin that is shown in full; empty = all checks
  int m_verdictStage = -1;
  Picture m_picture = Picture::Chances;
  std::array<QToolButton*, 4> m_choice{};
  QLabel* m_reading = nullptr;
  QComboBox* m_draws = nullptr;
  QSpinBox* m_seed = nullptr;
  QComboBox* m_which = nullptr;
  QLabel* m_status = nullptr;
  QToolButton* m_run = nullptr;
  QWidget* m_body = nullptr;
  QStackedWidget* m_pages = nullptr;
  ChanceTable* m_chances;
  LineChartCanvas* m_distribution;
  TornadoCanvas* m_tornado;
  EnvelopeCanvas* m_envelope;
  StudyThread m_study;  // last: it ends first
};

}  // namespace jw
