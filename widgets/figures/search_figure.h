#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QTimer>

#include "widgets/figures/figure.h"
#include "widgets/figures/search_canvas.h"
#include "widgets/figures/search_settings.h"
#include "widgets/figures/search_table_model.h"
#include "widgets/study_thread.h"

namespace jw {

/// Searches catalogues for the joint: settings, a scatter with the Pareto front of any two figures,
/// and the same candidates as a table. Results stream in; an edit marks them as old and keeps them
/// until the next search is asked for.
class SearchFigure : public Figure {
  Q_OBJECT

 public:
  explicit SearchFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("search"); }
  QString title() const override { return tr("Search"); }
  void addStudies(Snapshot& snapshot) const override;

  void search();
  void cancel();
  bool isSearching() const { return m_thread.isBusy(); }
  /// Whether threads of a search still run; some milliseconds longer than isSearching().
  bool isAtWork() const { return !m_atWork.expired(); }
  /// Whether what is shown was found for another joint.
  bool isStale() const { return m_stale; }
  const SearchStudy* study() const { return m_study.get(); }
  const SearchTableModel& table() const { return *m_model; }
  SearchCanvas& scatter() { return *m_scatter; }
  SearchSettings& settings() { return *m_settings; }
  /// The candidate that is ringed in the scatter and chosen in the table.
  void choose(std::optional<std::size_t> candidate);
  std::optional<std::size_t> chosen() const { return m_chosen; }
  /// Asks for the chosen one as a variant.
  void adopt();
  /// How often what was found was drawn since the search began.
  int refreshes() const { return m_refreshes; }

 protected:
  void drawCursor() override {}
  void restyle() override;
  void zoomBy(double factor) override { m_scatter->zoomBy(factor); }
  void resetZoom() override { m_scatter->resetZoom(); }
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeRunRow();
  QWidget* makeAxesRow();
  QWidget* makeResults();
  void connectTable();
  void receive(SearchNews news);
  void refresh();
  void refreshSoon();
  void showCounts();
  void showNotice();
  void showChosen();
  void say(const QString& message);
  bool updatePresent(const Snapshot& snapshot) const;
  bool belongsTo(const Snapshot& snapshot) const;  ///< whether it is of the joint searched for
  bool withShort() const { return m_short->isChecked(); }

  Snapshot m_snapshot;
  std::shared_ptr<SearchStudy> m_study;
  std::weak_ptr<const int> m_atWork;
  std::optional<std::size_t> m_chosen;
  bool m_stale = false;
  bool m_syncing = false;
  int m_refreshes = 0;
  int m_lastCost = 0;  // [ms] of drawing
  SearchSettings* m_settings;
  QPushButton* m_run = nullptr;
  QProgressBar* m_progress = nullptr;
  QLabel* m_counts = nullptr;
  QToolButton* m_fold = nullptr;
  QComboBox* m_x = nullptr;
  QComboBox* m_y = nullptr;
  QCheckBox* m_short = nullptr;
  QPushButton* m_adopt = nullptr;
  QLabel* m_reading = nullptr;
  SearchCanvas* m_scatter;
  QTableView* m_table;
  SearchTableModel* m_model;
  QSplitter* m_results = nullptr;
  QTimer m_refreshTimer;
  StudyThread m_thread;  // last: ends first
};

/// Whether both ask the same of a combination: all but motor and reducer, names and notes is equal.
bool sameJoint(const Project& a, const Project& b, const SearchSpace& space);

}  // namespace jw
