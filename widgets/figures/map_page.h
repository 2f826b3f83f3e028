#pragma once

#include <QProgressBar>
#include <QToolButton>

#include "widgets/figures/axis_choice.h"
#include "widgets/figures/map_plot.h"
#include "widgets/figures/plane_canvas.h"
#include "widgets/figures/study_page.h"

namespace jw {

/// A map on the screen.
class MapCanvas : public PlaneCanvas {
  Q_OBJECT

 public:
  explicit MapCanvas(QWidget* parent = nullptr) : PlaneCanvas(parent), m_plot(*this) {}

  void showView(MapView view, bool stale);
  void restyle();
  const MapPlot& plot() const { return m_plot; }

 protected:
  QString readingAt(const QPointF& pixel) const override { return m_plot.readingAt(pixel); }
  void showAll() override { m_plot.showAll(); }

 private:
  MapPlot m_plot;
};

/// The smallest margin over any two numbers of the project. It is worked out roughly first; the
/// whole can be stopped and gone on with.
class MapPage : public StudyPage {
  Q_OBJECT

 public:
  explicit MapPage(StudyThread& thread, QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  void addStudies(Snapshot& snapshot) const override;
  void restyle() override { m_canvas->restyle(); }
  void zoomBy(double factor) override { m_canvas->zoomBy(factor); }
  void resetZoom() override { m_canvas->resetZoom(); }

  const MapCanvas& canvas() const { return *m_canvas; }
  AxisChoice& across() { return *m_across; }
  AxisChoice& up() { return *m_up; }
  const std::shared_ptr<const FieldMap>& map() const { return m_map; }
  bool isPreview() const { return m_preview; }

 private:
  /// What a map was asked for.
  struct Asked {
    std::shared_ptr<const Project> project;
    SweepAxis across, up;
    bool operator==(const Asked& other) const;
  };
  QWidget* makeSettings();
  void settingsChanged();
  void stopOrGoOn();
  void ask(Asked asked);
  void take(std::shared_ptr<const FieldMap> map, const Asked& asked, bool preview);
  void showProgress(const StudyProgress& progress);
  void showBusy();
  void showView(bool stale);
  static std::shared_ptr<const FieldMap> compute(const Asked& asked, const StudyRun& run,
                                                 bool preview);

  Snapshot m_snapshot;
  Asked m_asked;
  bool m_stopped = false;  // what was asked for was given up by hand
  Asked m_answered;
  std::shared_ptr<const FieldMap> m_map;
  bool m_preview = false;
  AxisChoice* m_across;
  AxisChoice* m_up;
  QProgressBar* m_progress;
  QToolButton* m_stop;
  MapCanvas* m_canvas;
};

}  // namespace jw
