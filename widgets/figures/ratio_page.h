#pragma once

#include <map>
#include <optional>

#include "core/studies/study_ranges.h"
#include "widgets/figures/chooser.h"
#include "widgets/figures/range_fields.h"
#include "widgets/figures/ratio_canvas.h"
#include "widgets/figures/study_page.h"

namespace jw {

/// Every margin over the ratio from motor to joint, or over that of one stage; the present ratio is
/// dragged there. A sweep stays good while only that ratio changes.
class RatioPage : public StudyPage {
  Q_OBJECT

 public:
  explicit RatioPage(StudyThread& thread, QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  void addStudies(Snapshot& snapshot) const override;
  void restyle() override { m_canvas->restyle(); }
  void zoomBy(double factor) override { m_canvas->zoomBy(factor); }
  void resetZoom() override { m_canvas->resetZoom(); }
  bool takeKey(QKeyEvent& event) override;

  const RatioCanvas& canvas() const { return *m_canvas; }
  /// The sweep that is shown; null before the first.
  const std::shared_ptr<const RatioSweep>& sweep() const { return m_sweep; }
  bool isPreview() const { return m_preview; }

 private:
  /// What a sweep was asked for.
  struct Asked {
    std::shared_ptr<const Project> project;
    int stage = -1;
    StudyRange range;
  };
  /// How a change of the ratio reaches the project.
  struct Grip {
    int stage = 0;      ///< whose ratio is changed
    double others = 1;  ///< shown ratio over the stage's
    Stage before;       ///< as it was when the gesture began
  };
  QWidget* makeSettings();
  void offerStages(const Project& project);
  void chooseRange();
  bool isAnswered(const Asked& asked) const;
  void ask();
  void followRatio();
  void take(const std::shared_ptr<const RatioSweep>& sweep, const Asked& asked, bool preview);
  void refuse(const InputError& error);
  void showView(bool stale);
  void begin();
  void setRatio(double ratio, double step, bool snap);
  void giveUp();
  void nudge(double steps, bool toTicks);
  bool followsFromParts() const;

  Snapshot m_snapshot;
  int m_stage = -1;                   // as chosen; -1 = from motor to joint
  std::map<int, StudyRange> m_typed;  // ranges that were typed
  std::map<int, StudyRange> m_usual;  // ranges in use where none was
  Asked m_asked;                      // of the latest request
  std::shared_ptr<const RatioSweep> m_sweep;
  Asked m_answered;  // what m_sweep answers
  bool m_preview = false;
  bool m_due = false;          // a preview was asked for and is not there yet
  bool m_again = false;        // and is out of date already
  std::optional<Grip> m_grip;  // while a gesture goes on
  int m_gesture = 0;
  Chooser* m_stages;
  RangeFields* m_range;
  RatioCanvas* m_canvas;
};

}  // namespace jw
